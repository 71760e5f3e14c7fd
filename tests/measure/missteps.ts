/**
 * `npm run measure:missteps`: how often a seeded misstep is recognised, over many bodies and all point steps
 * of both blocks. Writes missteps.md beside this file, and the help page tests/checker/missteps/told-slips.md; the
 * same seed gives the same table. About half a minute.
 */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { format, resolveConfig } from 'prettier';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { toldPage } from '../checker/missteps/told-diagnosis.ts';
import {
	anywhere,
	APART,
	byTwo,
	GENERATED_BODIES,
	injected,
	NOISE,
	onTheWay,
	spots,
	type Injected
} from './sample.ts';

/** Placements at each spot that come of no single misstep. */
const [ANYWHERE, ON_THE_WAY, BY_TWO] = [60, 30, 15];

/** A goal of the measured table. */
interface Goal {
	readonly what: string;
	readonly share: number;
	readonly least?: number;
	readonly most?: number;
}

const percent = (share: number, digits = 1): string =>
	Number.isNaN(share) ? '–' : `${(share * 100).toFixed(digits)} %`;

const shareOf = <T>(
	items: readonly T[],
	holds: (item: T) => boolean,
	weight: (item: T) => number = () => 1
): number => {
	const sum = (some: readonly T[]): number => some.reduce((all, item) => all + weight(item), 0);
	return sum(items.filter(holds)) / sum(items);
};

const isTop = ({ misstep, told }: Injected): boolean => told[0] === misstep.note;
const isTold = ({ misstep, told }: Injected): boolean => told.includes(misstep.note);
const isCertain = ({ told }: Injected): boolean => told.length === 1;
const isWronglyCertain = (each: Injected): boolean => isCertain(each) && !isTop(each);
const isNone = ({ told }: Injected): boolean => told.length === 0;
const byPrior = ({ misstep }: Injected): number => misstep.prior;

/** `fraction:half-for-quarter` and `fraction:third-for-sixth` are one kind; `allowance:left-out` and `allowance:twice` are two. */
const kindOf = (note: string): string => {
	const [first = '', second = '', third] = note.split(':');
	if (first === 'fraction') return third ? 'fraction:of-an-allowance' : first;
	if (first === 'allowance') return second.includes('-for-') ? 'allowance:another' : `allowance:${second}`;
	return ['unit', 'direction', 'digits', 'tape'].includes(first) ? `${first}:${second}` : first;
};

const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
	[head, head.map(() => '---'), ...rows].map((row) => `| ${row.join(' | ')} |`).join('\n');

const goalRow = ({ what, share, least, most }: Goal): readonly string[] => {
	const goal =
		least !== undefined
			? `at least ${percent(least, 0)}`
			: most !== undefined
				? `at most ${percent(most, 0)}`
				: 'none';
	const met = (least === undefined || share >= least) && (most === undefined || share <= most);
	return [what, percent(share, 2), goal, goal === 'none' ? '' : met ? 'met' : 'NOT MET'];
};

const kindRows = (all: readonly Injected[]): readonly (readonly string[])[] => {
	const kinds = [...new Set(all.map(({ misstep }) => kindOf(misstep.note)))].sort();
	return kinds.map((kind) => {
		const own = all.filter(({ misstep }) => kindOf(misstep.note) === kind);
		const apart = own.filter(({ separable }) => separable);
		return [
			`\`${kind}\``,
			String(own.length),
			percent(apart.length / own.length, 0),
			percent(shareOf(apart, isTop)),
			percent(shareOf(apart, isNone)),
			percent(shareOf(own, isTold)),
			percent(shareOf(own, isWronglyCertain), 2)
		];
	});
};

const report = (): string => {
	const all = spots();
	const made = injected(all);
	const apart = made.filter(({ separable }) => separable);
	const [scattered, distances, pairs] = [
		anywhere(all, ANYWHERE),
		onTheWay(all, ON_THE_WAY),
		byTwo(all, BY_TWO)
	];
	const certain = (told: readonly (readonly string[])[]): number =>
		shareOf(told, ({ length }) => length === 1);
	const goals: readonly Goal[] = [
		{
			what: 'top answer right, separable places, every misstep alike',
			share: shareOf(apart, isTop),
			least: 0.95
		},
		{
			what: 'the same, missteps as common as their priors say',
			share: shareOf(apart, isTop, byPrior),
			least: 0.95
		},
		{
			what: 'certain and wrong, all places, every misstep alike',
			share: shareOf(made, isWronglyCertain),
			most: 0.01
		},
		{
			what: 'the same, as common as their priors say',
			share: shareOf(made, isWronglyCertain, byPrior),
			most: 0.01
		},
		{ what: 'points anywhere on the draft: certain, hence wrong', share: certain(scattered), most: 0.02 },
		{ what: 'points at any distance on the step’s own way: certain, hence wrong', share: certain(distances) },
		{ what: 'points by two missteps at once: certain of one', share: certain(pairs) },
		{ what: 'all places: the misstep is told, alone or beside others', share: shareOf(made, isTold) },
		{ what: 'all places: certain', share: shareOf(made, isCertain) }
	];
	return `# How well missteps are recognised

Written by \`npm run measure:missteps\`; the same code gives the same table.

${String(DEMO_BODIES.length)} demo bodies and ${String(GENERATED_BODIES)} bodies drawn from the survey's means and covariances, all point steps of both
blocks (${String(all.length)} in all). Each misstep of each step is made once, by a hand of ${String(NOISE)} mm standard deviation in each axis:
${String(made.length)} wrong placements. Places are *separable* where no other misstep leads within ${String(APART)} mm (two tolerances) and
the misstep itself does not lead within tolerance of the right place; ${percent(apart.length / made.length, 0)} are. "Certain and wrong" is
counted over all placements, separable or not. ${String(scattered.length)} points are strewn over the rectangles that hold the drafts, ${String(distances.length)} along the
ways of the marks, ${String(pairs.length)} put where two missteps together lead.

${table(['what', 'measured', 'goal', ''], goals.map(goalRow))}

Two missteps at once are not among the candidates. The points on a step's own way are the hardest case: thirty or more wrong rules
lead to places on one line, so an arbitrary distance is near one of them quite often. A typed sum tells them apart.

## By kind

"Right" and "no guess" are of the separable places, "told" (alone or beside others) and "certain and wrong" of all.
Where a rule leads to within a few millimetres of the right place (a third of the ease for a quarter of it, the other panel's level), a careless
hand is likelier and no guess is given.

${table(['kind', 'made', 'separable', 'right', 'no guess', 'told', 'certain and wrong'], kindRows(made))}
`;
};

const write = async (file: string, page: string): Promise<void> => {
	const settings = await resolveConfig(file);
	writeFileSync(file, await format(page, { ...settings, filepath: file }));
	console.log(`written: ${file}`);
};

await write(fileURLToPath(new URL('../checker/missteps/told-slips.md', import.meta.url)), toldPage());
await write(fileURLToPath(new URL('missteps.md', import.meta.url)), report());
