import { createHash } from 'node:crypto';
import { once } from 'node:events';
import { readdirSync } from 'node:fs';
import { get, type IncomingMessage } from 'node:http';
import { connect } from 'node:net';
import path from 'node:path';
import { buffer } from 'node:stream/consumers';
import { brotliDecompressSync, gunzipSync } from 'node:zlib';
import { expect, test } from '@playwright/test';
import { PROJECT } from '../architecture/tree-copy.ts';
import { newPostgres, type Postgres } from '../support/postgres.ts';
import { serveFrom, type Serving } from '../support/serving.ts';
import { firstLink, PASSPHRASE, schoolOfItsOwn } from './support/school.ts';

/** Where a build of these sources must be made first, that takes long. */
test.describe.configure({ timeout: 600_000, mode: 'serial' });

/** Asks as a program does: redirects are answers of their own. */
const ask = (url: string, how: RequestInit = {}): Promise<Response> =>
	fetch(url, { redirect: 'manual', ...how });

/** Sends a form as a page of the site itself does. */
const sent = (
	address: string,
	form: string,
	values: Readonly<Record<string, string>>,
	cookie = ''
): Promise<Response> =>
	ask(`${address}/class?/${form}`, {
		method: 'POST',
		headers: { origin: address, cookie, accept: 'text/html' },
		body: new URLSearchParams(values)
	});

const cookieOf = (answer: Response): string => (answer.headers.get('set-cookie') ?? '').split(';')[0] ?? '';

/** Makes the first teacher by the link that a server printed, and gives their cookie. */
const firstTeacher = async (serving: Serving): Promise<string> => {
	const link = new URL(await firstLink(serving)).searchParams.get('link') ?? '';
	return cookieOf(await sent(serving.address, 'become', { link, name: 'Ms Alder', passphrase: PASSPHRASE }));
};

test.describe('one server', () => {
	const school = schoolOfItsOwn({
		SQUARE_ACROSS_LOG: 'requests',
		SQUARE_ACROSS_FRAMED_BY: 'https://platform.example',
		BODY_SIZE_LIMIT: '64K'
	});

	/** A script, a style and a face of the build. */
	const assets = (): readonly string[] => {
		const [build = ''] = readdirSync(path.join(PROJECT, 'build')).filter(
			(name) =>
				name.startsWith('app-') &&
				readdirSync(path.join(PROJECT, 'build', name)).includes(`serving-${String(school().child.pid)}`)
		);
		const client = path.join(PROJECT, 'build', build, 'client');
		const all = readdirSync(client, { recursive: true, encoding: 'utf8' });
		return ['.js', '.css', '.woff2'].map(
			(ending) => `/${all.find((name) => name.endsWith(ending)) ?? ending}`
		);
	};

	const big = new URLSearchParams({ name: 'x'.repeat(70_000) });
	const html = { accept: 'text/html' };
	/** Every kind of answer: what is asked, and its status. */
	const KINDS: readonly (readonly [string, number, RequestInit?])[] = [
		['/', 200, { headers: html }],
		['/es', 200, { headers: html }],
		['/lessons/10-the-sheet', 200, { headers: html }],
		['/es/patterns/course-dress', 200, { headers: html }],
		['/lessons/10-the-sheet', 200, { method: 'HEAD' }],
		['/', 303, { headers: { ...html, 'accept-language': 'es' } }],
		['/lessons/10-the-sheet/', 308],
		['/class', 200, { headers: html }],
		['/es/class', 200, { headers: html }],
		['/class/nobody', 303, { headers: html }],
		['/class/data/nobody', 303],
		['/nothing', 404, { headers: html }],
		['/es/nothing', 404, { headers: html }],
		['/_app/immutable/nothing.js', 404],
		['/%E0%A4%A', 400],
		['/favicon.svg', 200],
		['/third-party.txt', 200],
		['/favicon.svg', 206, { headers: { range: 'bytes=0-9' } }],
		['/health', 200],
		['/ready', 200],
		['/class', 405, { method: 'PUT' }],
		// A page that was made beforehand is sent, whatever is asked.
		['/', 200, { method: 'POST' }],
		['/class?/signIn', 403, { method: 'POST', headers: { origin: 'https://elsewhere.example' }, body: 'x' }],
		['/class?/signIn', 413, { method: 'POST', body: big }]
	];

	test('every kind of answer says what a browser may do with it', async () => {
		for (const [asked, status, how] of [
			...KINDS,
			...assets().map((each) => [each, 200] as const)
		] as typeof KINDS) {
			const answer = await ask(school().address + asked, how);
			const named = `${how?.method ?? 'GET'} ${asked}`;
			expect(answer.status, named).toBe(status);
			const { headers } = answer;
			expect(headers.get('x-content-type-options'), named).toBe('nosniff');
			expect(headers.get('referrer-policy'), named).toBe('same-origin');
			const policy = headers.get('content-security-policy') ?? '';
			if (!policy.startsWith("default-src 'none';")) {
				expect(policy, named).toContain("default-src 'self'");
				expect(policy, named).toContain("object-src 'none'");
			} else expect(asked, 'a file that may fetch nothing').toMatch(/^\/_app\/immutable\/(?!workers\/)/);
			expect(policy, named).toMatch(/; frame-ancestors https:\/\/platform\.example$/);
			expect(policy.replace(/style-src[^;]*/, ''), named).not.toContain('unsafe');
			if (!headers.get('content-type')?.includes('html')) continue;
			// Each script that stands in the page is named by the policy, by what is in it or by a word of this answer alone.
			for (const [, attributes = '', script = ''] of (await answer.text()).matchAll(
				/<script([^>]*)>([^]*?)<\/script>/g
			)) {
				const [, nonce] = /nonce="([^"]+)"/.exec(attributes) ?? [];
				const hash = createHash('sha256').update(script).digest('base64');
				if (nonce === undefined || !policy.includes(`'nonce-${nonce}'`))
					expect(policy, `${named} ${script.slice(0, 40)}`).toContain(`'sha256-${hash}'`);
			}
		}
	});

	test('what is made on request comes compressed to whoever takes it, and is the same', async () => {
		const got = async (
			takes: string
		): Promise<{ readonly how: string | undefined; readonly bytes: Buffer }> => {
			const headers = { accept: 'text/html', 'accept-encoding': takes };
			const [answer] = (await once(get(`${school().address}/class`, { headers }), 'response')) as [
				IncomingMessage
			];
			return { how: answer.headers['content-encoding'], bytes: await buffer(answer) };
		};
		// Each page has a word of its own for its scripts.
		const text = (bytes: Buffer): string => bytes.toString('utf8').replace(/nonce="[^"]*"/g, '');
		const plain = await got('identity');
		expect(plain.how).toBeUndefined();
		expect(text(plain.bytes)).toContain('</html>');
		for (const [takes, unpacked] of [
			['br', brotliDecompressSync],
			['gzip', gunzipSync]
		] as const) {
			const { how, bytes } = await got(takes);
			expect(how).toBe(takes);
			expect(bytes.length).toBeLessThan(plain.bytes.length / 2);
			expect(text(unpacked(bytes))).toBe(text(plain.bytes));
		}
	});

	test('what is no request is answered too, and so', async () => {
		const { hostname, port } = new URL(school().address);
		const answer = await new Promise<string>((resolve) => {
			let text = '';
			const socket = connect(Number(port), hostname, () => socket.write('NOT HTTP\r\n\r\n'));
			socket.on('data', (part) => (text += part.toString('utf8')));
			socket.on('close', () => resolve(text));
		});
		expect(answer).toMatch(/^HTTP\/1\.1 400 /);
		expect(answer).toContain('x-content-type-options: nosniff');
		expect(answer).toContain("content-security-policy: default-src 'none'");
	});

	test('what is too long is refused with its length, also where that was not said beforehand', async () => {
		const said = await ask(`${school().address}/class?/signIn`, { method: 'POST', body: big });
		expect(await said.text()).toMatch(/^A request may send 65536 bytes, not 700\d\d\.\n$/);
		const streamed = await ask(`${school().address}/class?/signIn`, {
			method: 'POST',
			headers: { 'content-type': 'application/x-www-form-urlencoded', accept: 'text/html' },
			body: new Blob([big.toString()]).stream(),
			duplex: 'half'
		} as RequestInit);
		expect(streamed.status).toBe(413);
		expect((await ask(`${school().address}/health`)).status).toBe(200);
	});

	test('the log tells what was done, and of nobody what they typed', async () => {
		const cookie = await firstTeacher(school());
		expect(cookie).not.toBe('');
		await sent(school().address, 'signIn', { name: 'Heron Quill', passphrase: 'a wrong passphrase' });
		await ask(`${school().address}/class/of-heron-quill?bust=96.5`, { headers: { cookie } });
		await ask(`${school().address}/heron-quill/96.5`);
		await expect.poll(() => school().said()).toContain('"route":"none","status":404');
		const lines = school()
			.said()
			.split('\n')
			.filter((line) => line.startsWith('{'));
		const requests = lines.map((line) => JSON.parse(line) as Readonly<Record<string, unknown>>);
		expect(requests).toContainEqual(
			expect.objectContaining({
				event: 'request',
				method: 'POST',
				route: '/[[language=language]]/class/[[class]]'
			})
		);
		expect(lines.join('\n')).not.toMatch(/quill|alder|passphrase|96\.5|127\.0|link=|::1/i);
	});

	test('a setting that is wrong stops the start and names itself', async () => {
		await expect(serveFrom(PROJECT, undefined, { BODY_SIZE_LIMIT: 'much' })).rejects.toThrow(
			/exit code 2:\nBODY_SIZE_LIMIT: must be a number of bytes/
		);
	});
});

test.describe('two servers on one database', () => {
	let postgres: Postgres;
	let servings: readonly Serving[] = [];
	test.beforeAll(async () => {
		postgres = await newPostgres();
		const settings = { DATABASE_URL: postgres.url };
		servings = await Promise.all([1, 2].map(() => serveFrom(PROJECT, undefined, settings)));
	});
	test.afterAll(async () => {
		await Promise.all(servings.map((serving) => serving.stop()));
		postgres.remove();
	});

	test('work together: who is signed in at one is at the other, and wrong tries count together', async () => {
		const [one, other] = servings;
		if (!one || !other) throw new Error('two servers were started');
		// Both printed a link for the first teacher: the later one is good.
		const cookies = await Promise.all(servings.map(firstTeacher));
		expect(cookies.filter((cookie) => cookie.startsWith('square-across-session=')).length).toBe(1);
		const cookie = cookies.find(Boolean) ?? '';
		await sent(one.address, 'startClass', { name: 'Alder Row' }, cookie);
		const seen = await ask(`${other.address}/class`, { headers: { cookie } });
		expect(await seen.text()).toContain('Alder Row');

		const statuses: number[] = [];
		for (let tries = 0; tries < 16; tries += 1) {
			const { address } = tries % 2 === 0 ? one : other;
			statuses.push((await sent(address, 'signIn', { name: 'Ms Alder', passphrase: 'wrong' })).status);
		}
		expect(statuses).toEqual([...Array<number>(15).fill(400), 429]);

		await sent(other.address, 'signOut', {}, cookie);
		const gone = await ask(`${one.address}/class`, { headers: { cookie } });
		expect(await gone.text()).not.toContain('Alder Row');
	});

	test('one stops at once, and the other goes on', async () => {
		const [one, other] = servings;
		if (!one || !other) throw new Error('two servers were started');
		await one.stop();
		expect(one.child.exitCode).toBe(0);
		expect((await ask(`${other.address}/ready`)).status).toBe(200);
	});

	test('without the database the program is well and not ready, and ready again with it', async () => {
		const [, other] = servings;
		if (!other) throw new Error('two servers were started');
		postgres.kill();
		expect((await ask(`${other.address}/health`)).status).toBe(200);
		expect((await ask(`${other.address}/ready`)).status).toBe(503);
		postgres.start();
		await expect.poll(async () => (await ask(`${other.address}/ready`)).status).toBe(200);
	});
});
