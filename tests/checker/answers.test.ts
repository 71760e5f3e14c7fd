import { describe, expect, it } from 'vitest';
import { BadInput } from '#shared/bad-input.ts';
import { message } from '#shared/speech/message.ts';
import { check } from '#checker/check.ts';
import { english } from '../support/speech.ts';
import { answerOf, HERON_BACK, marked, ruled, verdictOn } from './drafts.ts';

const because = (step: string, placement: unknown): string => {
	const verdict = verdictOn(HERON_BACK, step, placement);
	if (!('because' in verdict)) throw new Error(`the answer is ${verdict.answer}`);
	return `${verdict.answer}: ${english.tell(verdict.because)}`;
};

const fault = (words: string) => message('verdicts', 'fault', { words });

describe('unfinished', () => {
	it.each([undefined, null])('%s is nothing placed yet', (nothing) => {
		expect(verdictOn(HERON_BACK, 'A', nothing)).toEqual({ answer: 'unfinished' });
	});
});

describe('not a valid entry', () => {
	it.each([
		['a number that is none', { kind: 'point', at: [NaN, 222] }],
		['a place without end', { kind: 'point', at: [0, Infinity] }],
		['minus infinity', { kind: 'point', at: [-Infinity, 0] }],
		['a place off the sheet', { kind: 'point', at: [0, 5000.001] }],
		['a place off the other edge', { kind: 'point', at: [-5001, 0] }],
		['text for numbers', { kind: 'point', at: ['0', '222'] }],
		['three coordinates', { kind: 'point', at: [0, 222, 0] }],
		['one coordinate', { kind: 'point', at: [0] }],
		['no place', { kind: 'point' }],
		['a kind that is none', { kind: 'circle', at: [0, 222] }],
		['no kind', { at: [0, 222] }],
		['a word more than a placement has', { kind: 'point', at: [0, 222], right: true }],
		['a line of no pieces', { kind: 'line', segments: [] }],
		['a line of too many pieces', ruledPieces(21)],
		['a piece with one handle', { kind: 'line', segments: [{ from: [0, 0], to: [9, 9], leaving: [1, 1] }] }],
		['an empty object', {}],
		['an array', [0, 222]],
		['a text', 'A'],
		['a number', 222],
		['true', true],
		['a function', () => [0, 222]],
		['a symbol', Symbol('A')],
		['a date', new Date(0)],
		['a typed entry with a direction that is none', typedEntry({ go: 'left' })],
		['a typed entry too long to be one', typedEntry({ sum: '1+'.repeat(60) })]
	])('%s', (_, junk) => {
		expect(because('A', junk)).toMatch(/^not-valid: this is not a placement: \S/);
	});

	it('at the very edge of the sheet a place is still one', () => {
		expect(verdictOn(HERON_BACK, 'A', marked(5000, -5000)).answer).toBe('wrong');
	});

	it('says where in the entry the trouble lies', () => {
		expect(because('A', { kind: 'point', at: [0, 6000] })).toContain('this is not a placement: at.1: ');
	});

	it('a line where a point is asked, and a point where a line is', () => {
		expect(because('A', ruled([0, 0], [0, 222]))).toBe(
			'not-valid: this step asks for a point, and a line was drawn'
		);
		expect(because('shoulder', marked(0, 222))).toBe(
			'not-valid: this step asks for a line, and a point was placed'
		);
		expect(because('armholeLevel', marked(0, 222))).toContain('asks for a line');
		expect(because('neck', marked(0, 222))).toContain('asks for a line');
	});

	it.each(['shoulder', 'armholeLevel', 'neck', 'centre'])('%s drawn with no length', (step) => {
		const nowhere = 'not-valid: the line begins and ends at the same place';
		expect(because(step, ruled([10, 20], [10, 20]))).toBe(nowhere);
		expect(because(step, ruled([10, 20], [10, 20], [10, 20]))).toBe(nowhere);
		const place = [10, 20];
		const curve = { from: place, leaving: place, arriving: place, to: place };
		expect(because(step, { kind: 'line', segments: [curve] })).toBe(nowhere);
	});

	it('pieces that do not join: a line with a gap in it is no line', () => {
		const line = (...pieces: readonly (readonly [number, number])[]): unknown => ({
			kind: 'line',
			segments: pieces.flatMap(([from, to]) => ruled([0, from], [0, to]).segments)
		});
		expect(verdictOn(HERON_BACK, 'centre', line([25, 345], [345, 630])).answer).toBe('right');
		expect(because('centre', line([25, 345], [346, 630]))).toBe(
			'not-valid: the pieces of the line do not join'
		);
		// 322.5 and 275 and 7.5 make 605 mm, as long as the true line, and its ends are the true ones.
		expect(because('centre', line([25, 347.5], [25, 300], [622.5, 630]))).toBe(
			'not-valid: the pieces of the line do not join'
		);
	});
});

describe('our fault', () => {
	it('the draft lacks the step that the method has', () => {
		const { method, draft } = HERON_BACK;
		const { A: _, ...points } = draft.points;
		expect(check(method, 'A', { ...draft, points }, marked(0, 222))).toEqual({
			answer: 'our-fault',
			because: fault('the draft has neither a point nor a line "A"')
		});
		const { neck: __, ...lines } = draft.lines;
		expect(check(method, 'neck', { ...draft, lines }, ruled([0, 25], [72, 0])).answer).toBe('our-fault');
	});

	it('the method lacks the step', () => {
		expect(verdictOn(HERON_BACK, 'Z', marked(0, 0))).toEqual({
			answer: 'our-fault',
			because: fault('the method back-block has no step "Z"')
		});
	});

	it('an entry that cannot even be looked at throws nothing', () => {
		const trap = {
			get kind(): string {
				throw new Error('do not look');
			}
		};
		expect(verdictOn(HERON_BACK, 'A', trap)).toEqual({ answer: 'our-fault', because: fault('do not look') });
		const mean = {
			get kind(): string {
				throw new BadInput('kind', message('shapes', 'invalid'));
			}
		};
		expect(verdictOn(HERON_BACK, 'A', mean).answer).toBe('not-valid');
	});

	it('nothing placed is unfinished even where the program is at fault', () => {
		expect(verdictOn(HERON_BACK, 'Z', undefined).answer).toBe('unfinished');
	});
});

describe('right', () => {
	it('for each kind of step: corner, mark, meeting, division, level, straight, curve', () => {
		for (const step of ['O', 'A', 'Q', 'P', 'hipLevel', 'side', 'armhole'])
			expect(verdictOn(HERON_BACK, step, answerOf(HERON_BACK, step)).answer, step).toBe('right');
	});

	it('what was typed is kept beside the place and does not change the answer', () => {
		const typed = { form: 'distance', sum: '38.4/2+3', from: 'O', go: 'down', unit: 'cm' };
		expect(verdictOn(HERON_BACK, 'A', { kind: 'point', at: [0, 222], typed }).answer).toBe('right');
	});

	it('checking changes nothing of what was placed', () => {
		const placement = answerOf(HERON_BACK, 'armhole');
		const before = structuredClone(placement);
		verdictOn(HERON_BACK, 'armhole', placement);
		expect(placement).toEqual(before);
	});
});

function ruledPieces(count: number): unknown {
	const segments = Array.from({ length: count }, (_, i) => ({ from: [i, 0], to: [i + 1, 0] }));
	return { kind: 'line', segments };
}

function typedEntry(change: Readonly<Record<string, unknown>>): unknown {
	const typed = { form: 'distance', sum: '22.2', from: 'O', go: 'down', unit: 'cm', ...change };
	return { kind: 'point', at: [0, 222], typed };
}
