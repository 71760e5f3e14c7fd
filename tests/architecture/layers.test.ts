import { readdir } from 'node:fs/promises';
import path from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { cruise, type Cruise } from './cruise.ts';
import { PROJECT, withTreeCopy } from './tree-copy.ts';

/** Each line breaks one rule; `sees` is the file that the forbidden import leads to. */
interface Plant {
	readonly rule: string;
	readonly file: string;
	readonly text: string;
	readonly sees: string;
}

const target = (folder: string): string => `${folder}/planted-target.ts`;
const tsImport = (specifier: string): string =>
	`import { planted } from '${specifier}';\nexport const used = planted;\n`;
const svelteImport = (specifier: string): string =>
	`<script lang="ts">\n\timport { planted } from '${specifier}';\n\tconst used: number = planted;\n</script>\n\n{used}\n`;

const plants: readonly Plant[] = [
	{
		rule: 'shared-imports-only-lower-layers',
		file: 'shared/planted.ts',
		text: tsImport('#geometry/planted-target.ts'),
		sees: target('src/lib/geometry')
	},
	{
		rule: 'geometry-imports-only-lower-layers',
		file: 'src/lib/geometry/planted.ts',
		text: tsImport('#shared/planted-target.ts'),
		sees: target('shared')
	},
	{
		rule: 'photograph-imports-only-lower-layers',
		file: 'src/lib/photograph/planted.ts',
		text: tsImport('#drafting/planted-target.ts'),
		sees: target('src/lib/drafting')
	},
	{
		rule: 'tape-imports-only-lower-layers',
		file: 'src/lib/tape/planted.ts',
		text: tsImport('#checker/planted-target.ts'),
		sees: target('src/lib/checker')
	},
	{
		rule: 'drafting-imports-only-lower-layers',
		file: 'src/lib/drafting/planted.ts',
		text: tsImport('#checker/planted-target.ts'),
		sees: target('src/lib/checker')
	},
	{
		rule: 'garment-imports-only-lower-layers',
		file: 'src/lib/garment/planted.ts',
		text: tsImport('#exports/planted-target.ts'),
		sees: target('src/lib/exports')
	},
	{
		rule: 'course-imports-only-lower-layers',
		file: 'src/lib/course/planted.ts',
		text: tsImport('#exports/planted-target.ts'),
		sees: target('src/lib/exports')
	},
	{
		rule: 'checker-imports-only-lower-layers',
		file: 'src/lib/checker/planted.ts',
		// A type alone ties the two together as well.
		text: "import type { Planted } from '#ui/planted-target.ts';\nexport type Used = Planted;\n",
		sees: target('src/lib/ui')
	},
	{
		rule: 'practice-imports-only-lower-layers',
		file: 'src/lib/practice/planted.ts',
		text: tsImport('#exports/planted-target.ts'),
		sees: target('src/lib/exports')
	},
	{
		rule: 'exports-imports-only-lower-layers',
		file: 'src/lib/exports/planted.ts',
		// Reached by a relative path and only when called: still an import.
		text: "export const used = () => import('../ui/planted-target.ts');\n",
		sees: target('src/lib/ui')
	},
	{
		rule: 'server-imports-only-lower-layers',
		file: 'src/lib/server/planted.ts',
		text: tsImport('#ui/planted-target.ts'),
		sees: target('src/lib/ui')
	},
	{
		rule: 'ui-imports-only-lower-layers',
		file: 'src/lib/ui/PlantedInUi.svelte',
		text: svelteImport('../server/planted-target.ts'),
		sees: target('src/lib/server')
	},
	{
		rule: 'ui-keeping-imports-only-lower-floors',
		file: 'src/lib/ui/keeping/planted.ts',
		text: "import type { Planted } from '#ui/desk/planted-target.ts';\nexport type Used = Planted;\n",
		sees: target('src/lib/ui/desk')
	},
	{
		rule: 'ui-controls-imports-only-lower-floors',
		file: 'src/lib/ui/controls/Planted.svelte',
		text: svelteImport('#ui/pages/planted/planted-target.ts'),
		sees: target('src/lib/ui/pages/planted')
	},
	{
		rule: 'ui-drawing-imports-only-lower-floors',
		file: 'src/lib/ui/drawing/planted.ts',
		text: tsImport('../desk/planted-target.ts'),
		sees: target('src/lib/ui/desk')
	},
	{
		rule: 'ui-files-imports-only-lower-floors',
		file: 'src/lib/ui/files/planted.ts',
		text: "export const used = () => import('#ui/embeds/planted-target.ts');\n",
		sees: target('src/lib/ui/embeds')
	},
	{
		rule: 'ui-photographs-imports-only-lower-floors',
		file: 'src/lib/ui/photographs/planted.ts',
		text: tsImport('../desk/planted-target.ts'),
		sees: target('src/lib/ui/desk')
	},
	{
		rule: 'ui-garments-imports-only-lower-floors',
		file: 'src/lib/ui/garments/Planted.svelte',
		text: svelteImport('../desk/planted-target.ts'),
		sees: target('src/lib/ui/desk')
	},
	{
		rule: 'ui-desk-imports-only-lower-floors',
		file: 'src/lib/ui/desk/sheet/Planted.svelte',
		text: svelteImport('#ui/embeds/planted-target.ts'),
		sees: target('src/lib/ui/embeds')
	},
	{
		rule: 'ui-embeds-imports-only-lower-floors',
		file: 'src/lib/ui/embeds/planted.ts',
		text: tsImport('#ui/pages/planted/planted-target.ts'),
		sees: target('src/lib/ui/pages/planted')
	},
	{
		rule: 'ui-exercises-imports-only-lower-floors',
		file: 'src/lib/ui/exercises/Planted.svelte',
		text: svelteImport('#ui/pages/planted/planted-target.ts'),
		sees: target('src/lib/ui/pages/planted')
	},
	{
		rule: 'a-page-imports-no-other-page',
		file: 'src/lib/ui/pages/planted-too/Planted.svelte',
		text: svelteImport('../planted/planted-target.ts'),
		sees: target('src/lib/ui/pages/planted')
	},
	{
		rule: 'cli-imports-only-lower-layers',
		file: 'src/cli/planted.ts',
		text: tsImport('#ui/planted-target.ts'),
		sees: target('src/lib/ui')
	},
	{
		rule: 'checker-never-reaches-exports',
		file: 'src/lib/checker/planted-to-exports.ts',
		text: tsImport('#exports/planted-target.ts'),
		sees: target('src/lib/exports')
	},
	{
		rule: 'exports-never-reaches-checker',
		file: 'src/lib/exports/planted-to-checker.ts',
		text: tsImport('#checker/planted-target.ts'),
		sees: target('src/lib/checker')
	},
	{
		rule: 'no-circular',
		file: 'src/lib/drafting/planted-circle.ts',
		text: "import { other } from './planted-circle-other.ts';\nexport const one = () => other;\n",
		sees: 'src/lib/drafting/planted-circle-other.ts'
	},
	{
		rule: 'paper-only-in-the-kernel',
		file: 'src/lib/geometry/planted-paper.ts',
		text: "import paper from 'paper/dist/paper-core';\nexport const used = paper;\n",
		sees: 'node_modules/paper/'
	},
	{
		rule: 'the-browser-takes-zod-from-shape',
		file: 'src/lib/ui/planted-zod.ts',
		text: "import { z } from 'zod';\nexport const used = z;\n",
		sees: 'node_modules/zod/'
	},
	{
		rule: 'core-knows-no-framework',
		file: 'src/lib/drafting/planted-framework.ts',
		text: "import { onMount } from 'svelte';\nexport const used = onMount;\n",
		sees: 'node_modules/svelte/'
	},
	{
		rule: 'only-server-files-reach-the-server',
		file: 'src/routes/planted/+page.svelte',
		text: svelteImport('../../lib/server/planted-target.ts'),
		sees: target('src/lib/server')
	},
	{
		rule: 'nothing-imports-the-command-line',
		file: 'src/routes/planted/+page.ts',
		text: tsImport('../../cli/planted-target.ts'),
		sees: target('src/cli')
	},
	{
		rule: 'no-code-imports-tests',
		file: 'src/routes/planted/+layout.ts',
		text: tsImport('../../../tests/planted-target.ts'),
		sees: target('tests')
	},
	{
		rule: 'no-development-packages-in-the-program',
		file: 'src/lib/geometry/planted-package.ts',
		text: "import { vi } from 'vitest';\nexport const used = vi;\n",
		sees: 'node_modules/vitest/'
	},
	{
		rule: 'every-import-is-found',
		file: 'src/lib/geometry/planted-unknown.ts',
		text: tsImport('#geometry/no-such-file.ts'),
		sees: '#geometry/no-such-file.ts'
	}
];

const LAYER_FOLDERS = [
	'shared',
	'tests',
	'src/cli',
	...[
		'geometry',
		'photograph',
		'tape',
		'drafting',
		'garment',
		'course',
		'checker',
		'practice',
		'exports',
		'server',
		'ui'
	].map((name) => `src/lib/${name}`),
	...['desk', 'embeds', 'pages/planted'].map((name) => `src/lib/ui/${name}`)
];

const plantedFiles: Readonly<Record<string, string>> = {
	...Object.fromEntries(
		LAYER_FOLDERS.map((folder) => [
			target(folder),
			'export const planted = 1;\nexport type Planted = typeof planted;\n'
		])
	),
	'src/lib/drafting/planted-circle-other.ts':
		"import { one } from './planted-circle.ts';\nexport const other = () => one;\n",
	...Object.fromEntries(plants.map(({ file, text }) => [file, text]))
};

/** All TypeScript and Svelte files below some folders, as the cruiser names them. */
const codeFiles = async (folders: readonly string[]): Promise<string[]> => {
	const lists = await Promise.all(
		folders.map(async (folder) => {
			const names = await readdir(path.join(PROJECT, folder), { recursive: true });
			return names.map((name) => `${folder}/${name.replaceAll('\\', '/')}`);
		})
	);
	return lists.flat().filter((file) => /\.(ts|svelte)$/.test(file));
};

describe('the import rules, on a copy with forbidden imports planted', () => {
	let found: Cruise;
	beforeAll(async () => {
		const parts = ['src', 'shared', 'lessons', 'tests'];
		found = await withTreeCopy(plantedFiles, (folder) => cruise(folder, parts), ['tests']);
	});

	it.each(plants)('see $rule in $file', ({ rule, file, sees }) => {
		// A circle is reported once, from either of its ends.
		const seen = found.summary.violations
			.filter((one) => one.rule.name === rule && (one.from === file || one.to === file))
			.map(({ from, to }) => `${from} -> ${to}`);
		expect(seen.join(' and ')).toContain(sees);
	});

	it('plant one import for each rule there is', async () => {
		const rules = (await import('../../.dependency-cruiser.mjs')).default.forbidden ?? [];
		expect(rules.map(({ name }) => name).sort()).toEqual([...new Set(plants.map(({ rule }) => rule))].sort());
	});

	it('read every file', async () => {
		const read = new Set(found.modules.map(({ source }) => source));
		const written = await codeFiles(['src', 'shared', 'tests']);
		expect(written.filter((file) => file.endsWith('.svelte')).length).toBeGreaterThan(0);
		expect(written.filter((file) => !read.has(file))).toEqual([]);
	});

	it('complain of nothing that was not planted', () => {
		const strays = found.summary.violations.filter(({ from }) => !(from in plantedFiles));
		expect(strays).toEqual([]);
	});

	it('say why, and what to write instead', async () => {
		const rules = (await import('../../.dependency-cruiser.mjs')).default.forbidden ?? [];
		for (const rule of rules) expect(rule.comment?.split('. ').length, rule.name).toBeGreaterThan(1);
	});
});
