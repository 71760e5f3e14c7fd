import { judged } from '#checker/work.ts';
import { english } from '../support/speech.ts';
import { describe, expect, it } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import type { Placement } from '#shared/placement.ts';
import { draftOf } from '../drafting/small-method.ts';
import { lessonMethods } from '../lessons/lesson-files.ts';
import {
	askedOf,
	drawnBackwards,
	judgedOnPaper,
	judgedOnScreen,
	mistakesIn,
	onPaper,
	type Sheet,
	type Slip
} from './one-slip.ts';

const METHODS = lessonMethods();
/** With a bust dart, without one, and a third to be sure. */
const BODIES = ['heron', 'siskin', 'wren'];
/** Three times what is allowed, each way. */
const WAYS = [
	[6, 0],
	[0, 6],
	[-6, 0],
	[0, -6]
] as const;

const sheetOf = (id: string, body: string): Sheet => {
	const [method, demo] = [METHODS.get(id), DEMO_BODIES.find((each) => each.id === body)];
	if (!method || !demo) throw new Error(`there is no ${id} of ${body}`);
	return { method, body: demo.body, truth: draftOf(method, demo.body) };
};

/** Every step slipped once for each body, each body and step in its turn another way. */
const slipsOf = (sheet: Sheet, turn: number): readonly Slip[] =>
	askedOf(sheet).map(({ name }, i) => {
		const [across, down] = WAYS[(i + turn) % WAYS.length] ?? WAYS[0];
		return { step: name, across, down };
	});

const withoutLines = ({ truth }: Sheet, placements: Readonly<Record<string, Placement>>) =>
	Object.fromEntries(Object.entries(placements).filter(([name]) => name in truth.points));

/** How many slips, and for how many of them exactly the slip is wrong and nothing else: with lines, with points alone. */
const counted = (id: string) => {
	const slips = BODIES.flatMap((body, turn) => {
		const sheet = sheetOf(id, body);
		return slipsOf(sheet, turn).map((slip) => ({ sheet, slip, placements: onPaper(sheet, slip) }));
	});
	const ofPoints = slips.filter(({ sheet, slip }) => slip.step in sheet.truth.points);
	const isOne = (wrong: readonly string[], slip: Slip): boolean => wrong.join() === slip.step;
	const one = slips.filter(({ sheet, slip, placements }) =>
		isOne(mistakesIn(judgedOnPaper(sheet, placements)), slip)
	);
	const oneOfPoints = ofPoints.filter(({ sheet, slip, placements }) =>
		isOne(mistakesIn(judgedOnPaper(sheet, withoutLines(sheet, placements))), slip)
	);
	const first = slips.filter(({ sheet }) => sheet.body.name === 'Heron');
	const onScreen = first.filter(({ sheet, slip }) => isOne(mistakesIn(judgedOnScreen(sheet, slip)), slip));
	return [slips.length, one.length, ofPoints.length, oneOfPoints.length, first.length, onScreen.length];
};

describe('one slip of 6 mm, and everything after it drawn truly from the learner’s own marks, is one mistake', () => {
	it('for every method', () => {
		expect([...METHODS.keys()].sort()).toEqual(TABLE.map(([id]) => id).sort());
	});

	// Slips of all steps, with the lines handed in | slips of points, with points alone | slips on the screen, of one body.
	const TABLE = [
		['first-marks', 21, 12, 7],
		['back-block', 90, 60, 30],
		['front-block', 119, 83, 44],
		['dress-back-top', 33, 24, 11],
		['dress-front', 106, 76, 37],
		['dress-back', 27, 18, 9],
		['dress-facing', 12, 9, 4],
		['dress-skirt', 33, 21, 11],
		['dress-casing', 9, 9, 3],
		['dress-binding', 9, 9, 3],
		['straight-skirt-front', 45, 33, 15],
		['straight-skirt-back', 45, 33, 15],
		['waistband', 9, 9, 3],
		['circle-skirt', 9, 9, 3],
		['sleeved-bodice', 21, 9, 7],
		['set-in-sleeve', 69, 60, 23]
	] as const;

	it.each(TABLE)('%s: %i slips, %i of points, %i on the screen', (id, all, points, screen) => {
		expect(counted(id)).toEqual([all, all, points, points, screen, screen]);
	});
});

describe('a slip so great that a later step cannot follow it', () => {
	// The armhole corner Q, below K, comes to lie beyond the underarm: a body with such a back would be refused.
	const sheet = sheetOf('back-block', 'heron');
	const far = { step: 'K', across: 60, down: 0 };

	it('costs nothing more where the draft is tangled: K is to be put right first', () => {
		const found = judgedOnPaper(sheet, onPaper(sheet, far));
		expect(mistakesIn(found)).toEqual(['K']);
		const verdict = found.verdict('Q');
		expect(verdict.answer === 'excused' && english.tell(verdict.because)).toBe(
			'Put K right first: as it is, this cannot be drawn.'
		);
		for (const name of ['S', 'P', 'M']) expect(found.verdicts[name]?.followThrough, name).toBe(true);
	});

	it('costs nothing more where the learner stops at the tangle', () => {
		const { Q: _, P: __, M: ___, armhole: ____, ...rest } = onPaper(sheet, far);
		const found = judgedOnPaper(sheet, rest);
		expect(mistakesIn(found)).toEqual(['K']);
		expect(found.stuck).toContain('Q');
	});

	it('costs nothing more where the steps after it have no place at all, and are left out', () => {
		// With the side 6 cm in there is too little to take in, so that the first two darts have no legs.
		const skirt = sheetOf('straight-skirt-front', 'heron');
		const placements = onPaper(skirt, { step: 'B', across: -60, down: 0 });
		expect(placements).not.toHaveProperty('D1');
		const found = judgedOnPaper(skirt, placements);
		expect(mistakesIn(found)).toEqual(['B']);
		expect(found.stuck).toEqual(expect.arrayContaining(['D1', 'D2']));
	});
});

describe('a slip in a draft that another leans on', () => {
	const [back, front] = [sheetOf('back-block', 'heron'), sheetOf('front-block', 'heron')];
	const { own, moved, errors } = judgedOnPaper(back, onPaper(back, { step: 'S', across: 0, down: 20 }));
	const placements = onPaper({ ...front, truth: { ...front.truth, uses: { back: own } } });
	const entries = Object.fromEntries(
		Object.entries(placements).map(([name, placement]) => [name, { placement, checked: true, kept: true }])
	);

	it('is followed into it: what is as long as the back’s shoulder may be as long as the learner’s own', () => {
		const found = judged({ ...front, entries, marks: 'pencilled', uses: { back: { own, moved, errors } } });
		expect(mistakesIn(found)).toEqual([]);
		expect(found.moved.get('S')).toEqual([{ noun: { name: 'S' }, of: { name: 'back', article: 'the' } }]);
	});

	it('and is a second mistake where the back was not handed in', () => {
		expect(mistakesIn(judged({ ...front, entries, marks: 'pencilled' }))).not.toEqual([]);
	});
});

describe('what was not handed in is taken to follow from what was', () => {
	const sheet = sheetOf('back-block', 'heron');
	const low = onPaper(sheet, { step: 'A', across: 0, down: 6 });

	it('a point far down the chain, with none of those between', () => {
		const { A, M } = low;
		const found = judgedOnPaper(sheet, { A, M });
		expect(mistakesIn(found)).toEqual(['A']);
		expect(found.verdicts['M']?.followThrough).toBe(true);
		expect(found.own.points['Q']).toEqual({ x: 192, y: 228 });
	});

	it('an entry that cannot be used is as one that was not handed in', () => {
		const found = judgedOnPaper(sheet, { ...low, Q: { kind: 'point', at: ['192', 228] } });
		expect(found.verdict('Q').answer).toBe('not-valid');
		expect(mistakesIn(found)).toEqual(['A']);
		expect(found.own.points['Q']).toEqual({ x: 192, y: 228 });
	});

	it('a line may be drawn from its end to its start: what is measured along it is the same', () => {
		for (const id of ['dress-back-top', 'dress-skirt', 'set-in-sleeve']) {
			const other = sheetOf(id, 'heron');
			for (const slip of slipsOf(other, 0)) {
				const placements: readonly (readonly [string, Placement])[] = Object.entries(onPaper(other, slip));
				const backwards = placements.map(([name, each]) => [name, drawnBackwards(each)] as const);
				expect(mistakesIn(judgedOnPaper(other, Object.fromEntries(backwards))), id).toEqual([slip.step]);
			}
		}
	});
});
