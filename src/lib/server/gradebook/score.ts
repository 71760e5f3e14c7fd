import { isLanguage, type Language } from '#shared/speech/language.ts';
import { serverSpeech } from '#shared/speech/server-speech.ts';
import { bestOf, endOf, eventsOf, verdictsOf, type Assignment, type Seen } from '../handing/attempts.ts';
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
 * The score of a learner's work as it stands: of the attempt that counts, of those that may be told. What is not finished is pending
 * while there is an end at which it will be final; without an end it counts as it stands, since many platforms show nothing that is
 * pending. An exam's mark is told when it is over.
 */
export const scoreOf = async (
	world: World,
	assignment: Assignment,
	attempts: readonly AttemptRow[],
	language: string
): Promise<Looked> => {
	const begun = attempts.filter(({ received }) => received > 0);
	const verdicts = await verdictsOf(world, assignment, begun);
	const { task } = assignment;
	const all = begun.flatMap((attempt) => {
		const seen = verdicts.get(attempt.id);
		const until = endOf(task, attempt);
		const isOver = until !== null && until < world.now();
		return seen ? [{ attempt, seen, until, isOver, isTold: task.mode === 'practice' || isOver }] : [];
	});
	const counted = bestOf(all.filter(({ isTold }) => isTold)) ?? all.at(-1);
	if (!counted) throw new Error('nothing was handed in');
	const { attempt, seen, until, isOver, isTold } = counted;
	const isDone = isOver || (task.mode === 'practice' && !isUnfinished(seen));
	const last = (await eventsOf(world, attempt.id)).filter(({ at }) => until === null || at <= until).at(-1);
	const ends = all.flatMap((each) => (each.until === null || each.isOver ? [] : [each.until + 1]));
	const { mark, outOf } = seen.total;
	return {
		upto: all.reduce((sum, each) => sum + each.seen.upto, 0),
		lookAt: ends.length > 0 ? Math.min(...ends) : null,
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
