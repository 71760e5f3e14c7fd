import { UNSPOKEN } from '../../tolerances.ts';
import { mm, radians, type Mm, type Radians } from '../../units.ts';
import type { FindingOf } from '../../verdict.ts';
import type { Noun } from '../noun.ts';
import type { Voice } from '../voice.ts';
import { the, The } from './grammar.ts';
import { partOf } from './nouns.ts';
import { overIn, smallIn, wayOff, type Off } from './slight.ts';

/** The aspects that are a place, by what lies there. */
const SUBJECTS = { place: 'It lies', start: 'Its first end lies', end: 'Its last end lies' } as const;

/** A handle of a curve, by the point that it leaves or reaches, and how far it lies from its place. */
export interface HandleOff {
	readonly point: string;
	readonly leaving: boolean;
	readonly across: Mm;
	readonly down: Mm;
}

/** A point or line that was put down, and the draft that it is of where that is another one. */
export interface Mark {
	readonly noun: Noun;
	readonly of?: Noun;
}

/** "K", "the back's K". */
export const markNoun = ({ noun, of }: Mark): Noun => (of ? partOf(noun, of) : noun);

/** What the checker says of a placement. */
export const verdicts = (v: Voice) => {
	const small = (length: Mm): string => smallIn(v, length);
	const over = (size: Mm, limit: Mm | undefined): string => overIn(v, size, limit);
	const overDegrees = (angle: Radians, limit: Radians): string =>
		angle > limit && v.degrees(angle) === v.degrees(limit)
			? `a little over ${v.degrees(angle)}`
			: v.degrees(angle);
	const way = (off: Off): string => wayOff(v, off);
	return {
		small,
		way,
		right: ({ step, nearness }: { step: Noun; nearness: string }) => `${The(step)} is right. ${nearness}`,
		wrong: ({ step }: { step: Noun }) => `${The(step)} is not right yet.`,
		unfinished: ({ step }: { step: Noun }) => `Nothing is placed for ${the(step)} yet.`,
		notValid: 'That entry cannot be used; nothing is counted.',
		excused: ({ step }: { step: Noun }) => `${The(step)} is not judged yet, and costs nothing.`,
		/** What the learner's own earlier marks leave no place for. */
		putFirst: ({ first }: { first: readonly Mark[] }) =>
			`Put ${v.list(first.map((mark) => the(markNoun(mark))))} right first: as it is, this cannot be drawn.`,
		ourFault: 'The program could not judge this. That is our fault, and nothing is counted.',
		because: ({ because }: { because: string }) => `${because}.`,
		spotOn: 'Spot on.',
		within: ({ worst }: { worst: Mm }) => `Within ${small(worst)}.`,
		place: ({ aspect, across, down, tolerance }: FindingOf<'place' | 'start' | 'end'>) =>
			`${SUBJECTS[aspect]} ${way({ across, down, limit: tolerance })}.`,
		/** A part that was turned by another angle than the rule's. */
		turned: ({ drawn, wanted }: { drawn: Radians; wanted: Radians }) => {
			const [size, rule] = [v.degrees(radians(Math.abs(drawn))), v.degrees(radians(Math.abs(wanted)))];
			const turn = drawn === 0 ? 'not turned' : `turned ${size} ${drawn > 0 ? 'clockwise' : 'anticlockwise'}`;
			if (drawn === 0)
				return `It is ${turn}; the rule turns it ${rule} ${wanted > 0 ? 'clockwise' : 'anticlockwise'}.`;
			return `It is ${turn}; the rule turns it ${rule}${drawn * wanted < 0 ? ' the other way' : ''}.`;
		},
		/** The handle of a curve that lies furthest from its place. */
		handle: ({ point, leaving, across, down }: HandleOff) =>
			`The handle ${leaving ? 'out of' : 'into'} ${point} lies ${way({ across, down, limit: undefined })}.`,
		direction: ({ way: side, point, wanted, square, turned, tolerance }: FindingOf<'direction'>) => {
			const verb = side === 'leaving' ? 'leaves' : 'reaches';
			const upright = wanted === 'down' || wanted === 'up';
			const what = upright ? `straight ${wanted}` : square ? 'square' : 'its course';
			return `It ${verb} ${point} ${overDegrees(turned, tolerance)} off ${what}; up to ${v.degrees(tolerance)} is allowed there.`;
		},
		/** A line may stray both ways by less than is allowed, and by more together. */
		course: ({ across, down, away, tolerance }: FindingOf<'course'>) => {
			const bothWays = Math.min(Math.abs(across), Math.abs(down)) >= UNSPOKEN;
			const together = bothWays ? `, together ${over(away, tolerance)}` : '';
			return `At its worst it runs ${way({ across, down, limit: bothWays ? undefined : tolerance })}${together}; up to ${small(tolerance)} is allowed.`;
		},
		length: ({ by, tolerance }: FindingOf<'length' | 'reach'>) =>
			`It is ${over(mm(Math.abs(by)), tolerance)} too ${by > 0 ? 'long' : 'short'}; up to ${small(tolerance)} is allowed.`,
		reach: ({ by, tolerance }: FindingOf<'length' | 'reach'>) =>
			by > 0
				? `It goes ${over(by, tolerance)} further than the rule takes it.`
				: `It stops ${over(mm(-by), tolerance)} short of where it must reach.`,
		strays: ({ away }: { away: Mm }) => `strays ${small(away)}`,
		differs: ({ by }: { by: Mm }) => `${small(mm(Math.abs(by)))} ${by > 0 ? 'longer' : 'shorter'}`,
		noDifference: 'no difference to speak of',
		noPlacement: ({ where, issue }: { where: string; issue: string }) =>
			['this is not a placement', where, issue].filter(Boolean).join(': '),
		asksForPoint: 'this step asks for a point, and a line was drawn',
		asksForLine: 'this step asks for a line, and a point was placed',
		notJoined: 'the pieces of the line do not join',
		noLength: 'the line begins and ends at the same place',
		misread: ({ place, rule }: { place: string; rule: string }) => `${place}: ${rule}`,
		/** What went wrong in the program, as it said so itself. */
		fault: ({ words }: { words: string }) => words
	};
};
