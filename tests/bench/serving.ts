import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { Agent, get } from 'node:http';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { buffer } from 'node:stream/consumers';
import { PROJECT } from '../architecture/tree-copy.ts';
import { serveFrom } from '../support/serving.ts';
import { median, type Figure } from './figure.ts';

const PAGES = ['/', '/lessons/10-the-sheet', '/practice'] as const;
const REQUESTS = 1_500;
const CONNECTIONS = 20;
const ROUNDS = 5;
/** The share of a file's rate that a page is to reach. */
const GOAL = 0.8;

/** The least that a server can do: it sends one file, whatever is asked for. */
const FILE_SERVER = `require('node:http')
	.createServer((request, response) => require('node:fs').createReadStream(process.argv[1]).pipe(response))
	.listen(0, 'localhost', function () { console.log(this.address().port); });`;

/** What is sent for a page, as it is sent. */
const ask = (url: string, agent?: Agent): Promise<Buffer> =>
	new Promise((resolve, reject) => {
		const headers = { accept: 'text/html', 'accept-encoding': 'br' };
		get(url, { agent, headers }, (answer) => {
			if (answer.statusCode === 200) resolve(buffer(answer));
			else reject(new Error(`${url} answered ${String(answer.statusCode)}`));
		}).on('error', reject);
	});

/** Requests per second. */
const rateOf = async (url: string): Promise<number> => {
	const agent = new Agent({ keepAlive: true, maxSockets: CONNECTIONS });
	let left = REQUESTS;
	const start = performance.now();
	const work = async (): Promise<void> => {
		while (left-- > 0) await ask(url, agent);
	};
	await Promise.all(Array.from({ length: CONNECTIONS }, work));
	agent.destroy();
	return REQUESTS / ((performance.now() - start) / 1000);
};

const serveFile = async (file: string): Promise<{ child: ChildProcess; address: string }> => {
	const child = spawn(process.execPath, ['-e', FILE_SERVER, file], { stdio: ['ignore', 'pipe', 'inherit'] });
	const port = await new Promise<string>((resolve) =>
		child.stdout.once('data', (part: Buffer) => resolve(part.toString('utf8').trim()))
	);
	return { child, address: `http://localhost:${port}` };
};

/** How many pages a second are served, as a share of the rate at which the same bytes are sent as one file. */
export const servingFigures = async (): Promise<readonly Figure[]> => {
	const serving = await serveFrom(PROJECT);
	const folder = await mkdtemp(path.join(tmpdir(), 'square-across-bench-'));
	try {
		const figures: Figure[] = [];
		for (const page of PAGES) {
			const url = serving.address + page;
			const file = path.join(folder, 'page');
			await writeFile(file, await ask(url));
			const { child, address } = await serveFile(file);
			const shares: number[] = [];
			// In turn, so that whatever else the machine does slows both.
			for (let round = 0; round < ROUNDS; round++) shares.push((await rateOf(url)) / (await rateOf(address)));
			child.kill();
			const share = median(shares);
			figures.push({
				name: `${page}, pages a second against one file of the same bytes`,
				figure: `${(share * 100).toFixed(0)} %`,
				goal: `at least ${String(GOAL * 100)} %`,
				met: share >= GOAL
			});
		}
		return figures;
	} finally {
		await serving.stop();
		await rm(folder, { recursive: true, force: true });
	}
};
