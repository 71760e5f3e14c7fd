import { getContext, setContext } from 'svelte';
import type { Garment } from '#garment/garment.ts';
import { didNotCome } from '#ui/keeping/brought-in.ts';
import type { Learner } from '#ui/keeping/learner.svelte.ts';
import type { Making } from '#ui/garments/making.svelte.ts';

/**
 * The garment of a lesson, made for the learner's body with the choices of its pattern page. What works it out is
 * brought in only when a picture asks for it, so that no other lesson waits for it.
 */
export class GarmentAtHand {
	readonly garment: Garment;
	readonly #learner: Learner;
	/** Undefined until it has been brought in. */
	making: Making | undefined = $state.raw();
	/** Why there is nothing to show: it could not be brought in, as where the connection has gone, or the fault is ours. */
	failure: 'not-loaded' | 'our-fault' | undefined = $state();
	#asked = false;
	/** The picture that tells why there is no pattern: one is enough. */
	#teller: unknown;

	constructor(garment: Garment, learner: Learner) {
		this.garment = garment;
		this.#learner = learner;
	}

	/** Brings in what makes patterns, and the words for them; called by every picture, and done once. */
	async bringIn(words: () => Promise<void>): Promise<void> {
		if (this.#asked) return;
		this.#asked = true;
		this.failure = undefined;
		try {
			const [{ Making }] = await Promise.all([import('#ui/garments/making.svelte.ts'), words()]);
			this.making = new Making(this.garment, this.#learner);
		} catch (problem) {
			if (didNotCome(problem)) {
				this.failure = 'not-loaded';
				this.#asked = false;
			} else {
				console.error('our-fault', problem);
				this.failure = 'our-fault';
			}
		}
	}

	/** Whether it falls to this picture, the first that asks, to tell why there is no pattern. */
	tells(picture: unknown): boolean {
		this.#teller ??= picture;
		return this.#teller === picture;
	}
}

const GARMENT = Symbol('garment');

/** Makes the garment of a lesson known to the pictures in its text; absent in lessons without one. */
export const provideGarment = (garment: GarmentAtHand | undefined): void => {
	setContext(GARMENT, garment);
};

/** The garment of the lesson at hand, where it names one. */
export const garmentIfAny = (): GarmentAtHand | undefined => getContext<GarmentAtHand | undefined>(GARMENT);

/** The garment of the lesson at hand. Throws in a lesson that names none: a fault in the lesson. */
export const useGarment = (): GarmentAtHand => {
	const garment = garmentIfAny();
	if (!garment) throw new Error('this lesson names no garment, so it can show none of its pieces and seams');
	return garment;
};
