import type { Answers, Exercise, ExerciseKind, ExerciseOf } from '#practice/exercises/exercise.ts';
import { exercise } from '#practice/exercises/kinds.ts';
import { library } from './methods.ts';

/** The exercise of this kind; the type follows from the kind. */
export const made = <K extends ExerciseKind>(
	kind: K,
	seed: number,
	method: string,
	step: string
): ExerciseOf<K> => exercise({ kind, seed, method, step }, library) as ExerciseOf<K>;

/** The right answer of any exercise, worked from what it holds. */
export const rightAnswer = (asked: Exercise): Answers[ExerciseKind] => {
	switch (asked.kind) {
		case 'find-start':
			return { point: asked.start };
		case 'next-point': {
			const right = asked.draft.points[asked.step];
			if (!right) throw new Error(`no ${asked.step}`);
			return { kind: 'point', at: [right.x, right.y] };
		}
		case 'find-wrong':
			return { point: asked.slip.step, choice: asked.slip.note };
		case 'work-number':
			return { typed: String(asked.right), unit: 'mm' };
		case 'true-seams':
			return {
				longer: asked.first.length > asked.second.length ? 'first' : 'second',
				by: `${asked.first.length} - ${asked.second.length}`,
				unit: 'mm',
				moved: [asked.right.x, asked.right.y]
			};
	}
};
