import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { broughtIn } from '#ui/keeping/brought-in.ts';

const LOST = new TypeError('Failed to fetch dynamically imported module: http://localhost/a.js');

describe('a part of the page that is brought in', () => {
	let online: () => void;
	beforeEach(() => {
		vi.useFakeTimers();
		vi.stubGlobal('addEventListener', (_: string, heard: () => void) => (online = heard));
	});
	afterEach(() => {
		vi.useRealTimers();
		vi.unstubAllGlobals();
	});

	it('is asked for again until it comes, ever more seldom', async () => {
		const load = vi.fn<() => Promise<string>>();
		for (let i = 0; i < 3; i++) load.mockRejectedValueOnce(LOST);
		load.mockResolvedValue('come');
		const coming = broughtIn(load);
		await vi.advanceTimersByTimeAsync(400);
		expect(load).toHaveBeenCalledTimes(1);
		await vi.advanceTimersByTimeAsync(1100);
		expect(load).toHaveBeenCalledTimes(3);
		await vi.advanceTimersByTimeAsync(2000);
		expect(await coming).toBe('come');
		expect(load).toHaveBeenCalledTimes(4);
	});

	it('is asked for at once when the browser is connected again', async () => {
		const load = vi.fn<() => Promise<string>>().mockRejectedValueOnce(LOST).mockResolvedValue('come');
		const coming = broughtIn(load);
		await vi.advanceTimersByTimeAsync(0);
		online();
		expect(await coming).toBe('come');
		expect(vi.getTimerCount()).toBe(1);
	});

	it('throws a fault of its own once it has come', async () => {
		const fault = new TypeError('x is undefined');
		await expect(broughtIn(() => Promise.reject(fault))).rejects.toBe(fault);
	});
});
