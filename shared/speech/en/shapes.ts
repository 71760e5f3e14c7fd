import type { Voice } from '../voice.ts';

const ITEMS: Readonly<Record<string, string>> = { string: 'characters', array: 'items', map: 'entries' };

/** What a number, or the size of a list or text, must keep to. */
export interface Limit {
	readonly origin: string;
	readonly limit: number;
	readonly inclusive: boolean;
}

const limited = ({ origin, limit, inclusive }: Limit, sign: string): string => {
	const size = ITEMS[origin];
	return `expected ${origin} to ${size ? 'have' : 'be'} ${sign}${inclusive ? '=' : ''}${limit}${size ? ` ${size}` : ''}`;
};

/** What is wrong with the shape of data: of a file, or of what was saved. */
export const shapes = (_voice: Voice) => ({
	withSeen: ({ slip, seen }: { readonly slip: string; readonly seen: string }) => `${slip}; seen: ${seen}`,
	wrongType: ({ expected, received }: { readonly expected: string; readonly received: string }) =>
		`Invalid input: expected ${expected}, received ${received}`,
	wrongValue: ({ options }: { readonly options: readonly string[] }) =>
		options.length === 1
			? `Invalid input: expected ${options.join('')}`
			: `Invalid option: expected one of ${options.join('|')}`,
	tooBig: (limit: Limit) => `Too big: ${limited(limit, '<')}`,
	tooSmall: (limit: Limit) => `Too small: ${limited(limit, '>')}`,
	wrongPattern: ({ pattern }: { readonly pattern: string }) =>
		`Invalid string: must match pattern ${pattern}`,
	unknownKeys: ({ keys }: { readonly keys: readonly string[] }) =>
		`Unrecognized key${keys.length > 1 ? 's' : ''}: ${keys.join(', ')}`,
	invalid: 'Invalid input'
});
