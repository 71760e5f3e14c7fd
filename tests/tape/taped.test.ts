import { describe, expect, it } from 'vitest';
import { mm } from '#shared/units.ts';
import { tapedBy } from '#tape/by-tape.ts';
import { checkSubmission } from '#checker/check-submission.ts';
import { at, distance } from '#geometry/point.ts';
import { draftOf } from '../drafting/small-method.ts';
import { lessonMethod } from '../drafting/lesson-method.ts';
import { drawnBy, HERON, normalBy, paperOf, placeOf, readingsOf, strays, taped } from './taped.ts';

const BACK = lessonMethod('40-back-levels');
const back = paperOf(BACK);
const share = <T>(all: readonly T[], is: (each: T) => boolean): number => all.filter(is).length / all.length;

describe('a back block by tape', () => {
	it('is found within 2 mm, 95 of 100 points, where each reading is off by up to 1 mm', () => {
		const draw = drawnBy(11);
		const all = Array.from({ length: 25 }, () =>
			strays(
				back,
				taped(
					back,
					readingsOf(back, () => 2 * draw() - 1)
				)
			)
		).flat();
		expect(all).toHaveLength(25 * 20);
		expect(share(all, ([off]) => off <= 2)).toBeGreaterThanOrEqual(0.95);
	});

	it('has circles that hold 95 of 100 points where readings stray by a standard deviation of 1 mm', () => {
		const noise = normalBy(3);
		const all = Array.from({ length: 25 }, () => strays(back, taped(back, readingsOf(back, noise)))).flat();
		expect(share(all, ([off, error]) => off <= error)).toBeGreaterThanOrEqual(0.95);
	});

	it('never doubts a reading where none was misread', () => {
		const noise = normalBy(8);
		const doubts = Array.from({ length: 25 }, () => taped(back, readingsOf(back, noise)).disagreeing.length);
		expect(share(doubts, (count) => count > 0)).toBeLessThanOrEqual(0.04);
	});

	it('names a reading that is 10 cm off: alone, or as one of at most three', () => {
		const noise = normalBy(21);
		let [alone, tried] = [0, 0];
		for (const [i, { from, to }] of back.plan.takings.entries()) {
			if (i % 3 > 0) continue;
			tried++;
			const read = [...readingsOf(back, noise)];
			read[i] = mm((read[i] ?? 0) + (i % 2 === 0 || (read[i] ?? 0) < 150 ? 100 : -100));
			const [first] = taped(back, read).disagreeing;
			const named = first?.of.map((each) => `${each.from} ${each.to}`) ?? [];
			expect(named, `${from} ${to}`).toContain(`${from} ${to}`);
			expect(named.length).toBeLessThanOrEqual(3);
			if (named.length === 1) alone++;
		}
		expect(alone / tried).toBeGreaterThan(0.8);
	});

	it('takes no reading for wrong that was read twice alike', () => {
		const read = [...readingsOf(back)];
		read[20] = mm((read[20] ?? 0) + 100);
		const twice = read.map((length, i) => ({ length, times: i === 20 ? 2 : 1 }));
		const { disagreeing, perhaps } = tapedBy(back.plan, twice, back.given, 'tape');
		const named = [...disagreeing, ...(perhaps ? [perhaps] : [])].flatMap(({ of }) => of);
		const right = back.plan.takings[20];
		expect(named.some(({ from, to }) => from === right?.from && to === right.to)).toBe(false);
	});

	it('does not count a reading that disagrees: the points lie where the others put them', () => {
		const read = [...readingsOf(back)];
		read[20] = mm((read[20] ?? 0) + 100);
		const found = taped(back, read);
		expect(found.disagreeing).toHaveLength(1);
		for (const [off] of strays(back, found)) expect(off).toBeLessThan(0.5);
	});

	it('says how well the readings agree, and takes a larger error where they agree badly', () => {
		const [fine, poor] = [1, 6].map((times) => {
			const noise = normalBy(4);
			return taped(
				back,
				readingsOf(back, () => times * noise())
			);
		});
		expect(fine?.worse).toBeLessThan(1.6);
		expect(poor?.worse).toBeGreaterThan(2.5);
		expect(poor?.misses).toBeGreaterThan(2.5);
	});

	it('finds what the first readings reach, and says what is open', () => {
		const read = readingsOf(back).map((length, i) => (i < 12 ? length : undefined));
		const { measured, open } = taped(back, read);
		const found = Object.keys(measured);
		expect(found.length).toBeGreaterThan(2);
		expect([...found, ...open].toSorted()).toEqual(
			back.plan.points.filter((name) => name !== 'O').toSorted()
		);
		expect(taped(back, []).measured).toEqual({});
	});
});

describe('the casing by tape: four points, and one distance more than the fewest', () => {
	const casing = paperOf(lessonMethod('71-dress-casing'));
	it('has each reading named that is 10 cm off, also where no triangle could have it', () => {
		for (const [i, { from, to, length }] of casing.plan.takings.entries()) {
			const read = [...readingsOf(casing)];
			read[i] = mm(length + (i % 2 === 0 || length < 150 ? 100 : -100));
			const { disagreeing, perhaps } = taped(casing, read);
			const named = [...disagreeing, ...(perhaps ? [perhaps] : [])].flatMap(({ of }) => of);
			expect(
				named.map((each) => `${each.from} ${each.to}`),
				`${from} ${to}`
			).toContain(`${from} ${to}`);
		}
	});
	it('may have a point that was drawn 10 cm off: its place counts, and no reading is left out', () => {
		const { x, y } = placeOf(casing.points, 'B');
		const paper = paperOf(lessonMethod('71-dress-casing'), HERON, { B: at(x, y + 100) });
		const found = taped(paper, readingsOf(paper));
		expect(found.disagreeing).toEqual([]);
		for (const [off] of strays(paper, found)) expect(off).toBeLessThan(0.5);
	});
});

describe('a mistake on paper', () => {
	const truth = draftOf(BACK, HERON);
	const told = (put: Parameters<typeof paperOf>[2]) => {
		const paper = paperOf(BACK, HERON, put);
		const { measured, disagreeing } = taped(paper, readingsOf(paper), 'rule');
		const report = checkSubmission(BACK, HERON, truth, measured);
		const of = (name: string) => report.steps.find(({ step }) => step === name);
		return { paper, measured, disagreeing, report, of };
	};

	it('is told as on the screen, and what was drawn on from it follows', () => {
		const out = Object.fromEntries(
			['K', 'S', 'Q', 'P', 'M'].map((name) => {
				const { x, y } = placeOf(truth.points, name);
				return [name, at(x + 20, y)];
			})
		);
		const { of, disagreeing, report } = told(out);
		expect(disagreeing).toEqual([]);
		expect(of('K')?.verdict.answer).toBe('wrong');
		expect(report.total.mistakes).toBe(1);
		expect(
			report.steps.some(({ verdict }) => verdict.answer === 'wrong' && verdict.findings.length === 0)
		).toBe(false);
	});

	it('may be a point on the other side: it is found there, and no reading is blamed', () => {
		for (const name of ['M', 'N', 'U', 'J', 'S', 'G3', 'K']) {
			const { x, y } = placeOf(truth.points, name);
			const { measured, disagreeing, of } = told({ [name]: at(-x, y) });
			expect(disagreeing, name).toEqual([]);
			const placement = measured[name];
			expect(placement?.kind === 'point' && distance(at(...placement.at), at(-x, y)), name).toBeLessThan(1);
			expect(of(name)?.verdict.answer, name).toBe('wrong');
		}
	});

	it('never is told as within, nor what is right as outside', () => {
		const noise = normalBy(17);
		for (let off = 0; off <= 8; off += 0.5) {
			const { x, y } = placeOf(truth.points, 'J');
			const paper = paperOf(BACK, HERON, { J: at(x + off, y) });
			const { measured } = taped(
				paper,
				readingsOf(paper, () => 0.5 * noise()),
				'rule'
			);
			const report = checkSubmission(BACK, HERON, truth, measured);
			const answer = report.steps.find(({ step }) => step === 'J')?.verdict.answer;
			if (off >= 6) expect(answer, String(off)).toBe('wrong');
			if (off > 2.5) expect(answer, String(off)).not.toBe('right');
			if (off < 1.5) expect(answer, String(off)).not.toBe('wrong');
		}
	});
});
