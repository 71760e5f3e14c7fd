/**
 * `npm run bench`: figures beside their goals. It prints and judges nothing: rates differ from
 * machine to machine, so the figures are ratios, shares and sizes. About half a minute, and a build where one is due.
 */
import { allowanceFigures } from './allowances.ts';
import { checkingFigures } from './checking.ts';
import { draftingFigures } from './drafting.ts';
import { exportFigures } from './exports.ts';
import type { Figure } from './figure.ts';
import { handingFigures } from './handing.ts';
import { pageSpeedFigures } from './page-speed.ts';
import { pageWeightFigures } from './page-weight.ts';
import { servingFigures } from './serving.ts';
import { patternFigures } from './patterns.ts';
import { submissionFigures } from './submissions.ts';

const say = ({ name, figure, goal, met }: Figure): void => {
	console.log(`${met ? 'met    ' : 'NOT MET'}  ${name}: ${figure}; goal: ${goal}`);
};

for (const measure of [
	draftingFigures,
	checkingFigures,
	patternFigures,
	allowanceFigures,
	submissionFigures,
	exportFigures,
	pageWeightFigures,
	pageSpeedFigures,
	servingFigures,
	handingFigures
]) {
	for (const figure of await measure()) say(figure);
}
