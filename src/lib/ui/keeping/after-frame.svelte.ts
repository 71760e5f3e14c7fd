import { untrack } from 'svelte';
import { painted } from './painted.ts';

/**
 * What a value is, once the frame that first shows its change has been painted: for what follows from a slider and is not
 * what the eye is on. Of changes that come faster than frames the last counts. Made where effects may be, as in a component.
 */
export const afterFrame = <T>(value: () => T): { readonly current: T } => {
	let shown = $state.raw(untrack(value));
	$effect(() => {
		const next = value();
		if (next === untrack(() => shown)) return;
		let stale = false;
		void painted().then(() => {
			if (!stale) shown = next;
		});
		return () => {
			stale = true;
		};
	});
	return {
		get current() {
			return shown;
		}
	};
};

/** Whether an element is on the screen, or near it. */
export class OnScreen {
	now = $state(false);
	/** To be attached to the element. */
	readonly watched = (element: Element): (() => void) => {
		const watch = new IntersectionObserver((entries) => {
			this.now = entries.at(-1)?.isIntersecting ?? false;
		});
		watch.observe(element);
		return () => watch.disconnect();
	};
}
