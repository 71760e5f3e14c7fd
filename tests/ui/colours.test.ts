import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { contrast } from '../support/contrast.ts';

const CSS = readFileSync('src/lib/ui/styles/app.css', 'utf8');

type Palette = Readonly<Record<string, string>>;

/** The colours that a rule of the style sheet sets, by name. */
const coloursAfter = (opening: string): Palette => {
	const from = CSS.indexOf(opening);
	if (from < 0) throw new Error(`no rule begins with ${opening}`);
	const rule = CSS.slice(from + opening.length, CSS.indexOf('}', from + opening.length));
	return Object.fromEntries(
		[...rule.matchAll(/--([\w-]+): (#\w+);/g)].map(([, name = '', colour = '']) => [name, colour])
	);
};
const LIGHT = coloursAfter('.as-paper {');
const onScreen = (condition: string): Palette => coloursAfter(`@media screen and ${condition} {`);
const MORE = onScreen('(prefers-contrast: more)');
const DARK = onScreen('(prefers-color-scheme: dark)');
const PALETTES: Readonly<Record<string, Palette>> = {
	light: LIGHT,
	'light, more contrast': { ...LIGHT, ...MORE },
	dark: { ...LIGHT, ...DARK },
	'dark, more contrast': {
		...LIGHT,
		...MORE,
		...DARK,
		...onScreen('(prefers-color-scheme: dark) and (prefers-contrast: more)')
	}
};

/** What words and lines stand on, what is written and drawn with, and what only sets things apart and need not be seen. */
const GROUNDS = ['page', 'leaf', 'sheet', 'margin', 'chalk-wash', 'good-wash', 'bad-wash'];
const INKS = ['ink', 'ink-soft', 'chalk', 'good', 'bad'];
const LINES = ['centre', 'focus'];
const CLOTHS = ['cloth', 'cloth-inside'];
const FAINT = ['dot', 'rule', 'edge'];

/** The least contrast of words and of lines: WCAG 2.2, 1.4.3 and 1.4.11; with more contrast 1.4.6. */
const [WORDS, DRAWN, HIGH] = [4.5, 3, 7];

describe.each(Object.entries(PALETTES))('the colours of the screen: %s', (name, palette) => {
	const high = name.includes('more');
	const weak = (inks: readonly string[], grounds: readonly string[], least: number): readonly string[] =>
		inks.flatMap((ink) =>
			grounds
				.map((ground) => ({ ground, is: contrast(palette[ink] ?? '', palette[ground] ?? '') }))
				.filter(({ is }) => is < least)
				.map(({ ground, is }) => `${ink} on ${ground}: ${is.toFixed(2)}`)
		);

	it('every ink can be read on every ground', () => {
		expect(weak(INKS, GROUNDS, high ? HIGH : WORDS)).toEqual([]);
		expect(weak(['on-chalk'], ['chalk', 'good'], high ? HIGH : WORDS)).toEqual([]);
	});

	it('every line can be seen on paper and on cloth', () => {
		expect(weak(LINES, GROUNDS.slice(0, 4), high ? HIGH : DRAWN)).toEqual([]);
		expect(weak(['ink', 'ink-soft'], CLOTHS, high ? HIGH : DRAWN)).toEqual([]);
	});
});

describe('colours', () => {
	it('each is an ink, a line, a ground or faint: none goes unmeasured', () => {
		const known = [...GROUNDS, ...INKS, ...LINES, ...CLOTHS, ...FAINT, 'on-chalk'];
		expect(Object.keys(LIGHT).filter((colour) => !known.includes(colour))).toEqual([]);
		for (const palette of [MORE, DARK])
			expect(Object.keys(LIGHT)).toEqual(expect.arrayContaining(Object.keys(palette)));
		expect(Object.keys(DARK).sort()).toEqual(Object.keys(LIGHT).sort());
	});

	it('components name no colour of their own, but for shadows', () => {
		const files = readdirSync('src/lib/ui', { recursive: true, encoding: 'utf8' });
		const own = files
			.filter((file) => file.endsWith('.svelte'))
			.flatMap((file) => {
				const style = readFileSync(`src/lib/ui/${file}`, 'utf8').split('<style>')[1] ?? '';
				return style
					.split('\n')
					.filter((line) => /#[\da-f]{3,8}\b|rgb\(/i.test(line) && !line.includes('box-shadow'))
					.map((line) => `${file}: ${line.trim()}`);
			});
		expect(own).toEqual([]);
	});

	it('the system’s own colours take the place of all of them where it wants that', () => {
		const from = CSS.indexOf('(forced-colors: active) {');
		const set = [...CSS.slice(from, CSS.indexOf('}', from)).matchAll(/--([\w-]+): \w+;/g)];
		expect(set.map(([, name]) => name).sort()).toEqual(Object.keys(LIGHT).sort());
	});
});
