import type { Mm } from '../../units.ts';
import type { Noun } from '../noun.ts';
import type { Voice } from '../voice.ts';
import { capital, the, The, within } from './grammar.ts';
import { partOf } from './nouns.ts';
import { smallIn, wayOff } from './slight.ts';

/** A line as data: what it is called, and the draft that it is of where that is another one. */
export interface LineName {
	readonly noun: Noun;
	readonly of?: Noun;
}
/** The lines of a seam, in turn. */
interface Lines {
	readonly lines: readonly LineName[];
}
/** How a point is moved along its line: so far, and then so far from the end that stays. */
interface Move {
	readonly point: string;
	readonly by: Mm;
	readonly from: string;
	readonly reach: Mm;
}
interface CannotBeAsked {
	readonly step: string;
	readonly method: string;
	readonly kind: string;
	readonly near: string | undefined;
}
interface Point {
	readonly point: string;
}
interface NamedPoint extends Point {
	readonly noun: Noun;
}

/** Exercises, what is said of answers, and how rules stand. */
export const practice = (v: Voice) => {
	const small = (length: Mm): string => smallIn(v, length);
	const sum = (parts: readonly Mm[], whole: Mm): string =>
		parts.length > 1
			? `${parts.map((part) => v.length(part)).join(' + ')} = ${v.length(whole)}`
			: v.length(whole);
	const lineNoun = ({ noun, of }: LineName): Noun => (of ? partOf(noun, of) : noun);
	const named = (lines: readonly LineName[]): string => v.list(lines.map((line) => the(lineNoun(line))));
	const STANDINGS = {
		new: 'new',
		begun: 'not yet',
		coming: 'coming',
		secure: 'secure',
		due: 'due again'
	} as const;
	const RESULTS = {
		right: 'right at once',
		wrong: 'not at once',
		helped: 'with help',
		passed: 'passed over'
	} as const;
	return {
		heading: 'Practice',
		about:
			'Ten short exercises, each on a new body: say where a rule starts, place a point, find the slip in a finished draft, work a number, true two seams. Rules that you know least come most, and what you knew comes again after some days. Nothing is marked.',
		topics: 'What have you drafted?',
		topicsAbout: 'Practice asks only for what you have met. Choose at least one.',
		begin: 'Begin a set of ten',
		again: 'Another ten',
		exerciseOf: ({ number, of }: { number: number; of: number }) => `Exercise ${number} of ${of}`,
		result: ({ result }: { result: keyof typeof RESULTS }): string => RESULTS[result],
		end: 'End this set',
		finished: 'That was the set',
		summary: (all: { of: number; right: number; wrong: number; helped: number; passed: number }) =>
			`Of ${all.of}: ${all.right} right at once, ${all.wrong} not at once, ${all.helped} with help${all.passed > 0 ? `, ${all.passed} passed over` : ''}.`,

		/** A part that was finished a week ago: what has stayed of it. */
		probe: 'What has stayed?',
		probeAbout: ({ draft, count }: { draft: string; count: number }) =>
			`You finished ${within(draft)} a week ago or more. ${v.plural(count, { one: 'One exercise', other: `${count} exercises` })} on new bodies, without help, show what has stayed. The result is yours alone: it is kept in this browser and sent nowhere.`,
		probeBegin: 'Try it',
		probeDue: ({ draft }: { draft: string }) =>
			`A week has passed since ${within(draft)}: try what has stayed`,
		probeOver: ({ right, of, stayed }: { right: number; of: number; stayed: boolean }) =>
			`${right} of ${of} right at once. ${stayed ? 'That has stayed.' : 'What was missed comes more often in practice now, and its lessons can be read again.'}`,
		probes: 'What had stayed after a week',
		probeResult: ({ draft, right, of }: { draft: string; right: number; of: number }) =>
			`${draft}: ${right} of ${of} right at once`,
		newcomer:
			'Nothing is drafted in this browser yet. Choose what you have drafted elsewhere, or draft first:',
		toLessons: 'the lessons',
		startAmong: ({ points }: { points: readonly string[] }) => `It is one of these: ${v.either(points)}.`,

		firstHow: 'First, how it is done',
		haveRead: 'I have read it',
		theRule: 'The rule:',
		next: 'Next exercise',
		leave: 'Leave it, next exercise',
		pass: 'Pass this one over',
		showHow: 'Show me how',
		check: 'Check',
		numbersOf: ({ body }: { body: string }) => `Numbers of ${body}`,

		askStart: ({ point, noun }: NamedPoint) => `From which point is ${point}, ${the(noun)}, measured?`,
		startPoint: 'The point it starts from',
		tapStart: 'Tap it on the sheet, or choose it here.',
		nameStart: 'name a point that stands on the sheet',
		rightStart: ({ point, step }: Point & { step: string }) => `Yes: ${step} is measured from ${point}.`,
		wrongStart: ({ point, step }: Point & { step: string }) => `${step} is not measured from ${point}.`,
		usedToo: ({ point, step }: Point & { step: string }) =>
			`The rule of ${step} uses ${point} too, but the measuring does not begin there.`,

		placeNext: ({ point, noun }: NamedPoint) => `Place ${point}, ${the(noun)}.`,

		askNumber: ({ where, point, noun }: NamedPoint & { where: string }) =>
			`${where} How far is it to ${point}, ${the(noun)}?`,
		yourNumber: 'Your number, or a sum',
		soFar: 'What is drafted so far.',
		noNumber: 'No number is written yet.',
		rightNumber: 'That is the number.',
		wrongNumber: 'That is not the number yet.',
		tooMuch: ({ by }: { by: Mm }) => `It is ${small(by)} too much.`,
		tooLittle: ({ by }: { by: Mm }) => `It is ${small(by)} too little.`,

		askWrong: ({ body }: { body: string }) =>
			`Someone drafted this for ${body}. One point was put in the wrong place, and all after it followed. Which point is it, and what went wrong there?`,
		withSlip: 'The finished draft, with one slip in it.',
		wrongPoint: 'The wrong point',
		choose: 'choose',
		pointNamed: ({ point, noun }: NamedPoint) => `${point}, ${the(noun)}`,
		whatWentWrong: ({ point }: Point) => `What went wrong at ${point}?`,
		measured: `Measured on this sheet, from the corner (${v.unit})`,
		point: 'Point',
		across: 'across',
		down: 'down',
		namePoint: 'name a point of the draft, and what went wrong there',
		noSuspect: ({ point }: Point) => `${point} is no point that could be wrong`,
		notThisPoint: ({ point }: Point) => `${point} is not the wrong one.`,
		thisPoint: ({ point }: Point) => `${point} is the wrong one. What went wrong there?`,
		offered: 'choose one of what is offered',
		foundWrong: ({ point }: Point) => `Yes: ${point} is the wrong one, and that is why.`,
		notForThat: ({ point }: Point) => `${point} is the wrong one, but not for that reason.`,
		sound: ({ point }: Point) => `${point} stands where its rule puts it from the points before it.`,
		movedBefore: 'What it was measured from is not all where it should be.',

		askSeams: ({ point }: Point) =>
			`These two edges are to be sewn together. Which is the longer, and by how much? Then move ${point} along its line until they agree.`,
		firstSeam: ({ lines }: Lines) => `First: ${named(lines)}`,
		secondSeam: ({ lines }: Lines) => `Second: ${named(lines)}`,
		line: (line: LineName) => `${The(lineNoun(line))}:`,
		bothSeams: 'The first seam drawn in full, the second dotted.',
		whichLonger: 'Which is the longer?',
		theFirst: 'the first',
		theSecond: 'the second',
		howMuch: 'By how much?',
		putAt: ({ point, from, length }: { point: string; from: string; length: Mm }) =>
			`${point} lies ${v.length(length)} from ${from}; put it at`,
		sayLonger: 'say which seam is the longer, and by how much',
		rightDifference: 'That is the difference.',
		wrongDifference: 'That is not the difference yet.',
		longerIs: ({ lines }: Lines) => `The longer is ${named(lines)}.`,
		differenceTooGreat: ({ by }: { by: Mm }) => `Your difference is ${small(by)} too great.`,
		differenceTooSmall: ({ by }: { by: Mm }) => `Your difference is ${small(by)} too small.`,
		nowMove: ({ point }: Point) => `That is the difference. Now move ${point}.`,
		pointLies: ({ point, across, down, tolerance }: Point & { across: Mm; down: Mm; tolerance: Mm }) =>
			`${point} lies ${wayOff(v, { across, down, limit: tolerance })}.`,
		seamsAgree: 'The two seams agree now.',
		seamsDisagree: 'The two seams do not agree yet.',
		measureEdges: 'Measure each edge along its line, piece by piece, and add the pieces up.',
		seamRule: ({ first, second }: { first: readonly LineName[]; second: readonly LineName[] }) =>
			`Two edges that are sewn together must be as long as each other: ${named(first)} as long as ${named(second)}.`,
		seamMeasures: ({ lines, parts, whole }: Lines & { parts: readonly Mm[]; whole: Mm }) =>
			`${capital(named(lines))}: ${sum(parts, whole)}.`,
		moveToward: (move: Move) =>
			`Move ${move.point} ${v.length(move.by)} along its line, toward ${move.from}, so that it lies ${v.length(move.reach)} from there.`,
		moveAway: (move: Move) =>
			`Move ${move.point} ${v.length(move.by)} along its line, away from ${move.from}, so that it lies ${v.length(move.reach)} from there.`,

		nothingAnswered: 'Nothing is answered yet.',
		cannotBeAsked: ({ step, method, kind, near }: CannotBeAsked) =>
			`"${step}" of ${method} cannot be asked as ${kind}${near === undefined ? '' : ` (did you mean "${near}"?)`}`,

		standings: 'How the rules stand',
		standingsAbout:
			'A guide to what is worth practising, never a grade. A rule is secure once it was right on different bodies and on different days.',
		allNew: ({ count }: { count: number }) => `All ${count} are still new to you.`,
		twoSeams: ({ seam }: { seam: string }) => `Two seams: ${seam}`,
		known: 'How likely it is known',
		share: ({ share }: { share: number }) => `${Math.round(share * 100)} %`,
		standing: ({ standing }: { standing: keyof typeof STANDINGS }): string => STANDINGS[standing]
	};
};
