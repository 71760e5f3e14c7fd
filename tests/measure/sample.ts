import { DEMO_BODIES } from '#shared/bodies/index.ts';
import type { Body } from '#shared/body.ts';
import { POINT_TOLERANCE } from '#shared/tolerances.ts';
import { mm, type Mm } from '#shared/units.ts';
import { diagnose } from '#checker/missteps/diagnose.ts';
import type { Misstep } from '#checker/missteps/misstep.ts';
import { pointMissteps } from '#checker/missteps/point-missteps.ts';
import type { Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import type { Step } from '#drafting/steps/step-rules.ts';
import { boundsOf, type Bounds } from '#geometry/path.ts';
import { at, distance, type SheetPoint } from '#geometry/point.ts';
import { chanceOf, type Chance } from '#practice/chance.ts';
import { generatedBody } from '#practice/generate-body.ts';
import { backBlock, frontBlock } from '../drafting/lesson-method.ts';
import { draftOf } from '../drafting/small-method.ts';

/** Bodies beside the demo bodies, drawn from the survey's means and covariances. */
export const GENERATED_BODIES = 60;
/** The same seed gives the same table. */
const SEED = 1988;
/** Spread of the hand that misplaces a point, one axis. */
export const NOISE: Mm = mm(1);
/** Two places nearer than this can be taken for each other: two tolerances. */
export const APART: Mm = mm(2 * POINT_TOLERANCE);

/** A point step of a block, for one body. */
export interface Spot {
	readonly method: Method;
	readonly body: Body;
	readonly draft: Draft;
	readonly step: Step;
	readonly right: SheetPoint;
	readonly missteps: readonly Misstep[];
	/** The rectangle that just holds the draft. */
	readonly box: Bounds;
}

const bodies = (): readonly Body[] => [
	...DEMO_BODIES.map(({ body }) => body),
	...Array.from({ length: GENERATED_BODIES }, (_, i) => generatedBody(SEED + i, frontBlock()))
];

/** Every point step of both blocks, for every body. */
export const spots = (): readonly Spot[] => {
	const all = bodies();
	return [backBlock(), frontBlock()].flatMap((method) =>
		all.flatMap((body) => {
			const draft = draftOf(method, body);
			const box = boundsOf(Object.values(draft.lines).map(({ path }) => path));
			return method.steps.flatMap((step) => {
				const right = draft.points[step.name];
				if (!right || step.kind === 'corner') return [];
				const missteps = pointMissteps(method, step.name, body, draft);
				return [{ method, body, draft, step, right, missteps, box }];
			});
		})
	);
};

/** The notes that are told of a placement, the likeliest first. */
const toldAt = ({ method, step, body, draft }: Spot, { x, y }: SheetPoint): readonly string[] => {
	const diagnosis = diagnose(method, step.name, body, draft, { kind: 'point', at: [x, y] });
	if (diagnosis.kind === 'certain') return [diagnosis.misstep.note];
	return diagnosis.kind === 'either' ? diagnosis.missteps.map(({ note }) => note) : [];
};

/** Whether a placement would pass for right. */
const isRight = ({ right }: Spot, placed: SheetPoint): boolean => distance(placed, right) <= POINT_TOLERANCE;

const shaken = ({ x, y }: SheetPoint, chance: Chance): SheetPoint =>
	at(x + NOISE * chance.normal(), y + NOISE * chance.normal());

/** One misstep made by a hand that is not quite steady, and what was told of it. */
export interface Injected {
	readonly misstep: Misstep;
	/** No other misstep's place lies within two tolerances. (None lies within tolerance of the right place.) */
	readonly separable: boolean;
	readonly told: readonly string[];
}

/** Each misstep of each spot once; those that the hand carried within tolerance of the right place are right, and left out. */
export const injected = (all: readonly Spot[]): readonly Injected[] => {
	const chance = chanceOf(SEED, 'injected');
	return all.flatMap((spot) =>
		spot.missteps.flatMap((misstep) => {
			const placed = shaken(misstep.place, chance);
			if (isRight(spot, placed)) return [];
			const separable = !spot.missteps.some(
				({ note, place }) => note !== misstep.note && distance(place, misstep.place) <= APART
			);
			return [{ misstep, separable, told: toldAt(spot, placed) }];
		})
	);
};

/** Placements at each spot that come of no single misstep, and what was told of them. */
const elsewhere = (
	all: readonly Spot[],
	count: number,
	purpose: string,
	place: (spot: Spot, chance: Chance) => SheetPoint
): readonly (readonly string[])[] => {
	const chance = chanceOf(SEED, purpose);
	return all.flatMap((spot) =>
		Array.from({ length: count }, () => place(spot, chance))
			.filter((placed) => !isRight(spot, placed))
			.map((placed) => toldAt(spot, placed))
	);
};

const within = (from: Mm, to: Mm, chance: Chance): Mm => mm(from + (to - from) * chance.fraction());

/** Points anywhere in the rectangle that holds the draft. */
export const anywhere = (all: readonly Spot[], count: number) =>
	elsewhere(all, count, 'anywhere', ({ box }, chance) =>
		at(within(box.left, box.right, chance), within(box.top, box.bottom, chance))
	);

/** Points on the step's own way, at any distance: the hardest case, since most wrong rules lead to places on it. */
export const onTheWay = (all: readonly Spot[], count: number) =>
	elsewhere(
		all.filter(({ step }) => step.kind === 'mark'),
		count,
		'on the way',
		({ box, right, step }, chance) => {
			const upright = step.kind === 'mark' && (step.go === 'down' || step.go === 'up');
			const placed = upright
				? at(right.x, within(box.top, box.bottom, chance))
				: at(within(box.left, box.right, chance), right.y);
			return shaken(placed, chance);
		}
	);

/** Points by two missteps at once, drawn by how common they are, the two ways from the right place added. */
export const byTwo = (all: readonly Spot[], count: number) =>
	elsewhere(all, count, 'by two', ({ missteps, right }, chance) => {
		const [one, two] = [0, 1].map(() => chance.weighted(missteps, ({ prior }) => prior)?.place ?? right);
		const [a, b] = [one ?? right, two ?? right];
		return shaken(at(a.x + b.x - right.x, a.y + b.y - right.y), chance);
	});
