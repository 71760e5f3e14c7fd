import { expect, test } from '@playwright/test';
import { Desk } from './support/desk.ts';
import { keepAllBut, lessonSteps, slip } from './support/slips.ts';
import { watchShifts, WINDOWS } from './support/still.ts';

/** Every lesson that has steps, at one of them: the further on in the course, the further on in the lesson, so that every kind is met. */
const SLIPPED = lessonSteps().flatMap((steps, i) => steps[i % steps.length] ?? []);

const GROUPS = 8;
for (let group = 0; group < GROUPS; group++)
	test(`a learner slips in every lesson, in every window: all is in view and nothing moves (${String(group + 1)} of ${String(GROUPS)})`, async ({
		page
	}) => {
		test.setTimeout(180_000);
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
				const { answer, unseen, moved, shift } = await slip(desk, slipped, i);
				expect(answer, where).toBe('wrong');
				expect(unseen, where).toEqual([]);
				// In the last window all of the help is open.
				expect(moved, where).toEqual([]);
				expect(shift, where).toBeLessThan(0.0005);
			}
		}
	});
