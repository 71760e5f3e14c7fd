import type { AllowanceValues } from '#shared/allowances.ts';
import type { Body } from '#shared/body.ts';
import type { Unit } from '#shared/units.ts';
import { scopeOf, type Draft } from './evaluate.ts';
import type { Speech } from './formula/words.ts';
import { stepNamed, type Method } from './method.ts';
import { explainStep } from './steps/kinds.ts';
import type { Explanation } from './steps/step-rules.ts';

const speechOf = (method: Method, unit: Unit): Speech => ({
	unit,
	allowances: 'named',
	allowanceWords: (key) => method.allowances.find((each) => each.key === key)?.words ?? key,
	lineWords: (name) => method.steps.find((each) => each.name === name)?.label ?? name
});

/**
 * The rule of one step in words, with its arithmetic for this body: "half the back width + 3 =
 * 19.2 + 3 = 22.2 cm". `draft` holds the earlier points that the rule leans on; lengths are written
 * in `unit`.
 */
export const explain = (
	method: Method,
	stepName: string,
	body: Body,
	draft: Pick<Draft, 'points' | 'lines'>,
	unit: Unit,
	chosen: AllowanceValues = {}
): Explanation =>
	explainStep(stepNamed(method, stepName), scopeOf(method, body, draft, chosen), speechOf(method, unit));
