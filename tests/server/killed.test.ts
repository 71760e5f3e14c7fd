import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { rm } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { StorePlace } from '#server/settings.ts';
import { PROJECT } from '../architecture/tree-copy.ts';
import { killedUnderLoad, type Killable } from './killing.ts';
import { onBoth } from './stores.ts';

const SCRIPT = fileURLToPath(new URL('hand-in-server.ts', import.meta.url));
/** `npm run measure:killed` does it fifty times, with the whole app. */
const ROUNDS = 5;

/** The script in one file, as deep as its sources' own folder: to read hundreds of them took longer than a round. */
const FOLDER = path.join(PROJECT, 'build', `hand-in-${process.pid}`);
beforeAll(() =>
	build({
		configFile: false,
		root: PROJECT,
		logLevel: 'silent',
		publicDir: false,
		ssr: { noExternal: true, external: ['@photostructure/sqlite', 'pg'] },
		build: { ssr: SCRIPT, outDir: FOLDER, rolldownOptions: { output: { entryFileNames: 'server.js' } } }
	})
);
afterAll(() => rm(FOLDER, { recursive: true, force: true }));

const start = async (place: StorePlace): Promise<Killable> => {
	const child = spawn(process.execPath, [path.join(FOLDER, 'server.js'), JSON.stringify(place)], {
		cwd: PROJECT,
		stdio: ['ignore', 'pipe', 'inherit']
	});
	const [said] = (await once(child.stdout, 'data')) as [Buffer];
	return {
		address: said.toString('utf8').trim(),
		kill: async () => {
			const gone = once(child, 'exit');
			child.kill('SIGKILL');
			await gone;
		}
	};
};

onBoth('a server that is killed while a class hands in', (newStorePlace) => {
	it('has lost nothing that it acknowledged, has nothing twice, and opens again', async () => {
		const { acknowledged, cutOff, ...found } = await killedUnderLoad(await newStorePlace(), ROUNDS, start);
		expect(found).toEqual({ rounds: ROUNDS, lost: [], doubled: [] });
		expect(acknowledged).toBeGreaterThan(ROUNDS);
		expect(cutOff).toBeGreaterThan(0);
	});
});
