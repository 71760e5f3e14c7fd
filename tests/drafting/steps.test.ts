import { english } from '../support/speech.ts';
import { describe, expect, it } from 'vitest';
import { evaluate, reasonWords } from '#drafting/evaluate.ts';
import { stepNamed } from '#drafting/method.ts';
import { stepMakes, stepNeeds, stepStart } from '#drafting/steps/kinds.ts';
import type { SheetPoint } from '#geometry/point.ts';
import { expectPlace } from '../geometry/close.ts';
import { BODY, draftOf, mark, smallMethod, type WrittenStep } from './small-method.ts';

/** A(80, 0), B(80, 60), C(0, 60): a box 8 cm across and 6 cm down. */
const BOX = [
	mark('A', 'O', 'across', 'waist / 9'),
	mark('B', 'A', 'down', 'neck / 6'),
	mark('C', 'B', 'in', 'waist / 9')
];

const pointOf = (name: string, step: WrittenStep): SheetPoint | undefined =>
	draftOf(smallMethod([...BOX, step])).points[name];

const whyNot = (...steps: readonly WrittenStep[]): string => {
	const evaluation = evaluate(smallMethod([...BOX, ...steps]), BODY);
	if (evaluation.kind === 'drafted') throw new Error('it was drafted');
	return evaluation.refusals.map((each) => reasonWords(each, english)).join('; ');
};

describe('corner and mark', () => {
	it('the corner is (0, 0)', () => {
		expect(draftOf(smallMethod([])).points).toEqual({ O: { x: 0, y: 0 } });
	});

	it.each([
		['across', 110, 60],
		['in', 50, 60],
		['down', 80, 90],
		['up', 80, 30]
	])('3 cm %s from B', (go, x, y) => {
		expectPlace(pointOf('D', mark('D', 'B', go, 'neck / 12')), x, y);
	});

	it('a negative distance goes the other way', () => {
		expectPlace(pointOf('D', mark('D', 'B', 'across', '-neck / 12')), 50, 60);
	});
});

describe('a rule that for one body comes to nothing finite', () => {
	const zero = 'neck - bustSpan - bustSpan';
	const unsound = (name: string): string =>
		`the rule of ${name} divides by nothing, or comes to more than any draft measures`;

	it('is refused by the name of its step, and so is what would go round without end', () => {
		expect(whyNot(mark('D', 'B', 'across', `bust * bust / (${zero})`))).toBe(unsound('D'));
		const round = { kind: 'arc', name: 'round', label: 'the arc', about: 'A', from: 'B', toward: 'across' };
		expect(whyNot({ ...round, turn: `bust / (${zero})` })).toBe(unsound('round'));
	});
});

describe('meeting', () => {
	it('is as far across as one point and as far down as the other', () => {
		const step = { kind: 'meeting', name: 'D', label: 'meeting', down: 'A', across: 'C' };
		expectPlace(pointOf('D', step), 80, 60);
		expectPlace(pointOf('D', { ...step, down: 'C', across: 'A' }), 0, 0);
	});
});

describe('division', () => {
	const step = { kind: 'division', name: 'D', label: 'division', from: 'A', to: 'C', at: '1 / 4' };
	it('is a share of the straight way, from the first point', () => {
		expectPlace(pointOf('D', step), 60, 15);
		expectPlace(pointOf('D', { ...step, from: 'C', to: 'A' }), 20, 45);
		expectPlace(pointOf('D', { ...step, at: 0.5 }), 40, 30);
	});

	it('a share may be the ratio of two lengths', () => {
		expectPlace(pointOf('D', { ...step, at: 'bustSpan / waist' }), 60, 15);
	});
});

describe('along', () => {
	const toward = {
		kind: 'along',
		name: 'D',
		label: 'along',
		on: { from: 'A', toward: 'C' },
		by: 'bustSpan / 9'
	};
	it('goes from one point straight toward another: 2 cm of the 10 from A to C', () => {
		expectPlace(pointOf('D', toward), 64, 12);
	});

	it('may go beyond it', () => {
		expectPlace(pointOf('D', { ...toward, by: 'distance(A, C) + waist / 36' }), -16, 72);
	});

	it('has no direction between two points in one place', () => {
		const twin = mark('E', 'A', 'down', 'bust - bust');
		expect(whyNot(twin, { ...toward, on: { from: 'A', toward: 'E' } })).toBe(
			'D has no direction: A and E are the same place'
		);
	});

	const line = { kind: 'straight', name: 'edge', label: 'the edge', through: ['A', 'B', 'C'] };
	const onLine = (from: string, by: string): WrittenStep => ({ ...toward, on: { line: 'edge', from }, by });
	it('follows a drawn line from either end: 6 down, then 8 in', () => {
		const at = (from: string, by: string) =>
			draftOf(smallMethod([...BOX, line, onLine(from, by)])).points['D'];
		expectPlace(at('start', 'waist / 9'), 60, 60);
		expectPlace(at('end', 'bustSpan / 6'), 30, 60);
		expectPlace(at('end', 'length(edge)'), 80, 0);
		expectPlace(at('start', 'length(edge)'), 0, 60);
	});

	it('does not go beyond the end of a drawn line', () => {
		expect(whyNot(line, onLine('start', 'length(edge) + bust / 1000'))).toBe(
			'D would lie beyond the end of edge'
		);
		expect(whyNot(line, onLine('end', 'length(edge) + bust / 1000'))).toBe(
			'D would lie beyond the end of edge'
		);
	});

	it('reaches the end of a drawn curve by its own length', () => {
		const curve = {
			kind: 'curve',
			name: 'edge',
			label: 'the edge',
			rule: 'corner',
			through: [
				{ point: 'O', heading: 'across' },
				{ point: 'B', heading: 'down' },
				{ point: 'C', heading: 'in' }
			]
		};
		const draft = draftOf(smallMethod([...BOX, curve, onLine('start', 'length(edge)')]));
		expectPlace(draft.points['D'], 0, 60);
	});
});

describe('swing', () => {
	const swing = {
		kind: 'swing',
		name: 'D',
		label: 'swing',
		from: 'A',
		length: 'bustSpan * 10 / 18',
		level: 'neck / 6',
		side: 'outward'
	};
	it('swings 10 about A to the level 6 down: 8 across, either side', () => {
		expectPlace(pointOf('D', swing), 160, 60);
		expectPlace(pointOf('D', { ...swing, side: 'inward' }), 0, 60);
	});

	it('counts the level from the corner and not from the centre', () => {
		expectPlace(pointOf('D', { ...swing, from: 'B', level: 'neck / 3' }), 160, 120);
	});

	it('is refused where it does not reach, with the measurements that the step names', () => {
		const short = { ...swing, length: 'neck / 9', odds: ['neck', 'shoulderWidth'] };
		expect(whyNot(short)).toBe('the length swung from A does not reach the level of D');
		const evaluation = evaluate(smallMethod([...BOX, short]), BODY);
		expect(evaluation).toMatchObject({ kind: 'refused', refusals: [{ odds: ['neck', 'shoulderWidth'] }] });
	});
});

describe('lines', () => {
	const lineOf = (step: WrittenStep) => draftOf(smallMethod([...BOX, step])).lines[String(step['name'])];

	it('a level runs square across from its point, as long as its reach', () => {
		const drawn = lineOf({ kind: 'level', name: 'level', label: 'a level', from: 'C', reach: 'bust / 4' });
		expect(drawn?.length).toBe(240);
		expect(drawn?.path).toEqual([{ kind: 'straight', from: { x: 0, y: 60 }, to: { x: 240, y: 60 } }]);
	});

	it('a straight line goes through its points in turn', () => {
		expect(
			lineOf({ kind: 'straight', name: 'edge', label: 'an edge', through: ['O', 'A', 'B'] })?.length
		).toBe(140);
	});

	const curve = (rule: string, ...headings: readonly unknown[]): WrittenStep => ({
		kind: 'curve',
		name: 'bend',
		label: 'a bend',
		rule,
		through: [
			{ point: 'O', heading: headings[0] },
			{ point: 'B', heading: headings[1] }
		]
	});

	it('a corner curve sets its handles toward the corner of its headings', () => {
		const share = (4 * (Math.SQRT2 - 1)) / 3;
		const [segment] = lineOf(curve('corner', 'across', 'down'))?.path ?? [];
		if (segment?.kind !== 'cubic') throw new Error('not a curve');
		expectPlace(segment.leaving, 80 * share, 0);
		expectPlace(segment.arriving, 80, 60 - 60 * share);
	});

	it('a curve by thirds goes a third of its chord, 10, along its headings', () => {
		const [segment] = lineOf(curve('thirds', 'chord', 'down'))?.path ?? [];
		if (segment?.kind !== 'cubic') throw new Error('not a curve');
		expectPlace(segment.leaving, 80 / 3, 20);
		expectPlace(segment.arriving, 80, 60 - 100 / 3);
	});

	it('a heading square to a line is taken at its nearer end, and turned the way that is asked', () => {
		const slope = { kind: 'straight', name: 'slope', label: 'the slope', through: ['C', 'A'] };
		const headed = (toward: string) => {
			const steps = [...BOX, slope, curve('thirds', { squareTo: 'slope', toward }, 'down')];
			const [segment] = draftOf(smallMethod(steps)).lines['bend']?.path ?? [];
			if (segment?.kind !== 'cubic') throw new Error('not a curve');
			return segment.leaving;
		};
		// C to A runs 8 across and 6 up; square to it is 3 across and 4 down, or back.
		expectPlace(headed('down'), 20, 80 / 3);
		expectPlace(headed('across'), 20, 80 / 3);
		expectPlace(headed('up'), -20, -80 / 3);
	});

	it('square to a bent line means square to it at that end', () => {
		const bent = { kind: 'straight', name: 'slope', label: 'the slope', through: ['A', 'B', 'O'] };
		const steps = [...BOX, bent, curve('thirds', { squareTo: 'slope', toward: 'down' }, 'down')];
		const [segment] = draftOf(smallMethod(steps)).lines['bend']?.path ?? [];
		// It arrives at O out of B, 8 in and 6 up; square to that, downward, is 6 in and 8 down.
		if (segment?.kind !== 'cubic') throw new Error('not a curve');
		expectPlace(segment.leaving, -20, 80 / 3);
	});
});

describe('what is known of a step before it is worked', () => {
	const method = smallMethod([
		...BOX,
		{ kind: 'straight', name: 'edge', label: 'the edge', through: ['A', 'B'] },
		{ kind: 'along', name: 'D', label: 'along', on: { line: 'edge', from: 'end' }, by: 'distance(O, C) / 2' },
		{ kind: 'meeting', name: 'E', label: 'meeting', down: 'D', across: 'C' },
		{ kind: 'level', name: 'level', label: 'level', from: 'C', reach: 'length(edge)' }
	]);

	it.each([
		['O', 'point', undefined, []],
		['A', 'point', 'O', ['O']],
		['edge', 'line', 'A', ['A', 'B']],
		['D', 'point', undefined, ['edge', 'O', 'C']],
		['E', 'point', 'D', ['D', 'C']],
		['level', 'line', 'C', ['C', 'edge']]
	])('%s makes a %s, starts from %s and needs %j', (name, makes, start, needs) => {
		const step = stepNamed(method, name);
		expect(stepMakes(step)).toBe(makes);
		expect(stepStart(step)).toBe(start);
		expect(stepNeeds(step)).toEqual(needs);
	});

	it('a step that the method has not is our fault', () => {
		expect(() => stepNamed(method, 'Z')).toThrow('the method small has no step "Z"');
	});
});
