import { UNSPOKEN } from '#shared/tolerances.ts';
import { mm, printLength, type Mm, type Radians, type Unit } from '#shared/units.ts';
import type { Finding, FindingOf, Verdict } from '#shared/verdict.ts';

/** What a learner reads of a verdict: a headline, and a sentence for each thing that is not right. */
export interface VerdictWords {
	readonly headline: string;
	readonly sentences: readonly string[];
}

/** The smallest inch part that is named; anything less is "a hair". */
const HAIR_INCHES: Mm = mm(25.4 / 32);

/** A small difference as a person says it: whole millimetres from 5 mm on, tenths below, or parts of an inch. */
export const smallWords = (length: Mm, unit: Unit): string => {
	if (unit === 'in') return length < HAIR_INCHES ? 'a hair' : printLength(length, 'in');
	if (length >= 100) return printLength(mm(Math.round(length)), 'cm');
	return printLength(mm(length >= 5 ? Math.round(length) : Math.round(length * 10) / 10), 'mm');
};

/** A size that is over its limit, never printed as though it were just the limit. */
const overWords = (size: Mm, limit: Mm | undefined, unit: Unit): string => {
	const words = smallWords(size, unit);
	const tooClose = limit !== undefined && size > limit && words === smallWords(limit, unit);
	return tooClose ? `a little over ${words}` : words;
};

/** "9 mm too far out, 2 mm too low": how far and which way a place lies from where it should; `limit` is how far it might have lain. */
export const wayWords = (across: Mm, down: Mm, unit: Unit, limit?: Mm): string => {
	const spoken = [
		{ length: across, ahead: 'too far out', back: 'too far in' },
		{ length: down, ahead: 'too low', back: 'too high' }
	].filter(({ length }) => Math.abs(length) >= UNSPOKEN);
	const words = spoken.map(({ length, ahead, back }) => {
		const size = overWords(mm(Math.abs(length)), spoken.length === 1 ? limit : undefined, unit);
		return `${size} ${length > 0 ? ahead : back}`;
	});
	return words.join(', ') || 'a hair off';
};

const degrees = (angle: Radians): string => `${Number(((angle * 180) / Math.PI).toFixed(1))}°`;

/** An angle that is over its limit, never printed as though it were just the limit. */
const overDegrees = (angle: Radians, limit: Radians): string =>
	angle > limit && degrees(angle) === degrees(limit) ? `a little over ${degrees(angle)}` : degrees(angle);

const directionSentence = (finding: FindingOf<'direction'>): string => {
	const verb = finding.way === 'leaving' ? 'leaves' : 'reaches';
	const upright = finding.wanted === 'down' || finding.wanted === 'up';
	const what = upright ? `straight ${finding.wanted ?? ''}` : finding.square ? 'square' : 'its course';
	return `It ${verb} ${finding.point} ${overDegrees(finding.turned, finding.tolerance)} off ${what}; up to ${degrees(finding.tolerance)} is allowed there.`;
};

/** A line may stray both ways by less than is allowed, and by more together. */
const courseSentence = ({ across, down, away, tolerance }: FindingOf<'course'>, unit: Unit): string => {
	const bothWays = Math.min(Math.abs(across), Math.abs(down)) >= UNSPOKEN;
	const together = bothWays ? `, together ${overWords(away, tolerance, unit)}` : '';
	return `At its worst it runs ${wayWords(across, down, unit, tolerance)}${together}; up to ${smallWords(tolerance, unit)} is allowed.`;
};

const lengthSentence = ({ aspect, by, tolerance }: FindingOf<'length' | 'reach'>, unit: Unit): string => {
	const size = overWords(mm(Math.abs(by)), tolerance, unit);
	if (aspect === 'reach') return `It stops ${size} short of where it must reach.`;
	return `It is ${size} too ${by > 0 ? 'long' : 'short'}; up to ${smallWords(tolerance, unit)} is allowed.`;
};

const PLACE_SUBJECTS = { place: 'It lies', start: 'Its first end lies', end: 'Its last end lies' } as const;

/** One finding as a sentence. */
const findingSentence = (finding: Finding, unit: Unit): string => {
	switch (finding.aspect) {
		case 'place':
		case 'start':
		case 'end':
			return `${PLACE_SUBJECTS[finding.aspect]} ${wayWords(finding.across, finding.down, unit, finding.tolerance)}.`;
		case 'direction':
			return directionSentence(finding);
		case 'course':
			return courseSentence(finding, unit);
		case 'length':
		case 'reach':
			return lengthSentence(finding, unit);
	}
};

/** How near a right answer came, for a learner who likes to know. */
const nearness = (findings: readonly Finding[], unit: Unit): string => {
	const away = findings.map((finding) =>
		'offBy' in finding ? finding.offBy : 'away' in finding ? finding.away : 0
	);
	const worst = mm(Math.max(0, ...away));
	return worst < UNSPOKEN ? 'Spot on.' : `Within ${smallWords(worst, unit)}.`;
};

/** A level that goes on further than it must is right, and the learner is told. */
const runsOn = (findings: readonly Finding[], unit: Unit): readonly string[] =>
	findings.flatMap((finding) =>
		finding.aspect === 'reach' && 'by' in finding && finding.by > finding.tolerance
			? [`It runs on ${smallWords(finding.by, unit)} further than it must.`]
			: []
	);

/** A verdict in the learner's words. `name` is the step's name on the sheet, such as "A" or "the shoulder". */
export const verdictWords = (verdict: Verdict, name: string, unit: Unit): VerdictWords => {
	switch (verdict.answer) {
		case 'right':
			return {
				headline: `${name} is right. ${nearness(verdict.findings, unit)}`,
				sentences: runsOn(verdict.findings, unit)
			};
		case 'wrong': {
			const failed = verdict.findings.filter(({ within }) => !within);
			return {
				headline: `${name} is not right yet.`,
				sentences: failed.map((each) => findingSentence(each, unit))
			};
		}
		case 'unfinished':
			return { headline: `Nothing is placed for ${name} yet.`, sentences: [] };
		case 'not-valid':
			return {
				headline: 'That entry cannot be used; nothing is counted.',
				sentences: [`${verdict.because}.`]
			};
		case 'our-fault':
			return {
				headline: 'The program could not judge this. That is our fault, and nothing is counted.',
				sentences: [verdict.because]
			};
	}
};
