import { readFileSync } from 'node:fs';
import { posix } from 'node:path';
import adapter from '@sveltejs/adapter-node';
import { vitePreprocess } from '@sveltejs/vite-plugin-svelte';
import { mdsvex } from 'mdsvex';

/** The components that lessons may use, and the file of each under src/lib/ui: listed once, in embeds.ts. */
const EMBEDS = [
	...readFileSync(new URL('src/lib/ui/embeds/embeds.ts', import.meta.url), 'utf8').matchAll(
		/default as (\w+) \} from '(.+)'/g
	)
].map(([, name = '', file = '']) => ({ name, file: posix.join('embeds', file) }));

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
		const linked = content.replace(/<a href="(\/[^"]*)"/g, "<a href={speech.to('$1')}");
		if (linked !== content) {
			imports.push("import { useSpeech } from '#ui/keeping/speech.svelte.ts'; const speech = useSpeech();");
		}
		return { code: `${linked}\n<script>${imports.join('')}</script>` };
	}
};

/** @type {import('@sveltejs/kit').Config} */
export default {
	extensions: ['.svelte', '.md'],
	preprocess: [vitePreprocess(), mdsvex({ extensions: ['.md'], smartypants: true }), lessonComponents],
	compilerOptions: { runes: undefined },
	kit: {
		adapter: adapter({ out: 'build' }),
		outDir: '.svelte-kit',
		files: { assets: 'static' },
		typescript: {
			config: (config) => ({
				...config,
				include: [...config.include, '../shared/**/*.ts', '../tests/**/*.ts', '../*.ts']
			})
		}
	}
};
