import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';

/** The policy that stands in a page which was made beforehand: the framework writes there which scripts the page itself holds. */
const IN_PAGE = /<meta http-equiv="content-security-policy" content="([^"]+)">/;

/** What stands in an attribute, as it was before. */
const unescaped = (text: string): string => text.replace(/&quot;/g, '"').replace(/&amp;/g, '&');

/** For whatever is no page of ours: nothing from elsewhere, and no script that does not come in a file of its own. */
const ANYTHING_ELSE =
	"default-src 'self'; style-src 'self' 'unsafe-inline'; object-src 'none'; base-uri 'none'; form-action 'self'";

/** For a file that is no page and no worker: shown by itself it may fetch nothing. It is sent with each of a lesson's thirty files. */
const PART = "default-src 'none'";
const PARTS = /^\/_app\/immutable\/(?!workers\/).+\.(?:js|css|woff2)$/;

/** Paths of pages that were made beforehand, each with its file. */
const pagesIn = (folder: string): ReadonlyMap<string, string> =>
	new Map(
		readdirSync(folder, { recursive: true, encoding: 'utf8' })
			.filter((name) => name.endsWith('.html'))
			.map((name) => [
				`/${name.split(path.sep).join('/')}`.replace(/\.html$/, '').replace(/\/index$/, '') || '/',
				path.join(folder, name)
			])
	);

/**
 * Which content security policy goes with an answer, by the path that is asked for. Each page's file is read once.
 *
 * @param build the folder of the built app
 * @param frames what is added to each: who may show this site in a frame
 */
export const policiesOf = (build: string, frames: string): ((path: string) => string) => {
	const pages = pagesIn(path.join(build, 'prerendered'));
	const known = new Map<string, string>();
	return (asked) => {
		if (PARTS.test(asked)) return `${PART}; ${frames}`;
		const file = pages.get(asked);
		if (file === undefined) return `${ANYTHING_ELSE}; ${frames}`;
		const found =
			known.get(file) ?? unescaped(IN_PAGE.exec(readFileSync(file, 'utf8'))?.[1] ?? ANYTHING_ELSE);
		known.set(file, found);
		return `${found}; ${frames}`;
	};
};
