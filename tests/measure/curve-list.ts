import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { mm } from '#shared/units.ts';
import { check } from '#checker/check.ts';
import { diagnose } from '#checker/missteps/diagnose.ts';
import { placementOfPath } from '#checker/placed.ts';
import { evaluate, type Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { isPointName } from '#drafting/names.ts';
import { isGiven, stepAnswer } from '#drafting/steps/kinds.ts';
import { pathEnd, pathReversed, pathSamples, pathStart, polyline, type Path } from '#geometry/path.ts';
import { at, between, directionTo, distance, type SheetPoint } from '#geometry/point.ts';
import { cubic } from '#geometry/segment.ts';
import { chanceOf, type Chance } from '#practice/chance.ts';
import { notesOf } from '../checker/missteps/notes.ts';
import { lessonMethods } from '../lessons/lesson-files.ts';

/**
 * How often what is wrong with a curve or a level is named first. The mistakes are those that a teacher sees on paper; each is
 * drawn here by hand's means (handles drawn out, a spline through other points, a ruler), and not by the checker's own.
 * `held` measures the bodies that are held back, without showing what was missed.
 */
const HELD = process.argv[2] === 'held';
const BODIES = HELD ? ['plover', 'siskin', 'gannet'] : ['heron', 'wren', 'eider'];
/** How far a hand strays, one axis. */
const HAND = 0.4;

interface Curve {
	readonly right: Path;
	readonly through: readonly string[];
	readonly draft: Draft;
	/** Whether it leaves its first point square, and not only on its course. */
	readonly square: boolean;
	/** Points on the sheet before the curve that it does not run through. */
	readonly others: readonly string[];
}

type Drawn = readonly [path: Path, ...told: string[]] | undefined;

const pointOf = (draft: Draft, name: string): SheetPoint => {
	const place = draft.points[name];
	if (!place) throw new Error(`there is no ${name}`);
	return place;
};

/** A spline through places, each tangent along its neighbours: what a bent ruler gives. */
const spline = (places: readonly SheetPoint[]): Path => {
	const pieces = places.slice(1).map((to, i) => {
		const from = places[i] ?? to;
		const [before, after] = [places[i - 1] ?? from, places[i + 2] ?? to];
		return cubic(
			from,
			at(from.x + (to.x - before.x) / 6, from.y + (to.y - before.y) / 6),
			at(to.x - (after.x - from.x) / 6, to.y - (after.y - from.y) / 6),
			to
		);
	});
	const [first, ...rest] = pieces;
	if (!first) throw new Error('a spline needs two places');
	return [first, ...rest];
};

/** Every handle so many times as long. */
const withHandles = (path: Path, times: number): Path => {
	const [first, ...rest] = path.map((piece) =>
		piece.kind === 'straight'
			? piece
			: cubic(
					piece.from,
					between(piece.from, piece.leaving, times),
					between(piece.to, piece.arriving, times),
					piece.to
				)
	);
	return [first ?? path[0], ...rest];
};

/** Drawn through places that lie so many times as far from the straight way between its ends. */
const asDeep = (path: Path, times: number): Path => {
	const [a, b] = [pathStart(path), pathEnd(path)];
	const way = directionTo(a, b);
	const samples = pathSamples(path, mm(25));
	return spline(
		samples.map(({ x, y }, i) => {
			if (!way || i === 0 || i === samples.length - 1) return at(x, y);
			const along = (x - a.x) * way.dx + (y - a.y) * way.dy;
			const foot = at(a.x + along * way.dx, a.y + along * way.dy);
			return between(foot, at(x, y), times);
		})
	);
};

const reflected = (path: Path): Path => asDeep(path, -1);

const swungHandle = (path: Path, degrees: number): Path => {
	const [first, ...rest] = path;
	if (first.kind === 'straight') return path;
	const turn = (degrees * Math.PI) / 180;
	const [dx, dy] = [first.leaving.x - first.from.x, first.leaving.y - first.from.y];
	const leaving = at(
		first.from.x + dx * Math.cos(turn) - dy * Math.sin(turn),
		first.from.y + dx * Math.sin(turn) + dy * Math.cos(turn)
	);
	return [cubic(first.from, leaving, first.arriving, first.to), ...rest];
};

const nearestOther = ({ draft, others }: Curve, to: SheetPoint): string | undefined =>
	others
		.filter((name) => distance(pointOf(draft, name), to) > 8 && distance(pointOf(draft, name), to) < 90)
		.toSorted((a, b) => distance(pointOf(draft, a), to) - distance(pointOf(draft, b), to))[0];

/** The curve drawn through other nodes than its own. */
const through = ({ draft }: Curve, names: readonly string[]): Path =>
	spline(names.map((name) => pointOf(draft, name)));

const MISTAKES: Readonly<Record<string, (curve: Curve) => Drawn>> = {
	'a little too flat': ({ right }) => [asDeep(right, 0.7), 'curve:too-flat'],
	'half as deep': ({ right }) => [asDeep(right, 0.5), 'curve:too-flat'],
	'too deep': ({ right }) => [asDeep(right, 1.4), 'curve:too-deep'],
	'far too deep': ({ right }) => [asDeep(right, 1.8), 'curve:too-deep'],
	'handles too short': ({ right }) =>
		right.length === 1 ? [withHandles(right, 0.4), 'curve:too-flat', 'curve:straight'] : undefined,
	'handles too long': ({ right }) =>
		right.length === 1 ? [withHandles(right, 1.6), 'curve:too-deep'] : undefined,
	'ruled straight': ({ right }) => [polyline(pathStart(right), pathEnd(right)), 'curve:straight'],
	'bent to the other side': ({ right }) => [reflected(right), 'curve:wrong-way', 'curve:mirrored'],
	'over the fold': ({ right }) => {
		const [first, ...rest] = right.map((piece) => ({
			...piece,
			...Object.fromEntries(
				Object.entries(piece).map(([key, value]) => [
					key,
					typeof value === 'object'
						? at(-(value as SheetPoint).x, (value as SheetPoint).y)
						: (value as unknown)
				])
			)
		})) as unknown as Path;
		return [[first, ...rest], 'curve:mirrored'];
	},
	'a node missed': (curve) => {
		if (curve.through.length < 3) return undefined;
		const node = curve.through[1] ?? '';
		return [
			through(
				curve,
				curve.through.filter((name) => name !== node)
			),
			`node:missed:${node}`,
			...(curve.through.length === 3 ? ['curve:straight'] : [])
		];
	},
	'another point taken for a node': (curve) => {
		if (curve.through.length < 3) return undefined;
		const node = curve.through[1] ?? '';
		const other = nearestOther(curve, pointOf(curve.draft, node));
		if (!other) return undefined;
		return [
			through(
				curve,
				curve.through.map((name) => (name === node ? other : name))
			),
			`node:${other}-for-${node}`
		];
	},
	'from another point': (curve) => {
		const [first = '', ...rest] = curve.through;
		const other = nearestOther(curve, pointOf(curve.draft, first));
		return other ? [through(curve, [other, ...rest]), `ends:${other}-for-${first}`] : undefined;
	},
	'to another point': (curve) => {
		const last = curve.through.at(-1) ?? '';
		const other = nearestOther(curve, pointOf(curve.draft, last));
		if (!other) return undefined;
		return [through(curve, [...curve.through.slice(0, -1), other]), `ends:${other}-for-${last}`];
	},
	'a slant where it should be square': ({ right, through: [first], square }) =>
		square ? [swungHandle(right, 14), `curve:not-square:${first ?? ''}`] : undefined,
	wavy: ({ right }) => {
		const samples = pathSamples(right, mm(18));
		return [
			spline(
				samples.map(({ x, y }, i) =>
					i === 0 || i === samples.length - 1 ? at(x, y) : at(x + (i % 2 ? 5 : -5), y + (i % 2 ? 5 : -5))
				)
			),
			'curve:wobble'
		];
	}
};

const level = (right: Path, turn: 'in' | 'up' | 'down'): Path => {
	const [start, reach] = [pathStart(right), distance(pathStart(right), pathEnd(right))];
	const ends = {
		in: at(start.x - reach, start.y),
		up: at(start.x, start.y - reach),
		down: at(start.x, start.y + reach)
	};
	return polyline(start, ends[turn]);
};

const shaken = (path: Path, chance: Chance): Path => {
	const put = new Map<string, SheetPoint>();
	const shake = (place: SheetPoint): SheetPoint => {
		const known = put.get(`${place.x} ${place.y}`);
		const made = known ?? at(place.x + HAND * chance.normal(), place.y + HAND * chance.normal());
		put.set(`${place.x} ${place.y}`, made);
		return made;
	};
	const [first, ...rest] = path.map((piece) =>
		piece.kind === 'straight'
			? { ...piece, from: shake(piece.from), to: shake(piece.to) }
			: cubic(shake(piece.from), shake(piece.leaving), shake(piece.arriving), shake(piece.to))
	);
	return [first ?? path[0], ...rest];
};

const counts = new Map<string, { of: number; right: number; falsely: number; certain: number }>();
const missed: string[] = [];

const tryOne = (
	method: Method,
	body: string,
	step: string,
	kind: string,
	drawn: Drawn,
	draft: Draft
): void => {
	const demo = DEMO_BODIES.find(({ id }) => id === body);
	if (!drawn || !demo) return;
	const [path, ...told] = drawn;
	const chance = chanceOf(7, body, method.id, step, kind);
	const hand = shaken(chance.fraction() < 0.5 ? path : pathReversed(path), chance);
	const placement = placementOfPath(hand);
	if (check(method, step, draft, placement).answer !== 'wrong') return;
	const diagnosis = diagnose(method, step, demo.body, draft, placement);
	const [first = 'nothing'] = notesOf(diagnosis);
	const right = told.some((note) => first.startsWith(note));
	const count = counts.get(kind) ?? { of: 0, right: 0, falsely: 0, certain: 0 };
	counts.set(kind, {
		of: count.of + 1,
		right: count.right + (right ? 1 : 0),
		certain: count.certain + (diagnosis.kind === 'certain' ? 1 : 0),
		falsely: count.falsely + (!right && diagnosis.kind === 'certain' ? 1 : 0)
	});
	if (!right) missed.push(`${body} ${method.id} ${step}, ${kind}: ${first}`);
};

for (const method of lessonMethods().values())
	for (const body of BODIES) {
		const demo = DEMO_BODIES.find(({ id }) => id === body);
		const evaluation = demo && evaluate(method, demo.body);
		if (evaluation?.kind !== 'drafted') continue;
		const { draft } = evaluation;
		for (const [i, step] of method.steps.entries()) {
			const right = draft.lines[step.name]?.path;
			const answer = stepAnswer(step);
			if (!right || isGiven(step)) continue;
			if (answer.put === 'level')
				for (const turn of ['in', 'up', 'down'] as const)
					tryOne(method, body, step.name, 'a level the wrong way', [level(right, turn), 'direction:'], draft);
			if (answer.put !== 'handles') continue;
			const nodes = answer.through.map(({ point }) => point);
			const others = method.steps
				.slice(0, i)
				.map(({ name }) => name)
				.filter((name) => isPointName(name) && name in draft.points && !nodes.includes(name));
			for (const [kind, draw] of Object.entries(MISTAKES))
				tryOne(
					method,
					body,
					step.name,
					kind,
					draw({ right, through: nodes, draft, others, square: answer.through[0]?.heading !== 'chord' }),
					draft
				);
		}
	}

const all = [...counts.values()].reduce((sum, each) => ({
	of: sum.of + each.of,
	right: sum.right + each.right,
	falsely: sum.falsely + each.falsely,
	certain: sum.certain + each.certain
}));
const shown = (part: number, of: number): string => `${((100 * part) / of).toFixed(1)} %`;
for (const [kind, { of, right, falsely, certain }] of [...counts, ['all', all] as const])
	console.log(
		`| ${kind} | ${of} | first right ${shown(right, of)} | certain ${shown(certain, of)} | certain and wrong ${shown(falsely, of)} |`
	);
if (!HELD) console.log(missed.join('\n'));
