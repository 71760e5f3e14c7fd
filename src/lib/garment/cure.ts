import type { RunName } from '#shared/garment.ts';
import { isChoice, type LengthAllowance } from '#shared/allowances.ts';
import type { Body } from '#shared/body.ts';
import { mm, type Mm } from '#shared/units.ts';
import type { Refusal } from '#drafting/evaluate.ts';
import type { Garment, WearRule } from './garment.ts';
import { sewnFor, type Choices, type Sewn } from './sewn.ts';

/** What an allowance would be instead of what it is. */
export interface Change {
	readonly allowance: LengthAllowance;
	readonly from: Mm;
	readonly to: Mm;
}

/** What a change would spoil: another check, a number, a seam, a line across one, or the draft itself. */
export type Spoilt =
	| { readonly kind: 'wear'; readonly name: string; readonly label: string }
	| { readonly kind: 'number' | 'seam' | 'warning'; readonly label: string }
	| { readonly kind: 'run'; readonly run: RunName }
	| { readonly kind: 'refusal'; readonly refusal: Refusal };

/** What would put a check right that fails, or why nothing does. */
export type Cure =
	/** With these changes the check holds, and nothing that held breaks; drafted with them, so it is not only worked out. */
	| { readonly kind: 'cure'; readonly changes: readonly Change[] }
	/** The check is at odds with something that holds: what puts the one right spoils the other. */
	| { readonly kind: 'odds'; readonly changes: readonly Change[]; readonly spoilt: Spoilt }
	/** As far as the allowances go, the check still fails: two measurements disagree, where the check says which. */
	| { readonly kind: 'too-far'; readonly changes: readonly Change[]; readonly odds: WearRule['odds'] }
	/** There is no allowance that moves it. */
	| { readonly kind: 'none' };

/** Lengths are tried and offered in whole millimetres. */
const STEP: Mm = mm(1);
/** Most drafts that one cure is looked for with. */
const MOST_DRAFTS = 30;

const spoiltBy = ({ seams, runs, numbers, wear, warnings }: Sewn): ReadonlyMap<string, Spoilt> => {
	const found: [string, Spoilt][] = [];
	for (const { name, label, state } of wear)
		if (state === 'fails') found.push([`wear ${name}`, { kind: 'wear', name, label }]);
	for (const { name, label, within } of numbers)
		if (!within) found.push([`number ${name}`, { kind: 'number', label }]);
	for (const { name, label, within } of seams)
		if (!within) found.push([`seam ${name}`, { kind: 'seam', label }]);
	for (const { run, within } of runs)
		if (!within) found.push([`run ${JSON.stringify(run)}`, { kind: 'run', run }]);
	for (const each of warnings)
		if ('odds' in each && typeof each.because === 'string')
			found.push([`warning ${each.name}`, { kind: 'warning', label: each.because }]);
	return new Map(found);
};

/** What was tried: how far the check still is from holding (nothing where it holds), and what else is wrong. */
type Tried =
	| { readonly kind: 'sewn'; readonly sewn: Sewn; readonly value: number; readonly short: number }
	| { readonly kind: 'refused'; readonly refusal: Refusal };

/** How far a value is from what a check asks: positive, it must grow. */
const shortOf = (value: number, { least, most }: Pick<WearRule, 'least' | 'most'>): number => {
	if (least !== undefined && value < least) return least - value;
	return most !== undefined && value > most ? most - value : 0;
};

/** The choices with a cure's changes made. */
export const cured = (choices: Choices, changes: readonly Change[]): Choices => ({
	...choices,
	allowances: {
		...choices.allowances,
		...Object.fromEntries(changes.map(({ allowance, to }) => [allowance.key, to]))
	}
});

/** The search for one cure of one check, over steps of its allowances: each is so many whole steps from what it is. */
class Search {
	drafts = 0;
	readonly #tried = new Map<number, Tried>();
	readonly least: number;
	readonly most: number;

	constructor(
		readonly garment: Garment,
		readonly body: Body,
		readonly choices: Choices,
		readonly check: string,
		readonly allowances: readonly LengthAllowance[]
	) {
		const rooms = allowances.map((each) => {
			const from = this.from(each);
			const [least, most] = each.range;
			return [Math.ceil((least - from) / STEP), Math.floor((most - from) / STEP)] as const;
		});
		this.least = Math.max(...rooms.map(([least]) => least));
		this.most = Math.min(...rooms.map(([, most]) => most));
	}

	/** What an allowance is now. */
	from({ key, default: usual }: LengthAllowance): Mm {
		return mm(this.choices.allowances[key] ?? this.body.allowances[key] ?? usual);
	}

	changes(steps: number): readonly Change[] {
		return this.allowances.map((allowance) => {
			const from = this.from(allowance);
			const to = steps === 0 ? from : mm(Math.round(from / STEP + steps) * STEP);
			const [least, most] = allowance.range;
			return { allowance, from, to: mm(Math.min(most, Math.max(least, to))) };
		});
	}

	/** Drafts with a change of so many steps. */
	at(steps: number): Tried {
		const known = this.#tried.get(steps);
		if (known) return known;
		const tried = this.#draft(steps);
		this.#tried.set(steps, tried);
		return tried;
	}

	get spent(): boolean {
		return this.drafts >= MOST_DRAFTS;
	}

	#draft(steps: number): Tried {
		this.drafts++;
		const work = sewnFor(this.garment, this.body, cured(this.choices, this.changes(steps)));
		if (work.kind === 'refused') {
			const [refusal] = work.refusals;
			if (!refusal) throw new Error('a refusal without a reason');
			return { kind: 'refused', refusal };
		}
		const report = work.sewn.wear.find(({ name }) => name === this.check);
		// A check that this draft does not have any more is none that fails.
		if (report?.value === undefined) return { kind: 'sewn', sewn: work.sewn, value: 0, short: 0 };
		return {
			kind: 'sewn',
			sewn: work.sewn,
			value: report.value,
			short: report.state === 'fails' ? shortOf(report.value, report) : 0
		};
	}
}

/** Steps of the first trial either way: enough to see which way helps. */
const TRIAL = 5;

/** Whether a trial is nearer to holding than what was there, or already beyond. */
const helps = (tried: Tried, short: number): boolean =>
	tried.kind === 'sewn' &&
	(Math.sign(tried.short) !== Math.sign(short) || Math.abs(tried.short) < Math.abs(short) - 1e-9);

/** Whether a trial fails as it did before any change: too little, or too much. */
const stillShort = (tried: Tried, short: number): boolean =>
	tried.kind === 'sewn' && Math.sign(tried.short) === Math.sign(short);

/** The first trial that helps: near, or at the end of the range where nothing near makes a difference. */
const firstTrial = (search: Search, short: number): number | undefined =>
	[Math.min(TRIAL, search.most), Math.max(-TRIAL, search.least), search.most, search.least].find(
		(steps) => steps !== 0 && helps(search.at(steps), short)
	);

/** Goes on along the slope that was found until the check holds or fails the other way, or the range ends; gives the last that still failed, and where it came to. */
const bracket = (
	search: Search,
	first: number,
	short: number
): { readonly low: number; readonly high: number | undefined } => {
	const [way, end] = first > 0 ? [1, search.most] : [-1, search.least];
	let [low, high, left] = [0, first, short];
	while (!search.spent) {
		const tried = search.at(high);
		if (tried.kind === 'refused' || !stillShort(tried, short)) return { low, high };
		if (high === end) return { low: high, high: undefined };
		const slope = (left - tried.short) / (high - low);
		const onward =
			slope === 0 ? end : high + way * Math.max(1, Math.ceil(Math.abs(tried.short / slope) - 1e-9));
		[low, left] = [high, tried.short];
		high = way > 0 ? Math.min(onward, end) : Math.max(onward, end);
	}
	return { low, high: undefined };
};

/** The fewest steps with which the check does not fail as it did: they may hold, or be refused. Undefined where the range ends before. */
const fewestSteps = (search: Search, first: number, short: number): number | undefined => {
	const ends = bracket(search, first, short);
	if (ends.high === undefined) return undefined;
	let { low, high } = { low: ends.low, high: ends.high };
	while (Math.abs(high - low) > 1 && !search.spent) {
		const middle = Math.trunc((low + high) / 2);
		if (stillShort(search.at(middle), short)) low = middle;
		else high = middle;
	}
	return high;
};

const ruleNamed = (garment: Garment, check: string): WearRule => {
	const rule = garment.wear.find(({ name }) => name === check);
	if (!rule) throw new Error(`the garment ${garment.id} has no check "${check}"`);
	return rule;
};

/** What a cure by these allowances comes to. */
const cureBy = (search: Search): Cure => {
	const before = search.at(0);
	if (before.kind === 'refused' || before.short === 0) return { kind: 'none' };
	const first = firstTrial(search, before.short);
	if (first === undefined) return { kind: 'none' };
	const steps = fewestSteps(search, first, before.short);
	if (steps === undefined)
		return {
			kind: 'too-far',
			changes: search.changes(first > 0 ? search.most : search.least),
			odds: ruleNamed(search.garment, search.check).odds
		};
	const after = search.at(steps);
	const changes = search.changes(steps);
	if (after.kind === 'refused')
		return { kind: 'odds', changes, spoilt: { kind: 'refusal', refusal: after.refusal } };
	if (after.short !== 0) return { kind: 'none' };
	const wrong = spoiltBy(before.sewn);
	const spoilt = [...spoiltBy(after.sewn)].find(([key]) => !wrong.has(key))?.[1];
	return spoilt ? { kind: 'odds', changes, spoilt } : { kind: 'cure', changes };
};

/** The cures of a check by each of its allowances alone, the first that does first found. */
const singleCures = function* (
	garment: Garment,
	body: Body,
	choices: Choices,
	check: string
): Generator<Cure> {
	for (const keys of ruleNamed(garment, check).cures) {
		const allowances = keys.flatMap((key) => {
			const allowance = garment.allowances.find((each) => each.key === key);
			return allowance && !isChoice(allowance) ? [allowance] : [];
		});
		yield cureBy(new Search(garment, body, choices, check, allowances));
	}
};

/** Changes that are made one upon the other, as one; what is changed twice goes from its first to its last. */
const together = (first: readonly Change[], second: readonly Change[]): readonly Change[] => [
	...first.map((each) => ({
		...each,
		to: second.find(({ allowance }) => allowance.key === each.allowance.key)?.to ?? each.to
	})),
	...second.filter(({ allowance }) => !first.some((each) => each.allowance.key === allowance.key))
];

/** What a cure spoils may have a cure of its own: the two together, where with both all holds that held before. */
const cureOfBoth = (
	garment: Garment,
	body: Body,
	choices: Choices,
	check: string,
	{ changes, spoilt }: Extract<Cure, { kind: 'odds' }>
): Cure | undefined => {
	const [before, once] = [sewnFor(garment, body, choices), cured(choices, changes)];
	if (spoilt.kind !== 'wear' || before.kind === 'refused') return undefined;
	for (const other of singleCures(garment, body, once, spoilt.name)) {
		if (other.kind !== 'cure') continue;
		const after = sewnFor(garment, body, cured(once, other.changes));
		if (after.kind === 'refused') continue;
		const wrong = spoiltBy(before.sewn);
		const still = [...spoiltBy(after.sewn).keys()].some((key) => key === `wear ${check}` || !wrong.has(key));
		if (!still) return { kind: 'cure', changes: together(changes, other.changes) };
	}
	return undefined;
};

/**
 * What would put a wear check right that fails for this body and these choices: the least change of its allowances, in whole millimetres,
 * with which it holds and nothing that held breaks; or two changes, where the first spoils another check that the second puts right. It
 * was drafted with what is offered. Where there is none, what it is at odds with, or that the allowances do not go so far. Looked for only
 * when it is asked: it takes some ten drafts.
 */
export const cureOf = (garment: Garment, body: Body, choices: Choices, check: string): Cure => {
	const tried: Cure[] = [];
	for (const cure of singleCures(garment, body, choices, check)) {
		if (cure.kind === 'cure') return cure;
		tried.push(cure);
	}
	for (const cure of tried) {
		const both = cure.kind === 'odds' ? cureOfBoth(garment, body, choices, check, cure) : undefined;
		if (both) return both;
	}
	return tried.find(({ kind }) => kind !== 'none') ?? { kind: 'none' };
};
