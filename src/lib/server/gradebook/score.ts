import { isLanguage, type Language } from '#shared/speech/language.ts';
import { serverSpeech } from '#shared/speech/server-speech.ts';
import { endOf, eventsOf, verdictOf, type Assignment, type Seen } from '../handing/attempts.ts';
import type { AttemptRow } from '../store/tables.ts';
import type { World } from '../world.ts';

/** What is to arrive of one learner's work, but for who and when: LTI Assignment and Grade Services 2.0, section 3.4, "Score publish service". */
export interface Score {
	readonly activityProgress: 'InProgress' | 'Completed';
	readonly gradingProgress: 'Pending' | 'FullyGraded';
	/** Both or neither; never one as a share of something else. */
	readonly scoreGiven?: number;
	readonly scoreMaximum?: number;
	/** A score without one takes the last one away, so each brings it again. */
	readonly comment?: string;
	/** When the learner handed in what is marked, whenever that is sent. */
	readonly submission?: { readonly submittedAt: string };
}

const isUnfinished = ({ steps }: Seen): boolean =>
	steps.some(({ verdict: { answer } }) => answer === 'unfinished' || answer === 'cannot-tell');

const commentOf = async ({ total }: Seen, language: string): Promise<string> => {
	const known: Language = isLanguage(language) ? language : 'en';
	const { words } = await serverSpeech(known);
	return words.platform.comment(total);
};

/** A score, and when it must be looked at again even if nothing comes in; null for never. */
interface Looked {
	readonly score: Score;
	readonly upto: number;
	readonly lookAt: number | null;
}

/**
 * The score of an attempt as it stands. What is not finished is pending while there is an end at which it will be final; without
 * an end it counts as it stands, since many platforms show nothing that is pending. An exam's mark is told when it is over.
 */
export const scoreOf = async (
	world: World,
	assignment: Assignment,
	attempt: AttemptRow,
	language: string
): Promise<Looked> => {
	const seen = await verdictOf(world, assignment, attempt);
	const until = endOf(assignment.task, attempt);
	const isOver = until !== null && until < world.now();
	const isDone = isOver || (assignment.task.mode === 'practice' && !isUnfinished(seen));
	const last = (await eventsOf(world, attempt.id)).filter(({ at }) => until === null || at <= until).at(-1);
	const isTold = assignment.task.mode === 'practice' || isOver;
	const { mark, outOf } = seen.total;
	return {
		upto: seen.upto,
		lookAt: until === null || isOver ? null : until + 1,
		score: {
			activityProgress: isDone ? 'Completed' : 'InProgress',
			gradingProgress: isDone || until === null ? 'FullyGraded' : 'Pending',
			...(isTold && outOf > 0
				? { scoreGiven: mark, scoreMaximum: outOf, comment: await commentOf(seen, language) }
				: {}),
			...(last && { submission: { submittedAt: new Date(last.at).toISOString() } })
		}
	};
};
