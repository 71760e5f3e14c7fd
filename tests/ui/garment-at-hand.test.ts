import { describe, expect, it, vi } from 'vitest';
import { GarmentAtHand } from '#ui/embeds/garment-at-hand.svelte.ts';
import { garmentOf } from '../garment/garment-files.ts';
import { arrive } from './desk.ts';
import { freshStores } from './memory-store.ts';

freshStores();

const DRESS = garmentOf('course-dress');
const spoken = (): Promise<void> => Promise.resolve();

describe('the garment of a lesson', () => {
	it('is made once it is brought in', async () => {
		const hand = new GarmentAtHand(DRESS, arrive());
		await hand.bringIn(spoken);
		expect(hand.making?.standing.kind).toBe('made');
		expect(hand.failure).toBeUndefined();
	});

	// As the engines of the three families of browsers say it, and what loads a script's styles.
	it.each([
		'Failed to fetch dynamically imported module: http://localhost/a.js',
		'error loading dynamically imported module: http://localhost/a.js',
		'Importing a module script failed.',
		'Unable to preload CSS for /a.css'
	])('is asked for again where it could not be loaded: %s', async (said) => {
		const hand = new GarmentAtHand(DRESS, arrive());
		await hand.bringIn(() => Promise.reject(new TypeError(said)));
		expect(hand.failure).toBe('not-loaded');
		expect(hand.making).toBeUndefined();
		await hand.bringIn(spoken);
		expect(hand.failure).toBeUndefined();
		expect(hand.making).toBeDefined();
	});

	it('tells a fault of ours from a failed load, and notes it', async () => {
		const noted = vi.spyOn(console, 'error').mockImplementation(() => undefined);
		try {
			const hand = new GarmentAtHand(DRESS, arrive());
			await hand.bringIn(() => Promise.reject(new TypeError('x is undefined')));
			expect(hand.failure).toBe('our-fault');
			expect(noted).toHaveBeenCalledWith('our-fault', expect.objectContaining({ message: 'x is undefined' }));
		} finally {
			noted.mockRestore();
		}
	});
});
