import { describe, expect, it } from 'vitest';
import { BadInput, ruleWords } from '#shared/bad-input.ts';
import { mm } from '#shared/units.ts';
import type { Pattern } from '#garment/pattern.ts';
import type { PieceEdge } from '#garment/piece.ts';
import type { Learner } from '#ui/keeping/learner.svelte.ts';
import { allowanceGroups } from '#ui/pages/pattern/allowance-groups.ts';
import { Making } from '#ui/garments/making.svelte.ts';
import { writtenLength } from '#ui/pages/pattern/written-length.ts';
import { english } from '../support/speech.ts';
import { garmentOf } from '../garment/garment-files.ts';
import { arrive } from './desk.ts';
import { freshStores } from './memory-store.ts';

freshStores();

const DRESS = garmentOf('course-dress');
const making = (learner: Learner = arrive()): Making => {
	const made = new Making(DRESS, learner);
	made.load();
	return made;
};
/** What is said of bad input at its field. */
const problemOf = (act: () => void): string => {
	try {
		act();
	} catch (error) {
		if (error instanceof BadInput) return ruleWords(error, english);
		throw error;
	}
	throw new Error('nothing was wrong with it');
};
const edge = (pattern: Pattern | undefined, piece: string, name: string): PieceEdge | undefined =>
	pattern?.pieces.find(({ key }) => key === piece)?.edges.find((each) => each.name === name);

describe('making a garment', () => {
	it('stands with all its pieces for the first demo body, and nothing chosen', () => {
		const { standing } = making();
		expect(standing.kind).toBe('made');
		if (standing.kind === 'made') expect(standing.pattern.pieces).toHaveLength(8);
	});

	it('follows an allowance, keeps it for this body alone, and goes back to the usual', () => {
		const learner = arrive();
		const made = making(learner);
		expect(edge(made.pattern, 'skirt', 'centre')?.length).toBeCloseTo(640, 6);
		made.typeAllowance('skirtLength', '70,5');
		expect(edge(made.pattern, 'skirt', 'centre')?.length).toBeCloseTo(705, 6);
		expect(edge(making().pattern, 'skirt', 'centre')?.length, 'after a reload').toBeCloseTo(705, 6);
		learner.change({ body: 'wren' });
		made.load();
		expect(made.choices.allowances).toEqual({});
		learner.change({ body: 'heron' });
		made.load();
		made.reset('allowances', (key) => key === 'skirtLength');
		expect(edge(made.pattern, 'skirt', 'centre')?.length).toBeCloseTo(640, 6);
	});

	it('takes changes back, the last first; all that a slider was moved is one', () => {
		const made = making();
		expect(made.undoable).toBe(false);
		for (const length of [650, 660, 700]) made.choose('allowances', 'skirtLength', mm(length));
		made.typeAllowance('flare', '9');
		made.reset('allowances', () => true);
		expect(made.choices.allowances).toEqual({});
		made.undo();
		expect(made.choices.allowances).toEqual({ skirtLength: 700, flare: 90 });
		made.undo();
		expect(made.choices.allowances).toEqual({ skirtLength: 700 });
		made.undo();
		expect(made.choices.allowances).toEqual({});
		expect(making().choices.allowances, 'after a reload').toEqual({});
		expect(made.undoable).toBe(false);
		made.undo();
		expect(made.choices.allowances).toEqual({});
	});

	it('reads a typed number in the unit of the page', () => {
		const learner = arrive();
		learner.change({ unit: 'in' });
		const made = making(learner);
		made.typeAllowance('skirtLength', '25 1/2');
		expect(made.choices.allowances['skirtLength']).toBeCloseTo(25.5 * 25.4, 9);
	});

	it.each([
		['lots', /not a length/],
		['300', /must lie from 30 cm to 120 cm, not 300 cm/]
	])('an allowance of "%s" is answered in a sentence, and the last pattern stays', (text, words) => {
		const made = making();
		made.typeAllowance('skirtLength', '70');
		expect(problemOf(() => made.typeAllowance('skirtLength', text))).toMatch(words);
		expect(made.choices.allowances).toEqual({ skirtLength: 700 });
		expect(edge(made.pattern, 'skirt', 'centre')?.length).toBeCloseTo(700, 6);
	});

	it('gives one edge an allowance of its own, and no other', () => {
		const made = making();
		made.typeEdge('front.side', '2.5');
		expect(edge(made.pattern, 'front', 'side')?.allowance).toBe(25);
		expect(edge(made.pattern, 'back', 'side')?.allowance).toBe(10);
		expect(problemOf(() => made.typeEdge('front.side', '11'))).toMatch(
			/must lie from 0 cm to 10 cm, not 11 cm/
		);
		made.typeEdge('front.side', '');
		expect(edge(made.pattern, 'front', 'side')?.allowance).toBe(10);
	});

	it('a copy of an invented body has its numbers and choices, and can be changed', () => {
		const learner = arrive();
		const made = making(learner);
		made.typeAllowance('skirtLength', '70');
		const heron = made.body.measurements;
		made.copyBody('My Heron');
		made.load();
		expect(learner.current).toMatchObject({ own: true, body: { name: 'My Heron' } });
		expect(made.body.measurements).toEqual(heron);
		expect(made.choices.allowances).toEqual({ skirtLength: 700 });
		made.measure('bust', '100');
		expect(made.body.measurements.bust).toBe(1000);
		expect(problemOf(() => made.measure('bust', 'wide'))).toMatch(/not a length/);
		expect(made.body.measurements.bust).toBe(1000);
	});

	it('names what is missing of a new body, and what a body is refused for', () => {
		const made = making();
		made.newBody();
		made.load();
		expect(made.standing).toEqual({ kind: 'missing', missing: DRESS.measurements });
		const copied = making();
		copied.learner.change({ body: 'heron' });
		copied.copyBody('My Heron');
		copied.measure('backLength', '20');
		expect(copied.standing.kind).toBe('refused');
		expect(copied.pattern).toBeUndefined();
	});
});

describe('the allowances of a garment', () => {
	const groups = allowanceGroups(DRESS);
	const keysOf = (title: string): readonly string[] =>
		groups
			.find(({ group }) => english.words.pattern.group({ group }) === title)
			?.allowances.map(({ key }) => key) ?? [];

	it('stand under what they are for, each once', () => {
		expect(groups.map(english.words.pattern.group)).toEqual(['Design', 'Ease', 'Cutting']);
		expect(keysOf('Design')).toEqual(expect.arrayContaining(['skirtLength', 'elasticShort', 'bandWidth']));
		expect(keysOf('Ease')).toEqual(expect.arrayContaining(['bustEase', 'armholeDrop']));
		expect(keysOf('Cutting')).toEqual(['seamAllowance', 'hemAllowance']);
		const all = groups.flatMap(({ allowances }) => allowances);
		expect(new Set(all).size).toBe(all.length);
	});

	it('leave out what changes nothing: a circle skirt has no bust ease', () => {
		const circle = allowanceGroups(garmentOf('circle-skirt')).flatMap(({ allowances }) =>
			allowances.map(({ key }) => key)
		);
		expect(circle).toContain('bandEase');
		expect(circle).toContain('fullness');
		expect(circle).not.toContain('bustEase');
	});
});

describe('a length in a field', () => {
	it.each([
		[mm(640), 'cm', '64'],
		[mm(6.35), 'cm', '0.635'],
		[mm(25.4), 'in', '1'],
		[mm(25.4 / 32), 'in', '1/32'],
		[mm(0), 'in', '0']
	] as const)('%s mm is written in %s as %s', (length, unit, text) => {
		expect(writtenLength(length, english.inUnit(unit))).toBe(text);
	});
});
