import type { MeasurementKey } from '../../measurements.ts';
import type { SizeTableId } from '../../sizes/tables.ts';
import { mm, type Mm } from '../../units.ts';
import type { Voice } from '../voice.ts';
import { The } from './grammar.ts';
import { measurementNoun } from './nouns.ts';

const TABLES: Readonly<Record<SizeTableId, { readonly name: string; readonly source: string }>> = {
	women: {
		name: 'Women',
		source:
			'Girths: the intervals of EN 13402-3, from memory, not read again. Numbers: those of the trade on the Continent, from memory too. All lengths are estimated.'
	},
	men: {
		name: 'Men',
		source:
			'Girths: the intervals of EN 13402-3, from memory, not read again. Numbers: half the chest, as the trade on the Continent counts, from memory. The hip and all lengths are estimated. The drafts of this course are made for a bust.'
	},
	old: {
		name: 'New York, 1911',
		source:
			'I. Rosenfeld, The Practical Designer, New York 1911, lesson 142, in inches. One size alone; the book prints “waist 2.5”, and 25 is meant. All that it does not give is estimated.'
	}
};

/** Standard sizes, and the one that is nearest to a body. */
export const sizes = (v: Voice) => {
	const errors = (value: number): string => v.fixed(Math.abs(value), 1);
	return {
		heading: 'Standard sizes',
		about:
			'A size is a body that nobody has: girths that an agreement names, and lengths as most people with such girths have them. Draft from your own tape wherever you can.',
		table: 'Table',
		size: 'Size',
		tableName: ({ table }: { table: SizeTableId }) => TABLES[table].name,
		source: ({ table }: { table: SizeTableId }) => TABLES[table].source,
		/** What a body made from a size is called. */
		bodyName: ({ table, name }: { table: SizeTableId; name: string }) =>
			table === 'women' ? `Size ${name}` : `Size ${name}, ${TABLES[table].name}`,
		draftFor: ({ name }: { name: string }) => `Draft for size ${name}`,
		added: ({ name }: { name: string }) => `${name} is added to the bodies above, and chosen.`,
		estimated: ({ value, sd }: { value: Mm; sd: Mm }) =>
			`estimated: ${v.bare(value)} ± ${v.length(mm(Math.round(sd)))}`,
		estimates:
			'“Estimated”: the mean of those women or men of the US Army’s body survey of 1988 who have these girths; two of three lie within the ±. The front length comes out a little short, since nobody took it over the bust: take that one yourself.',
		nearest: ({ body }: { body: string }) => `Which size is nearest to ${body}?`,
		/** The girths and how far they are apart, counted in measuring errors. */
		nearestIs: ({ name, errors: apart }: { name: string; errors: number }) =>
			apart <= 1
				? `Size ${name}: its girths lie within what a tape reads differently from one time to the next.`
				: `Size ${name}. Its girths are ${errors(apart)} measuring errors away, on average: more than reading the tape again would explain.`,
		wanting: 'To tell, the girths of the table are needed: bust, waist and, for women, hip.',
		differ: 'Where you differ most',
		measurement: 'Measurement',
		own: 'Own',
		ofSize: ({ name }: { name: string }) => `Size ${name}`,
		difference: 'Difference',
		apart: ({ by, errors: apart }: { by: Mm; errors: number }) =>
			`${v.length(by)} ${by < 0 ? 'less' : 'more'} (${errors(apart)} errors)`.replace('-', ''),
		alike: 'Nowhere by more than twice the error of measuring.',
		inErrors:
			'An error is how far one reading strays, and for an estimated length how far people of one size differ as well. Up to two errors nothing is shown.',
		noun: ({ key }: { key: MeasurementKey }) => The(measurementNoun(key)),

		/** On the command line. */
		notSize: ({ seen }: { seen: string }) => `a size is 42, or with its table men:50, not "${seen}"`,
		noTable: ({ seen, tables }: { seen: string; tables: readonly string[] }) =>
			`there is no table of sizes "${seen}"; there are ${v.list(tables)}`,
		noSize: (given: {
			seen: string;
			near: string | undefined;
			table: SizeTableId;
			names: readonly string[];
		}) =>
			`the table "${given.table}" has no size "${given.seen}"${given.near === undefined ? '' : ` (did you mean "${given.near}"?)`}; it has ${given.names.join(', ')}`,
		oneOfBodies: 'give one of --body, --bodies and --size',
		apartHeadings: ['measurement', 'own', 'size', 'difference', 'errors', ''],
		estimatedWord: 'estimated',
		lacks: ({ keys }: { keys: readonly string[] }) => `missing: ${keys.join(', ')}`
	};
};
