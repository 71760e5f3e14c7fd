import { defineConfig, mergeConfig } from 'vitest/config';
import viteConfig from './vite.config.ts';

/** Tests that put something in the place of a browser's store: each file of theirs gets a world of its own. */
const APART = 'tests/ui/{garment-at-hand,learner,saved-work,work}.test.ts';

/** The class server, on a folder and on a PostgreSQL that is started for these tests. */
const SERVER = 'tests/server/*.test.ts';

/** The project's folder, as a pattern: one above it may be called `shared` or `tests` too. */
const HERE = import.meta.dirname.replaceAll('\\', '/').replaceAll(/[^\w/]/g, String.raw`\$&`);

/** What Node reads by itself: all but tests, what is written in Svelte's own way, and what starts the PostgreSQL in Vitest's own process. */
const NATIVE = new RegExp(
	String.raw`^${HERE}/(?:shared|src/(?:cli|lib/(?!ui/))|tests/(?!server/|ui/|support/(?:postgres|debian)))[^]*(?<!\.test)\.ts$`
);

export default mergeConfig(
	viteConfig,
	defineConfig({
		test: {
			allowOnly: false,
			// Many tests start the command line as a process of its own, which a busy machine may take long over.
			testTimeout: 300_000,
			hookTimeout: 300_000,
			pool: 'forks',
			execArgv: ['--import', './tests/support/native/register.js', '--enable-source-maps'],
			server: { deps: { external: [NATIVE] } },
			// As many as the smallest machine has cores.
			maxWorkers: 2,
			// Tests read these from the disk, where `--changed` does not see who reads what.
			forceRerunTriggers: ['**/lessons/**', '**/shared/**/*.{csv,json}', '**/*.config.*', '**/package.json'],
			projects: [
				// Beside the code they test, and under tests/ for whole lessons, exports, references and rules. Nobody
				// changes what a module holds, so all files of a worker share the modules: reading them took longer than the tests.
				{
					extends: true,
					test: {
						name: 'unit',
						include: ['{src,shared,tests}/**/*.test.ts'],
						exclude: [APART, SERVER],
						isolate: false
					}
				},
				{ extends: true, test: { name: 'store', include: [APART] } },
				{
					extends: true,
					test: {
						name: 'server',
						include: [SERVER],
						globalSetup: 'tests/server/start-postgres.ts',
						isolate: false
					}
				}
			]
		}
	})
);
