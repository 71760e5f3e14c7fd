import { expect, type Locator, type Page } from '@playwright/test';
import { addressIn } from '#shared/speech/language.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { english } from '../../support/speech.ts';
import type { Answer } from './heron.ts';

/** A place in millimetres, from the corner of the sheet or from another place. */
export type At = readonly [across: number, down: number];

/** How a step is done by typing: a point's place, the two ends of a line, or each handle from its own end of a curve. */
export type Typed =
	{ readonly point: At } | { readonly ends: readonly [string, string] } | { readonly offsets: readonly At[] };

/** The lesson's page as a learner uses it, in the language that they read. */
export class Desk {
	readonly sheet: Locator;
	readonly verdict: Locator;

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
		await this.page.goto(addressIn(this.speech.language, `/lessons/${lesson}`));
		await this.page.locator('[data-alive=true]').waitFor();
		await this.sheet.locator('svg').waitFor();
	}

	button(name: string | RegExp): Locator {
		return this.page.getByRole('button', { name });
	}

	/** Where a place of the sheet is on the page just now. */
	async screen([across, down]: At): Promise<{ x: number; y: number }> {
		const box = await this.sheet.boundingBox();
		if (!box) throw new Error('the sheet is not on the page');
		const svg = this.sheet.locator('svg');
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
			await this.button(this.words.all).click();
			for (const name of answer.ends) await this.sheet.locator(`text.name:text-is("${name}")`).waitFor();
			for (const name of answer.ends) await this.click(await this.pointPlace(name));
		} else {
			for (const [i, place] of answer.handles.entries()) {
				await this.page.getByRole('group', { name: this.words.handles }).getByRole('button').nth(i).click();
				await this.click(place);
			}
		}
		await this.button(this.words.check).click();
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

	/** Chooses an option of a focused list by typing its first letters. */
	async chooseByKey(list: Locator, option: string): Promise<void> {
		await this.tabTo(list);
		await this.page.keyboard.type(option);
	}

	async typeInto(field: Locator, text: string): Promise<void> {
		await this.tabTo(field);
		await this.page.keyboard.press('Control+A');
		await this.page.keyboard.type(text);
	}

	/** Does a step with the keyboard alone, and checks it with Enter. */
	async byKeyboard(answer: Answer): Promise<void> {
		const form = this.page.locator('.dock form');
		if ('ends' in answer) {
			await this.chooseByKey(this.page.getByLabel(this.words.startPoint, { exact: true }), answer.ends[0]);
			await this.chooseByKey(this.page.getByLabel(this.words.endPoint, { exact: true }), answer.ends[1]);
			await this.tabTo(this.button(this.words.check));
			await this.page.keyboard.press('Enter');
			return;
		}
		if ('handles' in answer) throw new Error('handles are typed by their offsets');
		if ('point' in answer && answer.sum === undefined) {
			const [across, down] = answer.point;
			const corner = { point: undefined };
			await this.typeInto(
				form.getByLabel(this.words.acrossFrom(corner), { exact: true }),
				this.written(across)
			);
			await this.typeInto(form.getByLabel(this.words.downFrom(corner), { exact: true }), this.written(down));
		} else {
			if ('from' in answer && answer.from) await this.chooseByKey(form.getByLabel('From'), answer.from);
			await this.typeInto(form.getByLabel(/Distance or sum/), answer.sum ?? '');
			const go = 'go' in answer ? answer.go : undefined;
			if (go) await this.chooseByKey(form.getByLabel('Direction'), go);
			await this.tabTo(form.getByLabel(/Distance or sum/));
		}
		await this.page.keyboard.press('Enter');
		await this.page.keyboard.press('Enter');
	}

	/** Turns the form to the two fields for across and down. */
	async byAcrossAndDown(): Promise<void> {
		const turn = this.page.locator('.dock form').getByRole('button', { name: this.words.byAcrossDown });
		if (await turn.isVisible()) await turn.click();
	}

	/** Fills the two fields for across and down, and places what they say. */
	async fillPlace([across, down]: At): Promise<void> {
		const form = this.page.locator('.dock form');
		const field = (name: string): Locator => form.getByRole('textbox', { name });
		await field(this.words.acrossFrom({ point: undefined })).fill(this.written(across));
		await field(this.words.downFrom({ point: undefined })).fill(this.written(down));
		await form.getByRole('button', { name: this.words.place }).click();
	}

	/** Does a step by its fields, and checks it. */
	async byTyping(typed: Typed): Promise<void> {
		if ('ends' in typed) {
			await this.page.getByLabel(this.words.startPoint, { exact: true }).selectOption(typed.ends[0]);
			await this.page.getByLabel(this.words.endPoint, { exact: true }).selectOption(typed.ends[1]);
		} else if ('point' in typed) {
			const form = this.page.locator('.dock form');
			await form.waitFor();
			await this.byAcrossAndDown();
			await this.fillPlace(typed.point);
		} else {
			const handles = this.page.getByRole('group', { name: this.words.handles }).getByRole('button');
			for (const [i, offset] of typed.offsets.entries()) {
				await handles.nth(i).click();
				await this.fillPlace(offset);
			}
		}
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
