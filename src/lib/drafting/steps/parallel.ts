import { mm } from '#shared/units.ts';
import { message } from '#shared/speech/message.ts';
import { parallelPath, runsBack } from '#geometry/parallel.ts';
import { pathLength, pointAtLength, type Path } from '#geometry/path.ts';
import { alongness, directionTo } from '#geometry/point.ts';
import type { Compass } from '#shared/method.ts';
import { lengthOf } from '../formula/value.ts';
import { saidFormula } from '../formula/words.ts';
import { COMPASS } from './compass.ts';
import { impossible, madeLine, NOTHING, type StepRules } from './step-rules.ts';

/** Where a line is looked at, as shares of its length. */
const LOOKED_AT = [0, 0.25, 0.5, 0.75, 1];

/** Whether the parallel on a line's positive side lies toward this way from it, as seen where it does so the most clearly. */
const liesToward = (line: Path, toward: Compass): boolean => {
	const beside = parallelPath(line, mm(1));
	const at = (path: Path, share: number) => pointAtLength(path, mm(share * pathLength(path))) ?? path[0].from;
	const ways = LOOKED_AT.map((share) => {
		const aside = directionTo(at(line, share), at(beside, share));
		return aside ? alongness(aside, COMPASS[toward]) : 0;
	});
	return ways.reduce((clearest, way) => (Math.abs(way) > Math.abs(clearest) ? way : clearest), 0) >= 0;
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
	work: ({ of, by, toward, label, odds }, scope) => {
		const [line, length] = [scope.line(of), lengthOf(by, scope)];
		const aside = liesToward(line, toward) ? length : mm(-length);
		return odds && runsBack(line, aside)
			? impossible(message('drafts', 'runsBack', { noun: label }))
			: madeLine(parallelPath(line, aside));
	},
	explain: ({ of, by, toward }, scope, telling) => {
		const said = saidFormula(by, scope, telling);
		return {
			...telling.speech.words.steps.parallel({ of: telling.line(of), toward, ...said }),
			arithmetic: said.arithmetic
		};
	}
};
