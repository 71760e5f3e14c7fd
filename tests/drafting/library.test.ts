import { the } from '#shared/speech/en/grammar.ts';
import { english } from '../support/speech.ts';
import { describe, expect, it } from 'vitest';
import { refusalOf } from '../support/refusal.ts';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { readBody, type Body } from '#shared/body.ts';
import { mm } from '#shared/units.ts';
import { evaluate } from '#drafting/evaluate.ts';
import { explain, givenLengths } from '#drafting/explain.ts';
import { methodFileId, methodLibrary, type ParsedMethodFile } from '#drafting/library.ts';
import type { Method } from '#drafting/method.ts';
import { backBlock, frontBlock, lessonMethod } from './lesson-method.ts';
import { BODY, draftOf, FIGURE, mark, type WrittenStep } from './small-method.ts';

const CORNER = { kind: 'corner', name: 'O', label: 'the corner' };
const file = (id: string, steps: readonly WrittenStep[] = [], more: WrittenStep = {}): ParsedMethodFile => ({
	place: `${id}.yaml`,
	content: { id, name: id, called: 'the back', steps: [CORNER, ...steps], ...more }
});
/** Its shoulder is 9 cm across and 12 down: 15 long. */
const SMALL_BACK = file(
	'small-back',
	[
		mark('N', 'O', 'across', 'neck / 4'),
		mark('S', 'N', 'down', 'neck / 3'),
		{ kind: 'straight', name: 'shoulder', label: 'the shoulder', through: ['O', 'S'] },
		{ kind: 'straight', name: 'armhole', label: 'an armhole', through: ['N', 'S'] }
	],
	{
		refusals: [
			{
				name: 'tooNarrow',
				need: { across: ['O', 'N'], atLeast: '5 cm' },
				odds: ['neck', 'shoulderWidth'],
				because: 'too narrow'
			}
		]
	}
);
const smallFront = (by: string, uses: WrittenStep = { back: 'small-back' }, more: WrittenStep = {}) =>
	file('small-front', [mark('A', 'O', 'down', by)], { uses, ...more });

const library = (...files: readonly ParsedMethodFile[]) => methodLibrary(files);
const found = (id: string, ...files: readonly ParsedMethodFile[]): Method => {
	const method = library(...files)(id);
	if (!method) throw new Error(`${id} was not found`);
	return method;
};
const complaint = (id: string, ...files: readonly ParsedMethodFile[]): string =>
	refusalOf(() => library(...files)(id));

describe('a method in another language', () => {
	const words = {
		place: 'small.es.yaml',
		content: { name: 'Una espalda', called: 'la espalda', steps: { shoulder: 'el hombro' } }
	};
	const front = file('front', [mark('A', 'O', 'down', 'length(back.shoulder)')], {
		uses: { back: 'small-back' }
	});
	const find = methodLibrary([{ ...SMALL_BACK, words }, front], 'es');

	it('has the names of its words, as nouns; what has none there keeps its English', () => {
		const method = find('small-back');
		expect([method?.name, method?.called]).toEqual([
			'Una espalda',
			{ article: 'la', name: 'espalda', gender: 'f' }
		]);
		const labels = Object.fromEntries(method?.steps.map(({ name, label }) => [name, label]) ?? []);
		expect(labels['shoulder']).toEqual({ article: 'el', name: 'hombro', gender: 'm' });
		expect(labels['armhole']).toEqual({ name: 'an armhole' });
	});

	it('with a name that is no text is told at the place of its words', () => {
		const bad = { place: 'small.es.yaml', content: { steps: { shoulder: 3 } } };
		expect(() => methodLibrary([{ ...SMALL_BACK, words: bad }], 'es')('small-back')).toThrow(
			'small.es.yaml: steps.shoulder: '
		);
	});
});

describe('a library of methods', () => {
	it('finds a method by its id, and none by another', () => {
		const find = library(SMALL_BACK, smallFront('bust'));
		expect(find('small-back')?.id).toBe('small-back');
		expect(find('big-back')).toBeUndefined();
	});

	it('reads a file only when it is asked for, and once', () => {
		const broken: ParsedMethodFile = { place: 'broken.yaml', content: { id: 'broken' } };
		const find = library(broken, SMALL_BACK);
		expect(find('small-back')).toBe(find('small-back'));
		expect(refusalOf(() => find('broken'))).toContain('broken.yaml: name');
	});

	it.each([[null], [[]], ['back-block'], [{ name: 'nameless' }]])(
		'a file that is %j has no id',
		(content) => {
			expect(methodFileId({ place: 'x', content })).toBe('');
		}
	);
});

describe('lines of another method', () => {
	it('are measured in the same body’s draft of it', () => {
		const method = found('small-front', SMALL_BACK, smallFront('length(back.shoulder) + bustSpan'));
		expect(draftOf(method).points['A']).toEqual({ x: 0, y: 330 });
		expect(draftOf(method).uses['back']?.points['S']).toEqual({ x: 90, y: 120 });
		expect(draftOf(method, readBody({ ...FIGURE, neck: 48 })).points['A']?.y).toBeCloseTo(380, 9);
	});

	it('take the allowances that were chosen for this draft', () => {
		const [front, heron] = [frontBlock(), DEMO_BODIES[0]?.body];
		if (!heron) throw new Error('Heron is gone');
		const chosen = { shoulderDropBack: mm(50) };
		const [usual, dropped] = [evaluate(front, heron), evaluate(front, heron, chosen)];
		if (usual.kind === 'refused' || dropped.kind === 'refused') throw new Error('refused');
		expect(dropped.draft.uses['back']?.points['S']?.y).toBe(50);
		expect(dropped.draft.lines['shoulder']?.length).toBeGreaterThan(
			usual.draft.lines['shoulder']?.length ?? 0
		);
	});

	it('may be named in refusals', () => {
		const method = found(
			'small-front',
			SMALL_BACK,
			smallFront(
				'bust',
				{ back: 'small-back' },
				{
					warnings: [
						{
							name: 'gap',
							odds: ['bust', 'neck'],
							because: 'x',
							need: { value: 'distance(O, A) - length(back.armhole)', atMost: '10 cm' }
						}
					]
				}
			)
		);
		expect(draftOf(method).warnings[0]?.measured).toBeCloseTo(840, 9);
	});

	it('count the other method’s measurements as needed', () => {
		const method = found('small-front', SMALL_BACK, smallFront('bust'));
		expect(method.measurements).toEqual(['bust', 'neck']);
	});

	it('a refused other method refuses this one, for the other’s reason', () => {
		const method = found('small-front', SMALL_BACK, smallFront('bust'));
		expect(evaluate(method, readBody({ ...FIGURE, neck: 19.6 }))).toEqual({
			kind: 'refused',
			refusals: [
				{
					name: 'tooNarrow',
					odds: ['neck', 'shoulderWidth'],
					because: 'too narrow',
					measured: expect.closeTo(49, 6) as number
				}
			]
		});
	});

	it('a refused back refuses the front', () => {
		const heron = DEMO_BODIES[0]?.body;
		if (!heron) throw new Error('Heron is gone');
		const body: Body = { ...heron, measurements: { ...heron.measurements, bust: mm(700) } };
		const [back, front] = [evaluate(backBlock(), body), evaluate(frontBlock(), body)];
		expect(back).toMatchObject({ kind: 'refused', refusals: [{ odds: ['bust', 'shoulderWidth'] }] });
		expect(front).toEqual(back);
	});
});

describe('names that are not there', () => {
	it('another line: the nearest is named', () => {
		expect(complaint('small-front', SMALL_BACK, smallFront('length(back.shuolder)'))).toBe(
			'small-front.yaml: step A: by: position 8 of "length(back.shuolder)": there is no line "back.shuolder" (did you mean "back.shoulder"?)'
		);
	});

	it('another short name: the nearest is named', () => {
		expect(complaint('small-front', SMALL_BACK, smallFront('length(bak.shoulder)'))).toContain(
			'there is no line "bak.shoulder" (did you mean "back.shoulder"?)'
		);
	});

	it('a line by its bare name is this method’s own', () => {
		expect(complaint('small-front', SMALL_BACK, smallFront('length(shoulder)'))).toContain(
			'there is no line "shoulder"'
		);
	});

	it('a point of another method is no line, and must be there', () => {
		expect(complaint('small-front', SMALL_BACK, smallFront('distance(O, back.Z9)'))).toContain(
			'there is no point "back.Z9"'
		);
		expect(complaint('small-front', SMALL_BACK, smallFront('length(back.S)'))).toContain(
			'there is no line "back.S"'
		);
	});

	it('a method that is not there', () => {
		expect(complaint('small-front', smallFront('bust'))).toContain(
			'small-front.yaml: uses.back: there is no method "small-back"'
		);
	});

	it.each(['length(back[0])', 'length(back.shoulder.more)', 'length(1)'])('%s is no name', (formula) => {
		expect(complaint('small-front', SMALL_BACK, smallFront(formula))).toContain(
			'distance() and length() take the names of points and lines, nothing else'
		);
	});
});

describe('methods that use each other', () => {
	const uses = (id: string, other: string): ParsedMethodFile => file(id, [], { uses: { back: other } });

	it('in a circle: it is shown, from where it begins', () => {
		const files = [uses('a', 'b'), uses('b', 'c'), uses('c', 'b')];
		expect(complaint('a', ...files)).toBe(
			'b.yaml: uses: these methods go round in a circle: b uses c uses b'
		);
		expect(complaint('c', ...files)).toBe(
			'c.yaml: uses: these methods go round in a circle: c uses b uses c'
		);
	});

	it('itself', () => {
		expect(complaint('a', uses('a', 'a'))).toBe('a.yaml: uses: these methods go round in a circle: a uses a');
	});

	it('one that two use is no circle', () => {
		const both = file('both', [], { uses: { one: 'one', two: 'two' } });
		const method = found('both', both, uses('one', 'small-back'), uses('two', 'small-back'), SMALL_BACK);
		expect(method.uses['one']?.uses['back']).toBe(method.uses['two']?.uses['back']);
	});
});

describe('words for another method’s lines', () => {
	const FRONT = frontBlock();
	const HERON = DEMO_BODIES[0]?.body ?? BODY;
	const draft = draftOf(FRONT, HERON);

	it('"the back’s shoulder", in the rule and in the worked number', () => {
		const said = explain(FRONT, 'S', HERON, draft, english);
		expect(said.rule).toBe(
			"N to S is the length of the back's shoulder, and S lies the front shoulder drop below the corner."
		);
		expect(said.worked).toBe(
			"Swing the length of the back's shoulder = 12.68 cm from N to the level 5 cm below the corner."
		);
	});

	it('what a step is given: lengths that are drawn, with their words', () => {
		const given = (step: string) =>
			givenLengths(FRONT, step, HERON, draft, english).map(({ noun, length }) => [
				the(noun),
				Number(length.toFixed(3))
			]);
		expect(given('S')).toEqual([["the back's shoulder", 126.807]]);
		expect(given('C')).toEqual([['O to N', 71.667]]);
		expect(given('E')).toEqual([['T to D1', 158.981]]);
		expect(given('A')).toEqual([]);
		expect(given('shoulder')).toEqual([]);
	});

	it('are measured on the points that are given: the learner’s own', () => {
		const points = { ...draft.points, N: { x: mm(80), y: mm(0) } };
		expect(givenLengths(FRONT, 'C', HERON, { ...draft, points }, english)).toEqual([
			{ noun: { name: 'O to N' }, length: 80 }
		]);
	});

	it('are the other method’s, whatever article their label has', () => {
		const method = found('small-front', SMALL_BACK, smallFront('length(back.armhole)'));
		expect(givenLengths(method, 'A', BODY, draftOf(method), english)).toEqual([
			{ noun: { article: 'the', name: "back's armhole" }, length: 120 }
		]);
	});

	it('of a choice are those of the formula that holds: what the other names may not be drafted', () => {
		const sleeved = lessonMethod('89-the-sleeved-bodice');
		const draft = draftOf(sleeved, HERON);
		const given = givenLengths(sleeved, 'V1', HERON, draft, english).map(({ noun, length }) => [
			noun.name,
			length
		]);
		expect(draft.lines['side']).toBeUndefined();
		expect(given.map(([, length]) => length)).toEqual(
			['backSide', 'sideAbove', 'sideBelow'].map((name) => draft.lines[name]?.length)
		);
	});

	it('once each, where a formula names a line twice', () => {
		const method = found(
			'small-front',
			SMALL_BACK,
			smallFront('length(back.armhole) + length(back.armhole)')
		);
		expect(givenLengths(method, 'A', BODY, draftOf(method), english)).toEqual([
			{ noun: { article: 'the', name: "back's armhole" }, length: 120 }
		]);
	});
});
