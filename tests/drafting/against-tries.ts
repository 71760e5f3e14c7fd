import type { Body } from '#shared/body.ts';
import { readingError } from '#shared/reading-errors.ts';
import { mm } from '#shared/units.ts';
import { evaluate, type Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { howSure } from '#drafting/sureness/how-sure.ts';
import { chanceOf } from '#practice/chance.ts';

/** What was said of a point beside what so many drafts with readings drawn by chance show. */
export interface Compared {
	readonly point: string;
	readonly told: number;
	readonly tried: number;
	readonly bends: boolean;
}

const NINETEEN_OF_TWENTY = 0.95;
/** Below this, in millimetres, a place does not move: it is the noise of adding. */
const STILL = 1e-6;

/** The draft of a body. */
export const draftFor = (method: Method, body: Body): Draft => {
	const made = evaluate(method, body);
	if (made.kind === 'refused') throw new Error(`${body.name} cannot be drafted by ${method.id}`);
	return made.draft;
};

/**
 * Every point of a draft: the distance that was worked out beside the one that nineteen of twenty drafts keep to, whose readings stray
 * by chance (independent normal numbers of another generator than the program's even draws).
 */
export const comparedWithTries = (method: Method, body: Body, tries: number): readonly Compared[] => {
	const draft = draftFor(method, body);
	const sure = howSure(method, body, draft, (key) => readingError(key));
	const chance = chanceOf(20685, method.id, body.name);
	const strays = new Map<string, number[]>();
	for (let i = 0; i < tries; i++) {
		const measurements = { ...body.measurements };
		for (const key of method.measurements)
			measurements[key] = mm((measurements[key] ?? NaN) + chance.normal() * readingError(key));
		const made = evaluate(method, { ...body, measurements });
		if (made.kind === 'refused') continue;
		for (const [name, { x, y }] of Object.entries(made.draft.points)) {
			const from = draft.points[name];
			if (!from) continue;
			const all = strays.get(name) ?? [];
			all.push(Math.hypot(x - from.x, y - from.y));
			strays.set(name, all);
		}
	}
	return Object.entries(sure.points).map(([point, { reach, bends }]) => {
		const sorted = (strays.get(point) ?? []).sort((a, b) => a - b);
		const tried = sorted[Math.floor(NINETEEN_OF_TWENTY * sorted.length)] ?? NaN;
		return { point, told: reach < STILL ? 0 : reach, tried: tried < STILL ? 0 : tried, bends };
	});
};

/** How far what was told lies from what was tried, as a share; nothing where neither moves. */
export const errorOf = ({ told, tried }: Compared): number =>
	told === 0 && tried === 0 ? 0 : Math.abs(told / tried - 1);
