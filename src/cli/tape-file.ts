import { parse, CsvError } from 'csv-parse/sync';
import { z } from 'zod';
import { BadInput, shown } from '#shared/bad-input.ts';
import { nearestName } from '#shared/nearest-name.ts';
import { shapeSlip } from '#shared/reading.ts';
import { message } from '#shared/speech/message.ts';
import { mm, type Unit } from '#shared/units.ts';
import type { Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { isGiven } from '#drafting/steps/kinds.ts';
import { distance } from '#geometry/point.ts';
import { tapedBy, type Taped } from '#tape/by-tape.ts';
import { planOf, type Plan, type Taking } from '#tape/plan.ts';
import { readingsIn, readTaking, type Read } from '#tape/read-taking.ts';
import { TAPES, type Tape } from '#tape/tapes.ts';
import { partedBy } from './body-table.ts';
import type { InputFile } from './input-file.ts';
import { readJson } from './read-json.ts';

/** What a tape said between two points, as a file has it; several readings of one distance stand together. */
interface Written {
	readonly from: string;
	readonly to: string;
	readonly readings: readonly unknown[];
	/** What an error names. */
	readonly place: string;
}

/** A file of readings: with what they were taken, in which unit, and what was read. */
interface TapeFile {
	readonly tape: Tape;
	readonly unit: Unit | undefined;
	readonly written: readonly Written[];
}

const isTape = (text: string): text is Tape => TAPES.some((each) => each === text);

const reading = z.union([z.string(), z.number()]);
const fileSchema = z.strictObject({
	measuredWith: z.enum(TAPES).optional(),
	unit: z.enum(['mm', 'cm', 'in']).optional(),
	readings: z.record(z.string(), z.union([reading, z.array(reading).min(1)]))
});

/** The two points of "O-A", however it is parted. */
const pairIn = (key: string, place: string): readonly [from: string, to: string] => {
	const [from = '', to = '', ...more] = key.trim().split(/\s*[-–]\s*|\s+/);
	if (from === '' || to === '' || more.length > 0)
		throw new BadInput(`${place}: ${key}`, message('command', 'tapePair', { seen: shown(key) }));
	return [from, to];
};

/** Texts may hold several readings. */
const partsOf = (value: unknown): readonly unknown[] =>
	typeof value === 'string' ? readingsIn(value) : [value];

const fromJson = (input: InputFile): TapeFile => {
	const written = readJson(input);
	const { data, error } = fileSchema.safeParse(written);
	const [issue] = error?.issues ?? [];
	if (issue)
		throw new BadInput(`${input.place}: ${issue.path.join('.') || 'readings'}`, shapeSlip(issue, written));
	return {
		tape: data?.measuredWith ?? 'tape',
		unit: data?.unit,
		written: Object.entries(data?.readings ?? {}).map(([key, value]) => {
			const [from, to] = pairIn(key, input.place);
			return { from, to, readings: [value].flat().flatMap(partsOf), place: `${input.place}: ${from}–${to}` };
		})
	};
};

const COLUMNS = ['from', 'to', 'read', 'again'] as const;

/** A table with a row for each distance, or for each reading of it. */
const fromTable = ({ text, place }: InputFile): TapeFile => {
	let rows: readonly Readonly<Record<string, string>>[];
	try {
		rows = parse(text, {
			...partedBy(/^[^\r\n]*/.exec(text)?.[0] ?? ''),
			info: false,
			columns: (names: string[]) => names.map((each) => each.toLowerCase())
		});
	} catch (problem) {
		if (problem instanceof CsvError)
			throw new BadInput(place, message('command', 'notTable', { problem: problem.message }));
		throw problem;
	}
	const [first = {}] = rows;
	for (const name of COLUMNS.slice(0, 3))
		if (!(name in first)) throw new BadInput(place, message('command', 'tapeColumns', { name }));
	const together = new Map<string, Written>();
	for (const { from = '', to = '', read = '', again = '' } of rows) {
		const readings = [read, again].flatMap(partsOf);
		if (readings.length === 0) continue;
		const key = [from, to].toSorted().join('–');
		const before = together.get(key);
		together.set(
			key,
			before
				? { ...before, readings: [...before.readings, ...readings] }
				: { from, to, readings, place: `${place}: ${from}–${to}` }
		);
	}
	return { tape: 'tape', unit: undefined, written: [...together.values()] };
};

/** The distance that was taken, as the plan has it. Throws BadInput for a point that is not measured. */
const takingOf = ({ from, to, place }: Written, plan: Plan, draft: Draft): Taking => {
	for (const name of [from, to])
		if (!plan.points.includes(name))
			throw new BadInput(
				place,
				message('command', 'noTapePoint', { name: shown(name), near: nearestName(name, plan.points) })
			);
	const [a, b] = [draft.points[from], draft.points[to]];
	if (!a || !b || from === to)
		throw new BadInput(place, message('command', 'tapePair', { seen: shown(`${from}-${to}`) }));
	return { from, to, length: mm(distance(a, b)) };
};

/**
 * Where the points of a paper draft lie by a file of tape readings: a table with the columns from, to and read, or JSON,
 * `{"measuredWith": "rule", "readings": {"O-A": 22.2, "A-W": [17.8, 17.9]}}`. Any distances between points that are measured may be
 * in it; which are the best the tape sheet says.
 *
 * @param unit what a bare number is in, where the file does not say
 * @param measuredWith what a flag says; it wins over the file
 * @throws BadInput, naming the file and the distance
 */
export const tapedIn = (
	input: InputFile,
	method: Method,
	draft: Draft,
	unit: Unit,
	measuredWith: string | undefined
): Taped => {
	const isJson = input.text.trimStart().startsWith('{');
	const { tape: own, unit: ownUnit, written } = isJson ? fromJson(input) : fromTable(input);
	if (measuredWith !== undefined && !isTape(measuredWith))
		throw new BadInput(
			'--measured-with',
			message('command', 'noTape', { seen: shown(measuredWith), tapes: TAPES })
		);
	const tape = measuredWith ?? own;
	const plan = planOf(method, draft);
	const takings = written.map((each) => takingOf(each, plan, draft));
	const read = written.map((each): Read => readTaking(each.readings, ownUnit ?? unit, each.place, tape));
	const given = new Set(method.steps.filter(isGiven).map(({ name }) => name));
	return tapedBy({ ...plan, takings }, read, given, tape);
};
