/**
 * The second half of `npm run types`: the lint rules that ask the compiler for types (.oxlintrc.json), over all code and over the
 * components as svelte-check has just written them out in TypeScript. ESLint would build a program anew for each component.
 */
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import path from 'node:path';

/** Where svelte-check keeps the components that it turned into TypeScript. */
const WRITTEN_OUT = '.svelte-kit/.svelte-check/svelte';

/** svelte-check's own mark on the name of a component written out. */
const MARK = '++';

const components = readdirSync(WRITTEN_OUT, { recursive: true, encoding: 'utf8' })
	.filter((file) => path.basename(file).startsWith(MARK) && file.endsWith('.svelte.ts'))
	.map((file) => path.join(WRITTEN_OUT, file));
if (components.length === 0)
	throw new Error(`${WRITTEN_OUT} holds no components: has svelte-check moved them?`);

const code = [
	'src',
	'shared',
	'lessons',
	'tests',
	'knip.ts',
	'vite.config.ts',
	'vitest.config.ts',
	'playwright.config.ts'
];
const words = ['--type-aware', '--no-ignore', '--deny-warnings', ...code, ...components];
const { status } = spawnSync('oxlint', words, { stdio: 'inherit', shell: process.platform === 'win32' });
process.exitCode = status ?? 1;
