import { momentIn } from '../day.ts';
import { mm, type Mm } from '../../units.ts';
import type { Voice } from '../voice.ts';
import type { NamedStep } from './desk.ts';
import { the } from './grammar.ts';

/** A step that was asked for, and how many of how many answered it so. */
interface Many {
	/** Undefined for two seams that are sewn together. */
	readonly step: NamedStep | undefined;
	readonly seam: string;
	readonly count: number;
	readonly of: number;
}

/** What is said of exercises that a class is set, and of several attempts at one assignment. */
export const practising = (v: Voice) => {
	const at = ({ step, seam }: Many): string =>
		step
			? `At ${step.point === undefined ? '' : `${step.point}, `}${the(step.label)},`
			: `At the seam "${seam}",`;
	const some = (many: Many): string => `${at(many)} ${many.count} of ${many.of}`;
	const where = (across: Mm, down: Mm): string =>
		`${v.length(mm(Math.abs(across)))} ${across < 0 ? 'in' : 'outward'}, ${v.length(down)} down, from the corner`;
	return {
		what: 'What is set',
		whats: { lessons: 'steps of lessons, drafted on the desk', practice: 'practice exercises' },
		exercises: 'Practice exercises',
		exercisesAbout:
			'Each learner has exercises of their own, each on another invented body, so that nobody can copy an answer.',
		drafts: 'Of which drafts',
		kinds: 'Kinds of exercise',
		kindNames: {
			'find-start': 'say from which point a step is measured',
			'next-point': 'place the next point',
			'find-wrong': 'find the wrong point of a finished draft, and what went wrong there',
			'work-number': 'work a number',
			'true-seams': 'true two seams, where a draft is sewn to another'
		},
		count: 'How many exercises (1 to 40)',
		tries: 'Tries at a step or an exercise (empty: as many as they like)',
		wholeAttempts: 'How often it may be done from the beginning',
		times: ({ times }: { times: number | null }) =>
			times === null ? 'as often as they like' : times === 1 ? 'once' : `up to ${times} times`,
		wholeAttemptsAbout:
			'Of several attempts the best counts; all are kept, and drawn numbers are others each time.',

		exercise: ({ number }: { number: number }) => `Exercise ${number}`,
		yourExercises: 'Your exercises',
		stands: {
			right: 'right',
			wrong: 'not right yet',
			kept: 'answered',
			begun: 'begun',
			new: 'not answered yet',
			missed: 'not right'
		},
		answerKept: 'Kept. You can change it until you hand in.',
		allAnswered: 'Every exercise is answered.',
		allRight: 'Every exercise is right.',

		attempt: ({ number }: { number: number }) => `Attempt ${number}`,
		attemptOf: ({ number, of }: { number: number; of: number | null }) =>
			of === null ? `Attempt ${number}` : `Attempt ${number} of ${of}`,
		attempts: 'Attempts',
		counts: 'counts',
		bestOf: ({ count }: { count: number }) => `the best of ${count} attempts`,
		earlier: 'This attempt is handed in. You can look at it; it stays as it is.',
		beginAnew: 'Begin anew',
		beginLater: 'You can begin anew as soon as what you have done is saved; the best attempt counts.',
		reallyBegin: 'Yes, begin anew: what I have done is kept, and the best attempt counts',
		markOf: ({ mark, outOf }: { mark: number; outOf: number }) => `${v.number(mark)} of ${v.number(outOf)}`,

		noSheets:
			'These are exercises: each is answered at its figure on the screen, so there is nothing to draw on paper.',
		doneBy: ({ done, begun, learners }: { done: number; begun: number; learners: number }) =>
			`${done} of ${learners} have every exercise right, ${begun} have begun`,
		answersOf: ({ name }: { name: string }) => `${name}’s answers`,
		asked: 'Asked',
		answers: 'Answers',
		noAnswer: 'Nothing was answered.',
		openedHelp: ({ at: time }: { at: number }) => `Opened help. ${momentIn(v.language, time)}`,
		said: ({ answer, at: time }: { answer: string; at: number }) =>
			`${answer} (${momentIn(v.language, time)})`,
		saidPoint: ({ point }: { point: string }) => `Named ${point}.`,
		saidPlace: ({ across, down }: { across: Mm; down: Mm }) => `Put it ${where(across, down)}.`,
		saidWrong: ({ point, did }: { point: string; did: string | undefined }) =>
			did === undefined ? `Named ${point} as the wrong one.` : `Named ${point} as the wrong one: ${did}`,
		saidNumber: ({ typed, unit }: { typed: string; unit: string }) => `Wrote ${typed} ${unit}.`,
		saidSeams: ({ first, by, unit, moved }: { first: boolean; by: string; unit: string; moved: boolean }) =>
			`Said that the ${first ? 'first' : 'second'} is the longer by ${by} ${unit}${moved ? ', and moved the point' : ''}.`,
		rightIs: 'The rule:',
		learnersMarks: 'what the learner put down',
		chooseExercise:
			'Choose an exercise in the table to see its answers, to give it another mark, or to write beside it.',

		/** Answers that no rule explains, by what was asked: each with a sentence for the board. */
		missed: {
			start: (many: Many) => `${some(many)} named another point than the one from which it is measured.`,
			place: (many: Many) => `${some(many)} put the point elsewhere, in a way that no rule explains.`,
			number: (many: Many) => `${some(many)} worked another number, in a way that no rule explains.`,
			point: (many: Many) => `${some(many)} did not see that the point was the wrong one of the draft.`,
			rule: (many: Many) => `${some(many)} saw the wrong point, and took another reason for it.`,
			longer: (many: Many) => `${some(many)} took the shorter edge for the longer.`,
			difference: (many: Many) => `${some(many)} worked another difference between the two edges.`
		},
		board: {
			start: 'Before a number is worked: from which point does the tape start?',
			place: 'Let us place this point together once more.',
			number: 'Let us work this number together once more.',
			point: 'Measure each point from those before it: which one does not follow its rule?',
			rule: 'What would have led to this place? Try each reason with the tape.',
			longer: 'Measure each edge along its line, piece by piece, and add the pieces up.',
			difference: 'Measure each edge along its line, piece by piece, and add the pieces up.'
		}
	};
};
