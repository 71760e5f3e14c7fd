/**
 * `tsx tests/bundled.ts FILE ARGUMENTS ...`: runs a script of the tests as one bundle. The program runs so as well, and what tsx
 * does to each function that is made at run time would else be measured with it.
 */
import { spawnSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';

const [script = '', ...words] = process.argv.slice(2);
// As deep as the scripts are, so that `../../` leads from both to the project.
const outDir = path.resolve(`build/script-${process.pid}`);
try {
	await build({
		configFile: false,
		logLevel: 'warn',
		publicDir: false,
		oxc: false,
		build: {
			ssr: script,
			outDir,
			minify: false,
			copyPublicDir: false,
			rolldownOptions: { tsconfig: false, output: { entryFileNames: 'script.js' } }
		}
	});
	// Not as the program's own file: helpers that can be run by themselves lie in the same bundle, and must not take it for their call.
	const load = `await import(${JSON.stringify(pathToFileURL(path.join(outDir, 'script.js')).href)})`;
	const asked = ['--input-type=module', '--eval', load, '--', script, ...words];
	const { status } = spawnSync(process.execPath, asked, { stdio: 'inherit' });
	process.exitCode = status ?? 1;
} finally {
	rmSync(outDir, { recursive: true, force: true });
}
