import { BLOCK_ALLOWANCES, CUTTING_ALLOWANCES, type Allowance } from '#shared/allowances.ts';
import type { AllowanceGroupName } from '#shared/speech/en/pattern.ts';
import { formulaKeys, type Formula } from '#drafting/formula/formula.ts';
import type { Method } from '#drafting/method.ts';
import { dependenceFormulas, stepKeys } from '#drafting/steps/kinds.ts';
import type { Garment } from '#garment/garment.ts';

/** Allowances that belong together, by what they are for. */
export interface AllowanceGroup {
	readonly group: AllowanceGroupName;
	readonly allowances: readonly Allowance[];
}

const namedIn = (formulas: readonly (Formula | undefined)[]): readonly string[] =>
	formulas.flatMap((formula) => (formula ? formulaKeys(formula, 'allowance') : []));

/** Every method that these lean on, and themselves. */
const allMethods = (methods: readonly Method[]): ReadonlySet<Method> =>
	new Set(methods.flatMap((method) => [method, ...allMethods(Object.values(method.uses))]));

/** The keys of the allowances that change something of a garment: those that a formula of it names. */
const namedBy = ({ uses, pieces, seams, numbers }: Garment): ReadonlySet<string> =>
	new Set([
		...[...allMethods(Object.values(uses))].flatMap(({ steps }) => [
			...steps.flatMap((step) => stepKeys(step, 'allowance')),
			...namedIn(steps.flatMap(dependenceFormulas))
		]),
		...namedIn(pieces.flatMap(({ edges }) => edges.map(({ allowance }) => allowance))),
		...namedIn(seams.map(({ ease }) => ease)),
		...namedIn(numbers.map(({ formula }) => formula))
	]);

/**
 * A garment's allowances by what they are for: its own design, the ease and shaping of the block under it, and
 * cutting. Those that change nothing are left out, and so is a group that has none.
 */
export const allowanceGroups = (garment: Garment): readonly AllowanceGroup[] => {
	const named = namedBy(garment);
	const isOf = (group: readonly Allowance[], { key }: Allowance): boolean =>
		group.some((each) => each.key === key);
	const all = garment.allowances.filter(({ key }) => named.has(key));
	const design = all.filter((each) => !isOf(BLOCK_ALLOWANCES, each) && !isOf(CUTTING_ALLOWANCES, each));
	const groups: readonly AllowanceGroup[] = [
		{ group: 'design', allowances: design },
		{ group: 'ease', allowances: all.filter((each) => isOf(BLOCK_ALLOWANCES, each)) },
		{ group: 'cutting', allowances: all.filter((each) => isOf(CUTTING_ALLOWANCES, each)) }
	];
	return groups.filter(({ allowances }) => allowances.length > 0);
};
