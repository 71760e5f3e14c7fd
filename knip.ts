import type { KnipConfig } from 'knip';

/**
 * The names that every lesson may embed. svelte.config.js imports them into each compiled lesson, inside
 * a text that knip cannot follow. All other ways in are found by knip itself: routes and hooks by
 * SvelteKit's names, the command line by "bin", tests by their endings, tests/run.ts by "scripts", which hand the bench to tests/bundled.ts.
 */
const embeddedByLessons = 'src/lib/ui/embeds/embeds.ts';

/** @see https://knip.dev/reference/configuration */
const config: KnipConfig = {
	entry: [embeddedByLessons, 'tests/bench/run.ts'],
	project: ['src/**/*.{ts,js,svelte,css}', 'shared/**/*.ts', 'tests/**/*.ts', '*.{ts,js,mjs}'],
	// Programs of the system that tests read files back with: tests/support/pdf-readers.ts installs them.
	ignoreBinaries: ['pdftotext', 'pdftoppm'],
	// svelte-check looks it up by this name: the compiler in native code, beside the one that ESLint and Svelte are written for.
	ignoreDependencies: ['@typescript/native'],
	// The type of a public function's argument or result is part of what a reader needs, so it is
	// exported beside the function even while nobody else has had to write its name.
	ignoreExportsUsedInFile: { interface: true, type: true },
	// The typefaces are packages that only a style sheet imports.
	compilers: {
		css: (text: string) =>
			[...text.matchAll(/@import\s+'([^']+)'/g)].map(([, name = '']) => `import '${name}';`).join('\n')
	},
	// A stale line in this file is an error too.
	treatConfigHintsAsErrors: true
};

export default config;
