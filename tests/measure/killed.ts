/**
 * `npm run measure:killed`: the whole app is killed fifty times (`-- 10` for another number) while a class hands in, on both
 * databases; of PostgreSQL the database itself is killed every other time as well. Exits with 1 where anything was lost or doubled.
 */
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { StorePlace } from '#server/settings.ts';
import { PROJECT } from '../architecture/tree-copy.ts';
import { killedUnderLoad, type Killable, type Killed } from '../server/killing.ts';
import { newPostgres } from '../support/postgres.ts';
import { serveFrom } from '../support/serving.ts';

const rounds = Number(process.argv[2] ?? 50);

const start = async (place: StorePlace): Promise<Killable> => {
	const env: Record<string, string> =
		place.kind === 'folder' ? { SQUARE_ACROSS_DATA: place.folder } : { DATABASE_URL: place.url };
	const { address, child } = await serveFrom(PROJECT, undefined, env);
	return {
		address,
		kill: async () => {
			const gone = once(child, 'exit');
			child.kill('SIGKILL');
			await gone;
		}
	};
};

const say = (where: string, { rounds: times, acknowledged, cutOff, lost, doubled }: Killed): void => {
	console.log(
		`${where}: killed ${times} times, ${cutOff} requests cut off, ${acknowledged} acknowledged, ${lost.length} lost, ${doubled.length} doubled`
	);
	for (const each of [...lost, ...doubled]) console.log(`  ${each}`);
	if (lost.length + doubled.length > 0) process.exitCode = 1;
};

const folder = mkdtempSync(path.join(tmpdir(), 'square-across-killed-'));
say('a folder', await killedUnderLoad({ kind: 'folder', folder }, rounds, start));
rmSync(folder, { recursive: true, force: true });

const postgres = await newPostgres();
try {
	const place = { kind: 'postgres', url: postgres.url } as const;
	const both = (round: number): void => {
		if (round % 2 === 1) return;
		postgres.kill();
		postgres.start();
	};
	say('PostgreSQL', await killedUnderLoad(place, rounds, start, both));
} finally {
	postgres.remove();
}
