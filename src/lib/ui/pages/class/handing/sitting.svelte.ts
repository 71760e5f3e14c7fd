import { onMount, untrack } from 'svelte';
import { provideOtherWords } from '#ui/keeping/other-words.ts';
import { useSpeech } from '#ui/keeping/speech.svelte.ts';
import { examWords } from './assigned-judging.ts';
import { Sender } from './sender.svelte.ts';
import type { Opened } from './work.ts';

/** How often it is looked whether the time is over, in milliseconds. */
const LOOK = 10_000;

type Unsent = Awaited<ReturnType<Sender['unsent']>>;

/**
 * What an assignment has while its page is open: what sends, whether its time is over, and whether it is an exam that is still on, of
 * which nothing is told that is right. Made where a component is; `begin` has what was done before and is not sent yet.
 */
export const sittingAt = (work: () => Opened, begin: (unsent: Unsent) => void) => {
	// A page is made anew for every attempt.
	const { id, learner, mode, attempt, receipt } = untrack(work);
	const sender = learner === undefined ? undefined : new Sender(learner, receipt);
	let now = $state(Date.now());
	const over = $derived.by(() => {
		const { until } = work();
		return until !== null && until <= now;
	});
	const isOn = $derived(mode === 'exam' && !over);
	if (mode === 'exam') provideOtherWords(useSpeech(), (own) => (isOn ? examWords(own) : own));
	onMount(() => {
		const clock = setInterval(() => (now = Date.now()), LOOK);
		const stop = sender?.start();
		void Promise.resolve(sender?.unsent(id, attempt) ?? []).then(begin);
		return () => {
			clearInterval(clock);
			stop?.();
		};
	});
	return {
		sender,
		get over() {
			return over;
		},
		get isOn() {
			return isOn;
		}
	};
};
