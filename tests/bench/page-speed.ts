import { chromium, devices, type Browser, type Page } from '@playwright/test';
import { lessonCourse } from '../../src/cli/lesson-course.ts';
import { PROJECT } from '../architecture/tree-copy.ts';
import { CHROMIUM_SWITCHES, windowedChromium } from '../support/chromium.ts';
import { serveFrom } from '../support/serving.ts';
import { median, type Figure } from './figure.ts';

/** Slow 4G: 1.6 Mbit/s down, 0.75 Mbit/s up, 150 ms there and back. */
const SLOW_4G = {
	offline: false,
	latency: 150,
	downloadThroughput: (1.6 * 1_000_000) / 8,
	uploadThroughput: (0.75 * 1_000_000) / 8
} as const;
/** A phone of some years ago. */
const SLOWER = 4;
const RUNS = 5;
const GOAL = { paint: 500, kilobytes: 180, shift: 0.02, verdict: 50, redraw: 16 } as const;

interface Visit {
	/** When the largest thing of the page was painted, in milliseconds. */
	readonly paint: number;
	/** How far things moved while the page came together: the browser's own score. */
	readonly shift: number;
	readonly kilobytes: number;
	readonly requests: number;
}

/** Notes the two things that a page tells only while it loads. */
const watch = (): void => {
	const seen = { paint: 0, shift: 0 };
	Object.assign(window, { seen });
	new PerformanceObserver((list) => {
		for (const { startTime } of list.getEntries()) seen.paint = startTime;
	}).observe({ type: 'largest-contentful-paint', buffered: true });
	new PerformanceObserver((list) => {
		for (const entry of list.getEntries()) seen.shift += (entry as unknown as { value: number }).value;
	}).observe({ type: 'layout-shift', buffered: true });
};

const newPage = async (browser: Browser, width: number): Promise<Page> => {
	const context = await browser.newContext({
		...devices['Desktop Chrome'],
		viewport: { width, height: 800 }
	});
	return context.newPage();
};

/** Visits a page for the first time, over a slow connection. */
const visit = async (browser: Browser, url: string, width: number): Promise<Visit> => {
	const page = await newPage(browser, width);
	const devtools = await page.context().newCDPSession(page);
	await devtools.send('Network.enable');
	await devtools.send('Network.emulateNetworkConditions', SLOW_4G);
	let bytes = 0;
	let requests = 0;
	devtools.on('Network.loadingFinished', ({ encodedDataLength }) => {
		bytes += encodedDataLength;
		requests++;
	});
	await page.addInitScript(watch);
	await page.goto(url, { waitUntil: 'networkidle' });
	await page.waitForTimeout(500);
	const seen = await page.evaluate(() => (window as unknown as { seen: Visit }).seen);
	await page.context().close();
	return { ...seen, kilobytes: bytes / 1000, requests };
};

/** From the moment Check is pressed on a wrong placement, the first of a visit, to the frame that shows the verdict; in ms, on a slow processor. */
const firstVerdict = async (browser: Browser, url: string): Promise<number> => {
	const page = await newPage(browser, 1440);
	const devtools = await page.context().newCDPSession(page);
	await devtools.send('Emulation.setCPUThrottlingRate', { rate: SLOWER });
	await page.goto(url, { waitUntil: 'networkidle' });
	await page.locator('[data-alive=true]').waitFor();
	const sheet = await page.getByTestId('sheet').boundingBox();
	if (!sheet) throw new Error('the sheet is not on the page');
	await page.mouse.click(sheet.x + sheet.width * 0.6, sheet.y + sheet.height * 0.4);
	const check = page.getByRole('button', { name: 'Check', exact: true });
	await check.waitFor();
	await page.waitForTimeout(1500);
	const took = page.evaluate(
		() =>
			new Promise<number>((resolve) => {
				let pressed = 0;
				window.addEventListener('click', ({ timeStamp }) => (pressed = timeStamp), {
					capture: true,
					once: true
				});
				const note = document.querySelector('[data-testid=verdict]');
				if (!note) throw new Error('there is no place for a verdict');
				new MutationObserver(() => {
					// After the next frame.
					requestAnimationFrame(() => setTimeout(() => resolve(performance.now() - pressed)));
				}).observe(note, { attributes: true, attributeFilter: ['data-answer'] });
			})
	);
	await check.click();
	const result = await took;
	await page.context().close();
	return result;
};

/** Steps of a slider that are timed, and how long each is left alone, so that what follows a frame later is done. */
const [STEPS, REST] = [25, 250];

/** From a step of the first slider of the pattern page to the page laid out anew: the median of many, in ms. */
const redraw = async (browser: Browser, url: string): Promise<number> => {
	const page = await newPage(browser, 1440);
	await page.goto(url, { waitUntil: 'networkidle' });
	await page.locator('[data-alive=true]').waitFor();
	const took = await page.evaluate(
		async ([steps, rest]) => {
			const slider = document.querySelector<HTMLInputElement>('input[type=range]');
			if (!slider) throw new Error('there is no slider');
			const all: number[] = [];
			for (let i = 0; i < steps; i++) {
				await new Promise((resolve) => setTimeout(resolve, rest));
				const begun = performance.now();
				slider.value = String(Number(slider.value) + (i % 2 === 0 ? 1 : -1) * Number(slider.step));
				slider.dispatchEvent(new Event('input', { bubbles: true }));
				// What changes is shown in a microtask; asking for a size lays it out.
				await Promise.resolve();
				await Promise.resolve();
				document.body.getBoundingClientRect();
				all.push(performance.now() - begun);
			}
			return all;
		},
		[STEPS, REST] as const
	);
	await page.context().close();
	return median(took);
};

const several = async <T>(measure: () => Promise<T>): Promise<readonly T[]> => {
	const all: T[] = [];
	for (let run = 0; run < RUNS; run++) all.push(await measure());
	return all;
};

const visitFigures = async (
	browser: Browser,
	address: string,
	path: string,
	width: number
): Promise<Figure[]> => {
	const visits = await several(() => visit(browser, new URL(path, address).href, width));
	const [paint, shift, kilobytes, requests] = (['paint', 'shift', 'kilobytes', 'requests'] as const).map(
		(key) => median(visits.map((each) => each[key]))
	) as [number, number, number, number];
	const name = `${path} at ${String(width)} px on slow 4G`;
	return [
		{
			name: `${name}, largest paint`,
			figure: `${paint.toFixed(0)} ms`,
			goal: `at most ${String(GOAL.paint)} ms`,
			met: paint <= GOAL.paint
		},
		{
			name: `${name}, layout shift`,
			figure: shift.toFixed(3),
			goal: `at most ${String(GOAL.shift)}`,
			met: shift <= GOAL.shift
		},
		...(path.startsWith('/lessons/')
			? [
					{
						name: `${name}, transferred`,
						figure: `${kilobytes.toFixed(0)} kB in ${requests.toFixed(0)} requests`,
						goal: `at most ${String(GOAL.kilobytes)} kB`,
						met: kilobytes <= GOAL.kilobytes
					}
				]
			: [])
	];
};

/** How a page comes together over a slow connection, and how soon a verdict is seen on a slow processor. */
export const pageSpeedFigures = async (): Promise<readonly Figure[]> => {
	const serving = await serveFrom(PROJECT);
	// As people have it: without a window it finds other faces to stand in for ours.
	const browser = await chromium.launch({ executablePath: windowedChromium(), args: [...CHROMIUM_SWITCHES] });
	try {
		const pattern = `/patterns/${lessonCourse().garmentIds[0] ?? ''}`;
		const figures: Figure[] = [];
		for (const [path, width] of [
			['/', 1440],
			['/lessons/10-the-sheet', 1440],
			['/lessons/21-bust', 360],
			[pattern, 1440]
		] as const)
			figures.push(...(await visitFigures(browser, serving.address, path, width)));
		const verdict = median(
			await several(() => firstVerdict(browser, `${serving.address}/lessons/10-the-sheet`))
		);
		figures.push({
			name: `the first verdict, from Check to its frame, ${String(SLOWER)} times slower`,
			figure: `${verdict.toFixed(0)} ms`,
			goal: `at most ${String(GOAL.verdict)} ms`,
			met: verdict <= GOAL.verdict
		});
		const step = median(await several(() => redraw(browser, `${serving.address}${pattern}`)));
		figures.push({
			name: "a slider's step on the pattern page, to its layout",
			figure: `${step.toFixed(1)} ms`,
			goal: `at most ${String(GOAL.redraw)} ms`,
			met: step <= GOAL.redraw
		});
		return figures;
	} finally {
		await browser.close();
		await serving.stop();
	}
};
