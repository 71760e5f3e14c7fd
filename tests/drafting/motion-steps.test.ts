import { message } from '#shared/speech/message.ts';
import { english } from '../support/speech.ts';
import { describe, expect, it } from 'vitest';
import { refusalOf } from '../support/refusal.ts';
import { evaluate, reasonWords, type Draft } from '#drafting/evaluate.ts';
import { explain } from '#drafting/explain.ts';
import { stepNamed } from '#drafting/method.ts';
import { readMethod } from '#drafting/read-method.ts';
import { isGiven, stepMakes, stepNeeds, stepStart } from '#drafting/steps/kinds.ts';
import { turnAngle } from '#drafting/steps/motion.ts';
import { movedBy, turning } from '#geometry/motion.ts';
import { endDirection, pathEnd, pathStart, polyline, startDirection } from '#geometry/path.ts';
import { at, distance, type SheetPoint } from '#geometry/point.ts';
import { expectDirection, expectPlace } from '../geometry/close.ts';
import { lessonMethod } from './lesson-method.ts';
import { BODY, draftOf, mark, smallMethod, type WrittenStep } from './small-method.ts';

/** A(80, 0), B(80, 60), C(0, 60): a box 8 cm across and 6 cm down, with its top and its outer side ruled. */
const BOX = [
	mark('A', 'O', 'across', 'waist / 9'),
	mark('B', 'A', 'down', 'neck / 6'),
	mark('C', 'B', 'in', 'waist / 9'),
	{ kind: 'straight', name: 'top', label: 'the top', through: ['O', 'A'] },
	{ kind: 'straight', name: 'outer', label: 'the outer side', through: ['A', 'B'] }
];
const CM = 'neck / 36';

const boxed = (...steps: readonly WrittenStep[]) => smallMethod([...BOX, ...steps]);
const drafted = (...steps: readonly WrittenStep[]): Draft => draftOf(boxed(...steps));
const whyNot = (...steps: readonly WrittenStep[]): string => {
	const evaluation = evaluate(boxed(...steps), BODY);
	if (evaluation.kind === 'drafted') throw new Error('it was drafted');
	return evaluation.refusals.map((each) => reasonWords(each, english)).join('; ');
};
const SMALL = boxed();
const readMethodWith = (file: WrittenStep) =>
	readMethod(file, 'traced.yaml', (id) => (id === 'small' ? SMALL : undefined));
const pointIn = (draft: Draft, name: string): SheetPoint => {
	const point = draft.points[name];
	if (!point) throw new Error(`there is no ${name}`);
	return point;
};
const expectEnds = (draft: Draft, line: string, from: readonly number[], to: readonly number[]): void => {
	const path = draft.lines[line]?.path;
	if (!path) throw new Error(`there is no ${line}`);
	expectPlace(pathStart(path), from[0] ?? NaN, from[1] ?? NaN, 6);
	expectPlace(pathEnd(path), to[0] ?? NaN, to[1] ?? NaN, 6);
};

describe('turn', () => {
	const turn = { kind: 'turn', name: 'D', label: 'turned', move: 'A', about: 'O', onto: 'C' };

	it('brings a point onto the line to another, as far from the centre as it was', () => {
		expectPlace(drafted(turn).points['D'], 0, 80);
		expectPlace(drafted({ ...turn, move: 'C', onto: 'A' }).points['D'], 60, 0);
	});

	it('goes a share of the way', () => {
		const half = 80 * Math.SQRT1_2;
		expectPlace(drafted({ ...turn, share: '1 / 2' }).points['D'], half, half);
	});

	it('takes points and lines along, and keeps all their lengths', () => {
		const draft = drafted({ ...turn, carries: { E: 'B', outer2: 'outer' } });
		expectPlace(draft.points['E'], -60, 80);
		expectEnds(draft, 'outer2', [0, 80], [-60, 80]);
		expect(draft.lines['outer2']?.length).toBeCloseTo(60, 9);
	});

	it.each([
		['across', 60 * Math.sin(Math.PI / 3)],
		['in', -60 * Math.sin(Math.PI / 3)]
	])('opens a slash by a width measured straight across its mouth, %s', (toward, x) => {
		// A chord as long as the radius spans 60 degrees.
		const draft = drafted({
			kind: 'turn',
			name: 'D',
			label: 'opened',
			move: 'C',
			about: 'O',
			opening: `${CM} * 6`,
			toward
		});
		expectPlace(draft.points['D'], x, 30);
		expect(distance(pointIn(draft, 'C'), pointIn(draft, 'D'))).toBeCloseTo(60, 9);
	});

	it('cannot open wider than twice its length', () => {
		const wide = { kind: 'turn', name: 'D', label: 'opened', move: 'C', about: 'O', opening: `${CM} * 13` };
		expect(whyNot(wide)).toContain('D cannot be reached by turning C about O');
	});

	it('leaves what it carries where it was for a body that does not need it', () => {
		const draft = drafted({ ...turn, when: 'waist - hip', carries: { E: 'B', outer2: 'outer' } });
		expect(draft.points['D']).toBeUndefined();
		expectPlace(draft.points['E'], 80, 60);
		expectEnds(draft, 'outer2', [80, 0], [80, 60]);
	});

	it('is answered with a point, from its centre; what it carries nobody draws', () => {
		const method = boxed({ ...turn, carries: { E: 'B', outer2: 'outer' } });
		const [step, point, line] = ['D', 'E', 'outer2'].map((name) => stepNamed(method, name));
		if (!step || !point || !line) throw new Error('a step is missing');
		expect([stepMakes(step), isGiven(step), stepStart(step)]).toEqual(['point', false, 'O']);
		expect([...stepNeeds(step)].sort()).toEqual(['A', 'C', 'O']);
		expect([stepMakes(point), isGiven(point)]).toEqual(['point', true]);
		expect([stepMakes(line), isGiven(line)]).toEqual(['line', true]);
		expect(line.label).toEqual({ article: 'the', name: 'outer side, moved' });
	});

	it('is explained by what stays the same', () => {
		const method = boxed(turn);
		const { rule, worked } = explain(method, 'D', BODY, draftOf(method), english);
		expect(rule).toContain('until it lies on the line from O through C');
		expect(worked).toContain('8 cm');
		expect(worked).toContain('90.0°');
	});

	it('toward a place: on its circle, in the direction of the place', () => {
		const [about, from] = [at(10, 10), at(13, 14)];
		expectPlace(movedBy(turning(about, turnAngle(about, from, at(110, 10))), from), 15, 10);
	});
});

describe('spread and mirror', () => {
	it('a spread moves a part away whole', () => {
		const draft = drafted({
			kind: 'spread',
			name: 'D',
			label: 'moved',
			move: 'A',
			go: 'down',
			by: `${CM} * 2`,
			carries: { E: 'B', outer2: 'outer' }
		});
		expectPlace(draft.points['D'], 80, 20);
		expectPlace(draft.points['E'], 80, 80);
		expectEnds(draft, 'outer2', [80, 20], [80, 80]);
	});

	it('a mirroring folds it over: along (0.8, 0.6), what lies square to that changes its sign', () => {
		const mirror = {
			kind: 'mirror',
			name: 'D',
			label: 'mirrored',
			move: 'A',
			fold: ['O', 'B'],
			carries: { E: 'C' }
		};
		const draft = drafted(mirror);
		expectPlace(draft.points['D'], 22.4, 76.8);
		expectPlace(draft.points['E'], 57.6, -16.8);
	});

	it('cannot fold over nothing', () => {
		const twin = mark('E', 'A', 'down', 'neck - neck');
		const mirror = { kind: 'mirror', name: 'D', label: 'mirrored', move: 'B', fold: ['A', 'E'] };
		expect(whyNot(twin, mirror)).toContain('its fold has no length');
	});
});

describe('section and chain', () => {
	it('a section is what is left of a line without its ends', () => {
		const part = {
			kind: 'section',
			name: 'part',
			label: 'part',
			of: 'top',
			lessStart: CM,
			lessEnd: `2 * ${CM}`
		};
		expectEnds(drafted(part), 'part', [10, 0], [60, 0]);
		expect(whyNot({ ...part, lessStart: `7 * ${CM}` })).toContain('nothing is left of top for part');
	});

	it('a section of a curve lies on it, and is as long as it says', () => {
		const curve = {
			kind: 'curve',
			name: 'bow',
			label: 'bow',
			rule: 'corner',
			through: [
				{ point: 'O', heading: 'across' },
				{ point: 'B', heading: 'down' }
			]
		};
		const draft = drafted(curve, { kind: 'section', name: 'part', label: 'part', of: 'bow', lessStart: CM });
		expect(draft.lines['part']?.length).toBeCloseTo((draft.lines['bow']?.length ?? NaN) - 10, 5);
		expectPlace(pathEnd(draft.lines['part']?.path ?? polyline(at(0, 0), at(0, 0))), 80, 60);
	});

	const around = { kind: 'chain', name: 'around', label: 'around', of: ['top', 'outer'] };
	it('a chain runs on as one, and passes over what this body does not have', () => {
		expectEnds(drafted(around), 'around', [0, 0], [80, 60]);
		expect(drafted(around).lines['around']?.length).toBeCloseTo(140, 9);
		const absent = {
			kind: 'straight',
			name: 'foot',
			label: 'foot',
			when: 'waist - hip',
			through: ['B', 'C']
		};
		expect(drafted(absent, { ...around, of: ['top', 'foot', 'outer'] }).lines['around']?.length).toBeCloseTo(
			140,
			9
		);
	});

	it('a chain whose lines do not meet is no line', () => {
		const apart = { kind: 'straight', name: 'apart', label: 'apart', through: ['C', 'B'] };
		expect(whyNot(apart, { ...around, of: ['top', 'apart'] })).toContain('do not join');
	});
});

describe('parallel and arc', () => {
	it.each([
		['top', 'down', [0, 10], [80, 10]],
		['top', 'up', [0, -10], [80, -10]],
		['outer', 'in', [70, 0], [70, 60]],
		['outer', 'across', [90, 0], [90, 60]]
	])('1 cm from %s, %s', (of, toward, from, to) => {
		const step = { kind: 'parallel', name: 'band', label: 'band', of, by: CM, toward };
		expectEnds(drafted(step), 'band', from, to);
	});

	const bow = {
		...{ kind: 'curve', name: 'bow', label: 'bow', rule: 'thirds' },
		through: [
			{ point: 'O', heading: 'across' },
			{ point: 'C', heading: 'down' }
		]
	};
	const beside = (more: object) => ({
		...{ kind: 'parallel', name: 'band', label: 'the band', of: 'bow', by: CM, toward: 'down', ...more }
	});

	it('lies on the side that is seen where the line shows it the most clearly: here at its start', () => {
		expectEnds(drafted(bow, beside({})), 'band', [0, 10], [-10, 60]);
	});

	it('that would run back on itself is refused where two measurements are named for it', () => {
		const odds = ['neck', 'waist'];
		expect(drafted(bow, beside({ by: 'neck / 6' })).lines['band']).toBeDefined();
		expect(whyNot(bow, beside({ by: 'neck / 6', odds }))).toContain('the band would run back on itself');
	});

	it.each([
		['down', 80],
		['up', -80]
	])('a quarter of a circle, setting off %s', (toward, y) => {
		const step = { kind: 'arc', name: 'bow', label: 'bow', about: 'O', from: 'A', toward, turn: '1 / 4' };
		const draft = drafted(step);
		expectEnds(draft, 'bow', [80, 0], [0, y]);
		// A quarter of 2 pi r; arcs of cubics come within a hundredth of a millimetre.
		expect(draft.lines['bow']?.length).toBeCloseTo(40 * Math.PI, 2);
	});
});

describe('until', () => {
	const straightOn = {
		kind: 'until',
		name: 'D',
		label: 'until',
		from: 'A',
		go: 'across',
		within: ['-4 cm', '10 cm'],
		rule: 'thirds',
		through: [
			{ point: 'O', heading: 'across' },
			{ point: 'D', heading: 'chord' }
		],
		length: `${CM} * 12`,
		odds: ['neck', 'waist']
	};

	it('goes straight on until the line is long enough', () => {
		expectPlace(drafted(straightOn).points['D'], 120, 0, 5);
		expectPlace(drafted({ ...straightOn, length: `${CM} * 5` }).points['D'], 50, 0, 5);
	});

	it('round a centre: the chord from A is 5 cm where the cosine of the angle at O is 0.78125', () => {
		const draft = drafted({
			...straightOn,
			from: 'C',
			about: 'O',
			through: [
				{ point: 'A', heading: 'chord' },
				{ point: 'D', heading: 'chord' }
			],
			length: `${CM} * 5`
		});
		const cosine = (80 ** 2 + 60 ** 2 - 50 ** 2) / (2 * 80 * 60);
		expectPlace(draft.points['D'], 60 * cosine, 60 * Math.sqrt(1 - cosine ** 2), 5);
	});

	it('says so where no place in its range will do, and which measurements disagree', () => {
		const evaluation = evaluate(boxed({ ...straightOn, length: `${CM} * 19` }), BODY);
		expect(evaluation).toMatchObject({
			kind: 'refused',
			refusals: [{ name: 'D', odds: ['neck', 'waist'], because: message('drafts', 'noPlace', { name: 'D' }) }]
		});
	});
});

describe('headings', () => {
	const curve = (first: unknown, last: unknown = 'chord') => ({
		kind: 'curve',
		name: 'bow',
		label: 'bow',
		rule: 'thirds',
		through: [
			{ point: 'A', heading: first },
			{ point: 'C', heading: last }
		]
	});
	const leaving = (...steps: readonly WrittenStep[]) => {
		const path = drafted(...steps).lines['bow']?.path;
		return path && startDirection(path);
	};

	it('along a line, or the straight way between two points', () => {
		expectDirection(leaving(curve({ along: 'outer' })), 0, 1);
		expectDirection(leaving(curve({ along: ['O', 'B'] })), 0.8, 0.6);
	});

	it('as a way runs on once a dart is sewn: turned as one leg is onto the other', () => {
		expectDirection(leaving(curve({ sewn: ['O', 'A'], about: 'O', from: 'A', onto: 'C' })), 0, 1);
	});

	it('across a join: half way between the two lines that meet there', () => {
		expectDirection(leaving(curve({ across: ['top', 'outer'] })), 1, 1);
	});

	it('square to two points, toward a way', () => {
		expectDirection(leaving(curve({ squareTo: ['O', 'B'], toward: 'down' })), -0.6, 0.8);
		const path = drafted(curve('down', { squareTo: ['O', 'B'], toward: 'up' })).lines['bow']?.path;
		expectDirection(path && endDirection(path), 0.6, -0.8);
	});
});

describe('formulas that choose', () => {
	it.each([
		['greater(neck, bust) / 12', 80],
		['lesser(neck, bust) / 12', 30],
		['choice(bust - waist, neck, bust) / 12', 30],
		['choice(waist - bust, neck, bust) / 12', 80],
		['choice(neck - neck, neck, bust) / 12', 80],
		['pi * neck / 36', 10 * Math.PI]
	])('%s', (by, across) => {
		expectPlace(draftOf(smallMethod([mark('A', 'O', 'across', by)])).points['A'], across, 0);
	});

	it.each([
		['greater(neck)', 'takes 2'],
		['choice(neck, bust)', 'takes 3'],
		['greater(neck, 3)', 'formulas of one sort']
	])('%s is refused', (by, why) => {
		expect(refusalOf(() => smallMethod([mark('A', 'O', 'across', by)]))).toContain(why);
	});
});

describe('what nobody draws', () => {
	it('a point cannot become a line by being carried', () => {
		const turn = { kind: 'turn', name: 'D', label: 'd', move: 'A', about: 'O', onto: 'C' };
		expect(refusalOf(() => boxed({ ...turn, carries: { outer2: 'B' } }))).toContain('B cannot become outer2');
		expect(refusalOf(() => boxed({ ...turn, carries: { E: 'Z' } }))).toContain('starts from "Z"');
		expect(refusalOf(() => boxed({ ...turn, carries: { C: 'B' } }))).toContain('this name already');
	});

	it('traced points and lines stand where the other draft has them', () => {
		const front = draftOf(lessonMethod('62-dress-front-top'));
		const block = front.uses['block'];
		expect(front.points['T']).toEqual(block?.points['T']);
		expect(front.lines['blockNeck']).toEqual(block?.lines['neck']);
		const traced = stepNamed(lessonMethod('62-dress-front-top'), 'blockNeck');
		expect([traced.kind, isGiven(traced), stepMakes(traced), stepNeeds(traced)]).toEqual([
			'traced',
			true,
			'line',
			[]
		]);
	});

	it.each([
		[{ from: 'blok', points: ['A'] }, 'no method is used by this name (did you mean "block"'],
		[{ from: 'block', points: ['Z'] }, 'small has no "Z"'],
		[{ from: 'block', lines: { above: 'tops' } }, 'small has no "tops" (did you mean "top"']
	])('%j cannot be traced', (trace, why) => {
		const file = { id: 'traced', name: 't', uses: { block: 'small' }, trace: [trace], steps: BOX };
		expect(refusalOf(() => readMethodWith(file))).toContain(why);
	});
});
