import { measurementOf } from '#shared/measurements.ts';
import type { Formula } from '#drafting/formula/formula.ts';
import type { Method } from '#drafting/method.ts';

/** What an allowance is called: "the bust ease". */
export const allowanceWords = (method: Method, key: string): string =>
	method.allowances.find((each) => each.key === key)?.words ?? key;

/** What a line is called: "the shoulder", or of another method "the shoulder of the back". */
export const lineWords = (method: Method, name: string): string => {
	const [alias = '', own] = name.split('.');
	if (own === undefined) return method.steps.find((each) => each.name === name)?.label ?? name;
	const used = method.uses[alias];
	return used ? `${lineWords(used, own)} of the ${alias}` : name;
};

/** What one length of a rule is called. */
export const leafWords = (leaf: Formula, method: Method): string => {
	switch (leaf.kind) {
		case 'measurement':
			return measurementOf(leaf.key).words;
		case 'allowance':
			return allowanceWords(method, leaf.key);
		case 'distance':
			return `the distance ${leaf.from}–${leaf.to}`;
		case 'length':
			return `the length of ${lineWords(method, leaf.line)}`;
		default:
			return 'the length';
	}
};
