import { BadInput } from '#shared/bad-input.ts';
import { message, type Message } from '#shared/speech/message.ts';
import type { Speech } from '#shared/speech/speech.ts';
import type { Compass } from '#shared/method.ts';
import type { Typed } from '#shared/placement.ts';
import type { Mm, Unit } from '#shared/units.ts';
import { readDistance, withUnit } from '#drafting/formula/sum.ts';
import { COMPASS } from '#drafting/steps/compass.ts';
import { at, moved, type SheetPoint } from '#geometry/point.ts';

/** What an entry is read against. */
export interface Around {
	readonly unit: Unit;
	/** The named points that stand on the sheet. */
	readonly points: Readonly<Record<string, SheetPoint>>;
	/** The point that is measured from where none is named: a level's own, a handle's own end. */
	readonly origin: string | undefined;
	/** The way that is gone where none is said: a level has only one. */
	readonly go: Compass | undefined;
}

/** A place as it was typed, and what of it is kept beside the placement. */
export interface Spoken {
	readonly place: SheetPoint;
	readonly typed: Typed | undefined;
}

const WAYS = ['down', 'up', 'across', 'in'] as const;
/** Nothing is drafted further than this from the corner, in millimetres. */
const FURTHEST_MM = 5000;

/** An entry that cannot be used. It is not counted as a try. */
const bad = (slip: Message): never => {
	throw new BadInput('said', slip);
};

/** Finds one of the words that are written with `|` between them, standing by itself. */
const wordOf = (words: string, after = ''): RegExp =>
	new RegExp(`(?<![\\p{L}\\d])(?:${words})(?![\\p{L}\\d])${after}`, 'giu');

const NAME = '\\s*([\\p{L}][\\p{L}\\d.]*)';

/** A named point, however its letters are written. */
const pointCalled = (name: string, points: Around['points']): string | undefined =>
	Object.hasOwn(points, name)
		? name
		: Object.keys(points).find((each) => each.toLowerCase() === name.toLowerCase());

/** A way that is said in a text, and where. */
interface SaidWay {
	readonly go: Compass;
	readonly begin: number;
	readonly end: number;
}

/** The ways said in a text, in turn. After a number `in` is the inch, but where nothing else says the way. */
const waysIn = (text: string, { words: { desk } }: Speech): readonly SaidWay[] => {
	const all = WAYS.flatMap((go) =>
		[...text.matchAll(wordOf(desk.wayWords[go]))].map(({ 0: word, index }) => ({
			go,
			begin: index,
			end: index + word.length,
			isInch:
				word.toLowerCase() === 'in' &&
				/\d\s*$/.test(text.slice(0, index)) &&
				!/^\s*[\d(]/.test(text.slice(index + word.length))
		}))
	).sort((a, b) => a.begin - b.begin);
	const ways = all.filter(({ isInch }) => !isInch);
	return ways.length > 0 ? ways : all.slice(-1);
};

/** Each way with the text of its length: before it or after it, as the whole entry has them. */
const withSums = (text: string, ways: readonly SaidWay[]): readonly { go: Compass; sum: string }[] => {
	const bare = (part: string): string => part.replace(/^[\s,;:]+|[\s,;:]+$/g, '');
	const isBefore = bare(text.slice(0, ways[0]?.begin)) !== '';
	return ways.map(({ go, begin, end }, i) => ({
		go,
		sum: bare(isBefore ? text.slice(ways[i - 1]?.end ?? 0, begin) : text.slice(end, ways[i + 1]?.begin))
	}));
};

const OF_PAIR: Readonly<Record<Compass, readonly ['across' | 'down', string]>> = {
	across: ['across', ''],
	in: ['across', '-'],
	down: ['down', ''],
	up: ['down', '-']
};

/** The point that an entry names as its start, and the entry without it: "from O", or a name at its beginning. */
const startIn = (text: string, { points }: Around, speech: Speech): { from?: string; rest: string } => {
	const found =
		wordOf(speech.words.desk.fromWords, NAME).exec(text) ?? new RegExp(`^${NAME}(?=\\s)`, 'u').exec(text);
	const from = found?.[1] === undefined ? undefined : pointCalled(found[1], points);
	if (found && from !== undefined)
		return { from, rest: `${text.slice(0, found.index)} ${text.slice(found.index + found[0].length)}` };
	if (found?.[0].trim().includes(' ')) bad(message('desk', 'noSuchPoint', { name: found[1] ?? '' }));
	return { rest: text };
};

/**
 * Reads a place as a drafter says it, "from O down 38.4/2+3", "12.5 across, 10 down": a start, and one or two ways with
 * their lengths. Two ways without a start count from the corner. Throws BadInput, whose message is for the learner.
 */
export const readPlace = (text: string, around: Around, speech: Speech): Spoken => {
	const { from: named, rest } = startIn(text.trim(), around, speech);
	const said = waysIn(rest, speech);
	const ways = said.length === 0 && around.go ? [{ go: around.go, sum: rest.trim() }] : withSums(rest, said);
	const [first, second, more] = ways;
	if (!first || more) return bad(message('desk', 'sayWay'));
	const from = named ?? around.origin;
	// Two ways without a start count from the corner of the sheet.
	const start = from === undefined ? second && at(0, 0) : around.points[from];
	if (!start) return bad(message('desk', 'sayStart'));
	const place = ways.reduce(
		(from, { go, sum }) => moved(from, COMPASS[go], readDistance(sum, around.unit).value),
		start
	);
	if (Math.max(Math.abs(place.x), Math.abs(place.y)) > FURTHEST_MM) bad(message('desk', 'tooFarOff'));
	return { place, typed: typedOf(ways, from, around.unit) };
};

/**
 * Reads where a curve's handles go, each from its own end, said one after the other: "in 3, down 1 then up 2". Throws
 * BadInput where more are said than there are.
 *
 * @param ends the handles that are still to be said, by their names, and the point that each belongs to
 */
export const readHandles = (
	text: string,
	ends: readonly (readonly [id: string, origin: string | undefined])[],
	around: Around,
	speech: Speech
): Readonly<Record<string, SheetPoint>> => {
	const parts = text.split(wordOf(speech.words.desk.thenWords));
	return Object.fromEntries(
		parts.map((part, i) => {
			const [id, origin] = ends[i] ?? bad(message('desk', 'sayWay'));
			return [id, readPlace(part, { ...around, origin }, speech).place];
		})
	);
};

const typedOf = (
	[first, second]: readonly { go: Compass; sum: string }[],
	from: string | undefined,
	unit: Unit
): Typed | undefined => {
	if (!first) return undefined;
	if (!second && from !== undefined) return { form: 'distance', sum: first.sum, from, go: first.go, unit };
	if (!second || (from !== undefined && from !== 'O')) return undefined;
	const [[a, signA], [b, signB]] = [OF_PAIR[first.go], OF_PAIR[second.go]];
	if (a === b) return undefined;
	const [one, two] = [signed(signA, first.sum), signed(signB, second.sum)];
	return { form: 'coordinates', across: a === 'across' ? one : two, down: a === 'down' ? one : two, unit };
};
const signed = (sign: string, sum: string): string => (sign ? `-(${sum})` : sum);

/** What the sum of an entry comes to; undefined where it has none, or cannot be read. */
export const workedSum = (text: string, around: Around, speech: Speech): Mm | undefined => {
	try {
		const { typed } = readPlace(text, around, speech);
		const isSum = typed?.form === 'distance' && /[^\d.,\s]/.test(typed.sum);
		return isSum ? readDistance(typed.sum, around.unit).value : undefined;
	} catch (error) {
		if (error instanceof BadInput) return undefined;
		throw error;
	}
};

/** The two ends of a line as they are said: "C to H". Throws BadInput where there are not two points in it. */
export const readEnds = (
	text: string,
	points: Around['points'],
	speech: Speech
): readonly [SheetPoint, SheetPoint] => {
	const { fromWords, toWords } = speech.words.desk;
	const names = text
		.replace(wordOf(fromWords), ' ')
		// As it is written: «a» leads to a point in Spanish, and A is one.
		.replace(new RegExp(wordOf(toWords).source, 'gu'), ' ')
		.split(/[^\p{L}\d.]+/u)
		.filter(Boolean);
	const [first, last] = names.map((name) => points[pointCalled(name, points) ?? '']);
	return first && last && names.length === 2 ? [first, last] : bad(message('desk', 'sayEnds'));
};

/** What was typed for a point, as it is said in the learner's language and unit. */
export const saidOf = (typed: Typed, unit: Unit, speech: Speech): string => {
	const { desk } = speech.words;
	const inUnit = (sum: string): string => (typed.unit === unit ? sum : withUnit(sum, typed.unit));
	return typed.form === 'distance'
		? desk.saidDistance({ from: typed.from, go: typed.go, sum: inUnit(typed.sum) })
		: desk.saidPlace({ across: inUnit(typed.across), down: inUnit(typed.down) });
};
