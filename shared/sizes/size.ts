import { BadInput, cut } from '../bad-input.ts';
import type { Body, Measurements } from '../body.ts';
import { MEASUREMENT_KEYS, type MeasurementKey, type Supposed } from '../measurements.ts';
import { expected, type Expected } from '../plausible/expect.ts';
import { readingError } from '../reading-errors.ts';
import { nearestName } from '../nearest-name.ts';
import { message } from '../speech/message.ts';
import { mm, MM_PER, type Mm } from '../units.ts';
import { SIZE_TABLES, sizeTable, type SizeTableId } from './tables.ts';

/** A size of a table. */
export interface Size {
	readonly table: SizeTableId;
	/** What the table calls it: "42". */
	readonly name: string;
}

/** A size with a number for every measurement that can be had. */
export interface SizeBody {
	readonly size: Size;
	readonly measurements: Measurements;
	/** Those that the table lacks: what the survey lets expect, with its spread. */
	readonly estimated: Readonly<Partial<Record<MeasurementKey, Expected>>>;
}

/** All sizes of a table, the smallest first. */
export const sizesOf = (table: SizeTableId): readonly Size[] =>
	Object.keys(sizeTable(table).sizes).map((name) => ({ table, name }));

/** The size that may have been meant: of numbers the one that is nearest as a number, so that 43 is not taken for 40. */
const nearSize = (name: string, names: readonly string[]): string | undefined => {
	const asked = Number(name);
	if (name === '' || !Number.isFinite(asked)) return nearestName(name, names);
	const apart = (each: string): number => Math.abs(Number(each) - asked);
	return names.toSorted((a, b) => apart(a) - apart(b))[0];
};

/**
 * Reads a size as it is asked for: `42`, of the women's table, or with the table's name, `men:50`. Throws BadInput at `place`, naming the
 * nearest and all that there are.
 */
export const readSize = (text: string, place: string): Size => {
	const [before = '', after, ...more] = text.split(':').map((part) => part.trim());
	if (more.length > 0) throw new BadInput(place, message('sizes', 'notSize', { seen: cut(text) }));
	const tables: readonly string[] = SIZE_TABLES;
	const asked = after === undefined ? 'women' : before;
	if (!tables.includes(asked))
		throw new BadInput(place, message('sizes', 'noTable', { seen: cut(asked), tables }));
	const table = asked as SizeTableId;
	const [name, names] = [after ?? before, Object.keys(sizeTable(table).sizes)];
	if (names.includes(name)) return { table, name };
	throw new BadInput(
		place,
		message('sizes', 'noSize', { seen: cut(name), near: nearSize(name, names), table, names })
	);
};

/** A size asks for tenths of a centimetre, as a tape is read. */
const READ: Mm = mm(1);

/** The numbers of a size: those of its table, and for the others the mean of those who have its girths (a regression on the survey). */
export const sizeBody = (size: Size): SizeBody => {
	const { people, unit, columns, sizes } = sizeTable(size.table);
	const row = sizes[size.name] ?? [];
	const given: Measurements = Object.fromEntries(
		columns.map((key, i) => [key, mm((row[i] ?? NaN) * MM_PER[unit])])
	);
	const estimated = Object.fromEntries(
		MEASUREMENT_KEYS.flatMap((key) => {
			const guess = given[key] === undefined ? expected(people, key, given) : undefined;
			return guess ? [[key, guess] as const] : [];
		})
	);
	const rounded = Object.fromEntries(
		Object.entries(estimated).map(([key, { value }]) => [key, mm(Math.round(value / READ) * READ)])
	);
	return { size, measurements: { ...rounded, ...given }, estimated };
};

/** A size as a body to draft for; what was estimated is marked so. */
export const bodyOfSize = (size: Size, name: string): Body => {
	const { measurements, estimated } = sizeBody(size);
	const supposed: Partial<Record<MeasurementKey, Supposed>> = Object.fromEntries(
		Object.keys(estimated).map((key) => [key, 'estimated' as const])
	);
	return { name, unit: 'cm', measurements, allowances: {}, supposed };
};

/** How far a body lies from a size in one measurement. */
export interface Apart {
	readonly key: MeasurementKey;
	readonly own: Mm;
	readonly size: Mm;
	/** In units of measuring error: of the reading, and of the estimate where the size's number is one. */
	readonly errors: number;
	readonly estimated: boolean;
}

/** A size beside a body. */
export interface Near {
	readonly size: Size;
	/** The root of the mean square of what is apart, over the measurements that the table gives, in units of measuring error. */
	readonly errors: number;
	/** Every measurement that both have, the furthest apart first. */
	readonly apart: readonly Apart[];
}

const apartFrom = (body: Body, { measurements, estimated }: SizeBody): readonly Apart[] =>
	MEASUREMENT_KEYS.flatMap((key) => {
		const [own, size] = [body.measurements[key], measurements[key]];
		if (own === undefined || size === undefined) return [];
		const spread = Math.hypot(readingError(key, { readings: body.readings ?? {} }), estimated[key]?.sd ?? 0);
		return [{ key, own, size, errors: (own - size) / spread, estimated: estimated[key] !== undefined }];
	}).sort((a, b) => Math.abs(b.errors) - Math.abs(a.errors));

/**
 * The size of a table that is nearest to a body by the measurements that the table itself gives, each counted in units of its measuring
 * error; undefined where the body lacks one of them.
 */
export const nearestSize = (table: SizeTableId, body: Body): Near | undefined => {
	const { columns } = sizeTable(table);
	if (columns.some((key) => body.measurements[key] === undefined)) return undefined;
	const near = sizesOf(table).map((size): Near => {
		const apart = apartFrom(body, sizeBody(size));
		const squares = apart.filter(({ key }) => columns.includes(key)).map(({ errors }) => errors ** 2);
		return { size, apart, errors: Math.sqrt(squares.reduce((sum, each) => sum + each, 0) / squares.length) };
	});
	return near.toSorted((a, b) => a.errors - b.errors)[0];
};
