import { BadInput } from '#shared/bad-input.ts';
import { isChoice, type Allowance } from '#shared/allowances.ts';
import type { GarmentFile } from '#shared/garment.ts';
import { oneOf, parseLength, readNumber as readShare } from '#shared/reading.ts';
import { message } from '#shared/speech/message.ts';
import { parseFormula, type KnownNames } from '#drafting/formula/parse.ts';
import type { GirthsRule, PieceRule, PlaceRule, WearRule } from './garment.ts';

type WearFile = GarmentFile['wear'][number];

/** What the wear checks of a garment may name. */
export interface WearNames {
	/** With the pieces and their edges. */
	readonly known: KnownNames;
	readonly allowances: readonly Allowance[];
	readonly pieces: readonly PieceRule[];
}

/** Where it is to be seen: the points and lines are those of the piece's draft. */
const readPlace = (at: PlaceRule, { known, pieces }: WearNames, place: string): PlaceRule => {
	const keys = pieces.map(({ key }) => key);
	const key = oneOf('piece', at.piece, keys, place);
	const draft = pieces.find((each) => each.key === key)?.draft ?? '';
	const own = (names: readonly string[]): readonly string[] =>
		names.flatMap((name) => (name.startsWith(`${draft}.`) ? [name.slice(draft.length + 1)] : []));
	const [points, lines] = [own(known.points), own(known.lines)];
	const named = 'level' in at ? [at.level] : 'points' in at ? at.points : [];
	for (const point of named) oneOf('point', point, points, place);
	if ('lines' in at) for (const line of at.lines) oneOf('line', line, lines, place);
	return at;
};

/** Names, and some lengths of their own beside them. */
const withLengths = (
	lengths: Readonly<Record<string, string>>,
	known: KnownNames,
	place: string
): KnownNames => ({
	...known,
	amounts: Object.fromEntries(
		Object.entries(lengths).map(([key, text]) => [
			key,
			{ kind: 'number', value: parseLength(text, 'cm', `${place}: ${key}`), isLength: true }
		])
	)
});

/** Girths that are shown beside each other. Throws BadInput for an unknown name. */
export const readGirths = (
	{ name, label, rows }: GarmentFile['girths'][number],
	known: KnownNames,
	place: string
): GirthsRule => ({
	name,
	label,
	rows: rows.map((row) => {
		const where = `${place}: girths ${name}: ${row.name}`;
		const formula = parseFormula(row.number, where, withLengths(row.lengths, known, where));
		return { label: row.label, of: row.of, formula };
	})
});

/** A wear check. Throws BadInput: unknown names, no bound, a bound of the wrong sort, a named value as a cure. */
export const readWear = (file: WearFile, names: WearNames, place: string): WearRule => {
	const where = `${place}: wear ${file.name}`;
	const { name, label, kind, low, high, least, most, cure, odds, at } = file;
	if (least === undefined && most === undefined) throw new BadInput(where, message('reading', 'needsBound'));
	const bound = (text: string | undefined): number | undefined => {
		if (text === undefined) return undefined;
		return kind === 'length' ? parseLength(text, 'cm', where) : readShare(text, where);
	};
	const known = withLengths(file.lengths, names.known, where);
	const formula = (text: string | undefined, field: string) =>
		text === undefined ? undefined : parseFormula(text, `${where}: ${field}`, known);
	const movable = names.allowances.filter((each) => !isChoice(each)).map(({ key }) => key);
	const cures = cure.map((each) => (typeof each === 'string' ? [each] : each));
	for (const key of cures.flat()) oneOf('allowance', key, movable, `${where}: cure`);
	return {
		name,
		label,
		kind,
		over: file.over,
		formula: parseFormula(file.number, `${where}: number`, known, kind === 'length' ? 'length' : 'share'),
		least: bound(least),
		most: bound(most),
		low,
		high,
		when: formula(file.when, 'when'),
		unless: formula(file.unless, 'unless'),
		cures,
		odds,
		at: at && readPlace(at, names, where)
	};
};
