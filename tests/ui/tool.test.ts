import { describe, expect, it } from 'vitest';
import { at, between } from '#geometry/point.ts';
import { pathLength } from '#geometry/path.ts';
import { Tool } from '#ui/desk/tool.svelte.ts';
import { backBlock } from '../drafting/lesson-method.ts';
import { mark, smallMethod } from '../drafting/small-method.ts';
import { expectPlace } from '../geometry/close.ts';
import { english } from '../support/speech.ts';
import { FIRST_MARKS, line, point, takeUp, toolAt } from './desk.ts';
import { freshStores } from './memory-store.ts';

freshStores();

/** Every kind of step that is answered with a point, beside those of the first lesson. */
const KINDS = smallMethod([
	mark('A', 'O', 'across', 'waist / 9'),
	{ kind: 'straight', name: 'edge', label: 'the edge', through: ['O', 'A'] },
	{ kind: 'along', name: 'B', label: 'b', on: { line: 'edge', from: 'start' }, by: 'neck / 12' },
	{ kind: 'swing', name: 'C', label: 'c', from: 'A', length: 'bust / 6', level: 'neck / 6', side: 'outward' }
]);

describe('a point step', () => {
	it.each([
		[FIRST_MARKS, 'A', 'O'],
		[FIRST_MARKS, 'Q', 'B'],
		[FIRST_MARKS, 'P', 'B'],
		[KINDS, 'B', undefined],
		[KINDS, 'C', 'A']
	])(
		'%#: has one target, called by the point’s name and told from where it starts',
		(method, step, origin) => {
			const tool = toolAt(step, method);
			expect(tool.targets).toEqual([{ id: 'point', name: step, origin, settles: false }]);
			expect(tool.target?.id).toBe('point');
			expect(tool.places).toEqual({});
			expect(tool.line).toBeUndefined();
		}
	);

	it('put somewhere, it is placed, unchecked', () => {
		const tool = toolAt('A');
		tool.put('point', at(0, 97));
		expect(tool.work.entry('A')).toMatchObject({ placement: point(0, 97), checked: false });
		expect(tool.places).toEqual({ point: { x: 0, y: 97 } });
		expect(tool.work.state('A')).toBe('placed');
	});

	it('keeps what was typed, until it is moved by hand', () => {
		const tool = toolAt('A');
		const typed = { form: 'coordinates', across: '0', down: '20/2', unit: 'cm' } as const;
		tool.put('point', at(0, 100), typed);
		expect(tool.work.entry('A').placement).toEqual({ kind: 'point', at: [0, 100], typed });
		tool.put('point', at(0, 101));
		expect(tool.work.entry('A').placement).toEqual(point(0, 101));
	});

	it('dragged, it shows where it would be, and is placed only when it is put', () => {
		const tool = toolAt('A');
		tool.drag('point', at(5, 6));
		expect(tool.places['point']).toEqual({ x: 5, y: 6 });
		expect(tool.work.entry('A').placement).toBeUndefined();
		tool.drag('point', undefined);
		expect(tool.places).toEqual({});
		tool.drag('point', at(7, 8));
		tool.put('point', at(9, 10));
		expect(tool.places['point']).toEqual({ x: 9, y: 10 });
	});

	it('is measured from the named point’s place', () => {
		expect(toolAt('P').originPlace()).toEqual({ x: 125, y: 0 });
		expect(toolAt('B', KINDS).originPlace()).toBeUndefined();
	});

	it('put away, it is open again', () => {
		const tool = toolAt('A');
		tool.put('point', at(0, 97));
		tool.drag('point', at(1, 1));
		tool.cancel();
		expect(tool.places).toEqual({});
		expect(tool.work.state('A')).toBe('open');
	});

	it('the right answer, put, is right', () => {
		for (const step of ['A', 'B', 'Q', 'P']) {
			const tool = toolAt(step);
			const place = tool.work.draft?.points[step];
			if (!place) throw new Error(`no ${step}`);
			tool.put('point', place);
			expect(tool.work.check(step).answer, step).toBe('right');
		}
	});
});

describe('a level', () => {
	it('has its far end to put; it starts from its own point', () => {
		const tool = toolAt('levelA');
		expect(tool.targets).toEqual([{ id: 'end', name: 'the end of the level', origin: 'A', settles: false }]);
		expect(tool.line).toBeUndefined();
		tool.put('end', at(126, 100));
		expect(tool.work.entry('levelA').placement).toEqual(line([0, 100], [126, 100]));
		expect(tool.places).toEqual({ end: { x: 126, y: 100 } });
		expect(tool.line && pathLength(tool.line)).toBe(126);
		expect(tool.work.check('levelA').answer).toBe('right');
	});

	it('shows the line while its end is dragged', () => {
		const tool = toolAt('levelA');
		tool.drag('end', at(30, 140));
		expect(tool.line && pathLength(tool.line)).toBe(50);
		expect(tool.work.entry('levelA').placement).toBeUndefined();
	});
});

describe('a straight line', () => {
	it('has two ends, both settling on points, the first chosen', () => {
		const tool = toolAt('slope');
		expect(tool.targets.map(({ id, settles, origin }) => [id, settles, origin])).toEqual([
			['first', true, undefined],
			['last', true, undefined]
		]);
		expect(tool.target?.id).toBe('first');
	});

	it('is placed with its second end; until then the first one waits, and the other is next', () => {
		const tool = toolAt('slope');
		tool.put('first', at(0, 0));
		expect(tool.places).toEqual({ first: { x: 0, y: 0 } });
		expect(tool.target?.id).toBe('last');
		expect(tool.line).toBeUndefined();
		expect(tool.work.state('slope')).toBe('open');
		tool.put('last', at(125, 50));
		expect(tool.work.entry('slope').placement).toEqual(line([0, 0], [125, 50]));
		expect(tool.work.check('slope').answer).toBe('right');
	});

	it('may be given its last end first', () => {
		const tool = toolAt('slope');
		tool.choose('last');
		tool.put('last', at(125, 50));
		expect(tool.target?.id).toBe('first');
		tool.put('first', at(0, 0));
		expect(tool.work.entry('slope').placement).toEqual(line([0, 0], [125, 50]));
	});

	it('an end that waits may be moved before the other is put', () => {
		const tool = toolAt('slope');
		tool.put('first', at(3, 3));
		tool.put('first', at(0, 0));
		expect(tool.places).toEqual({ first: { x: 0, y: 0 } });
		expect(tool.target?.id).toBe('last');
	});

	it('one end moved leaves the other', () => {
		const tool = toolAt('slope');
		tool.put('first', at(0, 0));
		tool.put('last', at(125, 50));
		tool.choose('first');
		tool.put('first', at(7, 7));
		expect(tool.work.entry('slope').placement).toEqual(line([7, 7], [125, 50]));
	});

	it('an end that waits is put away with the rest, and when another step is taken up', () => {
		const tool = toolAt('slope');
		tool.put('first', at(0, 0));
		tool.cancel();
		expect(tool.places).toEqual({});
		expect(tool.target?.id).toBe('first');
		tool.put('first', at(0, 0));
		tool.take('A');
		tool.take('slope');
		expect(tool.places).toEqual({});
		expect(tool.target?.id).toBe('first');
	});

	it('after an undo both its ends are wanted again', () => {
		const tool = toolAt('slope');
		tool.put('first', at(0, 0));
		tool.put('last', at(125, 50));
		tool.work.undo();
		expect(tool.places).toEqual({});
		tool.put(tool.target?.id ?? '', at(125, 50));
		tool.put(tool.target?.id ?? '', at(0, 0));
		expect(tool.work.check('slope').answer).toBe('right');
	});

	it('once it was found wrong, the next tap rules it anew', () => {
		const tool = toolAt('slope');
		tool.tap(at(0, 0));
		tool.tap(at(0, 100));
		expect(tool.beginsAnew).toBe(false);
		tool.work.check('slope');
		expect(tool.beginsAnew).toBe(true);
		tool.tap(at(0, 0));
		expect(tool.places).toEqual({ first: { x: 0, y: 0 } });
		tool.tap(at(125, 50));
		expect(tool.work.check('slope').answer).toBe('right');
	});

	it('shows the line while its second end is dragged', () => {
		const tool = toolAt('slope');
		tool.put('first', at(0, 0));
		tool.drag('last', at(30, 40));
		expect(tool.line && pathLength(tool.line)).toBe(50);
		expect(tool.work.entry('slope').placement).toBeUndefined();
	});
});

describe('a curve', () => {
	it('after a tap takes up the next handle that stands where it began', () => {
		const tool = toolAt('bend');
		const [first = '', second = ''] = tool.targets.map(({ id }) => id);
		expect(tool.target?.id).toBe(first);
		tool.tap(at(60, 100));
		expect(tool.target?.id).toBe(second);
		tool.tap(at(125, 50));
		expect(tool.target?.id).toBe(second);
	});

	it('has two handles, named by their ends, a third along the straight way to begin with', () => {
		const tool = toolAt('bend');
		expect(tool.targets).toEqual([
			{ id: '0:leaving', name: 'the handle out of A', origin: 'A', settles: false },
			{ id: '0:arriving', name: 'the handle into B', origin: 'B', settles: false }
		]);
		const [A, B] = [at(0, 100), at(125, 0)];
		expect(tool.places).toEqual({ '0:leaving': between(A, B, 1 / 3), '0:arriving': between(A, B, 2 / 3) });
		expect(tool.line && pathLength(tool.line)).toBeCloseTo(Math.hypot(125, 100), 6);
		expect(tool.work.entry('bend').placement).toBeUndefined();
	});

	it('one handle put is a placement; the other stays where it was', () => {
		const tool = toolAt('bend');
		const other = tool.places['0:arriving'];
		tool.put('0:leaving', at(60, 100));
		expect(tool.work.entry('bend').placement).toMatchObject({
			kind: 'line',
			segments: [{ from: [0, 100], leaving: [60, 100], to: [125, 0] }]
		});
		expectPlace(tool.places['0:arriving'], other?.x ?? NaN, other?.y ?? NaN);
		expect(tool.target?.id).toBe('0:leaving');
	});

	it('set as the rule says, is right: handles 0.55 of the way to the corner', () => {
		const tool = toolAt('bend');
		const share = (4 * (Math.SQRT2 - 1)) / 3;
		tool.put('0:leaving', at(125 * share, 100));
		tool.choose('0:arriving');
		expect(tool.target?.name).toBe('the handle into B');
		expect(tool.originPlace()).toEqual({ x: 125, y: 0 });
		tool.put('0:arriving', at(125, 100 * share));
		expect(tool.work.check('bend').answer).toBe('right');
	});

	it('of two pieces has four handles', () => {
		const tool = toolAt('armhole', backBlock());
		expect(tool.targets.map(({ name }) => name)).toEqual([
			'the handle out of S',
			'the handle into M',
			'the handle out of M',
			'the handle into U'
		]);
		const path = tool.work.draft?.lines['armhole']?.path ?? [];
		for (const [i, segment] of path.entries()) {
			if (segment.kind !== 'cubic') throw new Error('not a curve');
			tool.put(`${i}:leaving`, segment.leaving);
			tool.put(`${i}:arriving`, segment.arriving);
		}
		expect(tool.work.check('armhole').answer).toBe('right');
	});

	it('put away, its handles are back where they began', () => {
		const tool = toolAt('bend');
		const begin = tool.places;
		tool.put('0:leaving', at(60, 100));
		tool.cancel();
		expect(tool.places).toEqual(begin);
		expect(tool.work.state('bend')).toBe('open');
	});

	it('dragging a handle bends the line, and letting it go nowhere lets the line be', () => {
		const tool = toolAt('bend');
		const before = tool.line && pathLength(tool.line);
		tool.drag('0:leaving', at(90, 100));
		expect(tool.line && pathLength(tool.line)).not.toBeCloseTo(before ?? NaN, 1);
		tool.drag('0:leaving', undefined);
		expect(tool.line && pathLength(tool.line)).toBe(before);
	});
});

describe('whatever the step', () => {
	it('a target that there is not, chosen, leaves the first', () => {
		const tool = toolAt('slope');
		tool.choose('last');
		tool.choose('third');
		expect(tool.target?.id).toBe('first');
	});

	it('a step that is locked has nothing to take hold of', () => {
		const tool = new Tool(takeUp(), 'slope', english);
		expect(tool.work.state('slope')).toBe('locked');
		expect(tool.targets).toEqual([]);
		expect(tool.target).toBeUndefined();
		tool.work.draftBefore('slope');
		expect(tool.targets).toHaveLength(2);
	});

	it('taking up a step shows what was placed for it', () => {
		const tool = toolAt('A');
		tool.put('point', at(0, 97));
		tool.take('B');
		expect(tool.places).toEqual({});
		expect(tool.step.name).toBe('B');
		tool.take('A');
		expect(tool.places).toEqual({ point: { x: 0, y: 97 } });
	});

	it('what was saved as another kind of placement is not shown, and can be placed anew', () => {
		const tool = toolAt('A');
		tool.work.place('A', line([0, 0], [5, 5]));
		expect(tool.places).toEqual({});
		tool.take('bend');
		tool.work.draftBefore('bend');
		tool.work.place('bend', point(1, 2));
		expect(Object.keys(tool.places)).toEqual(['0:leaving', '0:arriving']);
		tool.put('0:leaving', at(60, 100));
		expect(tool.work.entry('bend').placement?.kind).toBe('line');
	});
});
