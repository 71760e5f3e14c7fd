import { execFile } from 'node:child_process';
import path from 'node:path';
import { z } from 'zod';
import { PROJECT } from './tree-copy.ts';

const cruiseReport = z.object({
	modules: z.array(z.object({ source: z.string(), followable: z.boolean().optional() })),
	summary: z.object({
		violations: z.array(z.object({ from: z.string(), to: z.string(), rule: z.object({ name: z.string() }) })),
		totalCruised: z.number()
	})
});

/** What dependency-cruiser found in one tree. */
export type Cruise = z.infer<typeof cruiseReport>;

const CLI = path.join(PROJECT, 'node_modules/dependency-cruiser/bin/dependency-cruise.mjs');
const MORE_THAN_ANY_REPORT = 256 * 1024 * 1024;

/** Runs the import rules as `npm run layers` does, in a folder, on some of its parts. */
export const cruise = (folder: string, parts: readonly string[]): Promise<Cruise> =>
	new Promise((resolve, reject) => {
		const words = [CLI, ...parts, '--config', '.dependency-cruiser.mjs', '--output-type', 'json'];
		const options = { cwd: folder, maxBuffer: MORE_THAN_ANY_REPORT };
		execFile(process.execPath, words, options, (_problem, stdout, stderr) => {
			// The exit code only says whether there were violations; a run that broke leaves no JSON.
			try {
				resolve(cruiseReport.parse(JSON.parse(stdout)));
			} catch (unreadable) {
				reject(new Error(`dependency-cruiser left no report: ${stderr || stdout}`, { cause: unreadable }));
			}
		});
	});
