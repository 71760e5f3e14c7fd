import { expect, test, type Page } from '@playwright/test';
import { rasters, wordsOf, type Raster } from '../exports/raster.ts';
import { open } from './support/page.ts';

/** Pages of A4 that a browser makes at most, and what must be read on them. */
const PRINTED = [
	{ path: '/lessons/41-back-neck-and-shoulder', most: 4, says: 'Half the shoulder width' },
	{ path: '/es/lessons/21-bust', most: 1, says: 'Busto' },
	{ path: '/patterns/course-dress', most: 8, says: 'Order of sewing' },
	{ path: '/patterns/circle-skirt', most: 6, says: 'Cutting list' },
	{ path: '/', most: 3, says: 'The course dress' },
	{ path: '/measurements', most: 3, says: 'Bust girth' },
	{ path: '/practice?seed=7', most: 2, says: 'Place', begin: ['The back block', 'The front block'] }
] as const;
/** Words of controls: they do nothing on paper. */
const CONTROLS = ['Draft this step', 'Where do I look?', 'Undo the last change', 'Pass this one over'];

const DPI = 50;
const [POINTS_IN_INCH, DARK] = [72, 170];

/** The share of a page that has ink. */
const inkOf = ({ grey }: Raster): number => grey.filter((value) => value < DARK).length / grey.length;

/** Words that stand on a page but cannot be seen there: no dot within them is dark. */
const unseen = (bytes: Buffer, pages: readonly Raster[]): readonly string[] =>
	wordsOf(bytes, '-bbox')
		.split('<page ')
		.slice(1)
		.flatMap((page, i) => {
			const raster = pages[i];
			if (!raster) return ['a page that was not drawn'];
			const dots = (points: string | undefined): number => (Number(points) / POINTS_IN_INCH) * DPI;
			return [...page.matchAll(/xMin="(.+?)" yMin="(.+?)" xMax="(.+?)" yMax="(.+?)">(.*?)</g)]
				.filter(([, left, top, right, bottom]) => {
					for (let y = Math.floor(dots(top)); y <= dots(bottom); y++)
						for (let x = Math.floor(dots(left)); x <= dots(right); x++)
							if ((raster.grey[y * raster.width + x] ?? 255) < DARK) return false;
					return true;
				})
				.map(([, , , , , word]) => word ?? '')
				.filter((word) => /\w\w/.test(word));
		});

const plain = (text: string): string => text.replace(/\s+/g, '');

/** The words of each card that is not to be cut, heading first. */
const cards = (page: Page): Promise<readonly (readonly string[])[]> =>
	page
		.locator('article, .step')
		.evaluateAll((all) =>
			all
				.filter((card) => card.checkVisibility())
				.map((card) =>
					[...card.querySelectorAll<HTMLElement>('h2, h3, li, p')]
						.filter((part) => part.checkVisibility())
						.map((part) => part.innerText)
				)
		);

for (const { path, most, says, ...rest } of PRINTED)
	test(`${path} is printed by the browser so that it can be read`, async ({ page }) => {
		await page.emulateMedia({ colorScheme: 'dark', media: 'print' });
		await open(page, path);
		if ('begin' in rest) {
			await page.emulateMedia({ media: 'screen' });
			for (const name of rest.begin) await page.getByRole('checkbox', { name }).check();
			await page.getByRole('button', { name: 'Begin a set of ten' }).click();
			await page.getByTestId('judged').waitFor({ state: 'attached' });
			await page.emulateMedia({ media: 'print' });
		}
		const bytes = await page.pdf({ format: 'A4', printBackground: false, preferCSSPageSize: true });
		const pages = rasters(bytes, DPI);
		expect(pages.length).toBeLessThanOrEqual(most);
		for (const [i, each] of pages.entries())
			expect(inkOf(each), `page ${String(i + 1)} is not empty`).toBeGreaterThan(0.002);
		expect(unseen(bytes, pages)).toEqual([]);
		const texts = wordsOf(bytes, '-raw').split('\f').map(plain);
		expect(texts.join('')).toContain(plain(says));
		for (const control of CONTROLS) expect(texts.join('')).not.toContain(plain(control));
		for (const [heading = '', ...parts] of await cards(page)) {
			const found = texts.find(
				(text) => text.includes(plain(heading)) && parts.every((part) => text.includes(plain(part)))
			);
			expect(found, `"${heading}" stands on one page`).toBeDefined();
		}
	});
