import { defineConfig, devices } from '@playwright/test';
import { CHOSEN, CHROMIUM_SWITCHES, findChromium } from './tests/support/chromium.ts';

const PORT = 4183;
const ADDRESS = `http://localhost:${String(PORT)}`;

// `npm test` installs a browser before it comes here. Without one Playwright says how to get its own.
const browser = findChromium();
// Playwright reads this file once more in every worker: they need not search again.
if (browser) process.env[CHOSEN] = browser;

/**
 * What a machine of two cores is spared. Pages under test do much once and little often: what a browser compiles anew because it
 * ran a few hundred times was a tenth of all work, and is left to what runs ten times as often.
 */
const SPARING = '--js-flags=--invocation-count-for-maglev=4000,--invocation-count-for-turbofan=30000';

export default defineConfig({
	testDir: 'tests/e2e',
	testMatch: '*.spec.ts',
	fullyParallel: true,
	forbidOnly: true,
	retries: 0,
	// A busy machine of two cores may take long over what takes seconds alone.
	timeout: 90_000,
	expect: { timeout: 10_000 },
	// One more than the smallest machine has cores: pages also wait, for a frame or for the server.
	workers: 3,
	use: {
		...devices['Desktop Chrome'],
		baseURL: ADDRESS,
		// What is waited for in vain is named; a test that runs out of its own time does not say at what.
		actionTimeout: 30_000,
		// Pages that still glide would be clicked where they no longer are.
		contextOptions: { reducedMotion: 'reduce' },
		launchOptions: { executablePath: browser, args: [...CHROMIUM_SWITCHES, SPARING] },
		screenshot: 'only-on-failure'
	},
	webServer: {
		command: `node src/cli/square-across.js serve --port ${String(PORT)}`,
		url: ADDRESS,
		// What tests of classes need they serve themselves.
		env: { SQUARE_ACROSS_DATA: 'none' },
		timeout: 400_000,
		gracefulShutdown: { signal: 'SIGTERM', timeout: 5_000 },
		stdout: 'pipe'
	}
});
