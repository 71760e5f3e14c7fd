import { chromium, type Browser, type Page } from '@playwright/test';
import { stepNamed, type Method } from '#drafting/method.ts';
import { stepAnswer } from '#drafting/steps/kinds.ts';
import { Desk } from '../e2e/support/desk.ts';
import { METHODS } from '../e2e/support/finished.ts';
import { heronsDraft, keepAllBut, lessonSteps, slip, type Slipped } from '../e2e/support/slips.ts';
import { watchShifts, WINDOWS } from '../e2e/support/still.ts';
import { pointedAt, workedSteps } from '../e2e/support/worked.ts';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { CHROMIUM_SWITCHES, findChromium } from '../support/chromium.ts';
import { serveFrom } from '../support/serving.ts';
import { actionsOn, countActions } from '../e2e/support/actions.ts';

/**
 * The desk under a scripted learner. `slips` goes through every step of every lesson with a realistic slip in every window
 * and at letters twice as large: marks and places in view, nothing moves at Check or help, all is reached by keys.
 * `actions` drafts every method by keyboard and by mouse and counts actions a step (goals 1.5 and 2). Prints tables;
 * a second argument keeps to lessons whose names begin so, or to one method.
 */
const [WHAT = 'all', ONLY = ''] = process.argv.slice(2);
/** What the browser may call a shift: less than a pixel of the sheet's width. */
const STILL = 0.0005;
const KEYBOARD = 'by keyboard';

/** A kind of window: a size, and how large the browser's letters are. */
interface Looked {
	readonly name: string;
	readonly width: number;
	readonly height: number;
}
const nameOf = ({ width, height }: { width: number; height: number }): string =>
	`${String(width)}x${String(height)}`;
const PLAIN: readonly Looked[] = WINDOWS.map((window) => ({ ...window, name: nameOf(window) }));
const LARGE: readonly Looked[] = [{ width: 1440, height: 900, name: '1440x900, letters 200 %' }];

const launched = (letters = 16): Promise<Browser> =>
	chromium.launch({
		...(findChromium() === undefined ? {} : { executablePath: findChromium() }),
		args: [...CHROMIUM_SWITCHES, `--blink-settings=defaultFontSize=${String(letters)}`]
	});

/** A new learner's page, where nothing glides. */
const learnersPage = async (browser: Browser, address: string): Promise<Page> => {
	const context = await browser.newContext({ baseURL: address, reducedMotion: 'reduce' });
	const page = await context.newPage();
	await watchShifts(page);
	await page.goto('/third-party.txt');
	return page;
};

/** What stands in the dock and can be used. */
const CONTROLS = '.dock :is(button, input, a, summary, [tabindex="0"])';

/** The controls of the desk that the Tab key does not come to, from the first of them until it leaves the dock. */
const unreached = async (page: Page): Promise<readonly string[]> => {
	const controls = page.locator(`${CONTROLS}:visible:not(:disabled)`);
	await controls.first().focus();
	const reached = new Set<number>();
	for (;;) {
		const at = await page.evaluate(
			(all) => [...document.querySelectorAll(all)].indexOf(document.activeElement ?? document.body),
			CONTROLS
		);
		if (at < 0 || reached.has(at)) break;
		reached.add(at);
		await page.keyboard.press('Tab');
	}
	const wanted = await controls.evaluateAll((shown, all) => {
		const order = [...document.querySelectorAll(all)];
		return shown.map((each) => [order.indexOf(each), each.textContent.trim().slice(0, 30)] as const);
	}, CONTROLS);
	return wanted.flatMap(([index, words]) => (reached.has(index) ? [] : [words || String(index)]));
};

/** What was counted in one kind of window. */
interface Row {
	slips: number;
	told: number;
	seen: number;
	still: number;
	reached: number;
}

const slipsIn = async (browser: Browser, address: string, windows: readonly Looked[]): Promise<void> => {
	const rows = new Map(
		windows.map(({ name }): [string, Row] => [name, { slips: 0, told: 0, seen: 0, still: 0, reached: 0 }])
	);
	const page = await learnersPage(browser, address);
	const desk = new Desk(page);
	const one = async (slipped: Slipped, window: Looked, i: number): Promise<void> => {
		const row = rows.get(window.name);
		if (!row) return;
		const faults: string[] = [];
		await page.setViewportSize(window);
		const { answer, unseen, moved, shift } = await slip(desk, slipped, i);
		const lost = await unreached(page);
		if (answer !== 'wrong') faults.push(`is ${String(answer)}`);
		if (unseen.length > 0) faults.push(`not in view: ${unseen.join('; ')}`);
		if (moved.length > 0) faults.push(`moved: ${moved.join('; ')}`);
		if (shift >= STILL) faults.push(`shift ${shift.toFixed(4)}`);
		if (lost.length > 0) faults.push(`not reached: ${lost.join('; ')}`);
		row.slips++;
		row.told += Number(answer === 'wrong');
		row.seen += Number(unseen.length === 0);
		row.still += Number(moved.length === 0 && shift < STILL);
		row.reached += Number(lost.length === 0);
		if (faults.length > 0)
			console.log(`${slipped.lesson} ${slipped.step}, ${window.name}: ${faults.join(', ')}`);
	};
	const steps = lessonSteps()
		.flat()
		.filter(({ lesson }) => lesson.startsWith(ONLY));
	for (const [nth, slipped] of steps.entries()) {
		await keepAllBut(page, slipped);
		await desk.open(slipped.lesson);
		for (let i = 0; i < windows.length; i++) {
			const window = windows[(i + nth) % windows.length];
			if (!window) continue;
			try {
				await one(slipped, window, windows.length === 1 ? nth : i);
			} catch (error) {
				console.log(
					`${slipped.lesson} ${slipped.step}, ${window.name}: ${String(error).split('\n')[0] ?? ''}`
				);
			}
		}
	}
	console.log('\n| window | slips | told wrong | all in view | nothing moves | all reached |');
	console.log('| --- | --- | --- | --- | --- | --- |');
	for (const [name, { slips, told, seen, still, reached }] of rows)
		console.log(`| ${[name, slips, told, seen, still, reached].join(' | ')} |`);
};

/** Works all lessons of a method from an empty sheet; the actions that it took a step, or why it was not finished. */
const actionsFor = async (browser: Browser, address: string, method: Method, by: string): Promise<string> => {
	const page = await learnersPage(browser, address);
	await countActions(page);
	const desk = new Desk(page);
	const [heron] = DEMO_BODIES;
	const worked = heron ? workedSteps(method, heron.body) : undefined;
	const draft = heronsDraft(method);
	const lessons = lessonSteps().filter(([first]) => first?.method === method);
	let steps = 0;
	let now = '';
	const doStep = async (name: string): Promise<void> => {
		now = name;
		const typed = worked?.get(name);
		const pointed = pointedAt(stepNamed(method, name), draft);
		const answer = stepAnswer(stepNamed(method, name));
		const [begin, end] = [answer.put === 'way' && draft.points[answer.from], draft.points[name]];
		if (by !== KEYBOARD && begin && end) {
			await desk.drag([begin.x, begin.y], [end.x, end.y]);
			await desk.button(desk.words.check).click();
		} else if (by !== KEYBOARD && pointed) await desk.byPointer(pointed);
		else if (typed && 'offsets' in typed) await desk.saying(typed.offsets);
		else if (typed) await desk.byKeyboard('point' in typed ? { point: typed.point } : typed);
		await desk.expectRight();
	};
	try {
		for (const [i, lesson] of lessons.entries()) {
			const [first] = lesson;
			if (!first) continue;
			// Drafts that this one leans on are there already.
			if (i === 0) await keepAllBut(page, { ...first, step: '' });
			if (i === 0)
				await page.evaluate((id) => {
					for (const key of Object.keys(localStorage))
						if (key.startsWith(`square-across.work.${id}`)) localStorage.removeItem(key);
				}, method.id);
			await desk.open(first.lesson);
			for (const { step } of lesson) {
				if ((await desk.current()) !== step) throw new Error(`${step} is not taken up by itself`);
				await doStep(step);
				steps++;
			}
		}
		const actions = await actionsOn(page);
		return `${(actions / steps).toFixed(2)} (${String(steps)} steps)`;
	} catch (error) {
		return `after ${String(steps)} steps, at ${now}: ${String(error).split('\n')[0] ?? ''}`;
	} finally {
		await page.context().close();
	}
};

const server = await serveFrom(process.cwd());
try {
	const browser = await launched();
	if (WHAT !== 'slips') {
		console.log('| draft | keyboard | mouse |\n| --- | --- | --- |');
		for (const method of METHODS.filter(({ id }) => id.startsWith(ONLY))) {
			if (!lessonSteps().some(([first]) => first?.method === method)) continue;
			const keyboard = await actionsFor(browser, server.address, method, KEYBOARD);
			console.log(
				`| ${method.id} | ${keyboard} | ${await actionsFor(browser, server.address, method, 'by mouse')} |`
			);
		}
	}
	if (WHAT !== 'actions') {
		await slipsIn(browser, server.address, PLAIN);
		const large = await launched(32);
		await slipsIn(large, server.address, LARGE);
		await large.close();
	}
	await browser.close();
} finally {
	await server.stop();
}
