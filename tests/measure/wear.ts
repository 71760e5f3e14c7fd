import { garments } from '../garment/garment-files.ts';
import type { Garment } from '#garment/garment.ts';
import type { Sample } from '../reference/survey-bodies.ts';
import { sampled, worn, type Worn } from './worn.ts';

/**
 * On how many real bodies each wear check holds: with the usual numbers, and once every cure that is offered is taken up. Prints a table
 * in Markdown.
 */

const percent = (part: number, of: number): string =>
	of === 0 ? '–' : `${((100 * part) / of).toFixed(1)} %`;

const quantiles = (values: readonly number[]): string => {
	const sorted = [...values].sort((a, b) => a - b);
	const at = (share: number): number =>
		sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN;
	return [at(0.01), at(0.5), at(0.99)].map((value) => value.toFixed(2)).join(', ');
};

const holds = (sewn: Worn['before'], name: string): boolean | undefined => {
	const report = sewn.wear.find((each) => each.name === name);
	return report?.value === undefined ? undefined : report.state === 'holds';
};

const count = (all: readonly Worn[], when: 'before' | 'after', name: string): readonly boolean[] =>
	all.flatMap((each) => holds(each[when], name) ?? []);

const table = (garment: Garment, sample: Sample, further: boolean): void => {
	const bodies = sampled(sample, further);
	const all = bodies.flatMap((body) => worn(garment, body) ?? []);
	console.log(`\n## ${garment.id}, ${sample}${further ? ', further measurements taken' : ''}\n`);
	console.log(
		`${all.length} of ${bodies.length} drafted; cures that did not do what they said: ${all.flatMap(({ broken }) => broken).length}\n`
	);
	console.log(
		'| check | 1st percentile, median, 99th | holds with defaults | after cures |\n| --- | --- | --- | --- |'
	);
	for (const { name, kind } of garment.wear) {
		const values = all.flatMap(({ before }) => before.wear.find((each) => each.name === name)?.value ?? []);
		if (values.length === 0) continue;
		const [before, after] = [count(all, 'before', name), count(all, 'after', name)];
		const shown = kind === 'length' ? values.map((value) => value / 10) : values;
		console.log(
			`| ${name} | ${quantiles(shown)} | ${percent(before.filter(Boolean).length, before.length)} | ${percent(after.filter(Boolean).length, after.length)} |`
		);
	}
	const whole = (when: 'before' | 'after'): number =>
		all.filter((each) => each[when].wear.every(({ state }) => state !== 'fails')).length;
	console.log(`| all | | ${percent(whole('before'), all.length)} | ${percent(whole('after'), all.length)} |`);
	const reasons = new Map<string, number>();
	for (const reason of all.flatMap(({ uncured }) => uncured))
		reasons.set(reason, (reasons.get(reason) ?? 0) + 1);
	for (const [reason, times] of [...reasons].sort((a, b) => b[1] - a[1]))
		console.log(`\nleft: ${reason} (${times})`);
};

const wanted = process.argv.slice(2);
for (const garment of garments().filter(({ id }) => wanted.length === 0 || wanted.includes(id)))
	for (const further of [false, true])
		for (const sample of ['women', 'men'] as const) table(garment, sample, further);
