import { DEMO_BODIES } from '#shared/bodies/index.ts';
import type { Body } from '#shared/body.ts';
import { mm } from '#shared/units.ts';
import { evaluate, type Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import { chanceOf, type Chance } from '#practice/chance.ts';
import { drawnBody } from '#practice/generate-body.ts';
import {
	askedOf,
	judgedOnPaper,
	judgedOnScreen,
	mistakesIn,
	onPaper,
	type Hand,
	type Sheet,
	type Slip
} from '../checker/one-slip.ts';
import { lessonMethods } from '../lessons/lesson-files.ts';

/**
 * One slip, one mistake: how often a learner who slips once, and draws all that follows truly from what is on the
 * paper, is told of that slip alone; and how often one who does not slip is told of none. Over every method, demo
 * bodies, drawn ones and odd ones, every step, slips of 4 to 60 mm in any direction. Prints a table.
 */

const CASES = Number(process.argv[2] ?? 1000);
const ONLY = process.argv[3];
/** How far a hand strays that counts as none: less than a millimetre. */
const STEADY = 0.9;
/** How much an odd body's measurements differ from a drawn body's, each by itself. */
const ODD = 0.12;
const [LEAST, MOST] = [4, 60];
/** The screen judges after every step; one case in so many is tried there. */
const SCREEN = 10;

const between = (chance: Chance, least: number, most: number): number =>
	least + (most - least) * chance.fraction();

/** A demo body, a drawn one, or one whose measurements fit each other badly. */
const bodyOf = (chance: Chance, seed: number): Body => {
	const kind = Math.floor(between(chance, 0, 3));
	if (kind === 0) {
		const demo = DEMO_BODIES[Math.floor(between(chance, 0, DEMO_BODIES.length))];
		if (demo) return demo.body;
	}
	const drawn = drawnBody(seed, kind);
	if (kind === 1) return drawn;
	const measurements = Object.entries(drawn.measurements).map(([key, value]) => [
		key,
		mm(value * between(chance, 1 - ODD, 1 + ODD))
	]);
	return { ...drawn, measurements: Object.fromEntries(measurements) as Body['measurements'] };
};

const draftFor = (method: Method, body: Body): Draft | undefined => {
	if (method.measurements.some((key) => body.measurements[key] === undefined)) return undefined;
	const evaluation = evaluate(method, body);
	return evaluation.kind === 'drafted' ? evaluation.draft : undefined;
};

/** What is meant for one place is put at one place, so that a line's pieces still join. */
const steadyHand = (chance: Chance): Hand => {
	const put = new Map<string, SheetPoint>();
	return ({ x, y }) => {
		const known = put.get(`${x} ${y}`);
		if (known) return known;
		const [far, way] = [STEADY * Math.sqrt(chance.fraction()), between(chance, 0, 2 * Math.PI)];
		const made = at(x + far * Math.cos(way), y + far * Math.sin(way));
		put.set(`${x} ${y}`, made);
		return made;
	};
};

interface Count {
	readonly of: number;
	readonly good: number;
}
const NONE: Count = { of: 0, good: 0 };
const COLUMNS = ['slip, sure', 'slip, steady', 'points alone', 'on screen', 'no slip, steady'] as const;
type Column = (typeof COLUMNS)[number];

const counts = new Map<string, Count>();
const failures = new Map<string, number>();
const count = (method: string, column: Column, wrong: readonly string[], wanted: string): void => {
	const key = `${method}|${column}`;
	const before = counts.get(key) ?? NONE;
	const good = wrong.join() === wanted;
	counts.set(key, { of: before.of + 1, good: before.good + (good ? 1 : 0) });
	if (good) return;
	const told = `${method}, ${column}: ${wanted} gave ${wrong.join(' ')}`;
	failures.set(told, (failures.get(told) ?? 0) + 1);
};

const tryOne = (sheet: Sheet, chance: Chance, onScreen: boolean): void => {
	const { method, truth } = sheet;
	const asked = askedOf(sheet);
	const step = asked[Math.floor(between(chance, 0, asked.length))];
	if (!step) return;
	const [far, way] = [between(chance, LEAST, MOST), between(chance, 0, 2 * Math.PI)];
	const slip: Slip = { step: step.name, across: far * Math.cos(way), down: far * Math.sin(way) };
	const sure = onPaper(sheet, slip);
	const judge = (placements: Readonly<Record<string, unknown>>): readonly string[] =>
		mistakesIn(judgedOnPaper(sheet, placements));
	// A line that is moved along itself and is not seen to be is no mistake, and so no case.
	if (!judge(sure).includes(step.name)) return;
	count(method.id, 'slip, sure', judge(sure), step.name);
	count(method.id, 'slip, steady', judge(onPaper(sheet, slip, steadyHand(chance))), step.name);
	const none = judgedOnPaper(sheet, onPaper(sheet, undefined, steadyHand(chance)));
	for (const name of mistakesIn(none)) {
		const v = none.verdict(name);
		if (v.answer === 'wrong')
			for (const f of v.findings)
				if (!f.within) {
					const k = `${method.id} ${name} ${f.note} ${'turned' in f ? ((f.turned * 180) / Math.PI).toFixed(0) : 'by' in f ? f.by.toFixed(0) : ''}`;
					failures.set(k, (failures.get(k) ?? 0) + 1);
				}
	}
	count(method.id, 'no slip, steady', mistakesIn(none), '');
	const points = Object.entries(sure).filter(([name]) => name in truth.points);
	if (step.name in truth.points)
		count(method.id, 'points alone', judge(Object.fromEntries(points)), step.name);
	if (onScreen) count(method.id, 'on screen', mistakesIn(judgedOnScreen(sheet, slip)), step.name);
};

for (const [id, method] of lessonMethods()) {
	if (ONLY !== undefined && id !== ONLY) continue;
	for (let i = 0, seed = 0; i < CASES && seed < 20 * CASES; seed++) {
		const chance = chanceOf(seed, 'one slip', id);
		const body = bodyOf(chance, seed);
		const truth = draftFor(method, body);
		if (!truth) continue;
		tryOne({ method, body, truth }, chance, i % SCREEN === 0);
		i += 1;
	}
}

const cell = (method: string, column: Column): Count => counts.get(`${method}|${column}`) ?? NONE;
const shown = ({ of, good }: Count): string =>
	of === 0 ? '–' : `${((100 * good) / of).toFixed(1)} of ${of}`;
const methods = [...lessonMethods().keys()].filter((id) => ONLY === undefined || id === ONLY);
const whole = (column: Column): Count =>
	methods
		.map((id) => cell(id, column))
		.reduce((all, each) => ({ of: all.of + each.of, good: all.good + each.good }), NONE);
const row = (name: string, cells: readonly string[]): string => `| ${[name, ...cells].join(' | ')} |`;
console.log(
	[
		row('% with the one mistake, or none', COLUMNS),
		row(
			'---',
			COLUMNS.map(() => '---')
		),
		...methods.map((id) =>
			row(
				id,
				COLUMNS.map((column) => shown(cell(id, column)))
			)
		),
		row(
			'all',
			COLUMNS.map((column) => shown(whole(column)))
		)
	].join('\n')
);
const most = [...failures].sort((a, b) => b[1] - a[1]).slice(0, 40);
console.log(
	['', 'Told besides, the commonest:', ...most.map(([told, times]) => `${times} × ${told}`)].join('\n')
);
