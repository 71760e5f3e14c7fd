import adapter from '@sveltejs/adapter-node';
import { vitePreprocess } from '@sveltejs/vite-plugin-svelte';
import { mdsvex } from 'mdsvex';

/**
 * Lessons hold no code, so the components that they may use are imported for them, after mdsvex
 * has turned the Markdown into Svelte. The list of names is checked by tests/lessons.
 */
const lessonComponents = {
	name: 'lesson-components',
	/** @param {{ content: string, filename?: string }} input */
	markup({ content, filename }) {
		if (!filename || !/[\\/]lessons[\\/].*\.md$/.test(filename)) return;
		const script =
			"<script>import { Comparison, Figure, SideBySide, Step, Tape, TryIt } from '#ui/lesson/embeds.ts';</script>";
		return { code: `${content}\n${script}` };
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
