import type { Body } from '#shared/body.ts';
import type { StepDone } from '#shared/hand-in.ts';
import { placementSchema, type Placement } from '#shared/placement.ts';
import { placementOfPath, placeOfPoint } from '#checker/placed.ts';
import { evaluate, type Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { isGiven } from '#drafting/steps/kinds.ts';
import type { Chance } from '#practice/chance.ts';

/** At how many steps the learner slips, and keeps a slip, as shares. */
const [SLIPS, KEEPS] = [0.33, 0.05];

/** The same a little further from the centre, in millimetres. */
const moved = (placement: Placement, by: number): Placement => {
	if (placement.kind === 'point') return { kind: 'point', at: [placement.at[0] + by, placement.at[1]] };
	const segments = placement.segments.map((piece) =>
		Object.fromEntries(Object.entries(piece).map(([name, [x, y]]) => [name, [x + by, y]]))
	);
	return placementSchema.parse({ kind: 'line', segments });
};

const answerOf = (draft: Draft, step: string): Placement | undefined => {
	const [point, line] = [draft.points[step], draft.lines[step]];
	if (point) return { kind: 'point', at: placeOfPoint(point) };
	return line && placementOfPath(line.path);
};

/** All that a learner who slips now and then does at some steps: each mark is put down, then checked. */
export const scriptedMarks = (
	methods: readonly Method[],
	asked: ReadonlySet<string>,
	body: Body,
	chance: Chance
): readonly Omit<StepDone, 'assignment'>[] => {
	const marks: Omit<StepDone, 'assignment'>[] = [];
	for (const method of methods) {
		const evaluation = evaluate(method, body);
		if (evaluation.kind !== 'drafted') throw new Error(`${method.id} cannot be drafted`);
		const put = (step: string, placement: Placement, kept = false): void => {
			const done = (checked: boolean, keeps: boolean): Omit<StepDone, 'assignment'> => ({
				...{ method: method.id, step },
				entry: { placement, checked, kept: keeps, help: keeps ? 1 : 0, shown: false }
			});
			marks.push(done(false, false), done(true, false), ...(kept ? [done(true, true)] : []));
		};
		for (const { name } of method.steps.filter((step) => !isGiven(step) && asked.has(step.name))) {
			const right = answerOf(evaluation.draft, name);
			if (!right) continue;
			const keeps = chance.fraction() < KEEPS;
			if (keeps || chance.fraction() < SLIPS) put(name, moved(right, 8 + 30 * chance.fraction()), keeps);
			if (!keeps) put(name, right);
		}
	}
	return marks;
};
