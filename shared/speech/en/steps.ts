import type { Compass } from '../../method.ts';
import type { Mm, Radians } from '../../units.ts';
import type { Noun } from '../noun.ts';
import type { Voice } from '../voice.ts';
import { capital, the } from './grammar.ts';
import { offsetIn, WAYS, type Offset } from './ways.ts';

/** A step's rule in three rungs: where to look, the rule in words, and the rule worked with this body's numbers. */
interface Rungs {
	readonly where: string;
	readonly rule: string;
	readonly worked: string;
}

/** A formula as a noun, and with its arithmetic. */
interface Worked {
	readonly by: Noun;
	readonly arithmetic: string;
}

/** Where a step that goes along something begins, and which way it goes. */
type AlongWhat =
	| { readonly line: Noun; readonly end: 'start' | 'end' }
	| { readonly from: string; readonly as: Noun }
	| { readonly from: string; readonly toward: string };

/** The direction of a curve at one of its points. */
export type SaidHeading =
	| Compass
	| 'chord'
	| 'join'
	| { readonly along: Noun }
	| { readonly squareTo: Noun }
	| { readonly sewn: Noun };

const headingWords = (heading: SaidHeading): string => {
	if (heading === 'chord') return 'straight at the other end';
	if (heading === 'join') return 'smoothly across the join';
	if (typeof heading === 'string') return WAYS[heading];
	if ('sewn' in heading) return `as ${the(heading.sewn)} runs on once the dart is sewn`;
	return 'along' in heading ? `as ${the(heading.along)} runs` : `square to ${the(heading.squareTo)}`;
};

const startWords = (on: AlongWhat): string => ('line' in on ? `the ${on.end} of ${the(on.line)}` : on.from);
const alongWords = (on: AlongWhat): string => {
	if ('line' in on) return `along ${the(on.line)}`;
	return 'as' in on ? `the same way as ${the(on.as)}` : `straight toward ${on.toward}`;
};

const SHARES: Readonly<Record<string, string>> = {
	'0.5': 'half way',
	'0.25': 'a quarter of the way',
	'0.75': 'three quarters of the way'
};

/** How the handles of a curve lie. */
const HANDLES = {
	corner:
		'The square lines from the two ends meet at a corner; each handle goes 0.55 of the way from its end to that corner.',
	thirds: 'Each handle lies a third of the straight distance from its own end.',
	both: 'Where the square lines from two ends meet ahead of both, each handle goes 0.55 of the way to that corner; where they do not, it lies a third of the straight distance from its end.'
};

/** The rule of each kind of step, in its three rungs. */
export const steps = (v: Voice) => ({
	corner: ({ name }: { name: string }): Rungs => ({
		where: `${name} is the corner of the sheet.`,
		rule: 'The centre line and the top level meet there.',
		worked: 'It lies 0 across and 0 down.'
	}),
	mark: ({
		name,
		from,
		go,
		by,
		arithmetic
	}: Worked & { name: string; from: string; go: Compass }): Rungs => ({
		where: `Start at ${from} and go ${WAYS[go]}.`,
		rule: `From ${from} to ${name}: ${the(by)}.`,
		worked: `${capital(arithmetic)}, ${WAYS[go]} from ${from}.`
	}),
	meeting: ({
		name,
		down,
		across,
		x,
		y
	}: {
		name: string;
		down: string;
		across: string;
		x: Mm;
		y: Mm;
	}): Rungs => ({
		where: `Look straight down from ${down}, and straight across from ${across}.`,
		rule: `${name} lies where the square line down from ${down} meets the square line across from ${across}.`,
		worked: `${name} is as far across as ${down}, ${v.length(x)}, and as far down as ${across}, ${v.length(y)}.`
	}),
	division: ({
		name,
		from,
		to,
		share,
		whole,
		part,
		offset
	}: {
		name: string;
		from: string;
		to: string;
		share: number;
		whole: Mm;
		part: Mm;
		offset: Offset;
	}): Rungs => {
		const way = SHARES[String(share)] ?? `${v.number(share, 3)} of the way`;
		return {
			where: `Look between ${from} and ${to}.`,
			rule: `${name} lies ${way} from ${from} to ${to}.`,
			worked: `${from} to ${to} is ${v.length(whole)}; ${way} is ${v.length(part)}: from ${from} go ${offsetIn(v, offset)}.`
		};
	},
	along: ({ name, on, by, arithmetic }: Worked & { name: string; on: AlongWhat }): Rungs => {
		const [start, way] = [startWords(on), alongWords(on)];
		return {
			where: `Start at ${start} and go ${way}.`,
			rule: `From ${start} to ${name}, ${way}: ${the(by)}.`,
			worked: `${capital(arithmetic)}, ${way} from ${start}.`
		};
	},
	swing: ({
		name,
		from,
		side,
		by,
		level,
		depth,
		arithmetic
	}: Worked & {
		name: string;
		from: string;
		side: 'outward' | 'inward';
		level: Noun;
		depth: Mm;
	}): Rungs => ({
		where: `Swing a length about ${from}, ${side}, until its end lies on the level ${v.length(depth)} down.`,
		rule: `${from} to ${name} is ${the(by)}, and ${name} lies ${the(level)} below the corner.`,
		worked: `Swing ${arithmetic} from ${from} to the level ${v.length(depth)} below the corner.`
	}),
	level: ({ from, by, arithmetic }: Worked & { from: string }): Rungs => ({
		where: `Start at ${from} and go straight across.`,
		rule: `Square across from ${from}: the whole line at one depth, and as long as ${the(by)}.`,
		worked: `Across from ${from}, neither up nor down, for ${arithmetic}.`
	}),
	straight: ({
		first,
		last,
		through,
		length
	}: {
		first: string;
		last: string;
		through: readonly string[];
		length: Mm;
	}): Rungs => {
		const passing = through.length > 0 ? `, through ${v.list(through)}` : '';
		return {
			where: `Lay the ruler from ${first} to ${last}${passing}.`,
			rule: `A straight line from ${first} to ${last}${passing}.`,
			worked: `Choose ${first}, then ${last}: the line is ${v.length(length)} long.`
		};
	},
	curve: ({
		through,
		handles,
		pieces,
		length
	}: {
		through: readonly { readonly point: string; readonly heading: SaidHeading }[];
		handles: 'corner' | 'thirds' | 'both';
		pieces: readonly {
			readonly from: string;
			readonly out: Offset;
			readonly to: string;
			readonly into: Offset;
		}[];
		length: Mm;
	}): Rungs => {
		const ways = through.map(({ point, heading }) => `${point} ${headingWords(heading)}`);
		const lie = pieces.map(
			({ from, out, to, into }) =>
				`out of ${from}, ${offsetIn(v, out)}; into ${to}, ${offsetIn(v, into)} from it`
		);
		return {
			where: `Look at how the curve runs: through ${ways.join(', then ')}.`,
			rule: HANDLES[handles],
			worked: `Handles: ${lie.join('; ')}. The curve is ${v.length(length)} long.`
		};
	},
	turn: ({
		name,
		move,
		about,
		until,
		radius,
		angle
	}: {
		name: string;
		move: string;
		about: string;
		/** A point on whose line the part comes to lie, or the width by which it opens. */
		until: { readonly onto: string } | { readonly opening: Noun };
		radius: Mm;
		angle: Radians;
	}): Rungs => {
		const goal =
			'onto' in until
				? `it lies on the line from ${about} through ${until.onto}`
				: `it has opened by ${the(until.opening)}`;
		return {
			where: `Put a pin in ${about} and turn the part that holds ${move}.`,
			rule: `${name} is where ${move} comes to lie when it turns about ${about} until ${goal}. It stays as far from ${about} as it was.`,
			worked: `${about} to ${move} is ${v.length(radius)} and stays so; the part turns by ${v.fixed(Math.abs((angle * 180) / Math.PI), 1)}°.`
		};
	},
	spread: ({
		name,
		move,
		go,
		by,
		arithmetic
	}: Worked & { name: string; move: string; go: Compass }): Rungs => ({
		where: `Slide the part that holds ${move} ${WAYS[go]}, without turning it.`,
		rule: `${name} is where ${move} comes to lie: ${the(by)}, ${WAYS[go]}.`,
		worked: `${capital(arithmetic)}, ${WAYS[go]} from ${move}.`
	}),
	mirror: ({ name, move, fold }: { name: string; move: string; fold: string }): Rungs => ({
		where: `Fold along ${fold} and look where ${move} comes to lie.`,
		rule: `${name} lies as far beyond the fold ${fold} as ${move} lies before it, on a line square to the fold.`,
		worked: `Square from ${move} to the fold, and as far again.`
	}),
	folded: ({
		name,
		point,
		about,
		from,
		onto,
		radius,
		angle
	}: {
		name: string;
		point: string;
		about: string;
		from: string;
		onto: string;
		radius: Mm;
		angle: Radians;
	}): Rungs => ({
		where: `Fold the dart shut at ${about}, and look where ${point} comes to lie.`,
		rule: `${name} is where ${point} lies while ${from} lies on ${onto}: everything below the dart has turned about ${about}.`,
		worked: `${name} is as far from ${about} as ${point} is, ${v.length(radius)}; the fold turns it by ${v.fixed((angle * 180) / Math.PI, 1)}°.`
	}),
	crossing: ({
		name,
		of,
		over,
		from,
		through,
		length
	}: {
		name: string;
		/** The line that crosses, by its ends, and the fold that it is folded over on. */
		of: string;
		over: string | undefined;
		from: string;
		through: string;
		length: Mm;
	}): Rungs => {
		const line = over === undefined ? `the straight line ${of}` : `the line ${of}, folded over on ${over},`;
		return {
			where: `Look along the line from ${from} through ${through}.`,
			rule: `${name} lies where ${line} crosses the line from ${from} through ${through}.`,
			worked: `Along that line, ${name} lies ${v.length(length)} from ${from}.`
		};
	},
	section: ({ of, from, to }: { of: Noun; from: Mm; to: Mm }): Rungs => ({
		where: `Look along ${the(of)}.`,
		rule: `It is a part of ${the(of)}.`,
		worked: `From ${v.length(from)} to ${v.length(to)} along it.`
	}),
	chain: ({ of, lengths }: { of: readonly Noun[]; lengths: readonly Mm[] }): Rungs => ({
		where: `Look along ${v.list(of.map(the))}.`,
		rule: 'The lines run on as one.',
		worked: `They are ${v.list(lengths.map((each) => v.length(each)))} long.`
	}),
	parallel: ({ of, toward, by, arithmetic }: Worked & { of: Noun; toward: Compass }): Rungs => ({
		where: `Measure square from ${the(of)}, ${WAYS[toward]}.`,
		rule: `Everywhere as far from ${the(of)} as ${the(by)}.`,
		worked: `Square from ${the(of)} at several places: ${arithmetic}.`
	}),
	arc: ({
		about,
		from,
		radius,
		angle
	}: {
		about: string;
		from: string;
		radius: Mm;
		angle: Radians;
	}): Rungs => ({
		where: `Pin a string at ${about} and swing it from ${from}.`,
		rule: `Everywhere as far from ${about} as ${from} is.`,
		worked: `The string is ${v.length(radius)} long and swings through ${v.fixed(Math.abs((angle * 180) / Math.PI), 1)}°.`
	}),
	until: ({
		name,
		from,
		way,
		by,
		arithmetic,
		far,
		offset
	}: Worked & {
		name: string;
		from: string;
		/** Straight on, or round a centre. */
		way: Compass | { readonly about: string };
		far: Mm;
		offset: Offset;
	}): Rungs => {
		const going = typeof way === 'string' ? WAYS[way] : `round ${way.about}`;
		return {
			where: `Start at ${from} and go ${going}.`,
			rule: `${name} lies ${going} from ${from}, as far as makes the curve through it as long as ${the(by)}.`,
			worked: `The curve must be ${arithmetic}. That puts ${name} ${v.length(far)} from ${from}: ${offsetIn(v, offset)}.`
		};
	},
	traced: ({ name, label }: { name: string; label: Noun }): Rungs => ({
		where: `${name} is traced off the draft before.`,
		rule: `${the(label)} stands where that draft has it.`,
		worked: 'Nothing has to be measured.'
	}),
	carried: ({ name, of, step }: { name: string; of: string; step: string }): Rungs => ({
		where: `${name} is where ${of} went.`,
		rule: `${name} moved with ${step}, as if cut from one card.`,
		worked: 'Nothing has to be measured.'
	})
});
