import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { minVersion, satisfies } from 'semver';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { PROJECT } from './tree-copy.ts';

const withEngines = z.object({ engines: z.object({ node: z.string().optional() }).optional() });
const lockFile = z.object({ packages: z.record(z.string(), withEngines) });

const read = async (file: string): Promise<unknown> =>
	JSON.parse(await readFile(path.join(PROJECT, file), 'utf8'));

/** The packages in a lock file that say they do not run on one version of Node. */
const refusing = (lock: unknown, node: string): string[] =>
	Object.entries(lockFile.parse(lock).packages)
		.filter(([, { engines }]) => engines?.node !== undefined && !satisfies(node, engines.node))
		.map(([name]) => name);

describe('the oldest Node that package.json promises', () => {
	it('is one that every installed package accepts', async () => {
		const promised = withEngines.parse(await read('package.json')).engines?.node ?? '';
		const oldest = minVersion(promised)?.version ?? '';
		expect(oldest).toMatch(/^\d+\.\d+\.\d+$/);

		const lock = await read('package-lock.json');
		expect(refusing(lock, oldest)).toEqual([]);
		// The same look finds much to complain of on a Node that is far too old, so it does see the packages.
		expect(refusing(lock, '8.0.0').length).toBeGreaterThan(50);
	});
});
