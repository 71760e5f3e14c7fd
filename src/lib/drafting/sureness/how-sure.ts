import type { Body } from '#shared/body.ts';
import type { MeasurementKey } from '#shared/measurements.ts';
import { mm, type Mm, type Radians } from '#shared/units.ts';
import { pointAtLength, pathEnd } from '#geometry/path.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import { evaluate, type Draft } from '../evaluate.ts';
import type { Method } from '../method.ts';
import { evenNormals } from './draws.ts';
import {
	axesOf,
	NO_MOMENTS,
	normalReach,
	reachAmong,
	withStray,
	type Moments,
	type Stray
} from './spread.ts';

/** How far something of a draft can move, because of how its body was measured. */
export interface Sureness {
	/** Nineteen times in twenty it lies within so much of where it is drawn. */
	readonly reach: Mm;
	/** Half the length and half the width of the oval that shows it, and which way its length runs. */
	readonly oval: { readonly length: Mm; readonly width: Mm; readonly turn: Radians };
	/** What each measurement does to it, as a share of the whole, the one that moves it most first. None where nothing moves it. */
	readonly by: readonly { readonly key: MeasurementKey; readonly share: number }[];
	/** Whether it does not follow the measurements evenly here (a dart begins, one rule gives way to another), so that it was tried and not worked out. */
	readonly bends: boolean;
	/** In which share of the tries it was there at all. */
	readonly there: number;
}

/** How sure a line is: its length, and the places along it, each by the share of the length where it lies. */
export interface LineSureness {
	readonly length: Sureness;
	readonly along: readonly { readonly at: SheetPoint; readonly share: number; readonly sureness: Sureness }[];
}

/** How sure everything of a draft is. */
export interface DraftSureness {
	readonly points: Readonly<Record<string, Sureness>>;
	readonly lines: Readonly<Record<string, LineSureness>>;
	/** In which share of the tries the body could be drafted. */
	readonly drafted: number;
}

/** Places that are watched along a line, as shares of its length: its ends are points or other lines' ends, as a rule. */
const ALONG: readonly number[] = [1 / 6, 1 / 3, 1 / 2, 2 / 3, 5 / 6];
/**
 * How far each measurement is moved to see what it does, in its own errors: at a root of three, differences to both sides are right for
 * the variance of a normal number up to the third power of what it does, and see a bend that lies within reach.
 */
const MOVED = Math.sqrt(3);
/** Tries by which it is seen whether differences one at a time foretell what happens when all readings stray. */
const FIRST_TRIES = 256;
/** Tries of which reach is counted where they do not. */
const TRIES = 2048;
/** Where what is not foretold is more than this share of the square of the whole stray, it is counted: then a reach could be wrong by some hundredths. */
const FORETOLD = 0.004;
/** Below this a stray is floating-point noise. */
const NOISE = 1e-6;

/** Something that is watched: where it is in a draft. A length is a place on a scale of its own. */
type Watched = (draft: Draft) => SheetPoint | undefined;

const alongLine =
	(name: string, share: number): Watched =>
	({ lines }) => {
		const line = lines[name];
		return line && (pointAtLength(line.path, mm(line.length * share)) ?? pathEnd(line.path));
	};

const lengthOfLine =
	(name: string): Watched =>
	({ lines }) => {
		const line = lines[name];
		return line && at(line.length, 0);
	};

const strayOf = (place: SheetPoint, from: SheetPoint): Stray => ({
	dx: place.x - from.x,
	dy: place.y - from.y
});

/** A try: by how many of its errors each measurement strays, and the draft that comes of it; none where the body is refused. */
interface Try {
	readonly errors: readonly number[];
	readonly draft: Draft | undefined;
}

/** Everything that the sureness of one draft is worked from. */
interface Trials {
	readonly keys: readonly MeasurementKey[];
	/** For each measurement the draft with more of it, and with less. */
	readonly moved: readonly (readonly [more: Draft | undefined, less: Draft | undefined])[];
	readonly tries: Try[];
	/** Draws more of them. */
	readonly drawMore: () => void;
}

/** What a measurement's error does to a place: half the way from where it is with less to where it is with more; from one side where that is all there is. */
const effectOf = (
	watched: Watched,
	from: SheetPoint,
	[more, less]: readonly [Draft | undefined, Draft | undefined]
): Stray => {
	const [above, below] = [more && watched(more), less && watched(less)];
	const [high, low] = [above ?? from, below ?? from];
	const apart = (above ? MOVED : 0) + (below ? MOVED : 0);
	return apart === 0 ? { dx: 0, dy: 0 } : { dx: (high.x - low.x) / apart, dy: (high.y - low.y) / apart };
};

const sizeOf = ({ dx, dy }: Stray): number => dx * dx + dy * dy;

/** The strays of all tries in which it is there. */
const straysIn = (tries: readonly Try[], watched: Watched, from: SheetPoint) =>
	tries.flatMap(({ errors, draft }) => {
		const place = draft && watched(draft);
		return place ? [{ errors, stray: strayOf(place, from) }] : [];
	});

/** Whether effects one at a time foretell what happens in the tries, and it is there in all of them. */
const isForetold = (effects: readonly Stray[], { tries }: Trials, watched: Watched, from: SheetPoint) => {
	const strays = straysIn(tries.slice(0, FIRST_TRIES), watched, from);
	if (strays.length < Math.min(FIRST_TRIES, tries.length)) return false;
	let [whole, left] = [0, 0];
	for (const { errors, stray } of strays) {
		let [dx, dy] = [stray.dx, stray.dy];
		whole += sizeOf(stray);
		effects.forEach((effect, i) => {
			dx -= effect.dx * (errors[i] ?? 0);
			dy -= effect.dy * (errors[i] ?? 0);
		});
		left += dx * dx + dy * dy;
	}
	return left <= whole * FORETOLD || whole <= NOISE ** 2 * strays.length;
};

const shared = (keys: readonly MeasurementKey[], effects: readonly Stray[]): Sureness['by'] => {
	const whole = effects.reduce((sum, effect) => sum + sizeOf(effect), 0);
	if (whole <= NOISE ** 2) return [];
	return keys
		.map((key, i) => ({ key, share: sizeOf(effects[i] ?? { dx: 0, dy: 0 }) / whole }))
		.filter(({ share }) => share > NOISE)
		.sort((a, b) => b.share - a.share);
};

const spreadOf = (moments: Moments, reach: Mm): Pick<Sureness, 'reach' | 'oval'> => {
	const { greater, lesser, turn } = axesOf(moments);
	const width = greater > 0 ? mm(reach * Math.sqrt(lesser / greater)) : mm(0);
	return { reach, oval: { length: reach, width, turn } };
};

/** Counted over all tries: what each measurement does is how the strays go along with its errors. */
const counted = (trials: Trials, watched: Watched, from: SheetPoint): Sureness => {
	const { keys, tries } = trials;
	const strays = straysIn(tries, watched, from);
	if (strays.length === 0) return { ...spreadOf(NO_MOMENTS, mm(0)), by: [], bends: true, there: 0 };
	const effects = keys.map((_, i) => {
		let [dx, dy] = [0, 0];
		for (const { errors, stray } of strays) {
			dx += (stray.dx * (errors[i] ?? 0)) / strays.length;
			dy += (stray.dy * (errors[i] ?? 0)) / strays.length;
		}
		return { dx, dy };
	});
	let moments = NO_MOMENTS;
	for (const { stray } of strays) moments = withStray(moments, stray, 1 / strays.length);
	const reach = reachAmong(strays.map(({ stray }) => Math.sqrt(sizeOf(stray))));
	return {
		...spreadOf(moments, reach),
		by: shared(keys, effects),
		bends: true,
		there: strays.length / tries.length
	};
};

const surenessOf = (trials: Trials, watched: Watched, from: SheetPoint): Sureness => {
	const effects = trials.moved.map((pair) => effectOf(watched, from, pair));
	if (!isForetold(effects, trials, watched, from)) {
		trials.drawMore();
		return counted(trials, watched, from);
	}
	const moments = effects.reduce((sum, effect) => withStray(sum, effect), NO_MOMENTS);
	return {
		...spreadOf(moments, normalReach(axesOf(moments))),
		by: shared(trials.keys, effects),
		bends: false,
		there: 1
	};
};

const trialsOf = (method: Method, body: Body, errorOf: (key: MeasurementKey) => Mm): Trials => {
	const keys = method.measurements;
	/** The draft when each measurement strays by so many of its errors. */
	const drafted = (errors: readonly number[]): Draft | undefined => {
		const measurements = { ...body.measurements };
		keys.forEach((key, i) => {
			measurements[key] = mm((measurements[key] ?? NaN) + (errors[i] ?? 0) * errorOf(key));
		});
		const evaluation = evaluate(method, { ...body, measurements });
		return evaluation.kind === 'drafted' ? evaluation.draft : undefined;
	};
	const alone = (i: number, by: number): Draft | undefined =>
		drafted(keys.map((_, each) => (each === i ? by : 0)));
	const draws = evenNormals(keys.length, TRIES);
	const tries: Try[] = [];
	const draw = (upto: number): void => {
		for (const errors of draws.slice(tries.length, upto)) tries.push({ errors, draft: drafted(errors) });
	};
	draw(FIRST_TRIES);
	return {
		keys,
		moved: keys.map((_, i) => [alone(i, MOVED), alone(i, -MOVED)] as const),
		tries,
		drawMore: () => draw(TRIES)
	};
};

/**
 * How sure everything of a draft is, from a reading error for each measurement (a standard deviation, in millimetres). Errors are taken
 * as normal and unconnected. What each does is seen by moving it to both sides through the whole method; where that does not foretell what
 * happens when all stray at once, it is counted over tries. Throws BadInput where the body lacks a measurement.
 */
export const howSure = (
	method: Method,
	body: Body,
	draft: Draft,
	errorOf: (key: MeasurementKey) => Mm
): DraftSureness => {
	const trials = trialsOf(method, body, errorOf);
	const points = Object.entries(draft.points).map(
		([name, from]) => [name, surenessOf(trials, ({ points }) => points[name], from)] as const
	);
	const lines = Object.entries(draft.lines).map(([name, line]) => {
		const along = ALONG.flatMap((share) => {
			const watched = alongLine(name, share);
			const from = watched(draft);
			return from ? [{ at: from, share, sureness: surenessOf(trials, watched, from) }] : [];
		});
		return [name, { length: surenessOf(trials, lengthOfLine(name), at(line.length, 0)), along }] as const;
	});
	const worked = trials.tries.filter((each) => each.draft).length / trials.tries.length;
	return { points: Object.fromEntries(points), lines: Object.fromEntries(lines), drafted: worked };
};
