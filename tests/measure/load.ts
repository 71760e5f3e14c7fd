/**
 * `npm run measure:load`: a school of 300 learners, each with a placement every five seconds, for a minute (`-- 20` for so many
 * seconds), on both databases; then thirty who hand in all at once. Says how long answers took, and how much of the processor the
 * server used. Everything is asked of a server on this machine that is started for it. Exits with 1 where anything was not taken in.
 */
import { readFileSync, mkdtempSync, rmSync } from 'node:fs';
import { Agent, request } from 'node:http';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { text } from 'node:stream/consumers';
import type { Answered } from '#shared/hand-in.ts';
import type { StorePlace } from '#server/settings.ts';
import { USE_CASES } from '#server/use-cases/all.ts';
import { PROJECT } from '../architecture/tree-copy.ts';
import { handedEvent, newSchool } from '../server/school.ts';
import { newPostgres } from '../support/postgres.ts';
import { serveFrom } from '../support/serving.ts';

const LEARNERS = 300;
const CLASS = 30;
const EVERY = 5_000;
const MOST_SECONDS = 600;
const seconds = Math.min(MOST_SECONDS, Number(process.argv[2] ?? 60));
const GOAL = 150;
/** Ticks of the system's clock in a second, in which it counts a process's time. */
const TICKS = 100;

interface Learner {
	readonly id: string;
	readonly secret: string;
	readonly assignment: string;
}

/** Classes of thirty, each with something set, whose learners have all begun. */
const learnersIn = async (place: StorePlace): Promise<readonly Learner[]> => {
	const school = await newSchool(place);
	const teacher = await school.teacher('Ms Alder');
	const learners: Learner[] = [];
	for (let each = 0; each < LEARNERS / CLASS; each += 1) {
		const { class: own, code } = await school.newClass(teacher, `Class ${each}`);
		const assignment = await school.newAssignment(teacher, own);
		for (let number = 0; number < CLASS; number += 1) {
			const learner = await school.learner(code, `Learner ${number}`);
			await school.ask(USE_CASES.openAssignment, learner.secret, { assignment });
			learners.push({ ...learner, assignment });
		}
	}
	await school.close();
	return learners;
};

const agent = new Agent({ keepAlive: true, maxSockets: LEARNERS });

/** Hands one placement in, and gives how long that took, in milliseconds. Throws where it was not taken. */
const place = (address: string, { id, secret, assignment }: Learner, sequence: number): Promise<number> =>
	new Promise((resolve, reject) => {
		const entry = {
			placement: { kind: 'point', at: [(sequence % 2_000) / 10, 222] },
			checked: true,
			kept: false,
			help: 0,
			shown: false
		};
		const body = JSON.stringify({ learner: id, events: [handedEvent(assignment, sequence, { entry })] });
		const headers = {
			'content-type': 'application/json',
			'content-length': Buffer.byteLength(body),
			cookie: `square-across-session=${secret}`
		};
		const start = performance.now();
		request(`${address}/class/hand-in`, { method: 'POST', agent, headers }, (answer) => {
			text(answer)
				.then((found) => {
					const took = performance.now() - start;
					const { answers } = JSON.parse(found) as { readonly answers: readonly Answered[] };
					const [first] = answers;
					if (answer.statusCode !== 200 || !first || 'refused' in first) throw new Error(found);
					resolve(took);
				})
				.catch(reject);
		})
			.on('error', reject)
			.end(body);
	});

const share = (sorted: readonly number[], of: number): string =>
	(sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * of))] ?? 0).toFixed(0);

const wait = (until: number): Promise<void> =>
	new Promise((resolve) => setTimeout(resolve, Math.max(0, until - performance.now())));

/** Seconds of the processor that a process has used. */
const usedBy = (pid: number | undefined): number => {
	const [, rest = ''] = readFileSync(`/proc/${pid ?? 0}/stat`, 'utf8').split(') ');
	const fields = rest.split(' ');
	return (Number(fields[11]) + Number(fields[12])) / TICKS;
};

/** A part of the load: how long each answer took, and what was not taken. */
class Tally {
	readonly took: number[] = [];
	readonly failed: string[] = [];

	async take(asked: Promise<number>): Promise<void> {
		try {
			this.took.push(await asked);
		} catch (problem) {
			this.failed.push(String(problem));
		}
	}

	say(what: string): void {
		const sorted = [...this.took].sort((a, b) => a - b);
		console.log(
			`  ${what}: ${sorted.length} taken, ${this.failed.length} not; half within ${share(sorted, 0.5)} ms, 95 of 100 within ${share(sorted, 0.95)} ms, all within ${share(sorted, 1)} ms`
		);
		for (const each of this.failed.slice(0, 3)) console.log(`    ${each}`);
		if (this.failed.length > 0) process.exitCode = 1;
	}
}

const loaded = async (
	where: string,
	at: StorePlace,
	env: Readonly<Record<string, string>>
): Promise<void> => {
	console.log(`${where}: ${LEARNERS} learners, a placement every ${EVERY / 1000} s each, for ${seconds} s`);
	const learners = await learnersIn(at);
	const serving = await serveFrom(PROJECT, undefined, env);
	const { address, child } = serving;
	const [steady, together] = [new Tally(), new Tally()];
	const [used, start] = [usedBy(child.pid), performance.now()];
	await Promise.all(
		learners.map(async (learner, index) => {
			const offset = (index * EVERY) / LEARNERS;
			for (let round = 0; round * EVERY + offset < seconds * 1000; round += 1) {
				await wait(start + round * EVERY + offset);
				await steady.take(place(address, learner, round + 1));
			}
		})
	);
	const took = (performance.now() - start) / 1000;
	steady.say(`steady (goal: 95 of 100 within ${GOAL} ms)`);
	console.log(
		`  the server used ${((100 * (usedBy(child.pid) - used)) / took).toFixed(0)} % of one processor`
	);
	await Promise.all(
		learners.slice(0, CLASS).map((learner) => together.take(place(address, learner, 1_000_000)))
	);
	together.say(`${CLASS} at once`);
	await serving.stop();
};

const folder = mkdtempSync(path.join(tmpdir(), 'square-across-load-'));
const postgres = await newPostgres();
try {
	await loaded('a folder', { kind: 'folder', folder }, { SQUARE_ACROSS_DATA: folder });
	await loaded('PostgreSQL', { kind: 'postgres', url: postgres.url }, { DATABASE_URL: postgres.url });
} finally {
	agent.destroy();
	postgres.remove();
	rmSync(folder, { recursive: true, force: true });
}
