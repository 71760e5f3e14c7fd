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

/** "9 mm too far out, 2 mm too low": how far and which way a place lies from where it should. */
export const wayWords = (across: Mm, down: Mm, unit: Unit): string => {
	const said = (length: number, ahead: string, back: string): string[] => {
		const size = mm(Math.abs(length));
		return size < UNSPOKEN ? [] : [`${smallWords(size, unit)} ${length > 0 ? ahead : back}`];
	};
	const parts = [...said(across, 'too far out', 'too far in'), ...said(down, 'too low', 'too high')];
	return parts.join(', ') || 'a hair off';
};

const degrees = (angle: Radians): string => `${Number(((angle * 180) / Math.PI).toFixed(1))}°`;

const directionSentence = (finding: FindingOf<'direction'>): string => {
	const verb = finding.way === 'leaving' ? 'leaves' : 'reaches';
	const what = finding.square ? 'square' : 'on its course';
	return `It ${verb} ${finding.point} ${degrees(finding.turned)} off ${what}; up to ${degrees(finding.tolerance)} is allowed there.`;
};

const lengthSentence = ({ aspect, by, tolerance }: FindingOf<'length' | 'reach'>, unit: Unit): string => {
	const size = smallWords(mm(Math.abs(by)), unit);
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
			return `${PLACE_SUBJECTS[finding.aspect]} ${wayWords(finding.across, finding.down, unit)}.`;
		case 'direction':
			return directionSentence(finding);
		case 'course':
			return `At its worst it runs ${wayWords(finding.across, finding.down, unit)}; up to ${smallWords(finding.tolerance, unit)} is allowed.`;
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

/** A verdict in the learner's words. `name` is the step's name on the sheet, such as "A" or "the shoulder". */
export const verdictWords = (verdict: Verdict, name: string, unit: Unit): VerdictWords => {
	switch (verdict.answer) {
		case 'right':
			return { headline: `${name} is right. ${nearness(verdict.findings, unit)}`, sentences: [] };
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
