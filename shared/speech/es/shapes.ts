import type { Limit, shapes as english } from '../en/shapes.ts';

/** Kinds of data, as a person calls them. */
const TYPES: Readonly<Record<string, string>> = {
	string: 'un texto',
	number: 'un número',
	int: 'un número entero',
	boolean: 'true o false',
	array: 'una lista',
	tuple: 'una lista',
	object: 'un objeto {...}',
	record: 'un objeto {...}',
	null: 'null',
	undefined: 'nada'
};
const type = (name: string): string => TYPES[name] ?? name;

const ITEMS: Readonly<Record<string, string>> = {
	string: 'caracteres',
	array: 'elementos',
	map: 'elementos'
};
const limited = ({ origin, limit, inclusive }: Limit, more: string, atLeast: string): string => {
	const size = ITEMS[origin];
	const amount = `${inclusive ? atLeast : more} ${limit}`;
	return size ? `debe tener ${amount} ${size}` : `debe ser ${amount}`;
};

export const shapes: typeof english = (v) => ({
	withSeen: ({ slip, seen }) => `${slip}; se lee: ${seen}`,
	wrongType: ({ expected, received }) =>
		received === 'undefined'
			? `falta: debe ser ${type(expected)}`
			: `debe ser ${type(expected)}, no ${type(received)}`,
	wrongValue: ({ options }) => `debe ser ${v.either(options)}`,
	tooBig: (limit) => `es demasiado grande: ${limited(limit, 'menos de', 'como mucho')}`,
	tooSmall: (limit) => `es demasiado pequeño: ${limited(limit, 'más de', 'al menos')}`,
	wrongPattern: ({ pattern }) => `no está escrito como debe: ${pattern}`,
	unknownKeys: ({ keys }) =>
		v.plural(keys.length, {
			one: `aquí no se conoce ${keys.join(', ')}`,
			other: `aquí no se conocen ${keys.join(', ')}`
		}),
	invalid: 'no es lo que debe estar aquí'
});
