import { expect, type Locator, type Page } from '@playwright/test';
import { addressIn } from '#shared/speech/language.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { english } from '../../support/speech.ts';
import type { Answer } from './heron.ts';
import { open } from './page.ts';

/** A place in millimetres, from the corner of the sheet or from another place. */
export type At = readonly [across: number, down: number];

/** How a step is done by typing: a point's place, how long a level is, the two ends of a line, or each handle from its own end of a curve. */
export type Typed =
	| { readonly point: At }
	| { readonly end: At; readonly sum: string }
	| { readonly ends: readonly [string, string] }
	| { readonly offsets: readonly At[] };

/** The lesson's page as a learner uses it, in the language that they read. */
export class Desk {
	readonly sheet: Locator;
	readonly verdict: Locator;
	/** Whether what is right waits to be gone on from. */
	stays = false;

	constructor(
		readonly page: Page,
		readonly speech: Speech = english
	) {
		this.sheet = page.getByTestId('sheet');
		this.verdict = page.getByTestId('verdict');
	}

	get words() {
		return this.speech.words.desk;
	}

	/** Millimetres as a learner writes them, in centimetres to a tenth of a millimetre. */
	written(value: number): string {
		return this.speech.fixed(value / 10, 2);
	}

	/** Opens a lesson, and waits until the page has come alive. */
	async open(lesson: string): Promise<void> {
		await open(this.page, addressIn(this.speech.language, `/lessons/${lesson}`));
		await this.sheet.locator('svg[data-scale]').waitFor();
	}

	/** Chooses that what is right does not go on by itself. */
	async staying(): Promise<void> {
		const options = this.page.locator('.dock summary');
		await options.click();
		await this.page.getByLabel(this.words.goesOn).uncheck();
		this.stays = true;
		await options.click();
	}

	button(name: string | RegExp): Locator {
		return this.page.getByRole('button', { name });
	}

	/** Where a place of the sheet is on the page just now. */
	async screen([across, down]: At): Promise<{ x: number; y: number }> {
		const box = await this.sheet.boundingBox();
		if (!box) throw new Error('the sheet is not on the page');
		const svg = this.sheet.locator('svg[data-scale]');
		const number = async (name: string): Promise<number> => Number(await svg.getAttribute(`data-${name}`));
		const [left, top, scale] = [await number('left'), await number('top'), await number('scale')];
		return { x: box.x + (across - left) * scale, y: box.y + (down - top) * scale };
	}

	async click(place: At): Promise<void> {
		const { x, y } = await this.screen(place);
		await this.page.mouse.click(x, y);
	}

	async drag(from: At, to: At): Promise<void> {
		const [start, end] = [await this.screen(from), await this.screen(to)];
		await this.page.mouse.move(start.x, start.y);
		await this.page.mouse.down();
		await this.page.mouse.move((start.x + end.x) / 2, (start.y + end.y) / 2);
		await this.page.mouse.move(end.x, end.y);
		await this.page.mouse.up();
	}

	/** Does a step with the mouse alone. */
	async byPointer(answer: Answer): Promise<void> {
		if ('point' in answer) await this.click(answer.point);
		else if ('end' in answer) await this.click(answer.end);
		else if ('ends' in answer) {
			for (const name of answer.ends) await this.sheet.locator(`text.name:text-is("${name}")`).waitFor();
			const [first, last] = answer.ends;
			await this.drag(await this.pointPlace(first), await this.pointPlace(last));
		} else {
			const step = await this.current();
			for (const [i, place] of answer.handles.entries()) {
				// A curve that is right before all of its handles were moved goes on by itself.
				const isRight = i > 0 && (await this.verdict.getAttribute('data-answer')) === 'right';
				if (!this.stays && (isRight || (await this.current()) !== step)) return;
				const handle = this.page.getByRole('group', { name: this.words.handles }).getByRole('button').nth(i);
				// After one handle the next is taken up by itself.
				if ((await handle.getAttribute('aria-pressed')) !== 'true') await handle.click();
				await this.click(place);
			}
		}
		// A right line or curve goes on by itself.
		if (this.stays || 'point' in answer || 'end' in answer) await this.button(this.words.check).click();
	}

	/** Where the ink has a named point: read from the drawing, as a learner does. */
	async pointPlace(name: string): Promise<At> {
		const at = this.sheet.locator(`circle[data-name="${name}"]`);
		const box = await at.boundingBox();
		const corner = await this.screen([0, 0]);
		const unit = await this.screen([1, 1]);
		if (!box) throw new Error(`the point ${name} is not drawn`);
		const scale = unit.x - corner.x;
		return [(box.x + box.width / 2 - corner.x) / scale, (box.y + box.height / 2 - corner.y) / scale];
	}

	/** Moves focus to an element by the Tab key alone. */
	async tabTo(target: Locator): Promise<void> {
		for (let i = 0; i < 200; i++) {
			if (await target.evaluate((element) => element === document.activeElement)) return;
			await this.page.keyboard.press('Tab');
		}
		throw new Error('the keyboard does not reach this');
	}

	/** The one field in which a place is said. */
	get field(): Locator {
		return this.page.locator('.dock form input');
	}

	/** How a step is said in the language of the page. */
	said(answer: Exclude<Answer, { handles: unknown }>): string {
		const { saidDistance, saidPlace, toWords } = this.words;
		if ('ends' in answer) return answer.ends.join(` ${toWords.split('|')[0] ?? ''} `);
		if ('end' in answer) return answer.sum;
		const { point, sum, from = 'O', go = 'down' } = answer;
		const [across, down] = point;
		return sum === undefined
			? saidPlace({ across: this.written(across), down: this.written(down) })
			: saidDistance({ from, go, sum });
	}

	/** Does a step with the keyboard alone; Enter places and checks. */
	async byKeyboard(answer: Answer): Promise<void> {
		if ('handles' in answer) throw new Error('handles are typed by their offsets');
		await this.tabTo(this.field);
		await this.page.keyboard.press('Control+A');
		await this.page.keyboard.type(this.said(answer));
		await this.page.keyboard.press('Enter');
	}

	/** Types the handles of a curve one after the other, each from its own end; the last Enter checks. */
	async byEnter(offsets: readonly At[]): Promise<void> {
		for (const offset of offsets) await this.saying([offset]);
	}

	/** Types handles of a curve in one entry, each from its own end. */
	async saying(offsets: readonly At[]): Promise<void> {
		await this.tabTo(this.field);
		const said = offsets.map(([across, down]) =>
			this.words.saidPlace({ across: this.written(across), down: this.written(down) })
		);
		await this.page.keyboard.type(said.join(` ${this.words.thenWords.split('|')[0] ?? ''} `));
		await this.page.keyboard.press('Enter');
	}

	/** Says a step in its field. */
	async typing(typed: Typed): Promise<void> {
		if ('offsets' in typed) {
			const handles = this.page.getByRole('group', { name: this.words.handles }).getByRole('button');
			for (const [i, [across, down]] of typed.offsets.entries()) {
				await handles.nth(i).click();
				// Where what reads an entry is still on its way, the handle is taken up once what was typed before is placed.
				await expect(handles.nth(i)).toHaveAttribute('aria-pressed', 'true');
				await this.field.fill(
					this.words.saidPlace({ across: this.written(across), down: this.written(down) })
				);
			}
		} else await this.field.fill(this.said(typed));
	}

	/** Does a step by its field, and checks it. */
	async byTyping(typed: Typed): Promise<void> {
		await this.typing(typed);
		await this.button(this.words.check).click();
	}

	/** Moves the chosen handle to a place by arrow keys alone, from where it is drawn now. */
	async nudgeTo(handle: number, [across, down]: At): Promise<void> {
		const drawn = await this.sheet.locator('rect.handle').nth(handle).boundingBox();
		const [corner, unit] = [await this.screen([0, 0]), await this.screen([1, 1])];
		if (!drawn) throw new Error('the handle is not drawn');
		const scale = unit.x - corner.x;
		const at = [
			(drawn.x + drawn.width / 2 - corner.x) / scale,
			(drawn.y + drawn.height / 2 - corner.y) / scale
		];
		await this.press(across - (at[0] ?? 0), 'ArrowRight', 'ArrowLeft');
		await this.press(down - (at[1] ?? 0), 'ArrowDown', 'ArrowUp');
	}

	async press(by: number, ahead: string, back: string): Promise<void> {
		const key = by > 0 ? ahead : back;
		const tenths = Math.round(Math.abs(by) * 10);
		for (let i = 0; i < Math.floor(tenths / 100); i++) await this.page.keyboard.press(`Shift+${key}`);
		for (let i = 0; i < Math.floor((tenths % 100) / 10); i++) await this.page.keyboard.press(key);
		for (let i = 0; i < tenths % 10; i++) await this.page.keyboard.press(`Alt+${key}`);
	}

	async expectRight(): Promise<void> {
		await expect(this.verdict).toHaveAttribute('data-answer', 'right');
	}

	/** The step that is being drafted now. */
	async current(): Promise<string> {
		const id = await this.page.locator('.step.active').getAttribute('id');
		return (id ?? '').replace('step-', '');
	}
}
