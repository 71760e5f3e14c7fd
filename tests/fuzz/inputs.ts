import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { readBody } from '#shared/body.ts';
import { BLOCK_ALLOWANCES } from '#shared/allowances.ts';
import { MEASUREMENT_KEYS } from '#shared/measurements.ts';
import type { Place } from '#shared/placement.ts';
import { parseLength } from '#shared/reading.ts';
import { checkSubmission } from '#checker/check-submission.ts';
import { check } from '#checker/check.ts';
import { placementOfPath } from '#checker/placed.ts';
import { evaluate, type Draft } from '#drafting/evaluate.ts';
import { parseFormula } from '#drafting/formula/parse.ts';
import { readDistance, readSum, withUnit } from '#drafting/formula/sum.ts';
import { methodFileId, methodLibrary } from '#drafting/library.ts';
import { readMethod } from '#drafting/read-method.ts';
import type { Method } from '#drafting/method.ts';
import type { Chance } from '#practice/chance.ts';
import { anyValue, oneFrom, spoilt, upTo, writtenBy } from './chances.ts';

/** A kind of input: how one is drawn, and what reads it. What may be refused is thrown as BadInput, and nothing else. */
export interface FuzzedInput {
	readonly name: string;
	/** Of a million inputs, how many are of this kind. */
	readonly ofAMillion: number;
	readonly draw: (chance: Chance) => unknown;
	readonly read: (input: never) => void;
}

const input = <T>(
	name: string,
	ofAMillion: number,
	draw: (chance: Chance) => T,
	read: (input: T) => void
): FuzzedInput => ({ name, ofAMillion, draw, read });

const FILES = readdirSync('lessons')
	.map((lesson) => `lessons/${lesson}/method.yaml`)
	.filter((place) => existsSync(place))
	.map((place) => ({ place, content: parse(readFileSync(place, 'utf8')) as unknown }));
const find = methodLibrary(FILES);

interface Desk {
	readonly method: Method;
	readonly body: (typeof DEMO_BODIES)[number]['body'];
	readonly draft: Draft;
}

const deskOf = (method: Method, body: Desk['body']): readonly Desk[] => {
	const lacks = method.measurements.some((key) => body.measurements[key] === undefined);
	const work = lacks ? undefined : evaluate(method, body);
	return work?.kind === 'drafted' ? [{ method, body, draft: work.draft }] : [];
};

const DESKS = FILES.flatMap((file) => {
	const method = find(methodFileId(file));
	return method ? DEMO_BODIES.flatMap(({ body }) => deskOf(method, body)) : [];
}) as [Desk, ...Desk[]];

/** A place: near another, anywhere on the sheet, at its rim, or beyond it. */
const placeNear = (chance: Chance, near: Place): Place => {
	const coordinate = (value: number): number => {
		const pick = chance.fraction();
		if (pick < 0.5) return value + (chance.fraction() - 0.5) * oneFrom(chance, [0, 1, 30, 600]);
		if (pick < 0.6) return oneFrom(chance, [0, 5000, -5000, 1e-9, 5001, NaN]);
		return (chance.fraction() - 0.5) * 10_000;
	};
	return [coordinate(near[0]), coordinate(near[1])];
};

const drawnLine = (chance: Chance, about: Place): unknown => {
	let from = placeNear(chance, about);
	const first = from;
	const segments = Array.from({ length: oneFrom(chance, [1, 1, 1, 2, 3, 20]) }, () => {
		const ends = { from, to: chance.fraction() < 0.15 ? first : placeNear(chance, about) };
		from = ends.to;
		const handle = (end: Place): Place => (chance.fraction() < 0.2 ? end : placeNear(chance, about));
		if (chance.fraction() < 0.25) return ends;
		return { ...ends, leaving: handle(ends.from), arriving: handle(ends.to) };
	});
	return { kind: 'line', segments };
};

/** What is put down for a step: its answer spoilt, a line of any course, or anything at all. */
const putDown = (chance: Chance, { draft }: Desk, step: string): unknown => {
	const [point, line] = [draft.points[step], draft.lines[step]];
	const pick = chance.fraction();
	if (pick < 0.05) return anyValue(chance);
	const start = point ?? line?.path[0].from ?? { x: 0, y: 0 };
	const about: Place = [start.x, start.y];
	if (point && pick < 0.9) return { kind: 'point', at: placeNear(chance, about) };
	if (line && pick < 0.3) return spoilt(placementOfPath(line.path), chance);
	return drawnLine(chance, about);
};

/** The same as it is measured on paper: with an error, or with what is none. */
const measured = (chance: Chance, desk: Desk, step: string): unknown => {
	const put = putDown(chance, desk, step);
	const error = oneFrom<unknown>(chance, [0, -0, 0.5, 3, 60, 5000, 5e-324, -1, NaN, 1e308, '1', null]);
	return typeof put === 'object' && put && !Array.isArray(put) ? { ...put, error } : put;
};

const KNOWN = {
	allowances: ['bustEase'],
	points: ['A', 'B'],
	lines: ['edge', 'back.shoulder'],
	amounts: {}
};
const UNITS = ['cm', 'mm', 'in'] as const;

const drawBody = (chance: Chance): unknown => {
	const value = (): unknown => (chance.fraction() < 0.8 ? 20 + 100 * chance.fraction() : anyValue(chance));
	const keys = [...MEASUREMENT_KEYS, ...(chance.fraction() < 0.2 ? [writtenBy(chance).slice(0, 200)] : [])];
	const allowances = Object.fromEntries(BLOCK_ALLOWANCES.map(({ key }) => [key, value()]));
	const body = Object.fromEntries(keys.map((key) => [key, value()]));
	return spoilt({ name: 'Heron', unit: oneFrom(chance, UNITS as never), ...body, allowances }, chance);
};

const checked = ({ desk, step, placement }: { desk: Desk; step: string; placement: unknown }): void => {
	const verdict = check(desk.method, step, desk.draft, placement);
	if (verdict.answer === 'our-fault') throw new Error(JSON.stringify(verdict.because.values));
};

/** A step of some desk, and what is put down for it. */
const drawPut =
	(put: typeof putDown) =>
	(chance: Chance): { desk: Desk; step: string; placement: unknown } => {
		const desk = oneFrom(chance, DESKS);
		const { points, lines } = desk.draft;
		const step = oneFrom(chance, Object.keys({ ...points, ...lines }) as [string]);
		return { desk, step, placement: put(chance, desk, step) };
	};

/** Everything that comes in from outside and is read within the program. */
export const INPUTS: readonly FuzzedInput[] = [
	input('formulas', 200_000, writtenBy, (text) => {
		parseFormula(text, 'fuzz.yaml', KNOWN);
	}),
	input('sums', 250_000, writtenBy, (text) => {
		withUnit(text, 'cm');
		readSum(text, 'in');
		readDistance(text, 'cm');
	}),
	input('lengths', 250_000, writtenBy, (text) => {
		parseLength(text, 'cm', 'fuzz');
	}),
	input('bodies', 150_000, drawBody, (body) => {
		readBody(body, 'fuzz: ');
	}),
	input('placements', 110_000, drawPut(putDown), checked),
	input('measured placements', 30_000, drawPut(measured), checked),
	input(
		'submissions',
		4000,
		(chance) => {
			const desk = oneFrom(chance, DESKS);
			const share = chance.fraction() * 0.5;
			const steps = desk.method.steps.filter(() => chance.fraction() < share);
			return {
				desk,
				placements: Object.fromEntries(steps.map(({ name }) => [name, putDown(chance, desk, name)]))
			};
		},
		({ desk: { method, body, draft }, placements }) => {
			const { faults } = checkSubmission(method, body, draft, placements);
			if (faults.length > 0) throw new Error(JSON.stringify(faults));
		}
	),
	input(
		'methods',
		6000,
		(chance) => {
			let content = oneFrom(chance, FILES as [(typeof FILES)[number]]).content;
			for (let i = upTo(chance, 3); i >= 0; i--) content = spoilt(content, chance);
			return content;
		},
		(content) => {
			const method = readMethod(content, 'fuzz.yaml', find);
			for (const { body } of DEMO_BODIES.slice(0, 2)) deskOf(method, body);
		}
	)
];
