import type { Page } from '@playwright/test';

/** The windows in which the desk is looked at; the last is the first at 200 %. */
export const WINDOWS = [
	{ width: 1440, height: 900 },
	{ width: 1024, height: 768 },
	{ width: 360, height: 740 },
	{ width: 720, height: 450 }
];

/** What the browser calls a layout shift, and whether the near view alone went to another corner. */
interface Shift {
	readonly value: number;
	readonly near: boolean;
}

/** Keeps what the browser calls a layout shift, whether or not somebody has just pressed something. */
export const watchShifts = async (page: Page): Promise<void> => {
	await page.addInitScript(() => {
		const all: Shift[] = [];
		Object.assign(window, { shifts: all });
		new PerformanceObserver((list) => {
			for (const entry of list.getEntries() as (PerformanceEntry & {
				value: number;
				sources: readonly { node: Node | null }[];
			})[]) {
				const isNear = ({ node }: { node: Node | null }): boolean =>
					node instanceof Element && node.closest('.inset') !== null;
				// One that names no source is nobody's: it counts as the page's.
				all.push({ value: entry.value, near: entry.sources.length > 0 && entry.sources.every(isNear) });
			}
		}).observe({ type: 'layout-shift', buffered: true });
	});
};

/** How much has shifted on the page until now, the near view included or not. */
export const shifts = (page: Page, { near } = { near: true }): Promise<number> =>
	page.evaluate(
		(counted) =>
			new Promise((done) => {
				const tell = (): void => {
					const all = (window as unknown as { shifts: readonly Shift[] }).shifts;
					done(all.reduce((sum, each) => sum + (each.near && !counted ? 0 : each.value), 0));
				};
				requestAnimationFrame(() => requestAnimationFrame(tell));
				// Where a browser draws nothing for so long nothing moves: the test goes on, and fails at what it then asks of the page.
				setTimeout(tell, 2_000);
			}),
		near
	);

/** Waits until a page that was opened or made another size has come to rest, and says what had shifted by then. */
export const atRest = async (page: Page): Promise<number> => {
	await page.evaluate(() => document.fonts.ready.then(() => undefined));
	for (let before = -1, i = 0; i < 50; i++) {
		const now = await shifts(page);
		if (now === before) return now;
		before = now;
		await page.waitForTimeout(300);
	}
	throw new Error('the page does not come to rest');
};

/** Where the parts of the desk lie on the page. */
export const parts = (page: Page) =>
	page.locator('.dock :is(header, .frame, .entry, .go, .moves, .asks, .told)').evaluateAll((all) =>
		all.map((part) => {
			const { left, top, width, height } = part.getBoundingClientRect();
			return [part.getAttribute('class') ?? part.tagName, left, top, width, height];
		})
	);
