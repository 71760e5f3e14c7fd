import { mm } from '#shared/units.ts';
import { parallelPath } from '#geometry/parallel.ts';
import { pathLength, pointAtLength, type Path } from '#geometry/path.ts';
import { alongness, directionTo } from '#geometry/point.ts';
import type { Compass } from '#shared/method.ts';
import { lengthOf } from '../formula/value.ts';
import { saidFormula } from '../formula/words.ts';
import { COMPASS } from './compass.ts';
import { madeLine, NOTHING, type StepRules } from './step-rules.ts';

/** Whether the parallel on a line's positive side lies toward this way from it, as seen at its middle. */
const liesToward = (line: Path, toward: Compass): boolean => {
	const middle = (path: Path) => pointAtLength(path, mm(pathLength(path) / 2)) ?? path[0].from;
	const aside = directionTo(middle(line), middle(parallelPath(line, mm(1))));
	return aside === undefined || alongness(aside, COMPASS[toward]) >= 0;
};

/** A line everywhere equally far from a drawn one: a band's edge, a button stand. */
export const parallel: StepRules<'parallel'> = {
	makes: 'line',
	answer: () => NOTHING,
	rule: ({ by }) => [by],
	read: (file, formula) => ({ ...file, by: formula(file.by, 'by') }),
	formulas: ({ by }) => [by],
	needs: ({ of }) => [of],
	start: () => undefined,
	work: ({ of, by, toward }, scope) => {
		const [line, length] = [scope.line(of), lengthOf(by, scope)];
		return madeLine(parallelPath(line, liesToward(line, toward) ? length : mm(-length)));
	},
	explain: ({ of, by, toward }, scope, telling) => {
		const said = saidFormula(by, scope, telling);
		return {
			...telling.speech.words.steps.parallel({ of: telling.line(of), toward, ...said }),
			arithmetic: said.arithmetic
		};
	}
};
