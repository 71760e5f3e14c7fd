import { readdirSync, existsSync } from 'node:fs';
import { mm } from '#shared/units.ts';
import { lessonMethod } from '../drafting/lesson-method.ts';
import { drawnBy, normalBy, paperOf, readingsOf, strays, taped, type Paper } from '../tape/taped.ts';

/**
 * How well drafts are found by tape: the distances of each, how far points lie from where they truly do, and which readings that
 * are 10 cm off are named. `-- 40` for so many papers of each.
 */

const RUNS = Number(process.argv[2] ?? 40);
const sharePart = (part: number, of: number): string =>
	of === 0 ? '–' : `${((100 * part) / of).toFixed(1)} %`;

/** Of many papers, how many points lie within 2 mm, and within their own circle. */
const found = (paper: Paper, noise: () => number) => {
	const all = Array.from({ length: RUNS }, () =>
		strays(paper, taped(paper, readingsOf(paper, noise)))
	).flat();
	const off = all.map(([each]) => each).toSorted((a, b) => a - b);
	return {
		near: sharePart(off.filter((each) => each <= 2).length, off.length),
		held: sharePart(all.filter(([each, error]) => each <= error).length, all.length),
		most: (off[Math.floor(off.length * 0.95)] ?? NaN).toFixed(2)
	};
};

/** Each reading 10 cm off in turn: how many are named alone, among others, and not at all; and how many others are blamed for it. */
const misread = (paper: Paper) => {
	const { takings } = paper.plan;
	const noise = normalBy(5);
	const told = { alone: 0, among: 0, unseen: 0, blamed: 0 };
	for (const [i, { from, to, length }] of takings.entries()) {
		const read = [...readingsOf(paper, noise)];
		read[i] = mm((read[i] ?? 0) + (i % 2 === 0 || length < 150 ? 100 : -100));
		const [first] = taped(paper, read).disagreeing;
		const is = first?.of.some((each) => each.from === from && each.to === to);
		if (!first) told.unseen++;
		else if (!is) told.blamed++;
		else if (first.of.length === 1) told.alone++;
		else told.among++;
	}
	return told;
};

for (const lesson of readdirSync('lessons').filter((each) => existsSync(`lessons/${each}/method.yaml`))) {
	const paper = paperOf(lessonMethod(lesson));
	const { points, least, takings } = paper.plan;
	if (takings.length === 0) {
		console.log(`${lesson}: cannot be taken`);
		continue;
	}
	const draw = drawnBy(11);
	const even = found(paper, () => 2 * draw() - 1);
	const bell = found(paper, normalBy(3));
	const { alone, among, unseen, blamed } = misread(paper);
	console.log(
		`${lesson}: ${points.length} points, ${takings.length} distances (least ${least}); ` +
			`readings up to 1 mm off: ${even.near} within 2 mm, 95 % within ${even.most}; ` +
			`standard deviation 1 mm: ${bell.near} within 2 mm, 95 % within ${bell.most}, ${bell.held} in their circles; ` +
			`10 cm off: ${alone} named alone, ${among} among up to three, ${unseen} not seen, ${blamed} blamed on another`
	);
}
