import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { newId } from '#server/people/ids.ts';
import type { StorePlace } from '#server/settings.ts';
import type { Store } from '#server/store/store.ts';
import { USE_CASES } from '#server/use-cases/all.ts';
import { handedEvent, newSchool, type School } from '../server/school.ts';
import { newPostgres } from '../support/postgres.ts';
import { median, type Figure } from './figure.ts';

/** Learners who hand in at once, each one mark after the other. */
const LEARNERS = 30;
const EACH = 20;
const ROUNDS = 7;
/** The first round has the colder machine. */
const WARM_UP = 1;
const GOAL = 0.5;

const seconds = async (work: () => Promise<unknown>): Promise<number> => {
	const start = performance.now();
	await work();
	return (performance.now() - start) / 1000;
};

interface Ready {
	readonly secret: string;
	readonly id: string;
}

const ready = async (
	school: School
): Promise<{ readonly learners: readonly Ready[]; readonly assignment: string }> => {
	const teacher = await school.teacher('Ms Alder');
	const { class: own, code } = await school.newClass(teacher, 'Alder');
	const assignment = await school.newAssignment(teacher, own);
	const learners: Ready[] = [];
	for (let number = 0; number < LEARNERS; number += 1) {
		const learner = await school.learner(code, `Learner ${number}`);
		await school.ask(USE_CASES.openAssignment, learner.secret, { assignment });
		learners.push(learner);
	}
	return { learners, assignment };
};

/** Each row in a commit of its own, as many at once as there are learners: what the database does with nothing asked of it. */
const bare = async ({ db }: Store): Promise<void> => {
	const one = async (): Promise<void> => {
		for (let number = 0; number < EACH; number += 1)
			await db
				.insertInto('tries')
				.values({ id: newId(Date.now()), of: JSON.stringify(handedEvent('none', number)), at: 1 })
				.execute();
	};
	await Promise.all(Array.from({ length: LEARNERS }, one));
};

const figureOf = async (where: string, place: StorePlace): Promise<Figure> => {
	const school = await newSchool(place);
	const { learners, assignment } = await ready(school);
	const handIn = (round: number): Promise<unknown> =>
		Promise.all(
			learners.map(async ({ secret, id }) => {
				for (let number = 1; number <= EACH; number += 1) {
					const events = [handedEvent(assignment, number, {}, String(round))];
					await school.ask(USE_CASES.handIn, secret, { learner: id, events });
				}
			})
		);
	const ratios: number[] = [];
	for (let round = 1; round <= ROUNDS; round += 1) {
		const [accepted, inserted] = [
			await seconds(() => handIn(round)),
			await seconds(() => bare(school.world.store))
		];
		if (round > WARM_UP) ratios.push(inserted / accepted);
	}
	await school.close();
	const ratio = median(ratios);
	return {
		name: `marks handed in to bare durable inserts, ${where}`,
		figure: `${ratio.toFixed(2)} (${LEARNERS} learners at once, one mark a request; ${ratios.map((each) => each.toFixed(2)).join(', ')})`,
		goal: `at least ${GOAL}`,
		met: ratio >= GOAL
	};
};

/** How many marks a second are taken in, each with its session, its receipt and its commit, as a share of what the same database takes bare. */
export const handingFigures = async (): Promise<readonly Figure[]> => {
	const folder = mkdtempSync(path.join(tmpdir(), 'square-across-bench-'));
	const postgres = await newPostgres();
	try {
		return [
			await figureOf('in a folder', { kind: 'folder', folder }),
			await figureOf('in PostgreSQL', { kind: 'postgres', url: postgres.url })
		];
	} finally {
		postgres.remove();
		rmSync(folder, { recursive: true, force: true });
	}
};
