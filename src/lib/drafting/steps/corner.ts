import { at } from '#geometry/point.ts';
import { madePoint, type StepRules } from './step-rules.ts';

/** The corner from which everything is measured: the centre line meets the level of the side neck point there. */
export const corner: StepRules<'corner'> = {
	makes: 'point',
	given: true,
	read: (file) => file,
	formulas: () => [],
	needs: () => [],
	start: () => undefined,
	work: () => madePoint(at(0, 0)),
	explain: ({ name }) => ({
		where: `${name} is the corner of the sheet.`,
		rule: 'The centre line and the top level meet there.',
		worked: 'It lies 0 across and 0 down.'
	})
};
