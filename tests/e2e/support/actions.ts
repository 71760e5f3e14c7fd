import type { Page } from '@playwright/test';

/** Counts what somebody does: a click, and an entry that is sent off with Enter. */
export const countActions = async (page: Page): Promise<void> => {
	await page.addInitScript(() => {
		for (const kind of ['click', 'submit'])
			addEventListener(
				kind,
				() => {
					sessionStorage.setItem('actions', String(Number(sessionStorage.getItem('actions')) + 1));
				},
				true
			);
	});
};

/** How many there were until now. */
export const actionsOn = (page: Page): Promise<number> =>
	page.evaluate(() => Number(sessionStorage.getItem('actions')));
