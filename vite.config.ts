import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vite';

export default defineConfig({
	plugins: [sveltekit()],
	// Modules, so that the worker that makes files fetches what writes PDF only when one is wanted.
	worker: { format: 'es' },
	server: { fs: { allow: ['lessons', 'shared'] } }
});
