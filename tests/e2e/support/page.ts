import AxeBuilder from '@axe-core/playwright';
import { expect, type Locator, type Page } from '@playwright/test';

/** Waits until a page that was sent as text has come alive. */
export const alive = (page: Page): Promise<void> =>
	page.locator('[data-alive=true]').waitFor({ state: 'attached' });

/** Opens a page, and waits until it has come alive. */
export const open = async (page: Page, address: string): Promise<void> => {
	await page.goto(address);
	await alive(page);
};

const WCAG_AA = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/**
 * What axe finds wrong with a page, by rule: all that WCAG 2.2 AA asks for, where nothing else is asked of it.
 *
 * @param ask narrows the builder down to rules or to a part of the page
 */
export const faults = async (
	page: Page,
	ask = (axe: AxeBuilder): AxeBuilder => axe.withTags(WCAG_AA)
): Promise<readonly string[]> => {
	// No page that is looked at has a frame of another site, and only faults are read: with both said axe takes half as long.
	const axe = new AxeBuilder({ page }).options({ resultTypes: ['violations'] }).setLegacyMode();
	const { violations } = await ask(axe).analyze();
	return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`);
};

/** How many pixels the page goes beyond the screen on the right. */
export const beyond = (page: Page): Promise<number> =>
	page.evaluate(() => document.documentElement.scrollWidth - innerWidth);

/** Looks at a page in a window as narrow as a phone, and puts the window back. */
export const onPhone = async <T>(page: Page, look: () => Promise<T>): Promise<T> => {
	const size = page.viewportSize();
	await page.setViewportSize({ width: 360, height: 740 });
	const seen = await look();
	if (size) await page.setViewportSize(size);
	return seen;
};

/** How many pixels a table goes beyond what it stands in, on a phone. */
export const tableBeyond = (page: Page, table: Locator): Promise<number> =>
	onPhone(page, () =>
		table.evaluate(
			(each) => each.getBoundingClientRect().right - (each.parentElement?.getBoundingClientRect().right ?? 0)
		)
	);

/** Nothing that axe can find is wrong, and nothing goes beyond the screen. */
export const expectPlain = async (page: Page): Promise<void> => {
	expect(await faults(page)).toEqual([]);
	expect(await beyond(page)).toBeLessThanOrEqual(0);
};

/** Holds up what a page fetches, until that is let go: a connection that is slow, made to wait for the test. */
export const heldUp = async (page: Page, what = '**/*.js'): Promise<() => void> => {
	let letGo = (): void => undefined;
	const gone = new Promise<void>((done) => (letGo = done));
	await page.route(what, async (route) => {
		await gone;
		// What was given up meanwhile is not asked for any more.
		await route.continue().catch(() => undefined);
	});
	return letGo;
};
