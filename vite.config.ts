import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { sveltekit } from '@sveltejs/kit/vite';
import type { Plugin, Rolldown } from 'vite';
import { defineConfig } from 'vite';

const under = (file: string): string => path.join(import.meta.dirname, file);

const ROUTES = under('src/routes');
/** What every lesson shows is known by the first of them: each text is fetched by itself. */
const LESSON_TEXT = under('lessons/10-the-sheet/en.md');

/** Pages that share little with others, and are not to part what the others share. */
const SELDOM = /print|paper|measurements|patterns[\\/]\+page|[\\/]class[\\/]/;

/** Pages and what frames them, each with the modules that it begins with. */
const PAGES = readdirSync(ROUTES, { recursive: true, encoding: 'utf8' })
	.filter((file) => /\+(page|layout)\.svelte$/.test(file) && !SELDOM.test(file))
	.map((file) =>
		file.includes('[lesson]') ? [path.join(ROUTES, file), LESSON_TEXT] : [path.join(ROUTES, file)]
	);

/** What lessons of measuring embed: what a page has of it as well is kept apart from all else that the page has. */
const EMBEDS = ['TryIt', 'Tape'].map((name) => under(`src/lib/ui/embeds/${name}.svelte`));

/** What every page says from the start, in one language: fetched whole, and without the other. */
const FIRST_WORDS = ['en', 'es'].map((language) => [under(`shared/speech/${language}/first.ts`)]);

/** All modules that these ones bring in at once. */
const broughtIn = (roots: readonly string[], graph: Rolldown.ChunkingContext): ReadonlySet<string> => {
	const found = new Set(roots);
	for (const id of found) for (const next of graph.getModuleInfo(id)?.importedIds ?? []) found.add(next);
	return found;
};

/** Modules of ours, and what shapes and the nearest names are told by; other packages, and the framework, are parted by the bundler. */
const SHAPES = /node_modules[\\/]zod[\\/]/;
const isOurs = (id: string): boolean =>
	SHAPES.test(id) ||
	id.includes('node_modules/leven') ||
	(/[\\/](src[\\/]lib|shared)[\\/]/.test(id) && !id.includes('node_modules'));

/** What the bundler adds for whatever is fetched later, and the framework to say that it is there: every page has them. */
const LATER = /vite[\\/]preload-helper|svelte[\\/]src[\\/]internal[\\/]disclose-version/;
const EVERY_PAGE = `pages-${'1'.repeat(PAGES.length)}`;

/** A file that holds less than so many letters, as they are written, weighs no more than what is sent with each file. */
const LITTLE = 6000;

/** What only lessons begin with. */
const A_LESSON = `pages-${PAGES.map((roots) => (roots.length > 1 ? '1' : '0')).join('')}`;

/** Whether whoever fetches a file of pages fetches another one as well. */
const comesWith = (file: string, other: string): boolean =>
	other.startsWith('pages-') && Array.from(file).every((page, i) => page !== '1' || other[i] === '1');

/** The file that each module of ours goes into, by what begins with it. */
const filesOf = (graph: Rolldown.ChunkingContext): ReadonlyMap<string, string> => {
	const fileOf = new Map<string, string>();
	const embedded = broughtIn(EMBEDS, graph);
	const sort = (kind: string, all: readonly (readonly string[])[]): void => {
		const reach = all.map((roots) => broughtIn(roots, graph));
		const nameOf = (id: string): string => {
			// In two files, one for pages that need less of it, it weighed nearly a kilobyte more in a lesson.
			if (SHAPES.test(id)) return 'shapes';
			const name = `${kind}${reach.map((modules) => (modules.has(id) ? '1' : '0')).join('')}`;
			return embedded.has(id) && !comesWith(A_LESSON, name) ? `${name}-embedded` : name;
		};
		for (const id of new Set(reach.flatMap((modules) => [...modules])))
			if (isOurs(id) && !fileOf.has(id)) fileOf.set(id, nameOf(id));
	};
	sort('pages-', PAGES);
	sort('words-', FIRST_WORDS);
	return fileOf;
};

/** Puts what is in little files of lessons into larger ones: whoever needs it fetches those, and those fetch nothing more for it. */
const withoutLittle = (
	fileOf: ReadonlyMap<string, string>,
	graph: Rolldown.ChunkingContext
): ReadonlyMap<string, string> => {
	const idsOf = (file: string): readonly string[] =>
		[...fileOf].flatMap(([id, its]) => (its === file ? [id] : []));
	const isLittle = (file: string): boolean =>
		idsOf(file).reduce((sum, id) => sum + (graph.getModuleInfo(id)?.code?.length ?? 0), 0) < LITTLE;
	const all = [...new Set(fileOf.values())].filter((file) => file.startsWith('pages-'));
	const large = all.filter((file) => !isLittle(file));
	const hosts = new Map<string, string>();
	for (const file of all.filter((each) => isLittle(each) && comesWith(A_LESSON, each))) {
		const needs = idsOf(file).flatMap((id) => graph.getModuleInfo(id)?.importedIds ?? []);
		const host = large.find(
			(other) => comesWith(file, other) && needs.every((need) => comesWith(other, fileOf.get(need) ?? other))
		);
		if (host !== undefined) hosts.set(file, host);
	}
	return new Map([...fileOf].map(([id, file]) => [id, hosts.get(file) ?? file]));
};

let files: ReadonlyMap<string, string> | undefined;

/**
 * The file that a module of ours goes into: one for all that the same pages begin with. Left to itself the bundler also
 * keeps apart what each lesson's text and each later import brings in: the first lesson fetched 41 files, most below 1 kB.
 */
const chunkOf = (id: string, graph: Rolldown.ChunkingContext): string | null =>
	LATER.test(id) ? EVERY_PAGE : ((files ??= withoutLittle(filesOf(graph), graph)).get(id) ?? null);

/** What is judged by. */
const JUDGING = [
	...['shared', 'src/lib/geometry', 'src/lib/drafting', 'src/lib/garment'],
	...['src/lib/checker', 'src/lib/practice']
].map(under);

/** A hash of all that judges: the class server writes it beside each verdict. */
const engine = (): string => {
	const hash = createHash('sha256');
	for (const folder of JUDGING)
		for (const file of readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort())
			if (/(?<!\.test)\.ts$/.test(file))
				hash.update(`${file}\n`).update(readFileSync(path.join(folder, file)));
	return hash.digest('hex').slice(0, 16);
};

/**
 * js-aruco2 comes as scripts that hang what they make on `this`: a module has none, and the bundler sees no export. Each is
 * called with an object of ours, which becomes what the module gives.
 */
const scriptsAsModules = (): Plugin => ({
	name: 'scripts-as-modules',
	transform(code, id) {
		const [, file] = /js-aruco2[\\/]src[\\/](aruco|cv)[.]js(?:[?]|$)/.exec(id) ?? [];
		if (!file) return undefined;
		const before =
			file === 'aruco' ? "import cv from './cv.js';\nconst made = { ...cv };" : 'const made = {};';
		const script = code.replace("this.CV || require('./cv').CV", 'this.CV');
		return { code: `${before}\n(function () {\n${script}\n}).call(made);\nexport default made;`, map: null };
	}
});

export default defineConfig({
	define: { ENGINE: JSON.stringify(engine()) },
	plugins: [sveltekit(), scriptsAsModules()],
	// Made ready beforehand it would be read without the plugin.
	optimizeDeps: { exclude: ['js-aruco2'] },
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
							groups: [{ name: chunkOf, test: (id: string) => isOurs(id) || LATER.test(id) }]
						}
					}
				}
			}
		}
	},
	// Modules, so that the worker that makes files fetches what writes PDF only when one is wanted.
	worker: { format: 'es', plugins: () => [scriptsAsModules()] },
	server: { fs: { allow: ['lessons', 'shared'] } }
});
