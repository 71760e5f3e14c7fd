import type { Page } from '@playwright/test';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { evaluate, type Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { lessonFiles } from '../../lessons/lesson-files.ts';
import type { At, Desk, Typed } from './desk.ts';
import { finishedSteps, METHODS } from './finished.ts';
import { atRest, parts, shifts } from './still.ts';
import { workedSteps } from './worked.ts';

/** A lesson at one of its steps, where a learner slips. */
export interface Slipped {
	readonly lesson: string;
	readonly method: Method;
	readonly step: string;
	readonly typed: Typed;
}

const [HERON] = DEMO_BODIES;

/** The draft of a method for the first demo body. Throws where it has none. */
export const heronsDraft = (method: Method): Draft => {
	const evaluation = HERON && evaluate(method, HERON.body);
	if (evaluation?.kind !== 'drafted') throw new Error(`${method.id} is not drafted`);
	return evaluation.draft;
};

/** Every step of every lesson that has steps, in the order of the course: a list for each lesson. */
export const lessonSteps = (): readonly (readonly Slipped[])[] =>
	lessonFiles().flatMap(({ id, text }) => {
		const method = METHODS.find((each) => each.id === /^method: (\S+)$/m.exec(text)?.[1]);
		if (!HERON || !method) return [];
		const worked = workedSteps(method, HERON.body);
		const own = [...text.matchAll(/<Step name="(\w+)"/g)].flatMap(([, step = '']): readonly Slipped[] => {
			const typed = worked.get(step);
			return typed ? [{ lesson: id, method, step, typed }] : [];
		});
		return own.length > 0 ? [own] : [];
	});

/** The slips of a learner: half, twice, the wrong way, crosswise. */
const PLACES: readonly ((place: At) => At)[] = [
	([x, y]) => [x / 2, y / 2],
	([x, y]) => [2 * x, 2 * y],
	([x, y]) => [-x, -y],
	([x, y]) => [y, x]
];
/** Of a level: half, twice, a fifth too short, a quarter too long. */
const SHARES = [0.5, 2, 0.8, 1.25];

/** What is typed for the slip of a number: of a line another end; of a curve handles too short, too long, turned. */
const slipOf = ({ typed, method, step }: Slipped, i: number): Typed => {
	const put = PLACES[i % PLACES.length] ?? (([x, y]: At): At => [x, y]);
	// Of a short or nearly straight curve the share of a handle matters little: it is moved aside as well.
	if ('offsets' in typed) return { offsets: typed.offsets.map(put).map(([x, y]): At => [x + 30, y + 20]) };
	if ('end' in typed)
		return { ...typed, sum: (Number(typed.sum) * (SHARES[i % SHARES.length] ?? 1)).toFixed(2) };
	if ('point' in typed) {
		const [x, y] = put(typed.point);
		const isNear = Math.hypot(x - typed.point[0], y - typed.point[1]) < 20;
		return { point: isNear ? [x + 30, y + 10] : [x, y] };
	}
	const before = method.steps.slice(
		0,
		method.steps.findIndex(({ name }) => name === step)
	);
	const { points } = heronsDraft(method);
	const others = before.map(({ name }) => name).filter((name) => points[name] && !typed.ends.includes(name));
	return { ends: [typed.ends[i % 2] ?? '', others[i % others.length] ?? ''] };
};

/** Keeps all work of the course as it is once it is drafted, but for one step. */
export const keepAllBut = (page: Page, { method, step }: Slipped): Promise<void> =>
	page.evaluate(
		(works) => {
			for (const [key, work] of works) localStorage.setItem(key, work);
		},
		METHODS.map((each): [string, string] => {
			const { [step]: left, ...rest } = finishedSteps(each);
			const key = ['square-across.work', each.id, ...(each.measurements.length > 0 ? ['heron'] : [])].join(
				'.'
			);
			const steps =
				each.id === method.id ? rest : { ...rest, ...(left === undefined ? {} : { [step]: left }) };
			return [key, JSON.stringify({ version: 1, method: each.id, steps })];
		})
	);

/** The marks and places of the step at hand that do not lie in the middle of the sheet, clear of its edges. */
const outOfSight = (desk: Desk): Promise<readonly string[]> =>
	desk.sheet.evaluate((sheet) => {
		const box = sheet.getBoundingClientRect();
		return [...sheet.querySelectorAll('.pencil, rect.handle, circle.target, .arrow')].flatMap((mark) => {
			if (mark.closest('.inset')) return [];
			const { left, top, right, bottom } = mark.getBoundingClientRect();
			const [x, y] = [(left + right) / 2 - box.left, (top + bottom) / 2 - box.top];
			const seen = x > 20 && y > 20 && x < box.width && y < box.height;
			return seen ? [] : [`${mark.getAttribute('class') ?? ''} at ${x.toFixed(0)}, ${y.toFixed(0)}`];
		});
	});

/** What came of a slip that was checked, and of the help that was asked for then. */
interface Outcome {
	/** What the checker answered. */
	readonly answer: string | null;
	/** Marks and places that are not in view. */
	readonly unseen: readonly string[];
	/** Parts of the desk that lie elsewhere than before. */
	readonly moved: readonly string[];
	/** What the browser calls layout shift, from before the check until help stands open. */
	readonly shift: number;
}

/** Types a slip, has it checked, and asks for the next help. */
export const slip = async (desk: Desk, slipped: Slipped, i: number): Promise<Outcome> => {
	const { page } = desk;
	await desk.sheet.scrollIntoViewIfNeeded();
	await atRest(page);
	const still = await shifts(page, { near: false });
	const before = await parts(page);
	await desk.typing(slipOf(slipped, i));
	// The near view leaves its corner where it would hide what is being typed, and stays in it from then on.
	const whileTyping = (await shifts(page, { near: false })) - still;
	const typed = await shifts(page);
	await desk.button(desk.words.check).click();
	await desk.verdict
		.and(page.locator('[data-answer=wrong]'))
		.waitFor({ timeout: 5_000 })
		.catch(() => undefined);
	const unseen = await outOfSight(desk);
	const help = page.locator('.asks button:visible').first();
	if ((await help.count()) > 0) await help.click();
	const after = await parts(page);
	const shift = whileTyping + (await shifts(page)) - typed;
	return {
		answer: await desk.verdict.getAttribute('data-answer'),
		unseen,
		moved: after.flatMap((part, at) =>
			JSON.stringify(part) === JSON.stringify(before[at]) ? [] : [part.join(' ')]
		),
		shift
	};
};
