import { expect, test, type Page } from '@playwright/test';
import { Desk } from './support/desk.ts';
import { alive } from './support/page.ts';

type At = readonly [across: number, down: number];

const LESSON = '65-dress-moving-darts';

/** Opens the lesson of the dart moves, with all that comes before it drafted. */
const atTheDarts = async (page: Page): Promise<Desk> => {
	const desk = new Desk(page);
	await desk.open(LESSON);
	await desk.staying();
	await desk.button('Draft the earlier steps for me').click();
	await expect(desk.sheet.locator('circle[data-name="G2"]')).toBeVisible();
	await expect(desk.sheet.locator('.panel')).toBeVisible();
	return desk;
};

const far = ([a, b]: At, [c, d]: At): number => Math.hypot(c - a, d - b);
/** The angle from one place to another as seen from a third, in radians, clockwise. */
const angleAt = ([px, py]: At, [ax, ay]: At, [bx, by]: At): number => {
	const turned = Math.atan2(by - py, bx - px) - Math.atan2(ay - py, ax - px);
	return Math.atan2(Math.sin(turned), Math.cos(turned));
};
const turnedAbout = ([px, py]: At, [x, y]: At, angle: number): At => [
	px + (x - px) * Math.cos(angle) - (y - py) * Math.sin(angle),
	py + (x - px) * Math.sin(angle) + (y - py) * Math.cos(angle)
];

/** Closes a dart by dragging the panel itself, taken hold of well inside. */
const closeByHand = async (desk: Desk, move: string, onto: string, grip: At): Promise<void> => {
	const [pin, from, to] = [
		await desk.pointPlace('T'),
		await desk.pointPlace(move),
		await desk.pointPlace(onto)
	];
	await desk.drag(grip, turnedAbout(pin, grip, angleAt(pin, from, to)));
	await desk.button('Check').click();
};

/** The width of the opening that the sheet tells, in centimetres. */
const openTold = async (page: Page): Promise<number> => {
	const told = await page.getByTestId('live').textContent();
	return Number(/^Open ([\d.]+) cm at F/.exec(told ?? '')?.[1]);
};

test('the panel is dragged round the bust point: the darts close and the waist opens', async ({ page }) => {
	const desk = await atTheDarts(page);
	const [pin, cut] = [await desk.pointPlace('T'), await desk.pointPlace('F')];
	const armhole = angleAt(pin, await desk.pointPlace('G2'), await desk.pointPlace('G1'));
	const side = angleAt(pin, await desk.pointPlace('E'), await desk.pointPlace('D1'));
	const length = far(pin, cut);
	/** What a slash so long opens by when it turns by an angle. */
	const opened = (angle: number): number => (2 * length * Math.sin(Math.abs(angle) / 2)) / 10;

	await closeByHand(desk, 'G2', 'G1', [180, 400]);
	await desk.expectRight();
	// Hands and pixels: within two millimetres at the moving point is right, and the waist is twice as far from the pin.
	expect(Math.abs((await openTold(page)) - opened(armhole))).toBeLessThan(0.3);

	await desk.button(/^Next: /).click();
	await expect(desk.sheet.locator('.panel.held')).toBeVisible();
	await closeByHand(desk, 'E2', 'D3', [180, 400]);
	await desk.expectRight();
	expect(Math.abs((await openTold(page)) - opened(armhole + side))).toBeLessThan(0.05);
	expect(await desk.pointPlace('F1').then((place) => far(place, cut) / 10)).toBeCloseTo(
		opened(armhole + side),
		1
	);
});

test('the same by the keyboard alone', async ({ page }) => {
	const desk = await atTheDarts(page);
	const said = desk.sheet.locator('[aria-live=polite]');
	await desk.tabTo(desk.sheet);
	await page.keyboard.press('ArrowLeft');
	await expect(said).toHaveText(/^G3: open [\d.]+ cm at F · turned [\d.]+° anticlockwise; /);
	// The dart is nearly 5 mm wide on the circle of G2.
	for (let i = 0; i < 4; i++) await page.keyboard.press('ArrowLeft');
	await page.keyboard.press('Enter');
	await desk.expectRight();
	await page.keyboard.press('Enter');
	await expect.poll(() => desk.current()).toBe('E3');
	await expect(desk.sheet).toBeFocused();
	// The leg turns upward, by about 3 cm.
	for (let i = 0; i < 3; i++) await page.keyboard.press('Shift+ArrowUp');
	await page.keyboard.press('Enter');
	await desk.expectRight();
	await expect(page.getByTestId('live')).toContainText('turned 10.');
});

test('a wrong turn is explained, kept, and followed through', async ({ page }) => {
	const desk = await atTheDarts(page);
	// The panel is turned by the side dart's angle.
	const [pin, from] = [await desk.pointPlace('T'), await desk.pointPlace('G2')];
	const side = angleAt(pin, await desk.pointPlace('E'), await desk.pointPlace('D1'));
	const grip: At = [180, 400];
	await desk.drag(grip, turnedAbout(pin, grip, side));
	await desk.button('Check').click();
	await expect(desk.verdict).toHaveAttribute('data-answer', 'wrong');
	await expect(page.getByTestId('likely')).toContainText('if you turned as far as for E3');
	await desk.button('Undo').click();
	await expect(desk.verdict).toHaveAttribute('data-answer', 'unchecked');

	// Typed, a place may lie off the circle, where paper could come only by stretching.
	const goal = await desk.pointPlace('G1');
	expect(far(goal, pin)).toBeGreaterThan(far(from, pin) + 5);
	await desk.field.fill(`across ${(goal[0] / 10).toFixed(2)}, down ${(goal[1] / 10).toFixed(2)}`);
	await page.keyboard.press('Enter');
	await expect(page.getByTestId('likely')).toContainText('Perhaps you moved G2 straight onto G1');

	await desk.button('Go on with it as it is').click();
	await page.reload();
	await alive(page);
	await expect.poll(() => desk.current()).toBe('E3');
	await expect(page.locator('#step-G3 .state')).toHaveText('kept as it is');
	await expect(desk.sheet.locator('.panel.held')).toBeVisible();
	await closeByHand(desk, 'E2', 'D3', grip);
	await desk.expectRight();
});
