import { BadInput } from '#shared/bad-input.ts';
import type { CarriedFile, StepFile, TraceFile, WrittenStep } from '#shared/method.ts';
import type { Language } from '#shared/speech/language.ts';
import { movedNoun, readNoun, type Noun } from '#shared/speech/noun.ts';
import { nearestName } from '#shared/nearest-name.ts';
import { message } from '#shared/speech/message.ts';
import type { Method } from './method.ts';
import { isPointName } from './names.ts';
import { stepMotion } from './steps/kinds.ts';
import type { Step } from './steps/step-rules.ts';

/** The steps that nobody draws: what is traced off another draft, and what a motion carries with it. */

/** The names of a list are the same here and there; a record says both: here, then there. */
const pairs = (names: TraceFile['points']): readonly (readonly [here: string, there: string])[] =>
	Array.isArray(names) ? names.map((name) => [name, name] as const) : Object.entries(names);

/** Reads what is traced off the drafts of other methods. Throws BadInput for a draft, point or line that is not there. */
export const readTraced = (
	traces: readonly TraceFile[],
	uses: Readonly<Record<string, Method>>,
	place: string
): readonly Step[] =>
	traces.flatMap(({ from, points, lines }) => {
		const where = `${place}: trace ${from}`;
		const method = uses[from];
		if (!method)
			throw new BadInput(
				where,
				message('reading', 'noMethodUsed', { near: nearestName(from, Object.keys(uses)) })
			);
		return [...pairs(points), ...pairs(lines)].map(([name, there]): Step => {
			const step = method.steps.find((each) => each.name === there);
			if (!step) {
				const names = method.steps.map((each) => each.name);
				throw new BadInput(
					where,
					message('reading', 'noTraced', { method: method.id, name: there, near: nearestName(there, names) })
				);
			}
			return { kind: 'traced', name, label: step.label, of: `${from}.${there}` };
		});
	});

type Named = Pick<StepFile | Step, 'kind' | 'name' | 'label'> & { readonly of?: unknown };

/** What a thing was called before anything was moved, which may have been more than once. */
const labelAtRest = (name: string, all: readonly Named[], language: Language): Noun => {
	const thing = all.find((each) => each.name === name);
	if (!thing) return { name };
	if (thing.kind === 'carried' && typeof thing.of === 'string') return labelAtRest(thing.of, all, language);
	return typeof thing.label === 'string' ? readNoun(thing.label, language) : thing.label;
};

/**
 * A method's steps with one more for everything that a motion carries. What is carried is drafted where
 * the thing itself is: a motion that this body does not need leaves it where it was.
 */
export const withCarried = (
	steps: readonly WrittenStep[],
	traced: readonly Step[],
	place: string,
	language: Language
): readonly StepFile[] => {
	const made: StepFile[] = [];
	for (const step of steps) {
		made.push(step);
		const motion = stepMotion(step);
		if (!motion || !('carries' in step)) continue;
		for (const [name, of] of Object.entries(step.carries)) {
			if (isPointName(name) !== isPointName(of))
				throw new BadInput(
					`${place}: step ${step.name}: carries`,
					message('reading', 'carriedKind', { of, name })
				);
			const carried: CarriedFile = {
				kind: 'carried',
				name,
				label: movedNoun(labelAtRest(of, [...made, ...steps, ...traced], language), language),
				of,
				with: step.name,
				motion
			};
			made.push(carried);
		}
	}
	return made;
};
