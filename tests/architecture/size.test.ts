import { ESLint } from 'eslint';
import { beforeAll, describe, expect, it } from 'vitest';
import { PROJECT } from './tree-copy.ts';

const lines = (count: number, line: (index: number) => string): string =>
	Array.from({ length: count }, (_, index) => line(index)).join('\n');

const constants = (count: number): string =>
	lines(count, (index) => `export const c${String(index)} = ${String(index)};`);
const longFunction = (count: number): string =>
	`export function planted(): number {\n\tlet sum = 0;\n${lines(count - 4, (index) => `\tsum += ${String(index)};`)}\n\treturn sum;\n}\n`;
const component = (count: number): string => lines(count, (index) => `<p>${String(index)}</p>`);

describe('size ceilings and the ban on any', () => {
	let eslint: ESLint;
	beforeAll(() => {
		eslint = new ESLint({ cwd: PROJECT });
	});

	const brokenRules = async (filePath: string, text: string): Promise<(string | null)[]> => {
		const [result] = await eslint.lintText(text, { filePath });
		return (result?.messages ?? []).filter(({ severity }) => severity === 2).map(({ ruleId }) => ruleId);
	};

	it.each([
		['src/lib/geometry/planted.ts', constants(400), constants(401), 'max-lines'],
		['src/lib/ui/Planted.svelte', component(300), component(301), 'max-lines'],
		['src/lib/geometry/planted.ts', longFunction(60), longFunction(61), 'max-lines-per-function'],
		[
			'src/lib/geometry/planted.ts',
			'export type A = unknown;',
			'export type A = any;',
			'@typescript-eslint/no-explicit-any'
		]
	])('let %s be just small enough, and see one line more', async (file, good, bad, rule) => {
		expect(await brokenRules(file, good)).toEqual([]);
		expect(await brokenRules(file, bad)).toEqual([rule]);
	});

	it('do not count blank lines and comments', async () => {
		expect(
			await brokenRules('src/lib/geometry/planted.ts', `${constants(400)}\n\n// why\n/* and how */\n`)
		).toEqual([]);
	});

	it.each([
		['src/lib/ui/Planted.svelte', '#server/store.ts'],
		['src/lib/ui/Planted.svelte', '../server/store.ts'],
		['src/lib/ui/embeds/Planted.svelte', '$lib/server/store.ts'],
		['src/lib/ui/keeping/Planted.svelte', '#ui/desk/tool.svelte.ts'],
		['src/lib/ui/drawing/Planted.svelte', '../garments/making.svelte.ts'],
		['src/lib/ui/desk/sheet/Planted.svelte', '../../embeds/lesson-of.ts'],
		['src/lib/ui/embeds/Planted.svelte', '#ui/pages/home/planted.ts']
	])('see that %s takes a type from %s', async (file, source) => {
		const text = `<script lang="ts">\n\timport type { Row } from '${source}';\n\tlet { row }: { row: Row } = $props();\n</script>\n\n{row}\n`;
		expect(await brokenRules(file, text)).toEqual(['@typescript-eslint/no-restricted-imports']);
	});
});
