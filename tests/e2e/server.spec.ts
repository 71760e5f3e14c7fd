import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { cp } from 'node:fs/promises';
import { connect, type Socket } from 'node:net';
import path from 'node:path';
import { expect, test } from '@playwright/test';
import { PROJECT, withTreeCopy } from '../architecture/tree-copy.ts';
import { runProcess } from '../cli/run-cli.ts';
import { serveFrom, type Serving } from '../support/serving.ts';

/** What a build is made from, besides what every copy of the tree holds. */
const BUILT_FROM = [
	'static',
	'package-lock.json',
	'svelte.config.js',
	'vite.config.ts',
	'tsconfig.json',
	'.svelte-kit/tsconfig.json'
];

/** A build takes long where much else goes on. */
test.describe.configure({ timeout: 600_000 });

/** Works on a copy of the tree with what was built from it, since the same sources need not be built a second time. */
const withBuiltCopy = (work: (folder: string) => Promise<void>): Promise<void> =>
	withTreeCopy(
		{},
		async (folder) => {
			await cp(path.join(PROJECT, 'build'), path.join(folder, 'build'), {
				recursive: true,
				// Who serves a build of the tree serves none of the copy.
				filter: (file) => !path.basename(file).startsWith('serving-')
			});
			await work(folder);
		},
		BUILT_FROM
	);

const builds = (folder: string): readonly string[] =>
	readdirSync(path.join(folder, 'build')).filter((name) => name.startsWith('app-'));

/** The build that a server serves. */
const servedBy = (folder: string, { child }: Serving): string =>
	builds(folder).find((name) =>
		existsSync(path.join(folder, 'build', name, `serving-${String(child.pid)}`))
	) ?? 'none';

/** The scripts of a build, as they are asked for. */
const scripts = (build: string): readonly string[] =>
	readdirSync(path.join(build, 'client/_app/immutable/chunks'))
		.filter((name) => name.endsWith('.js'))
		.map((name) => `/_app/immutable/chunks/${name}`);

const statusOf = async (url: string): Promise<number> => {
	const answer = await fetch(url, { headers: { accept: 'text/html' } });
	await answer.arrayBuffer();
	return answer.status;
};

test('a server goes on serving its own build while a lesson is changed and the app built anew', async () => {
	await withBuiltCopy(async (folder) => {
		const first = await serveFrom(folder);
		const before = servedBy(folder, first);
		const lesson = path.join(folder, 'lessons/10-the-sheet/en.md');
		writeFileSync(lesson, `${readFileSync(lesson, 'utf8')}\nA sentence more.\n`);
		const built = await runProcess(process.execPath, [
			path.join(folder, 'src/cli/square-across.js'),
			'build'
		]);
		expect(built.err).toBe('');
		// The old one is served, so it stays; those that nobody serves are gone.
		expect(builds(folder)).toHaveLength(2);
		expect(builds(folder)).toContain(before);

		for (const script of scripts(path.join(folder, 'build', before)))
			expect(await statusOf(first.address + script), script).toBe(200);
		const page = '/lessons/10-the-sheet';
		expect(await (await fetch(first.address + page)).text()).not.toContain('A sentence more.');
		expect(await statusOf(`${first.address}/lessons/99-nothing`)).toBe(404);

		const second = await serveFrom(folder);
		expect(await (await fetch(second.address + page)).text()).toContain('A sentence more.');
		await Promise.all([first.stop(), second.stop()]);
	});
});

/** Opens connections that never say anything. */
const silent = (address: string, count: number): Promise<readonly Socket[]> => {
	const { hostname, port } = new URL(address);
	return Promise.all(
		Array.from(
			{ length: count },
			() =>
				new Promise<Socket>((resolve) => {
					const socket = connect(Number(port), hostname, () => {
						resolve(socket);
					});
					socket.on('error', () => {
						resolve(socket);
					});
				})
		)
	);
};

test.describe('a server that may have few files open', () => {
	let serving: Serving;
	test.beforeEach(async () => {
		serving = await serveFrom(PROJECT, 'ulimit -n 512');
	});
	test.afterEach(async () => {
		await serving.stop();
	});

	test('answers those who ask while others only hold connections', async () => {
		const sockets = await silent(serving.address, 700);
		for (const page of ['/', '/favicon.svg', '/lessons/10-the-sheet', '/lessons/99-nothing'])
			expect(await statusOf(serving.address + page), page).toBe(page.endsWith('nothing') ? 404 : 200);
		for (const socket of sockets) socket.destroy();
		expect(serving.child.exitCode).toBeNull();
	});

	test('answers seven hundred requests at once, or turns them away, and stands afterwards', async () => {
		await Promise.allSettled(
			Array.from({ length: 700 }, () => statusOf(`${serving.address}/lessons/10-the-sheet`))
		);
		expect(await statusOf(`${serving.address}/lessons/10-the-sheet`)).toBe(200);
		expect(serving.child.exitCode).toBeNull();
	});
});

test('a file that has gone ends its own request and no other', async () => {
	await withBuiltCopy(async (folder) => {
		const serving = await serveFrom(folder);
		const build = path.join(folder, 'build', servedBy(folder, serving));
		const [script = ''] = scripts(build);
		rmSync(path.join(build, 'client'), { recursive: true });
		await expect(statusOf(serving.address + script)).rejects.toThrow();
		expect(await statusOf(`${serving.address}/lessons/10-the-sheet`)).toBe(200);
		expect(serving.child.exitCode).toBeNull();
		await serving.stop();
	});
});

test('pages come compressed and are asked for again each time; what is named by its content is kept', async ({
	request
}) => {
	const page = await request.get('/lessons/10-the-sheet', { headers: { 'accept-encoding': 'br' } });
	expect(page.headers()).toMatchObject({ 'content-encoding': 'br', 'cache-control': 'no-cache' });
	const etag = page.headers()['etag'] ?? '';
	const again = await request.get('/lessons/10-the-sheet', {
		headers: { 'accept-encoding': 'br', 'if-none-match': etag }
	});
	expect(again.status()).toBe(304);
	const [script = ''] = /\/?_app\/immutable\/[^"]+\.js/.exec(await page.text()) ?? [];
	const kept = await request.get(new URL(script, page.url()).href, { headers: { 'accept-encoding': 'br' } });
	expect(kept.headers()['cache-control']).toBe('public,max-age=31536000,immutable');
});
