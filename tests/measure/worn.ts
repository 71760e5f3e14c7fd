import { readBody, type Body } from '#shared/body.ts';
import { cured, cureOf } from '#garment/cure.ts';
import type { Garment } from '#garment/garment.ts';
import { NO_CHOICES, sewnFor, type Choices, type Sewn } from '#garment/sewn.ts';
import { figureOf, surveyRows, type Sample, type SurveyRow } from '../reference/survey-bodies.ts';

/** A person of the survey as a body; `further` adds what may be taken as well. */
const bodyOf = (row: SurveyRow, further: boolean): Body => {
	const cm = (column: string): number => Number(row[column]);
	const more = {
		shoulderLength: cm('shoulder_length'),
		shoulderDrop: cm('side_neck_height') - cm('acromion_height'),
		acrossBack: cm('back_width_fold'),
		scyeDepth: cm('scye_depth'),
		upperArm: cm('upper_arm')
	};
	return readBody({
		...figureOf(row),
		...(further ? Object.fromEntries(Object.entries(more).filter(([, value]) => value >= 5)) : {})
	});
};

/** The 300 women or the 300 men of the survey's samples. */
export const sampled = (sample: Sample, further = false): readonly Body[] =>
	surveyRows(sample).map((row) => bodyOf(row, further));

/** A garment for one body: with the usual numbers, and with every cure that is offered. */
export interface Worn {
	readonly before: Sewn;
	readonly after: Sewn;
	/** Cures that did not do what they said when they were drafted again: there must be none. */
	readonly broken: readonly string[];
	/** What is said of the checks that still fail. */
	readonly uncured: readonly string[];
}

const failing = ({ wear }: Sewn): readonly string[] =>
	wear.flatMap(({ name, state }) => (state === 'fails' ? [name] : []));

const wrong = ({ seams, runs, numbers }: Sewn): number =>
	[...seams, ...runs, ...numbers].filter(({ within }) => !within).length;

/** More rounds than a garment has checks. */
const MOST_ROUNDS = 12;

/** Takes up cures one after another, as someone would who presses every button. Undefined where the body is refused. */
export const worn = (garment: Garment, body: Body): Worn | undefined => {
	const work = sewnFor(garment, body, NO_CHOICES);
	if (work.kind === 'refused') return undefined;
	const broken: string[] = [];
	let [choices, after]: [Choices, Sewn] = [NO_CHOICES, work.sewn];
	let uncured: string[] = [];
	for (let round = 0; round < MOST_ROUNDS; round++) {
		uncured = [];
		let changed = false;
		for (const name of failing(after)) {
			const cure = cureOf(garment, body, choices, name);
			if (cure.kind !== 'cure') {
				const odds =
					cure.kind === 'odds' ? ('label' in cure.spoilt ? cure.spoilt.label : cure.spoilt.kind) : '';
				uncured.push(`${name}: ${cure.kind} ${odds}`);
				continue;
			}
			choices = cured(choices, cure.changes);
			const again = sewnFor(garment, body, choices);
			if (again.kind === 'refused') {
				broken.push(`${name}: refused`);
				break;
			}
			const before = failing(after);
			const spoilt = failing(again.sewn).filter((each) => each === name || !before.includes(each));
			if (spoilt.length > 0 || wrong(again.sewn) > wrong(after)) broken.push(`${name}: ${spoilt.join(' ')}`);
			after = again.sewn;
			changed = true;
			break;
		}
		if (!changed) break;
	}
	return { before: work.sewn, after, broken, uncured };
};
