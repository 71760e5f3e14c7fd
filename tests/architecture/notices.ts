import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { PROJECT } from './tree-copy.ts';

/** Where the notices lie: a file of the app's own, which is served as it is. */
export const NOTICES = path.join(PROJECT, 'static/third-party.txt');

/** Dependencies that only build the app or run the command line from its sources: nothing of theirs is sent or served. */
const TOOLS = ['@sveltejs/vite-plugin-svelte', 'mdsvex', 'tsx', 'typescript', 'vite'];
/** What bundles the server brings its own parts in; what it needs to bundle is not among them. */
const BUNDLER = '@sveltejs/adapter-node';

interface Locked {
	readonly version: string;
	readonly license?: string;
	readonly dependencies?: Readonly<Record<string, string>>;
}

const json = (file: string): unknown => JSON.parse(readFileSync(path.join(PROJECT, file), 'utf8'));

/** Where a package that another needs lies: beside it, or further up, as Node looks for it. */
const placeOf = (name: string, from: string, locked: Readonly<Record<string, Locked>>): string => {
	const here = `${from ? `${from}/` : ''}node_modules/${name}`;
	if (here in locked || from === '') return here;
	return placeOf(name, from.slice(0, Math.max(0, from.lastIndexOf('node_modules/') - 1)), locked);
};

/** The folders of all packages that may be sent to a browser or run on the server. */
const shipped = (locked: Readonly<Record<string, Locked>>): readonly string[] => {
	const found = new Set<string>();
	const add = (name: string, from: string): void => {
		const place = placeOf(name, from, locked);
		if (found.has(place)) return;
		found.add(place);
		if (name !== BUNDLER) for (const next of Object.keys(locked[place]?.dependencies ?? {})) add(next, place);
	};
	for (const name of Object.keys(locked['']?.dependencies ?? {})) if (!TOOLS.includes(name)) add(name, '');
	return [...found].filter((place) => place in locked).sort();
};

/** The licence texts of a package, or its author where it brings none. */
const textsOf = (place: string): string => {
	const files = readdirSync(path.join(PROJECT, place)).filter((file) =>
		/^(licen[sc]e|copying|notice)/i.test(file)
	);
	const texts = files.map((file) => readFileSync(path.join(PROJECT, place, file), 'utf8'));
	if (texts.length > 0) return texts.join('\n');
	const { author } = json(`${place}/package.json`) as { author?: string | { name: string } };
	const name = typeof author === 'object' ? author.name : (author ?? 'its authors');
	return `Copyright ${name}. The package brings no text of its licence, which is the one named above.`;
};

/** The notices of everything of others that the app ships, from the lock file and the packages' own texts. */
export const notices = (): string => {
	const { packages: locked } = json('package-lock.json') as { packages: Readonly<Record<string, Locked>> };
	const entries = shipped(locked).map((place) => {
		const { version, license = 'see below' } = locked[place] ?? { version: '' };
		const name = place.slice(place.lastIndexOf('node_modules/') + 'node_modules/'.length);
		return `${name} ${version} (${license})\n\n${textsOf(place).replace(/\r\n?/g, '\n').trim()}\n`;
	});
	return [...new Set(entries)].join(`\n${'-'.repeat(80)}\n\n`);
};
