import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { sveltekit } from '@sveltejs/kit/vite';
import type { Rolldown } from 'vite';
import { defineConfig } from 'vite';

const under = (file: string): string => path.join(import.meta.dirname, file);

const ROUTES = under('src/routes');
/** What every lesson shows is known by the first of them: each text is fetched by itself. */
const LESSON_TEXT = under('lessons/10-the-sheet/en.md');

/** Pages that share little with others, and are not to part what the others share. */
const SELDOM = /print|patterns[\\/]\+page|[\\/]class[\\/]/;

/** Pages and what frames them, each with the modules that it begins with. */
const PAGES = readdirSync(ROUTES, { recursive: true, encoding: 'utf8' })
	.filter((file) => /\+(page|layout)\.svelte$/.test(file) && !SELDOM.test(file))
	.map((file) =>
		file.includes('[lesson]') ? [path.join(ROUTES, file), LESSON_TEXT] : [path.join(ROUTES, file)]
	);

/** All modules that these ones bring in at once. */
const broughtIn = (roots: readonly string[], graph: Rolldown.ChunkingContext): ReadonlySet<string> => {
	const found = new Set(roots);
	for (const id of found) for (const next of graph.getModuleInfo(id)?.importedIds ?? []) found.add(next);
	return found;
};

let reach: readonly ReadonlySet<string>[] | undefined;

/**
 * The file that a module of ours goes into: one for all that the same pages begin with. Left to itself the bundler also
 * keeps apart what each lesson's text and each later import brings in: the first lesson fetched 41 files, most below 1 kB.
 */
const chunkOf = (id: string, graph: Rolldown.ChunkingContext): string | null => {
	reach ??= PAGES.map((roots) => broughtIn(roots, graph));
	const name = reach.flatMap((modules, page) => (modules.has(id) ? [page] : [])).join('-');
	return name === '' ? null : `pages-${name}`;
};

/** What is judged by. */
const JUDGING = ['shared', 'src/lib/geometry', 'src/lib/drafting', 'src/lib/checker'].map(under);

/** A hash of all that judges: the class server writes it beside each verdict. */
const engine = (): string => {
	const hash = createHash('sha256');
	for (const folder of JUDGING)
		for (const file of readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort())
			if (/(?<!\.test)\.ts$/.test(file))
				hash.update(`${file}\n`).update(readFileSync(path.join(folder, file)));
	return hash.digest('hex').slice(0, 16);
};

export default defineConfig({
	define: { ENGINE: JSON.stringify(engine()) },
	plugins: [sveltekit()],
	environments: {
		client: {
			build: {
				modulePreload: {
					// Nearly all that a lesson's text needs came with its page: lists of it for each text weighed as much as three texts.
					resolveDependencies: (_file, needed, { hostId }) =>
						hostId.includes('/nodes/') ? needed.filter((each) => each.endsWith('.css')) : needed
				},
				rolldownOptions: {
					preserveEntrySignatures: 'allow-extension',
					output: {
						// Each name stands in the lists of every page and lesson: a letter less of it is 0.3 kB.
						chunkFileNames: '_app/immutable/chunks/[hash:7].js',
						codeSplitting: {
							includeDependenciesRecursively: false,
							// What a page alone has from elsewhere goes with it: left in the page's own file, that file and this one would wait for each other.
							groups: [
								{
									name: chunkOf,
									test: /[\\/](src[\\/]lib|shared|node_modules[\\/](?!svelte|@sveltejs))[\\/]/
								}
							]
						}
					}
				}
			}
		}
	},
	// Modules, so that the worker that makes files fetches what writes PDF only when one is wanted.
	worker: { format: 'es' },
	server: { fs: { allow: ['lessons', 'shared'] } }
});
