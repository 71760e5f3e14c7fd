/**
 * `npm run measure:missteps`: how often a mistake of the outside list (outside/*.yaml) is named, over blocks and garments, and what is said of
 * marks without a cause. Writes missteps.md beside this file, and the help page tests/checker/missteps/told-slips.md; the same
 * code gives the same tables. `-- 16` takes all sixteen bodies in the place of six.
 */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { format, resolveConfig } from 'prettier';
import { toldPage } from '../checker/missteps/told-diagnosis.ts';
import { NO_CAUSE, saidOfPairs, saidWithoutCause, seen, spotsOf, type Seen } from './outside/diagnosed.ts';
import { measuredBodies, mistakes } from './outside/mistakes.ts';

const BODIES = Number(process.argv[2] ?? 6);
/** Marks without a cause at each spot, and pairs in all. */
const [EACH, PAIRS] = [2, 600];

const percent = (part: number, whole: number, digits = 1): string =>
	whole === 0 ? '–' : `${((part / whole) * 100).toFixed(digits)} %`;
const count = <T>(all: readonly T[], holds: (one: T) => boolean): number => all.filter(holds).length;

const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
	[head, head.map(() => '---'), ...rows].map((row) => `| ${row.join(' | ')} |`).join('\n');

const isTold = ({ kind }: Pick<Seen, 'kind'>): boolean => kind !== 'none';
const isCertain = ({ kind }: Pick<Seen, 'kind'>): boolean => kind === 'certain';

const row = (name: string, all: readonly Seen[]): readonly string[] => {
	const separable = all.filter((each) => each.separable);
	return [
		name,
		String(all.length),
		percent(
			count(all, ({ first }) => first),
			all.length
		),
		percent(
			count(separable, ({ first }) => first),
			separable.length
		),
		percent(
			count(all, ({ any }) => any),
			all.length
		),
		percent(count(all, isCertain), all.length),
		percent(
			count(all, (each) => isCertain(each) && !each.first),
			count(all, isTold),
			2
		),
		percent(
			count(all, (each) => !isTold(each)),
			all.length
		)
	];
};

/** `fraction` of `fraction:half-for-quarter`; two slips at once are a family of their own. */
const familyOf = (note: string): string =>
	note.includes('+') ? 'two at once' : (note.split(':')[0] ?? note);

const byFamily = (all: readonly Seen[]): readonly (readonly string[])[] => {
	const families = new Map<string, Seen[]>();
	for (const each of all) {
		const note = each.told[0]?.note;
		if (note !== undefined) families.set(familyOf(note), [...(families.get(familyOf(note)) ?? []), each]);
	}
	return [...families]
		.toSorted(([, a], [, b]) => b.length - a.length)
		.map(([family, own]) => [
			family,
			String(own.length),
			percent(
				count(own, ({ first }) => first),
				own.length
			),
			percent(count(own, isCertain), own.length)
		]);
};

/** All marks, each half of the list, blocks and garments, and each draft. */
const rowsOf = (all: readonly Seen[]): readonly (readonly string[])[] => {
	const of = (holds: (made: Seen['made']) => boolean): readonly Seen[] =>
		all.filter(({ made }) => holds(made));
	const isBlock = ({ method }: Seen['made']): boolean => method.id.endsWith('-block');
	const methods = [...new Set(all.map(({ made: { method } }) => method.id))];
	const held = of(({ heldBack }) => heldBack);
	const rest = of(({ heldBack }) => !heldBack);
	const garments = of((made) => !isBlock(made));
	const drafts = methods.map((id) => [id, of(({ method }) => method.id === id)] as const);
	return [
		row('**all**', all),
		row('the half held back', held),
		row('the other half', rest),
		row('blocks', of(isBlock)),
		row('garments', garments),
		...drafts.map(([id, own]) => row(id, own))
	];
};

const report = (): string => {
	const list = mistakes();
	const all = seen(list, measuredBodies().slice(-BODIES));
	const spots = spotsOf(all);
	const without = NO_CAUSE.map((kind) => [kind, saidWithoutCause(spots, kind, EACH)] as const);
	const pairs = saidOfPairs(all, PAIRS);
	return `# How well mistakes are named

Written by \`npm run measure:missteps\`; the same code gives the same tables.

${String(list.length)} mistakes as teachers know them (outside/*.yaml), each with where it leads; none was made by the checker. Each is made at its step of
every draft for ${String(BODIES)} bodies, by a hand of up to 1 mm: ${String(all.length)} marks that are wrong to be seen. *First*: what is told first leads where the
mistake led (within half a millimetre). *Separable*: no other mistake of the list leads within 4 mm. *Certain and wrong* is a share of all that was told.
A random half of the list was held back while the wrong rules were made.

${table(
	[
		'',
		'marks',
		'first',
		'first, separable',
		'among those told',
		'certain',
		'certain and wrong',
		'nothing told'
	],
	rowsOf(all)
)}

## Marks without a cause

${table(
	['where', 'marks', 'certain, hence wrong', 'something told'],
	without.map(([kind, said]) => [
		kind,
		String(said.length),
		percent(count(said, isCertain), said.length, 2),
		percent(count(said, isTold), said.length)
	])
)}

Two mistakes at once, where they can be told from each alone: one of the two is named in ${percent(count(pairs, Boolean), pairs.length)} of ${String(pairs.length)}.

## By what is told first

${table(['wrong rule', 'told first', 'right', 'certain'], byFamily(all))}
`;
};

const write = async (file: string, page: string): Promise<void> => {
	const settings = await resolveConfig(file);
	writeFileSync(file, await format(page, { ...settings, filepath: file }));
	console.log(`written: ${file}`);
};

await write(fileURLToPath(new URL('../checker/missteps/told-slips.md', import.meta.url)), toldPage());
await write(fileURLToPath(new URL('missteps.md', import.meta.url)), report());
