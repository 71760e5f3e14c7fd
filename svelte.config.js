import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { promisify } from 'node:util';
import { brotliCompress, constants, gzip } from 'node:zlib';
import adapter from '@sveltejs/adapter-node';
import { vitePreprocess } from '@sveltejs/vite-plugin-svelte';
import { mdsvex } from 'mdsvex';

/** Each build is made in a folder of its own, with all that goes into it: src/cli/build-folders.ts. */
const BUILD = process.env['SQUARE_ACROSS_BUILD'] ?? 'build/by-hand';

const [asBrotli, asGzip] = [promisify(brotliCompress), promisify(gzip)];

/**
 * Compresses what is sent as text, once, when it is built, as many files at once as Node has threads for. Scripts, which every page
 * needs, as far as brotli can; pages one level below, which makes them a fiftieth larger in a fraction of the time.
 *
 * @param {string} folder
 */
const compress = async (folder) => {
	const quality = folder.includes('prerendered') ? 10 : constants.BROTLI_MAX_QUALITY;
	const params = { [constants.BROTLI_PARAM_QUALITY]: quality };
	const names = readdirSync(folder, { recursive: true, encoding: 'utf8' });
	await Promise.all(
		names.map(async (name) => {
			if (!/\.(html|js|json|css|svg|txt)$/.test(name)) return;
			const file = join(folder, name);
			const content = readFileSync(file);
			writeFileSync(`${file}.br`, await asBrotli(content, { params }));
			writeFileSync(`${file}.gz`, await asGzip(content));
		})
	);
};

/** @returns {import('@sveltejs/kit').Adapter} */
const nodeAdapter = () => {
	const node = adapter({ out: BUILD });
	return { ...node, adapt: (builder) => node.adapt({ ...builder, compress }) };
};

/**
 * The one script that stands in every page beside the framework's own, without comments, since each page is sent with it.
 *
 * - Where the browser is cut off, or a part of the page did not come, it asks whether the server answers, and tells.
 * - Styles that did not come are asked for again: what loads scripts does that once. A page that did not begin, since a script of it
 *   was lost, is loaded once more; again only after a while, so that one that never begins does not go round. The window's name keeps that.
 *   An address with a question mark may be what a form was sent to, and is left as it is.
 * - What is typed, chosen and pressed before the page is alive (ui/pages/home/Frame.svelte) is done once it is; each control once. A form that
 *   a script of ours reads would otherwise be sent to the server, with what was typed in the address.
 * - A form that is on its way to the server is not sent again by who presses twice; whoever stops it, or comes back to it, may.
 */
const [, ownScript = ''] =
	/<script>([^]*?)<\/script>/.exec(readFileSync(new URL('src/app.html', import.meta.url), 'utf8')) ?? [];

/**
 * What a page may load and run. Scripts that stand in a page are named by what is in them; the framework adds its own, so there
 * is no way in for another. Styles may stand in it: sizes of drawings are attributes. Who may frame a page is a setting of the server.
 *
 * @type {NonNullable<import('@sveltejs/kit').KitConfig['csp']>['directives']}
 */
const POLICY = {
	'default-src': ['self'],
	'script-src': ['self', `sha256-${createHash('sha256').update(ownScript).digest('base64')}`],
	'style-src': ['self', 'unsafe-inline'],
	'img-src': ['self', 'data:', 'blob:'],
	'font-src': ['self', 'data:'],
	'object-src': ['none'],
	'base-uri': ['none'],
	'form-action': ['self']
};

/** The components that lessons may use, and the file of each under src/lib/ui: listed once, in embeds.ts. */
const EMBEDS = [
	...readFileSync(new URL('src/lib/ui/embeds/embeds.ts', import.meta.url), 'utf8').matchAll(
		/default as (\w+) \} from '(.+)'/g
	)
].map(([, name = '', file = '']) => ({ name, file: posix.join('embeds', file) }));

/**
 * The short bold sentence that a paragraph begins with stands in the place of a heading, and is one for whoever goes from
 * heading to heading: below the step that it stands in, or else beside the steps.
 *
 * @param {string} content
 */
const withHeadings = (content) => {
	let level = 2;
	return content.replace(/<Step\b|<\/Step>|<p><strong>(?=[^<]*[.?!]<)/g, (found) => {
		if (found.startsWith('<p>')) return `<p><strong role="heading" aria-level="${String(level)}">`;
		level = found === '<Step' ? 3 : 2;
		return found;
	});
};

/**
 * Lessons hold no code, so the components that one uses are imported for it, after mdsvex has turned the Markdown
 * into Svelte. It imports no others: the first lesson is not to wait for what only the last one shows.
 */
const lessonComponents = {
	name: 'lesson-components',
	/** @param {{ content: string, filename?: string }} input */
	markup({ content, filename }) {
		if (!filename || !/[\\/]lessons[\\/].*\.md$/.test(filename)) return;
		const imports = EMBEDS.filter(({ name }) => new RegExp(`<${name}\\b`).test(content)).map(
			({ name, file }) => `import ${name} from '#ui/${file}';`
		);
		// A link to a page of this site stays in the language of the page that it stands on.
		const linked = withHeadings(content).replace(/<a href="(\/[^"]*)"/g, "<a href={speech.to('$1')}");
		if (linked.includes('{speech.to(')) {
			imports.push("import { useSpeech } from '#ui/keeping/speech.svelte.ts'; const speech = useSpeech();");
		}
		return { code: `${linked}\n<script>${imports.join('')}</script>` };
	}
};

/** @type {import('@sveltejs/kit').Config} */
export default {
	extensions: ['.svelte', '.md'],
	preprocess: [vitePreprocess(), mdsvex({ extensions: ['.md'], smartypants: true }), lessonComponents],
	// Lessons too: one component of the older kind would bring its own file into every page.
	compilerOptions: { runes: true },
	kit: {
		adapter: nodeAdapter(),
		outDir: process.env['SQUARE_ACROSS_BUILD'] === undefined ? '.svelte-kit' : `${BUILD}.kit`,
		files: { assets: 'static' },
		csp: { mode: 'auto', directives: POLICY },
		// src/hooks.server.ts asks where everything comes from that changes something, also what is no form.
		csrf: { trustedOrigins: ['*'] },
		// All of a page's styles: it is not to wait for them once more.
		inlineStyleThreshold: 50_000,
		typescript: {
			config: (config) => ({
				...config,
				include: [...config.include, '../shared/**/*.ts', '../tests/**/*.ts', '../*.ts'],
				// What package.json says too: the compiler in native code knows the types of components by these alone.
				compilerOptions: {
					...config.compilerOptions,
					paths: { ...config.compilerOptions.paths, '#ui/*': ['../src/lib/ui/*'] }
				}
			})
		}
	}
};
