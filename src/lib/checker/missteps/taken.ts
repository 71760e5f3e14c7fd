import type { Line, Taken } from '#shared/speech/en/missteps.ts';
import type { Formula } from '#drafting/formula/formula.ts';
import type { Method } from '#drafting/method.ts';

/** An allowance, as a misstep speaks of it. */
export const takenAllowance = (method: Method, key: string): Taken => ({
	kind: 'allowance',
	key,
	noun: method.allowances.find((each) => each.key === key)?.noun
});

/** A line by its name, as a misstep speaks of it: `shoulder`, or of another method `back.shoulder`. */
export const lineOf = (method: Method, name: string): Line => {
	const [alias = '', own] = name.split('.');
	if (own === undefined) return { noun: method.steps.find((each) => each.name === name)?.label ?? { name } };
	const used = method.uses[alias];
	return used ? { ...lineOf(used, own), of: used.called } : { noun: { name } };
};

/** One length of a rule, as a misstep speaks of it. */
export const takenOf = (leaf: Formula, method: Method): Taken => {
	switch (leaf.kind) {
		case 'measurement':
			return { kind: 'measurement', key: leaf.key };
		case 'allowance':
			return takenAllowance(method, leaf.key);
		case 'distance':
			return { kind: 'apart', from: leaf.from, to: leaf.to };
		case 'length':
			return { kind: 'line', line: lineOf(method, leaf.line) };
		default:
			return { kind: 'length' };
	}
};
