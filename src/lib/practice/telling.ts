import { POINT_TOLERANCE } from '#shared/tolerances.ts';
import type { Misstep } from '#checker/missteps/misstep.ts';
import { pointMissteps } from '#checker/missteps/point-missteps.ts';
import { distance, type SheetPoint } from '#geometry/point.ts';
import type { Drafted } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { TELLING_DRAWS, TELLING_TOLERANCES } from './constants.ts';
import { draftSoFar } from './draft-so-far.ts';
import { draftedBodies, type DraftedBody } from './generate-body.ts';

/** A body with a step to be done, and the missteps that lead elsewhere. */
interface Stand extends DraftedBody {
	/** What stands on the sheet before the step. */
	readonly soFar: Drafted;
	readonly right: SheetPoint;
	readonly missteps: readonly Misstep[];
}

/** A body for which a step's missteps lie apart, so that a mistake can be recognised by its place. */
export interface Telling extends Stand {
	/** Pairs of missteps that stay too near each other, so that a place between them does not tell which it was. */
	readonly nearPairs: number;
	/** Missteps that stay too near the right place, or so near that they pass for right. */
	readonly nearRight: number;
	/** How much is left to confuse: of each such pair the less common misstep's prior, and the priors of those near the right place. */
	readonly confusion: number;
	/** Bodies that were looked at. */
	readonly draws: number;
}

/** Whether two places can be taken for each other. */
export const tooNear = (a: SheetPoint, b: SheetPoint): boolean =>
	distance(a, b) < TELLING_TOLERANCES * POINT_TOLERANCE;

const standFor = (method: Method, stepName: string, { body, draft }: DraftedBody): Stand | undefined => {
	const right = draft.points[stepName];
	if (!right) return undefined;
	const soFar = draftSoFar(method, draft, stepName);
	return { body, draft, soFar, right, missteps: pointMissteps(method, stepName, body, soFar) };
};

const sumOf = (numbers: readonly number[]): number => numbers.reduce((sum, each) => sum + each, 0);

/** Pairs too near each other. One misstep may lead to several places; two of its own are no pair. */
const pairsOf = (missteps: readonly Misstep[]): readonly (readonly [Misstep, Misstep])[] =>
	missteps.flatMap((one, i) =>
		missteps
			.slice(i + 1)
			.filter((other) => one.note !== other.note && tooNear(one.place, other.place))
			.map((other) => [one, other] as const)
	);

/** The commonest misstep of each note that any of these bodies has. */
const everyNote = (stands: readonly Stand[]): readonly Misstep[] => {
	const notes = new Map<string, Misstep>();
	for (const each of stands.flatMap(({ missteps }) => missteps)) {
		if (each.prior > (notes.get(each.note)?.prior ?? 0)) notes.set(each.note, each);
	}
	return [...notes.values()];
};

/**
 * How telling a body is. A misstep that other bodies have and this one has not leads to the right place
 * itself, or nowhere: the checker leaves such ones out.
 */
const told = (stand: Stand, notes: readonly Misstep[], draws: number): Telling => {
	const { missteps, right } = stand;
	const hidden = notes.filter(({ note }) => !missteps.some((each) => each.note === note));
	const near = [...hidden, ...missteps.filter(({ place }) => tooNear(place, right))];
	const pairs = pairsOf(missteps);
	const confusion = sumOf([
		...near.map(({ prior }) => prior),
		...pairs.map(([a, b]) => Math.min(a.prior, b.prior))
	]);
	return { ...stand, nearPairs: pairs.length, nearRight: near.length, confusion, draws };
};

/** A draft with a warning would put a learner off; after that, less to confuse is better. */
const better = (a: Telling, b: Telling): boolean => {
	const [warnedA, warnedB] = [a.draft.warnings.length, b.draft.warnings.length];
	return warnedA === warnedB ? a.confusion < b.confusion : warnedA < warnedB;
};

/** The first bodies of a seed that have the step. */
const firstStands = (seed: number, method: Method, stepName: string): readonly Stand[] => {
	const stands: Stand[] = [];
	for (const drafted of draftedBodies(seed, method)) {
		const stand = standFor(method, stepName, drafted);
		if (stand) stands.push(stand);
		if (stands.length === TELLING_DRAWS) break;
	}
	return stands;
};

/**
 * The body of this seed, of the first TELLING_DRAWS that have the step, for which the step's missteps lie at least
 * TELLING_TOLERANCES apart and as far from the right place, or which comes nearest to that. The same seed, method and
 * step give the same body. Throws where no draw has the step: it is then no point of the method.
 */
export const tellingBody = (seed: number, method: Method, stepName: string): Telling => {
	const stands = firstStands(seed, method, stepName);
	const notes = everyNote(stands);
	const [first, ...rest] = stands.map((stand) => told(stand, notes, stands.length));
	if (!first) throw new Error(`no drawn body has a point "${stepName}" by ${method.id}`);
	return rest.reduce((best, each) => (better(each, best) ? each : best), first);
};
