import { tick } from 'svelte';

/** Where the keyboard's focus may go on to. */
interface Goals {
	readonly dock: HTMLElement;
	readonly sheet: { focus(): void } | undefined;
	/** Whether the sheet is where the learner goes on, unless something was being typed. */
	readonly toSheet: boolean;
	/** Whether there is something to be typed. */
	readonly toField: boolean;
}

/**
 * Does something after which a control may have fallen away. That must not take the keyboard's focus with it: it goes
 * on to the next field, or to the sheet.
 */
export const focusKept = async (act: () => void, goals: () => Goals): Promise<void> => {
	const typed = document.activeElement instanceof HTMLInputElement;
	act();
	await tick();
	const { dock, sheet, toSheet, toField } = goals();
	if (toSheet && !typed) sheet?.focus();
	const { activeElement } = document;
	if (activeElement && activeElement !== document.body && !activeElement.closest('[inert]')) return;
	const field = typed && toField ? dock.querySelector<HTMLElement>('form>input') : undefined;
	const next = field ?? dock.querySelector<HTMLElement>('.main') ?? sheet;
	next?.focus();
};
