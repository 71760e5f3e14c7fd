import { defineConfig, mergeConfig } from 'vitest/config';
import viteConfig from './vite.config.ts';

export default mergeConfig(
	viteConfig,
	defineConfig({
		test: {
			// Beside the code they test, and under tests/ for whole lessons, exports, references and rules.
			include: ['{src,shared,tests}/**/*.test.ts'],
			allowOnly: false,
			// Many tests start the command line as a process of its own, which a busy machine may take long over.
			testTimeout: 60_000,
			hookTimeout: 60_000
		}
	})
);
