import { describe, expect, it } from 'vitest';
import { readBody } from '#shared/body.ts';
import type { Placement, Typed } from '#shared/placement.ts';
import { mm, type Unit } from '#shared/units.ts';
import { diagnose } from '#checker/missteps/diagnose.ts';
import { slip, type Diagnosis, type Misstep, type Slip } from '#checker/missteps/misstep.ts';
import { PRIORS } from '#checker/missteps/priors.ts';
import { diagnosisWords } from '#checker/missteps/words.ts';
import type { Drafted } from '#drafting/evaluate.ts';
import { at } from '#geometry/point.ts';
import { BODY, draftOf, FIGURE, mark, smallMethod } from '../../drafting/small-method.ts';
import { english, speechFor } from '../../support/speech.ts';
import { marked, ruled } from '../drafts.ts';
import { notesOf } from './notes.ts';

/** A lies 220 down; U 250 across from it; V a quarter of the waist 72 and 1, 190, across from W, 420 down. */
const METHOD = smallMethod([
	mark('A', 'O', 'down', 'shoulderWidth / 2 + armholeDrop'),
	mark('W', 'O', 'down', 'backLength'),
	mark('U', 'A', 'across', 'bust / 4 + bustEase / 4'),
	mark('V', 'W', 'across', 'waist / 4 + waistEase / 4'),
	{ kind: 'straight', name: 'side', label: 'the side seam', through: ['U', 'V'] },
	{ kind: 'level', name: 'waistLevel', label: 'the waist level', from: 'W', reach: 'waist / 4' },
	{ kind: 'along', name: 'D', label: 'the dart', on: { from: 'U', toward: 'V' }, by: 'dartBelow' }
]);
const DRAFT = draftOf(METHOD);

const told = (step: string, placement: Placement, drafted: Drafted = DRAFT, body = BODY): Diagnosis =>
	diagnose(METHOD, step, body, drafted, placement);
const notes = (step: string, across: number, down: number) => notesOf(told(step, marked(across, down)));

describe('the place alone', () => {
	it('exactly where one wrong rule leads: certain, with its words and its place', () => {
		const half = told('U', marked(490, 220));
		expect(half).toEqual({
			kind: 'certain',
			seen: 'place',
			misstep: {
				note: 'fraction:half-for-quarter',
				slips: [
					slip('fraction', { wrong: 'half', right: 'quarter', of: [{ kind: 'measurement', key: 'bust' }] })
				],
				place: at(490, 220),
				prior: expect.closeTo(PRIORS.fraction, 6) as number
			}
		});
		expect(diagnosisWords(half, english)).toBe(
			'It would lie there if you took half of the bust; the rule is a quarter.'
		);
	});

	it('a hand’s width beside it, still certain; a centimetre beside it, another or no guess', () => {
		for (const [across, down] of [
			[491.5, 221],
			[489, 218.5],
			[490, 222.5]
		] as const)
			expect(notes('U', across, down)).toEqual(['fraction:half-for-quarter']);
		expect(notes('U', 480, 220)[0]).toBe('fraction:half-for-quarter+allowance:left-out:bustEase');
		expect(notes('U', 490, 230)).toEqual([]);
	});

	it('a little beside it in both ways at once, no guess either', () => {
		expect(notes('U', 494, 224)).toEqual([]);
		expect(notes('U', 490, 225)).toEqual([]);
	});

	it('of two places with one note, the nearer one: a third of the bust and 1, a third of both', () => {
		for (const across of [330, 1000 / 3])
			expect(told('U', marked(across, 220))).toMatchObject({
				misstep: { note: 'fraction:third-for-quarter', place: { x: expect.closeTo(across, 9) as number } }
			});
	});

	it('where two lead: both, the commoner first', () => {
		// Half of the ease for a quarter, or a quarter twice: both are 1 cm too much.
		expect(notes('U', 260, 220)).toEqual(['fraction:half-for-quarter:bustEase', 'allowance:twice:bustEase']);
	});

	it('those that lead to one place alike are told together, three at most', () => {
		const helpers = (count: number) =>
			['B', 'C', 'D', 'E'].slice(0, count).map((name) => mark(name, 'O', 'across', 'hip'));
		const method = (count: number) => smallMethod([...helpers(count), mark('Z', 'O', 'down', 'backLength')]);
		const at1040 = (count: number) =>
			notesOf(diagnose(method(count), 'Z', BODY, draftOf(method(count)), marked(1040, 420)));
		for (const count of [3, 4])
			expect(at1040(count)).toEqual(['start:B-for-O', 'start:C-for-O', 'start:D-for-O']);
	});

	it('a pair of slips: the wrong share, and from a wrong point', () => {
		expect(notes('U', 490, 420)).toEqual(['fraction:half-for-quarter+start:W-for-A']);
		expect(diagnosisWords(told('U', marked(490, 420)), english)).toMatch(
			/^(Perhaps|It would lie there if) you took half of the bust and started from W\.$/
		);
	});

	it('one that is likely and not certain is said as such, in both languages', () => {
		const likely = told('A', marked(0, 215));
		expect(likely).toMatchObject({ kind: 'either', seen: 'place' });
		expect(diagnosisWords(likely, english)).toMatch(/^(Perhaps|It would lie there if) you /);
		expect(diagnosisWords(likely, speechFor('es'))).toMatch(/^(Quizá hayas|Estaría ahí si hubieras) /);
	});

	it('of two notes far from equally common only the common one', () => {
		// Left out, 190; two digits of the result swapped are nowhere near. 192 is still the left-out drop.
		expect(notes('A', 0, 191.5)).toEqual(['allowance:left-out:armholeDrop']);
	});

	it('the right place, and all within tolerance of it, is never diagnosed', () => {
		for (const [across, down] of [
			[0, 0],
			[2, 0],
			[0, -2],
			[-1.4, 1.4]
		] as const)
			expect(told('U', marked(250 + across, 220 + down))).toEqual({ kind: 'none' });
	});

	it('just beside the right place it is a careless hand and no wrong rule', () => {
		expect(told('U', marked(253.5, 220)).kind).not.toBe('certain');
		expect(notes('U', 250, 224)).toEqual([]);
		expect(notes('U', 252, 222)).toEqual([]);
	});

	it('far from everything, beside the sheet, there is no guess', () => {
		expect(notes('U', 123, 45)).toEqual([]);
		expect(notes('U', -4000, 4000)).toEqual([]);
	});
});

describe('from the learner’s own points', () => {
	it('is judged from where they stand', () => {
		const own: Drafted = { ...DRAFT, points: { ...DRAFT.points, A: at(0, 240) } };
		expect(notesOf(told('U', marked(490, 240), own))).toEqual(['fraction:half-for-quarter']);
		expect(notesOf(told('U', marked(250, 240), own))).toEqual([]);
		expect(notesOf(told('U', marked(490, 220), own))).toEqual([]);
	});

	it('from the true points as well, where both are known', () => {
		const own: Drafted = { ...DRAFT, points: { ...DRAFT.points, A: at(0, 240) } };
		const both = (down: number) => diagnose(METHOD, 'U', BODY, own, marked(490, down), DRAFT);
		for (const down of [240, 220]) expect(notesOf(both(down))[0]).toBe('fraction:half-for-quarter');
	});

	it('no guess where the step’s own start is not there, or the body lacks what the rule takes', () => {
		expect(told('U', marked(490, 220), { points: {}, lines: {} })).toEqual({ kind: 'none' });
		const { bust: _, ...rest } = FIGURE;
		expect(told('U', marked(490, 220), DRAFT, readBody(rest))).toEqual({ kind: 'none' });
	});

	it('a guess without what only other steps need', () => {
		const { O, A } = DRAFT.points;
		const { waist: _, hip: __, ...rest } = FIGURE;
		const some: Drafted = { points: { ...(O && { O }), ...(A && { A }) }, lines: {} };
		expect(
			notesOf(told('U', marked(490, 220), some, readBody({ ...rest, allowances: { bustEase: 4 } })))
		).toEqual(['fraction:half-for-quarter']);
	});

	it('a line for a point and a point for a line are no mistakes of a rule', () => {
		expect(told('U', ruled([0, 0], [10, 0]))).toEqual({ kind: 'none' });
		expect(told('side', marked(250, 220))).toEqual({ kind: 'none' });
	});
});

describe('a typed sum', () => {
	type Words = Omit<Extract<Typed, { form: 'distance' }>, 'form' | 'unit'>;
	const typed = (
		step: string,
		words: Words,
		place: readonly [number, number] = [777, 777],
		unit: Unit = 'cm'
	) => told(step, { kind: 'point', at: [...place], typed: { form: 'distance', unit, ...words } });
	const across = (sum: string, from = 'A', unit: Unit = 'cm') =>
		notesOf(typed('U', { sum, from, go: 'across' }, [777, 777], unit));

	it('is compared term by term, whatever its order', () => {
		for (const sum of ['96/2+1', '1+96/2', '96/2+4/4', '48+1', '0.5*96+1'])
			expect(across(sum), sum).toEqual(['fraction:half-for-quarter']);
		for (const sum of ['(96+4)/2', '100/2', '48+2', '96/2+4/2'])
			expect(across(sum), sum).toEqual(['fraction:half-for-quarter']);
	});

	it('tells apart what a place cannot', () => {
		expect(across('96/4+4/2')).toEqual(['fraction:half-for-quarter:bustEase']);
		expect(across('96/4+4/4+4/4')).toEqual(['allowance:twice:bustEase']);
		expect(across('24+2')).toHaveLength(2);
		expect(across('26')).toHaveLength(2);
	});

	it('in inches too: half of 37 13/16 and 3/8', () => {
		expect(across('37 13/16 / 2 + 3/8', 'A', 'in')).toEqual(['fraction:half-for-quarter']);
		// The right number of centimetres, typed as inches.
		expect(across('96/4+1', 'A', 'in')).toEqual(['unit:inches-for-centimetres']);
	});

	it('another start and another way are seen as they were typed', () => {
		expect(across('96/4+1', 'O')).toEqual(['start:O-for-A']);
		const way = (go: Words['go']) => notesOf(typed('U', { sum: '25', from: 'A', go }));
		expect([way('in'), way('down'), way('up')]).toEqual([
			['direction:opposite'],
			['direction:crossed'],
			['direction:crossed']
		]);
	});

	it('two slips at once are told together, as a rarer misstep', () => {
		const both = typed('U', { sum: '96/2+1', from: 'W', go: 'across' });
		expect(both).toMatchObject({
			kind: 'certain',
			misstep: {
				note: 'fraction:half-for-quarter+start:W-for-A',
				place: { x: 490, y: 420 }
			}
		});
		expect(diagnosisWords(both, english)).toBe(
			'You took half of the bust; the rule is a quarter. You started from W; the rule starts from A.'
		);
		const single = typed('U', { sum: '96/2+1', from: 'A', go: 'across' });
		const prior = (diagnosis: Diagnosis) => (diagnosis.kind === 'certain' ? diagnosis.misstep.prior : 1);
		expect(prior(both)).toBeLessThan(prior(single) / 10);
	});

	it('the rule of another step is that step’s point', () => {
		expect(notesOf(typed('U', { sum: '72/4+1', from: 'W', go: 'across' }))).toEqual(['point:V-for-U']);
	});

	it('a sum that comes to a wrong rule’s number is that rule; one that comes to no rule’s is none, though its place is near one', () => {
		const sum = (text: string) => notesOf(typed('U', { sum: text, from: 'A', go: 'across' }, [492, 220]));
		expect(sum('40+9')).toEqual(['fraction:half-for-quarter']);
		expect(sum('40+9.2')).toEqual([]);
		expect(notes('U', 492, 220)).toEqual(['fraction:half-for-quarter']);
	});

	it('a bare number beside every rule, and a sum that cannot be read, leave it to the place', () => {
		for (const sum of ['49.2', 'half of 98', '96/0'])
			expect(notesOf(typed('U', { sum, from: 'A', go: 'across' }, [491, 220])), sum).toEqual([
				'fraction:half-for-quarter'
			]);
	});

	it('what was typed by the rule is left to the place: the start stood wrong', () => {
		expect(notesOf(typed('U', { sum: '96/4+1', from: 'A', go: 'across' }, [250, 420]))).toEqual([
			'start:W-for-A'
		]);
	});

	it('a wrong rule that came out right is right', () => {
		const round = readBody({ ...FIGURE, waist: 96.4, allowances: { bustEase: 4 } });
		const waist: Words = { sum: '96.4/4+1', from: 'A', go: 'across' };
		const placement: Placement = {
			kind: 'point',
			at: [251, 220],
			typed: { form: 'distance', unit: 'cm', ...waist }
		};
		expect(told('U', placement, DRAFT, round)).toEqual({ kind: 'none' });
	});

	it('straight down, where the rule goes along a slope', () => {
		expect(notesOf(typed('D', { sum: '6', from: 'U', go: 'down' }, [250, 280]))).toEqual(['slope']);
	});

	it('coordinates tell a place and nothing else', () => {
		const placement: Placement = {
			kind: 'point',
			at: [490, 220],
			typed: { form: 'coordinates', across: '49', down: '22', unit: 'cm' }
		};
		expect(notesOf(told('U', placement))).toEqual(['fraction:half-for-quarter']);
	});
});

describe('a ruled line', () => {
	it('from or to another point, its other end right', () => {
		expect(notesOf(told('side', ruled([250, 220], [0, 420])))).toEqual(['ends:W-for-V']);
		expect(notesOf(told('side', ruled([0, 420], [250, 220])))).toEqual(['ends:W-for-V']);
		expect(notesOf(told('side', ruled([0, 220], [190, 420])))).toEqual(['ends:A-for-U']);
		const [misstep] = [told('side', ruled([0, 220], [190, 420]))];
		expect(diagnosisWords(misstep, english)).toBe('You ruled the line from A; the rule has U there.');
	});

	it('a level of the wrong length, as a point so far across would be', () => {
		const half = told('waistLevel', ruled([0, 420], [360, 420]));
		expect(notesOf(half)).toEqual(['fraction:half-for-quarter']);
		expect(diagnosisWords(half, english)).toBe(
			'It would lie there if you took half of the waist; the rule is a quarter.'
		);
	});

	it('a level at another point, as long as one likes', () => {
		expect(notesOf(told('waistLevel', ruled([0, 220], [300, 220])))).toEqual(['ends:A-for-W']);
	});

	it('no guess for a right one, for two wrong ends, or for an end at no point; a length by another step’s rule', () => {
		expect(notesOf(told('side', ruled([250, 220], [190, 420])))).toEqual([]);
		expect(notesOf(told('side', ruled([0, 220], [0, 420])))).toEqual([]);
		expect(notesOf(told('side', ruled([250, 220], [150, 420])))).toEqual([]);
		expect(notesOf(told('waistLevel', ruled([0, 420], [190, 420])))[0]).toBe('rule:V-for-waistLevel');
		expect(notesOf(told('waistLevel', ruled([0, 420], [190, 440])))).toEqual([]);
	});
});

describe('words', () => {
	const misstep = (what: Slip): Misstep => ({ note: 'x', slips: [what], place: at(0, 0), prior: mm(1) });
	const [bust, ease] = [
		{ kind: 'measurement', key: 'bust' },
		{ kind: 'allowance', key: 'bustEase' }
	] as const;
	const one = misstep(slip('fraction', { wrong: 'half', right: 'quarter', of: [bust] }));
	const two = misstep(slip('leftOut', { what: ease }));
	const three = misstep(slip('start', { wrong: 'N', right: 'O' }));

	it('nothing for none, the misstep’s own for one', () => {
		expect(diagnosisWords({ kind: 'none' }, english)).toBe('');
		expect(diagnosisWords({ kind: 'certain', misstep: one }, english)).toBe(
			'You took half of the bust; the rule is a quarter.'
		);
	});

	it('what was done, for two and for three', () => {
		expect(diagnosisWords({ kind: 'either', missteps: [one, two] }, english)).toBe(
			'Either you took half of the bust, or you left out the bust ease.'
		);
		expect(diagnosisWords({ kind: 'either', missteps: [one, two, three] }, english)).toBe(
			'Either you took half of the bust, or you left out the bust ease, or you started from N.'
		);
	});

	it('where only its place speaks for it, what would lead there', () => {
		const seen = 'place';
		expect(diagnosisWords({ kind: 'either', missteps: [one, two], seen }, english)).toBe(
			'It would lie there if you took half of the bust, or if you left out the bust ease.'
		);
		const both: Misstep = { ...one, slips: [...one.slips, ...three.slips] };
		expect(diagnosisWords({ kind: 'certain', misstep: both, seen }, english)).toBe(
			'It would lie there if you took half of the bust and started from N.'
		);
		expect(diagnosisWords({ kind: 'certain', misstep: one, seen }, speechFor('es'))).toBe(
			'Estaría ahí si hubieras tomado la mitad del contorno de busto; la regla es la cuarta parte.'
		);
	});

	it('in Spanish, each with its own clauses', () => {
		const said = (diagnosis: Diagnosis) => diagnosisWords(diagnosis, speechFor('es'));
		expect(said({ kind: 'certain', misstep: one })).toBe(
			'Has tomado la mitad del contorno de busto; la regla es la cuarta parte.'
		);
		expect(said({ kind: 'certain', misstep: misstep(slip('takenOff', { what: ease })) })).toBe(
			'Has restado la holgura de busto; la regla la suma.'
		);
		expect(said({ kind: 'either', missteps: [one, two, three] })).toBe(
			'O bien has tomado la mitad del contorno de busto, o bien has olvidado la holgura de busto, o bien has empezado en N.'
		);
	});
});
