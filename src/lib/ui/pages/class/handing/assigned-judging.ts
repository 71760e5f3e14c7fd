import { message } from '#shared/speech/message.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { TOLERANCES, type Level } from '#shared/tolerances.ts';
import type { Verdict } from '#shared/verdict.ts';
import { judged, type Judged, type LearnersWork } from '#checker/work.ts';
import type { Judging } from '#ui/keeping/learner.svelte.ts';

/** How an assignment is done. */
export interface Manner {
	readonly level: Level;
	readonly mode: 'practice' | 'exam';
	readonly hints: boolean;
}

const RIGHT: Verdict = { answer: 'right', findings: [] };
/** Of a mark that was put down and not kept yet: it does not go on by itself, and costs nothing. */
const PUT: Verdict = { answer: 'excused', because: message('verdicts', 'putFirst', { first: [] }) };

/** Work as the class server judges an exam: what was put down counts, where it was put. */
const asExam = (work: LearnersWork): LearnersWork => ({
	...work,
	marks: 'pencilled',
	entries: Object.fromEntries(
		Object.entries(work.entries).map(([name, entry]) => [name, { ...entry, kept: entry.checked ?? false }])
	)
});

/** What may be told while an exam is on: which marks are kept, and nothing of whether they are right. */
const withheld = (work: LearnersWork): Judged => {
	const found = judged(asExam(work));
	const isOff = (name: string): boolean => ['not-valid', 'our-fault'].includes(found.verdict(name).answer);
	const verdict = (name: string): Verdict => {
		const { placement, checked } = work.entries[name] ?? {};
		if (!placement || isOff(name)) return found.verdict(name);
		return checked ? RIGHT : PUT;
	};
	const state = (name: string) => {
		const own = found.state(name);
		return own === 'kept' || own === 'wrong' ? 'right' : own;
	};
	// Each is said to follow from the learner's own marks: what is shown of its place is then theirs.
	const verdicts = Object.fromEntries(
		Object.keys(found.verdicts).map((name) => [name, { verdict: verdict(name), followThrough: true }])
	);
	return { ...found, verdicts, verdict, state, moved: new Map(), stuck: [] };
};

/** How the desk judges an assignment: as the class server marks it. While an exam is on nothing of that is told. */
export const judgingOf = ({ level, mode, hints }: Manner, isOn: () => boolean): Judging => {
	const isExam = mode === 'exam';
	return {
		allowed: TOLERANCES[level],
		hints: hints && !isExam,
		judge: (work) => {
			if (!isExam) return judged(work);
			return isOn() ? withheld(work) : judged(asExam(work));
		}
	};
};

/** What the desk says while an exam is on: that marks are kept. */
export const examWords = (words: Speech['words']): Speech['words'] => {
	const { keep, kept, allKept } = words.handing;
	const own: Partial<Speech['words']> = {
		desk: { ...words.desk, check: keep, allRight: allKept },
		verdicts: { ...words.verdicts, right: () => kept }
	};
	return new Proxy(words, { get: (_, name) => Reflect.get(name in own ? own : words, name) as unknown });
};
