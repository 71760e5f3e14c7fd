import { mm, printLength } from '#shared/units.ts';
import { between, distance } from '#geometry/point.ts';
import { numberOf } from '../formula/value.ts';
import { offsetWords } from '../words.ts';
import { madePoint, type StepRules } from './step-rules.ts';

const SHARES: Readonly<Record<string, string>> = {
	'0.5': 'half way',
	'0.25': 'a quarter of the way',
	'0.75': 'three quarters of the way'
};
const shareWords = (share: number): string =>
	SHARES[String(share)] ?? `${Number(share.toFixed(3))} of the way`;

/** A point that divides the straight way between two others; at half it is their middle. */
export const division: StepRules<'division'> = {
	makes: 'point',
	read: (file, formula) => ({ ...file, at: formula(file.at, 'at', 'share') }),
	formulas: ({ at }) => [at],
	needs: ({ from, to }) => [from, to],
	start: ({ from }) => from,
	work: ({ from, to, at }, scope) =>
		madePoint(between(scope.point(from), scope.point(to), numberOf(at, scope))),
	explain: ({ name, from, to, at }, scope, { unit }) => {
		const [start, end, share] = [scope.point(from), scope.point(to), numberOf(at, scope)];
		const whole = distance(start, end);
		return {
			where: `Look between ${from} and ${to}.`,
			rule: `${name} lies ${shareWords(share)} from ${from} to ${to}.`,
			worked: `${from} to ${to} is ${printLength(whole, unit)}; ${shareWords(share)} is ${printLength(mm(whole * share), unit)}: from ${from} go ${offsetWords(start, between(start, end, share), unit)}.`
		};
	}
};
