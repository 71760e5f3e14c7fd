import { expect, test, type Page } from '@playwright/test';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import type { Method } from '#drafting/method.ts';
import { evaluate, type Draft } from '#drafting/evaluate.ts';
import { lessonFiles } from '../lessons/lesson-files.ts';
import { Desk, type At, type Typed } from './support/desk.ts';
import { finishedSteps, METHODS } from './support/finished.ts';
import { atRest, parts, shifts, watchShifts, WINDOWS } from './support/still.ts';
import { workedSteps } from './support/worked.ts';

/** A lesson at one of its steps, where a learner slips. */
interface Slipped {
	readonly lesson: string;
	readonly method: Method;
	readonly step: string;
	readonly typed: Typed;
}

const HERON = DEMO_BODIES[0]?.body;

const draftOf = (method: Method): Draft => {
	const evaluation = HERON && evaluate(method, HERON);
	if (evaluation?.kind !== 'drafted') throw new Error(`${method.id} is not drafted`);
	return evaluation.draft;
};

/** Every lesson that has steps, at one of them: the further on in the course, the further on in the lesson, so that every kind is met. */
const SLIPPED = lessonFiles().flatMap(({ id, text }, i): readonly Slipped[] => {
	const method = METHODS.find((each) => each.id === /^method: (\S+)$/m.exec(text)?.[1]);
	if (!HERON || !method) return [];
	const worked = workedSteps(method, HERON);
	const own = [...text.matchAll(/<Step name="(\w+)"/g)].flatMap(([, name = '']) =>
		worked.has(name) ? [name] : []
	);
	const step = own[i % own.length];
	const typed = step === undefined ? undefined : worked.get(step);
	return step !== undefined && typed ? [{ lesson: id, method, step, typed }] : [];
});

/** The slips of a learner: half, twice, the wrong way, crosswise; of a line another end, or the same twice; of a curve handles too short, too long, turned. */
const PLACES: readonly ((place: At) => At)[] = [
	([x, y]) => [x / 2, y / 2],
	([x, y]) => [2 * x, 2 * y],
	([x, y]) => [-x, -y],
	([x, y]) => [y, x]
];

const slipOf = ({ typed, method, step }: Slipped, i: number): Typed => {
	const put = PLACES[i] ?? (([x, y]: At): At => [x, y]);
	// Of a short or nearly straight curve the share of a handle matters little: it is moved aside as well.
	if ('offsets' in typed) return { offsets: typed.offsets.map(put).map(([x, y]): At => [x + 30, y + 20]) };
	if ('point' in typed) {
		const [x, y] = put(typed.point);
		const isNear = Math.hypot(x - typed.point[0], y - typed.point[1]) < 20;
		return { point: isNear ? [x + 30, y + 10] : [x, y] };
	}
	const before = method.steps.slice(
		0,
		method.steps.findIndex(({ name }) => name === step)
	);
	const { points } = draftOf(method);
	const others = before.map(({ name }) => name).filter((name) => points[name] && !typed.ends.includes(name));
	return { ends: [typed.ends[i % 2] ?? '', others[i % others.length] ?? ''] };
};

/** Keeps all work of the course as it is once it is drafted, but for one step. */
const keepAllBut = (page: Page, { method, step }: Slipped): Promise<void> =>
	page.evaluate(
		(works) => {
			for (const [key, work] of works) localStorage.setItem(key, work);
		},
		METHODS.map((each): [string, string] => {
			const { [step]: left, ...rest } = finishedSteps(each);
			const key = ['square-across.work', each.id, ...(each.measurements.length > 0 ? ['heron'] : [])].join(
				'.'
			);
			const steps =
				each.id === method.id ? rest : { ...rest, ...(left === undefined ? {} : { [step]: left }) };
			return [key, JSON.stringify({ version: 1, method: each.id, steps })];
		})
	);

/** The marks and places of the step at hand that do not lie in the middle of the sheet, clear of its edges. */
const outOfSight = (desk: Desk): Promise<readonly string[]> =>
	desk.sheet.evaluate((sheet) => {
		const box = sheet.getBoundingClientRect();
		return [...sheet.querySelectorAll('.pencil, rect.handle, circle.target, .arrow')].flatMap((mark) => {
			const { left, top, right, bottom } = mark.getBoundingClientRect();
			const [x, y] = [(left + right) / 2 - box.left, (top + bottom) / 2 - box.top];
			const seen = x > 20 && y > 20 && x < box.width && y < box.height;
			return seen ? [] : [`${mark.getAttribute('class') ?? ''} at ${x.toFixed(0)}, ${y.toFixed(0)}`];
		});
	});

const GROUPS = 4;
for (let group = 0; group < GROUPS; group++)
	test(`a learner slips in every lesson, in every window: all is in view and nothing moves (${String(group + 1)} of ${String(GROUPS)})`, async ({
		page
	}) => {
		test.setTimeout(400_000);
		await watchShifts(page);
		const desk = new Desk(page);
		await page.goto('/third-party.txt');
		for (const [nth, slipped] of SLIPPED.filter((_, i) => i % GROUPS === group).entries()) {
			const told = `${slipped.lesson}, ${slipped.step}`;
			await keepAllBut(page, slipped);
			await desk.open(slipped.lesson);
			expect(await desk.current(), told).toBe(slipped.step);
			for (let i = 0; i < WINDOWS.length; i++) {
				const window = WINDOWS[(i + nth) % WINDOWS.length] ?? WINDOWS[0];
				if (!window) continue;
				const where = `${told}, ${String(window.width)} x ${String(window.height)}`;
				await page.setViewportSize(window);
				await desk.sheet.scrollIntoViewIfNeeded();
				const still = await atRest(page);
				const before = await parts(page);
				await desk.byTyping(slipOf(slipped, i));
				await expect(desk.verdict, where).toHaveAttribute('data-answer', 'wrong');
				expect(await outOfSight(desk), where).toEqual([]);
				// In the last window all of the help is open.
				const help = page.locator('.asks button:visible').first();
				if ((await help.count()) > 0) await help.click();
				expect(await parts(page), where).toEqual(before);
				// Help that was open before makes room within its own box for the next verdict above it.
				if (i === 0) expect((await shifts(page)) - still, where).toBeLessThan(0.0005);
			}
		}
	});
