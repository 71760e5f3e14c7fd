import { DEMO_BODIES } from '#shared/bodies/index.ts';
import type { Placement } from '#shared/placement.ts';
import { MM_PER } from '#shared/units.ts';
import { diagnose } from '#checker/missteps/diagnose.ts';
import type { Diagnosis } from '#checker/missteps/misstep.ts';
import { diagnosisWords } from '#checker/missteps/words.ts';
import { readSum } from '#drafting/formula/sum.ts';
import { COMPASS } from '#drafting/steps/compass.ts';
import { moved } from '#geometry/point.ts';
import { backBlock, frontBlock, lessonMethod } from '../../drafting/lesson-method.ts';
import { draftOf } from '../../drafting/small-method.ts';
import { english } from '../../support/speech.ts';
import { TOLD_SLIPS, type ToldSlip } from './told-slips.ts';

const METHODS = {
	back: backBlock(),
	front: frontBlock(),
	'dress front': lessonMethod('62-dress-front-top'),
	'dress back': lessonMethod('68-dress-back-waist')
};

/** What the told slips' bodies chose, in millimetres, where they chose nothing else. */
const CHOSEN = {
	...{ bustEase: 40, hipEase: 40, shoulderDropBack: 30, shoulderDropFront: 40 },
	...{ armholeDown: 15, bustOut: 15 }
};

/** What Square Across says of a told slip. */
export const toldDiagnosis = ({ body: name, panel, step, at, typed }: ToldSlip): Diagnosis => {
	const found = DEMO_BODIES.find((each) => each.body.name === name)?.body;
	if (!found) throw new Error(`there is no ${name}`);
	const body = { ...found, allowances: { ...CHOSEN, ...found.allowances } };
	const draft = draftOf(METHODS[panel], body);
	const begin = typed && draft.points[typed.from];
	const place = begin && moved(begin, COMPASS[typed.go], readSum(typed.sum, typed.unit).value);
	const placement: Placement = {
		kind: 'point',
		at: place ? [place.x, place.y] : [at[0] * MM_PER.cm, at[1] * MM_PER.cm],
		...(typed ? { typed: { form: 'distance', ...typed } } : {})
	};
	return diagnose(METHODS[panel], step, body, draft, placement);
};

const placeWords = ({ at: [across, down], typed }: ToldSlip): string =>
	typed ? `\`${typed.sum}\` from ${typed.from}, ${typed.go}` : `${across} across, ${down} down`;

/** One row of the help page. */
export const toldRow = (slip: ToldSlip): string => {
	const says = diagnosisWords(toldDiagnosis(slip), english) || '(no guess)';
	return `| ${slip.body}, ${slip.panel} ${slip.step} | ${slip.tale} | ${placeWords(slip)} | ${says} |`;
};

/** The help page: every told slip, and what is said of it. */
export const toldPage = (): string => `# Missteps by example

Written by \`npm run measure:missteps\` from told-slips.ts. Slips as a teacher tells them, for the demo bodies, in centimetres, and what
Square Across says of each. Where a sum was typed it settles the matter; else only the place is known.

| whose, where | the slip | put at | what is said |
| --- | --- | --- | --- |
${TOLD_SLIPS.map(toldRow).join('\n')}
`;
