import { readdirSync, existsSync } from 'node:fs';
import { mm } from '#shared/units.ts';
import { lessonMethod } from '../drafting/lesson-method.ts';
import { drawnBy, normalBy, paperOf, readingsOf, strays, taped, type Paper } from '../tape/taped.ts';

/**
 * How well drafts are found by tape: the distances of each, how far points lie from where they truly do, and which readings that
 * are 10 cm off are named. `-- 40` for so many papers of each. What it printed last stands in tape.md.
 */

const RUNS = Number(process.argv[2] ?? 40);
const sharePart = (part: number, of: number): string =>
	of === 0 ? '–' : `${((100 * part) / of).toFixed(1)} %`;

/** Of many papers, how many points lie within 2 mm, how far 95 of 100 do, and how many lie within their own circle. */
const found = (paper: Paper, noise: () => number, times = 1): string => {
	const all = Array.from({ length: RUNS }, () =>
		strays(paper, taped(paper, readingsOf(paper, noise), 'tape', times))
	).flat();
	const off = all.map(([each]) => each).toSorted((a, b) => a - b);
	const near = sharePart(off.filter((each) => each <= 2).length, off.length);
	const held = sharePart(all.filter(([each, error]) => each <= error).length, all.length);
	return `${near}, ${(off[Math.floor(off.length * 0.95)] ?? NaN).toFixed(2)} mm, ${held}`;
};

/** Each reading 10 cm off in turn: how many are named alone, among others, beside the point that would lie far off, and not at all; and how many others are blamed for it. */
const misread = (paper: Paper): string => {
	const { takings } = paper.plan;
	const noise = normalBy(5);
	const told = { alone: 0, among: 0, beside: 0, unseen: 0, blamed: 0 };
	for (const [i, { from, to, length }] of takings.entries()) {
		const read = [...readingsOf(paper, noise)];
		read[i] = mm((read[i] ?? 0) + (i % 2 === 0 || length < 150 ? 100 : -100));
		const { disagreeing, perhaps } = taped(paper, read);
		const first = disagreeing[0] ?? perhaps;
		const is = first?.of.some((each) => each.from === from && each.to === to);
		if (!first) told.unseen++;
		else if (!is) told.blamed++;
		else if (first === perhaps) told.beside++;
		else if (first.of.length === 1) told.alone++;
		else told.among++;
	}
	return Object.values(told).join(' / ');
};

console.log(
	'| draft | points | distances (least) | rounded to 1 mm | up to 1 mm off | sd 1 mm | sd 1 mm, each read twice | 10 cm off: alone / among / beside a point / not / another |'
);
console.log('| --- | --- | --- | --- | --- | --- | --- | --- |');
for (const lesson of readdirSync('lessons').filter((each) => existsSync(`lessons/${each}/method.yaml`))) {
	const paper = paperOf(lessonMethod(lesson));
	const { points, least, takings } = paper.plan;
	if (takings.length === 0) {
		console.log(`| ${lesson} | cannot be taken |`);
		continue;
	}
	const [even, rounded] = [drawnBy(11), drawnBy(7)];
	const [once, first, second] = [normalBy(3), normalBy(13), normalBy(17)];
	const cells = [
		lesson,
		points.length,
		`${takings.length} (${least})`,
		found(paper, () => rounded() - 0.5),
		found(paper, () => 2 * even() - 1),
		found(paper, once),
		found(paper, () => (first() + second()) / 2, 2),
		misread(paper)
	];
	console.log(`| ${cells.join(' | ')} |`);
}
