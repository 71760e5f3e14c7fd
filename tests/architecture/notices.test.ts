import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { NOTICES, notices } from './notices.ts';

it('the notices are those of the packages that are shipped: run "npm run notices" where they are not', () => {
	const text = readFileSync(NOTICES, 'utf8');
	expect(text).toBe(notices());
	for (const name of ['svelte ', '@cantoo/pdf-lib ', '@fontsource/literata ', 'paper ', 'zod ', 'jsep '])
		expect(text).toMatch(new RegExp(`^${name}\\d`, 'm'));
	// A package that only builds is not named.
	expect(text).not.toMatch(/^typescript \d/m);
});
