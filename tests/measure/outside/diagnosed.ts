import type { Body } from '#shared/body.ts';
import { POINT_TOLERANCE, UNSPOKEN } from '#shared/tolerances.ts';
import { diagnose } from '#checker/missteps/diagnose.ts';
import type { Diagnosis, Misstep } from '#checker/missteps/misstep.ts';
import { stepNamed } from '#drafting/method.ts';
import { stepStart } from '#drafting/steps/kinds.ts';
import { at, between, distance, type SheetPoint } from '#geometry/point.ts';
import { chanceOf, type Chance } from '#practice/chance.ts';
import { toldOf } from '../../checker/missteps/notes.ts';
import { made, type Made, type Mistake } from './mistakes.ts';
import { readLead, scopeFor } from './place.ts';

/** The same seed gives the same table. */
const SEED = 1988;
/** Mistakes nearer to one another than this can be taken for each other: two tolerances. */
const APART = 2 * POINT_TOLERANCE;

/** A step of a draft that was worked for a body, whichever mistake is made there. */
export type Spot = Pick<Made, 'method' | 'step' | 'body' | 'draft' | 'right'>;

/** What was said of a mark. */
interface Said {
	readonly kind: Diagnosis['kind'];
	readonly told: readonly Misstep[];
}

/** A mistake that was made, and what was said of it. */
export interface Seen extends Said {
	readonly made: Made;
	/** No other mistake of the list can be taken for it. */
	readonly separable: boolean;
	/** What was told first leads where the mistake led. */
	readonly first: boolean;
	/** So does any that was told. */
	readonly any: boolean;
}

/** What is said of a mark at a place. */
const saidAt = ({ method, step, body, draft }: Spot, { x, y }: SheetPoint): Said => {
	const diagnosis = diagnose(method, step, body, draft, { kind: 'point', at: [x, y] });
	return { kind: diagnosis.kind, told: toldOf(diagnosis) };
};

const isVisible = ({ right }: Spot, placed: SheetPoint): boolean => distance(placed, right) > POINT_TOLERANCE;

/** A place as a hand puts it whose spread, each time another one, is at most a millimetre. */
const shaken = ({ x, y }: SheetPoint, chance: Chance): SheetPoint => {
	const spread = chance.fraction();
	return at(x + spread * chance.normal(), y + spread * chance.normal());
};

/** Every mistake of a list for some bodies, made once by such a hand; those that it carried to the right place are left out. */
export const seen = (mistakes: readonly Mistake[], bodies: readonly Body[]): readonly Seen[] => {
	const chance = chanceOf(SEED, 'seen');
	return made(mistakes, bodies).flatMap((each) => {
		const placed = shaken(each.place, chance);
		if (!isVisible(each, placed)) return [];
		const said = saidAt(each, placed);
		const leads = ({ place }: Misstep): boolean => distance(place, each.place) <= UNSPOKEN;
		return [
			{
				...said,
				made: each,
				separable: each.apart > APART,
				first: said.told.slice(0, 1).some(leads),
				any: said.told.some(leads)
			}
		];
	});
};

/** The steps at which mistakes were made, each once for each body. */
export const spotsOf = (all: readonly Seen[]): readonly Spot[] => [
	...new Map(all.map(({ made: each }) => [`${each.method.id} ${each.step} ${each.body.name}`, each])).values()
];

/** Marks without a cause: anywhere on the sheet, at any distance on the step's own way, and small slips on it. */
export const NO_CAUSE = ['anywhere', 'on the way', 'a little on the way'] as const;

const onWay = (
	{ method, step, draft, right }: Spot,
	far: number,
	fromRight: boolean
): SheetPoint | undefined => {
	const start = draft.points[stepStart(stepNamed(method, step)) ?? ''];
	const length = start && distance(start, right);
	if (!start || !length) return undefined;
	return between(start, right, (fromRight ? length + far : far) / length);
};

const withoutCause = (
	spot: Spot,
	kind: (typeof NO_CAUSE)[number],
	chance: Chance
): SheetPoint | undefined => {
	if (kind === 'anywhere') {
		const places = Object.values(spot.draft.points);
		const [xs, ys] = [places.map(({ x }) => x), places.map(({ y }) => y)];
		const within = (all: readonly number[]): number => {
			const [least, most] = [Math.min(...all), Math.max(...all)];
			return least + (most - least) * chance.fraction();
		};
		return at(within(xs), within(ys));
	}
	// From 10 cm behind the start to 50 cm beyond it; or 3 to 15 mm too short or too long.
	const [any, little, side] = [chance.fraction() * 600 - 100, 3 + 12 * chance.fraction(), chance.fraction()];
	return kind === 'on the way' ? onWay(spot, any, false) : onWay(spot, side < 0.5 ? -little : little, true);
};

/** What was said of marks that have no cause, so many at each spot. */
export const saidWithoutCause = (
	spots: readonly Spot[],
	kind: (typeof NO_CAUSE)[number],
	times: number
): readonly Said[] => {
	const chance = chanceOf(SEED, kind);
	return spots.flatMap((spot) =>
		Array.from({ length: times }, () => withoutCause(spot, kind, chance)).flatMap((place) => {
			const placed = place && shaken(place, chance);
			return placed && isVisible(spot, placed) ? [saidAt(spot, placed)] : [];
		})
	);
};

/** Two mistakes of one step made at once, each with other fields of it, where both together can be told from each alone. */
export const saidOfPairs = (all: readonly Seen[], most: number): readonly boolean[] => {
	const chance = chanceOf(SEED, 'pairs');
	const some = chance.shuffled(all.filter(({ made: { how } }) => typeof how === 'object')).slice(0, most);
	return some.flatMap(({ made: one }) => {
		const other = chance.shuffled(
			all.filter(({ made: { method, step, body, how } }) => {
				const isThere = method === one.method && step === one.step && body === one.body;
				return (
					isThere && typeof how === 'object' && Object.keys(how).every((key) => !(key in Object(one.how)))
				);
			})
		)[0]?.made;
		if (!other) return [];
		const how = { ...Object(one.how), ...Object(other.how) } as Record<string, unknown>;
		const place = readLead(one.method, one.step, how)(scopeFor(one.method, one.body, one.draft));
		if (!place || [one.place, other.place, one.right].some((each) => distance(each, place) <= APART))
			return [];
		const parts = new Set(saidAt(one, place).told.flatMap(({ note }) => note.split('+')));
		const alone = [one, other].flatMap((each) => saidAt(each, each.place).told.slice(0, 1));
		return [alone.some(({ note }) => parts.has(note))];
	});
};
