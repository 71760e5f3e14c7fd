/**
 * A PostgreSQL of its own for the tests: of the programs that are installed, or that this file installs. Run by itself
 * (`npx tsx tests/support/postgres.ts`) it says where they are.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { chown } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { canUseDebian, fromDebian, isRoot } from './debian.ts';

/** Names the folder of PostgreSQL's programs (initdb, pg_ctl), where it is not a usual one. */
const CHOSEN = 'SQUARE_ACROSS_POSTGRES';
/** The user that PostgreSQL runs as where the tests run as root, whom it refuses. */
const USER = 'postgres';
/** Longest that starting or stopping may take, in milliseconds. */
const WITHIN = 120_000;

const foldersIn = (place: string): readonly string[] =>
	existsSync(place)
		? readdirSync(place)
				.sort((a, b) => Number(b.replace(/\D/g, '')) - Number(a.replace(/\D/g, '')))
				.map((version) => path.join(place, version, 'bin'))
		: [];

/** The folder of PostgreSQL's own programs; undefined where there is none. */
const findPrograms = (): string | undefined => {
	const chosen = process.env[CHOSEN];
	const places = chosen
		? [chosen]
		: [
				...foldersIn('/usr/lib/postgresql'),
				...(process.env['PATH'] ?? '').split(path.delimiter),
				...foldersIn('/opt/homebrew/opt'),
				'/usr/local/pgsql/bin'
			];
	return places.find((place) => ['initdb', 'pg_ctl'].every((name) => existsSync(path.join(place, name))));
};

const WHAT_TO_DO = `The class server is tested on a real PostgreSQL, and its programs (initdb, pg_ctl) could neither be found nor installed.
Do one of these, then run the tests again:
  - Debian or Ubuntu, as root:   apt-get update && apt-get install -y postgresql
  - macOS, with Homebrew:        brew install postgresql
  - any other place:             ${CHOSEN}=/folder/of/initdb npm test`;

/**
 * The folder of PostgreSQL's programs, after installing them if need be.
 *
 * @throws Error that says what to do when there are none and none could be installed
 */
export const ensurePostgres = (): string => {
	const found = findPrograms();
	if (found) return found;
	if (canUseDebian()) {
		console.log('No PostgreSQL found; installing one (once).');
		fromDebian('postgresql');
	}
	const installed = findPrograms();
	if (!installed) throw new Error(WHAT_TO_DO);
	return installed;
};

const freePort = (): Promise<number> =>
	new Promise((resolve, reject) => {
		const server = createServer();
		server.on('error', reject);
		server.listen(0, '127.0.0.1', () => {
			const address = server.address();
			server.close(() => resolve(typeof address === 'object' && address ? address.port : 0));
		});
	});

const idOf = (flag: '-u' | '-g'): number =>
	Number(spawnSync('id', [flag, USER], { encoding: 'utf8' }).stdout);

/** A PostgreSQL server that is only for one test. */
export interface Postgres {
	/** The address of a database in it. */
	readonly url: string;
	/** Ends it at once, as a loss of power would. */
	kill(): void;
	/** Starts it again. */
	start(): void;
	/** Ends it and takes its files away. */
	remove(): void;
}

/** Starts a PostgreSQL in a folder of its own, on a free port of this machine. @throws Error with all that it said */
export const newPostgres = async (): Promise<Postgres> => {
	const programs = ensurePostgres();
	const folder = mkdtempSync(path.join(tmpdir(), 'square-across-postgres-'));
	const as = isRoot ? { uid: idOf('-u'), gid: idOf('-g') } : {};
	if (as.uid !== undefined) await chown(folder, as.uid, as.gid);
	const data = path.join(folder, 'data');
	const log = path.join(folder, 'log');
	const run = (program: string, ...words: readonly string[]): void => {
		const { status, stderr, stdout, error } = spawnSync(path.join(programs, program), words, {
			...as,
			cwd: folder,
			timeout: WITHIN,
			encoding: 'utf8',
			// What pg_ctl starts would keep a pipe of its own open.
			stdio: program === 'pg_ctl' ? ['ignore', 'ignore', 'ignore'] : ['ignore', 'pipe', 'pipe'],
			env: { ...process.env, HOME: folder }
		});
		if (status !== 0) throw new Error([program, stdout, stderr, error?.message].filter(Boolean).join('\n'));
	};
	run('initdb', '-D', data, '-A', 'trust', '-U', USER, '-E', 'UTF8', '--no-locale');
	const port = await freePort();
	const start = (): void =>
		run(
			'pg_ctl',
			'-D',
			data,
			'-l',
			log,
			'-w',
			'-o',
			`-p ${port} -k ${folder} -c listen_addresses=127.0.0.1`,
			'start'
		);
	start();
	return {
		url: `postgres://${USER}@127.0.0.1:${port}/postgres`,
		kill: () => run('pg_ctl', '-D', data, '-m', 'immediate', '-w', 'stop'),
		start,
		remove: () => {
			try {
				run('pg_ctl', '-D', data, '-m', 'immediate', '-w', 'stop');
			} finally {
				rmSync(folder, { recursive: true, force: true });
			}
		}
	};
};

if (process.argv[1] === fileURLToPath(import.meta.url)) {
	try {
		console.log(ensurePostgres());
	} catch (problem) {
		console.error(problem instanceof Error ? problem.message : problem);
		process.exitCode = 1;
	}
}
