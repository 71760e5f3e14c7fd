import { defineConfig, mergeConfig } from 'vitest/config';
import viteConfig from './vite.config.ts';

export default mergeConfig(
	viteConfig,
	defineConfig({
		test: {
			// Beside the code they test, and under tests/ for whole lessons, exports, references and rules.
			include: ['{src,shared,tests}/**/*.test.ts'],
			allowOnly: false
		}
	})
);
