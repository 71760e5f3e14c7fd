/** Apart from what exercises are made of: a form that names them needs no more. */
export const EXERCISE_KINDS = [
	'next-point',
	'find-wrong',
	'work-number',
	'true-seams',
	'find-start'
] as const;
/** What an exercise asks for. */
export type ExerciseKind = (typeof EXERCISE_KINDS)[number];
