import type { MeasurementKey } from '../../measurements.ts';
import type { ReadingKind } from '../../reading-kind.ts';
import type { Mm } from '../../units.ts';
import type { Voice } from '../voice.ts';
import { the } from './grammar.ts';
import { measurementNoun } from './nouns.ts';

const KINDS: Readonly<Record<ReadingKind, { readonly title: string; readonly what: string }>> = {
	largeGirth: { title: 'Large girths', what: 'bust, waist, hip' },
	smallGirth: { title: 'Small girths', what: 'neck, upper arm, wrist' },
	length: { title: 'Lengths', what: 'and widths' }
};

/** How far the points of a draft can move because of how the body was measured. */
export const sureness = (v: Voice) => {
	const size = (length: Mm): string => v.small(length) ?? v.slight(length);
	/** In tenths of a millimetre, where two sizes that differ by little are compared. */
	const finely = (length: Mm): string => (v.unit === 'in' ? v : v.inUnit('mm')).length(length);
	const hundred = (share: number): string => v.number(Math.round(share * 100));
	return {
		heading: 'How sure is each point?',
		open: 'Show how sure each point is',
		close: 'Hide it',
		working: 'Working it out: the draft is made for a few thousand readings…',
		failed: 'It could not be worked out. Open it again to try once more.',
		about: ({ body }: { body: string }) =>
			`A tape never reads the same twice. Here the draft for ${body} was made again and again with readings that stray as yours may. Nineteen times in twenty a point lies within its ± of where it is drawn.`,
		errors: 'How far one reading strays (two readings of three lie within it)',
		kind: ({ kind }: { kind: ReadingKind }) => KINDS[kind],
		source:
			'The usual sizes are the errors that ISO 20685 allows between two ways of measuring. Whoever is new to the tape strays further.',
		twice: ({ keys }: { keys: readonly MeasurementKey[] }) =>
			`Taken twice, and so surer: ${v.list(keys.map((key) => the(measurementNoun(key))))}.`,
		drawing: ({ draft }: { draft: string }) => `${draft}: round each point, how far it can move`,
		ovals:
			'The pale ovals show which way each point moves and how far, at the scale of the draft; the pale band along a line, the same for places on it.',
		/** Why points are checked to a tolerance, from how far half of them move anyway and what a slip of the pencil adds; whether it adds enough to count. */
		tolerance: ({
			tolerance,
			half,
			together,
			counts
		}: {
			tolerance: Mm;
			half: Mm;
			together: Mm;
			counts: boolean;
		}) =>
			`Why a mark may be ${size(tolerance)} off: the tape by itself moves half of these points by more than ${finely(half)}, and a mark that is ${size(tolerance)} off as well makes that ${finely(together)}. ${counts ? 'In this draft the mark counts nearly as much as the tape: draw it as finely as you can.' : 'To draw finer would not make the garment fit better; to draw as roughly as the tape reads would make it fit worse.'}`,
		still: ({ tolerance }: { tolerance: Mm }) =>
			`The measurements move no point of this draft, so that only the mark itself, ${size(tolerance)}, is unsure.`,
		listAbout: 'Points, the least sure first',
		point: 'Point',
		within: '±',
		most: 'Moved most by',
		lines: 'Lines: how sure their length is',
		line: 'Line',
		plusMinus: ({ reach }: { reach: Mm }) => `± ${size(reach)}`,
		unmoved: 'does not move',
		mostOf: ({ key, share }: { key: MeasurementKey; share: number }) =>
			`${the(measurementNoun(key))} (${hundred(share)} %)`,
		/** A point that some bodies do not have. */
		there: ({ share }: { share: number }) => `is there in ${hundred(share)} of 100 tries`,
		bends: 'tried: a rule gives way to another near here',
		bendsAbout:
			'“Tried”: where one rule gives way to another (a dart begins, the most at a side is reached), a point does not follow the tape evenly. It was counted over 2,048 tries, evenly spread.',
		notDrafted: ({ share }: { share: number }) =>
			`In ${hundred(share)} of 100 tries the readings could not be drafted: two of them nearly disagree.`,
		/** A reading error that was typed. */
		errorRange: ({ range }: { range: readonly [Mm, Mm] }) => {
			const { least, most } = v.range(range);
			return `a reading strays from ${least} to ${most}`;
		},

		/** On the command line. */
		title: ({ name, body }: { name: string; body: string }) =>
			`${name} for ${body}: how far each point can move, in mm, nineteen times in twenty`,
		headings: ['point', '±', 'moved most by', ''],
		lineHeadings: ['line', 'length ±', 'moved most by', ''],
		share: ({ share }: { share: number }) => `${hundred(share)} %`,
		errorShape: ({ seen }: { seen: string }) =>
			`a reading error is KEY=MM, such as bust=6 or length=4, not "${seen}"`,
		errorKey: ({ seen, known }: { seen: string; known: readonly string[] }) =>
			`no measurement is called "${seen}"; kinds are ${v.list(known)}`
	};
};
