import { polyline } from '#geometry/path.ts';
import { distance, type SheetPoint } from '#geometry/point.ts';
import type { Scope } from '../formula/value.ts';
import { madeLine, NOTHING, type StepOf, type StepRules } from './step-rules.ts';

const places = (
	{ name, through }: StepOf<'straight'>,
	scope: Scope
): [SheetPoint, SheetPoint, ...SheetPoint[]] => {
	const [first, second, ...rest] = through.map((point) => scope.point(point));
	if (!first || !second) throw new Error(`the straight line ${name} has fewer than two points`);
	return [first, second, ...rest];
};

/** A straight line through two points, or through several in turn. */
export const straight: StepRules<'straight'> = {
	makes: 'line',
	answer: ({ through, given }) =>
		given ? NOTHING : { put: 'ends', first: through[0] ?? '', last: through.at(-1) ?? '' },
	passes: ({ through }) => through,
	read: (file) => file,
	formulas: () => [],
	needs: ({ through }) => through,
	start: ({ through }) => through[0],
	work: (step, scope) => madeLine(polyline(...places(step, scope))),
	explain: (step, scope, { speech }) => {
		const all = places(step, scope);
		const [first = '', last = ''] = [step.through[0], step.through.at(-1)];
		const length = distance(all[0], all.at(-1) ?? all[1]);
		return speech.words.steps.straight({ first, last, through: step.through.slice(1, -1), length });
	}
};
