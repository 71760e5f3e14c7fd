import type { Answered, EventKey } from '#shared/hand-in.ts';
import type { StorePlace } from '#server/settings.ts';
import { USE_CASES } from '#server/use-cases/all.ts';
import { handedEvent, newSchool, type School } from './school.ts';

/** A server that takes in what is handed in, and can be ended as a loss of power would end it. */
export interface Killable {
	readonly address: string;
	/** Ends it with SIGKILL, and waits until it is gone. */
	kill(): Promise<void>;
}

const LEARNERS = 8;
/** How long the load goes on before the server is killed, in milliseconds: from and to. */
const BEFORE_KILL = [40, 400] as const;
/** How long a browser waits for an answer in this load. */
const PATIENCE = 5_000;

type Event = ReturnType<typeof handedEvent>;
const nameOf = ({ device, tab, sequence }: EventKey): string => `${device} ${tab} ${sequence}`;

/** One learner's browser: it hands in one event after the other, and keeps each until there is a receipt. */
class Browser {
	readonly waiting: Event[] = [];
	/** What was acknowledged: by key, what was sent and its receipt. */
	readonly receipts = new Map<string, { readonly event: Event; readonly number: number }>();
	#sequence = 0;

	constructor(
		readonly secret: string,
		readonly learner: string,
		readonly assignment: string,
		readonly tab: string
	) {}

	/** Sends what waits. Gives false where there was no answer. */
	async send(address: string): Promise<boolean> {
		const events = this.waiting.slice(0, 5);
		const response = await fetch(`${address}/class/hand-in`, {
			method: 'POST',
			headers: { 'content-type': 'application/json', cookie: `square-across-session=${this.secret}` },
			body: JSON.stringify({ learner: this.learner, events }),
			signal: AbortSignal.timeout(PATIENCE)
		}).catch(() => undefined);
		if (!response?.ok) return false;
		const read = (await response.json().catch(() => undefined)) as { answers: Answered[] } | undefined;
		for (const [index, answer] of (read?.answers ?? []).entries()) {
			const event = events[index];
			if (!event) continue;
			if ('refused' in answer) throw new Error(`${nameOf(event.key)} was refused: ${answer.refused}`);
			const before = this.receipts.get(nameOf(event.key));
			if (before && before.number !== answer.number) throw new Error(`${nameOf(event.key)} has two receipts`);
			this.receipts.set(nameOf(event.key), { event, number: answer.number });
			const at = this.waiting.indexOf(event);
			if (at >= 0) this.waiting.splice(at, 1);
		}
		return read !== undefined;
	}

	place(): void {
		this.#sequence += 1;
		const at = [this.#sequence / 10, 222];
		const entry = { placement: { kind: 'point', at }, checked: true, kept: false, help: 0, shown: false };
		this.waiting.push(handedEvent(this.assignment, this.#sequence, { entry }, this.tab));
	}

	/** Places and hands in until the server is gone. */
	async work(address: string): Promise<void> {
		do {
			this.place();
			if (Math.random() < 0.3) this.place();
		} while (await this.send(address));
	}

	/** Sends everything again that was acknowledged already, as a browser does whose answer was lost. */
	again(): void {
		for (const { event } of this.receipts.values()) this.waiting.push(event);
	}
}

/** What came of it. */
export interface Killed {
	readonly rounds: number;
	readonly acknowledged: number;
	/** Requests that were under way when the server was killed, over all rounds. */
	readonly cutOff: number;
	/** Acknowledged and not in the log as it was sent; in the log more than once, or numbered wrongly: each by its key. */
	readonly lost: readonly string[];
	readonly doubled: readonly string[];
}

const browsersOf = async (school: School): Promise<readonly Browser[]> => {
	const teacher = await school.teacher('Ms Alder');
	const { class: own, code } = await school.newClass(teacher, 'Alder');
	const assignment = await school.newAssignment(teacher, own);
	const browsers: Browser[] = [];
	for (let number = 1; number <= LEARNERS; number += 1) {
		const { secret, id } = await school.learner(code, `Learner ${number}`);
		await school.ask(USE_CASES.openAssignment, secret, { assignment });
		browsers.push(new Browser(secret, id, assignment, String(number)));
	}
	return browsers;
};

/** Compares what the browsers were told with what stands in the store. */
const compared = async (
	{ world: { store } }: School,
	browsers: readonly Browser[]
): Promise<Pick<Killed, 'lost' | 'doubled'>> => {
	const rows = await store.db.selectFrom('events').selectAll().orderBy('attempt').orderBy('number').execute();
	const doubled: string[] = [];
	const counts = new Map<string, number>();
	for (const { id, attempt, number } of rows) {
		const expected = (counts.get(attempt) ?? 0) + 1;
		if (number !== expected) doubled.push(`${id}: ${number} in place of ${expected}`);
		counts.set(attempt, number);
	}
	const acknowledged = browsers.flatMap(({ receipts }) => [...receipts.values()]);
	if (rows.length !== acknowledged.length) doubled.push(`${rows.length} rows for ${acknowledged.length}`);
	const byEnd = new Map(rows.map((row) => [row.id.slice(32), row]));
	const lost = acknowledged.flatMap(({ event: { key, done }, number }) => {
		const row = byEnd.get(`${key.device}${key.tab}${key.sequence.toString(16).padStart(8, '0')}`);
		return row?.number === number && row.done === JSON.stringify(done) ? [] : [nameOf(key)];
	});
	return { lost, doubled };
};

/**
 * Kills a server again and again while a class hands in, and looks each time whether it opens again; at the end everything is sent
 * once more, and what was acknowledged is compared with what is in the store.
 */
export const killedUnderLoad = async (
	place: StorePlace,
	rounds: number,
	start: (place: StorePlace) => Promise<Killable>,
	/** Done beside the killing, with the number of the round: a database may be killed too. */
	beside: (round: number) => void = () => undefined
): Promise<Killed> => {
	let school = await newSchool(place);
	const browsers = await browsersOf(school);
	let cutOff = 0;
	for (let round = 1; round <= rounds; round += 1) {
		const server = await start(place);
		const working = browsers.map((browser) => browser.work(server.address));
		const [least, most] = BEFORE_KILL;
		await new Promise((resolve) => setTimeout(resolve, least + Math.random() * (most - least)));
		await server.kill();
		beside(round);
		await Promise.all(working);
		cutOff += browsers.filter(({ waiting }) => waiting.length > 0).length;
	}
	const server = await start(place);
	const sendAll = async (): Promise<void> => {
		for (const browser of browsers)
			while (browser.waiting.length > 0)
				if (!(await browser.send(server.address))) throw new Error('the server does not answer');
	};
	await sendAll();
	for (const browser of browsers) browser.again();
	await sendAll();
	await server.kill();
	await school.close();
	school = await newSchool(place);
	const acknowledged = browsers.reduce((sum, { receipts }) => sum + receipts.size, 0);
	const found = { rounds, acknowledged, cutOff, ...(await compared(school, browsers)) };
	await school.close();
	return found;
};
