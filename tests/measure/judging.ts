import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { performance } from 'node:perf_hooks';
import { MOST_AT_ONCE } from '#shared/hand-in-limits.ts';
import { chanceOf } from '#practice/chance.ts';
import { USE_CASES } from '#server/use-cases/all.ts';
import { handedEvent, newSchool } from '../server/school.ts';
import { scriptedMarks } from '../server/scripted-learner.ts';

/**
 * What it costs to mark a class: thirty learners, each with a body of their own, draft the whole back and front, slip at one step in
 * three, and keep a few slips. Prints the processor's milliseconds of the first look at the marks, of a look after one more mark of
 * each, and the longest time for which nobody else was answered meanwhile.
 */

const LEARNERS = Number(process.argv[2] ?? 30);
const LESSONS = [
	...['40-back-levels', '41-back-neck-and-shoulder', '42-back-armhole', '43-back-side-and-hip'],
	...[
		'50-front-levels',
		'51-front-neck-and-shoulder',
		'52-front-armhole',
		'53-front-bust-point',
		'54-front-dart'
	]
];
const folder = mkdtempSync(path.join(tmpdir(), 'square-across-judging-'));
const school = await newSchool({ kind: 'folder', folder });
const lessons = school.world.course.lessons.filter(({ id }) => LESSONS.includes(id));
const asked = new Set(lessons.flatMap(({ steps }) => steps));
const methods = [
	...new Set(lessons.flatMap(({ meta }) => school.world.course.method(meta.method ?? '') ?? []))
];
const teacher = await school.teacher('Ms Alder');
const { class: own, code } = await school.newClass(teacher, 'Alder Row');
const assignment = await school.newAssignment(teacher, own, { lessons: LESSONS, body: { kind: 'each' } });
let events = 0;
const learners: { secret: string; id: string; marks: ReturnType<typeof scriptedMarks> }[] = [];
for (let i = 0; i < LEARNERS; i += 1) {
	const learner = await school.learner(code, `Learner ${i}`);
	school.later(60_000);
	const { body } = await school.ask(USE_CASES.openAssignment, learner.secret, { assignment });
	if (!body) throw new Error('no body');
	const marks = scriptedMarks(methods, asked, body, chanceOf(i));
	for (let from = 0; from < marks.length; from += MOST_AT_ONCE) {
		const sent = marks
			.slice(from, from + MOST_AT_ONCE)
			.map((done, at) => handedEvent(assignment, from + at + 1, { ...done }));
		await school.ask(USE_CASES.handIn, learner.secret, { learner: learner.id, events: sent });
	}
	learners.push({ ...learner, marks });
	events += marks.length;
}
console.log(`${LEARNERS} learners, ${asked.size} steps each, ${events} events`);

const look = async (what: string): Promise<void> => {
	let [longest, before] = [0, performance.now()];
	const ticking = setInterval(() => {
		longest = Math.max(longest, performance.now() - before);
		before = performance.now();
	}, 1);
	const from = process.cpuUsage();
	const found = await school.ask(USE_CASES.readAssignment, teacher, { assignment });
	const { user, system } = process.cpuUsage(from);
	longest = Math.max(longest, performance.now() - before);
	clearInterval(ticking);
	const tries = found.learners
		.flatMap(({ seen }) => seen?.steps ?? [])
		.reduce((sum, step) => sum + step.tries, 0);
	const marks = found.learners.reduce((sum, { seen }) => sum + (seen?.total.mark ?? 0), 0);
	console.log(
		`${what}: ${Math.round((user + system) / 1000)} ms, at most ${Math.round(longest)} ms at a time; ${tries} wrong tries, marks ${marks.toFixed(2)}`
	);
};
await look('first look');
await look('again');
// Each checks one more mark, at the last step: a hand's breadth off.
for (const { secret, id, marks } of learners) {
	const last = marks.findLast(({ entry }) => entry.placement?.kind === 'point');
	const entry = { ...last?.entry, placement: { kind: 'point', at: [400, 400] } };
	const events = [handedEvent(assignment, marks.length + 1, { ...last, entry })];
	await school.ask(USE_CASES.handIn, secret, { learner: id, events });
}
await look('after one more mark of each');
await school.close();
rmSync(folder, { recursive: true, force: true });
