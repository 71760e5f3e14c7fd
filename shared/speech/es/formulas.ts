import type { Noun } from '../noun.ts';
import type { formulas as english } from '../en/formulas.ts';
import { del, el } from './grammar.ts';

const FRACTIONS: Readonly<Record<number, Noun>> = {
	2: { article: 'la', name: 'mitad', gender: 'f' },
	3: { article: 'la', name: 'tercera parte', gender: 'f' },
	4: { article: 'la', name: 'cuarta parte', gender: 'f' },
	5: { article: 'la', name: 'quinta parte', gender: 'f' },
	6: { article: 'la', name: 'sexta parte', gender: 'f' },
	8: { article: 'la', name: 'octava parte', gender: 'f' },
	12: { article: 'la', name: 'doceava parte', gender: 'f' }
};
const MEASURED: Record<
	Parameters<ReturnType<typeof english>['measured']>[0]['what'],
	(names: readonly string[]) => Noun
> = {
	rise: (names) => ({ article: 'la', name: `subida ${names.join('–')}`, gender: 'f' }),
	across: (names) => ({ article: 'la', name: `distancia horizontal ${names.join('–')}`, gender: 'f' }),
	angle: (names) => ({ article: 'el', name: `ángulo de ${names.join('–')}`, gender: 'm' }),
	turn: ([one = '', other = '']) => ({ article: 'el', name: `giro de ${one} a ${other}`, gender: 'm' }),
	widthAt: ([piece = '', point = '']) => ({
		article: 'el',
		name: `ancho de ${piece} en ${point}`,
		gender: 'm'
	}),
	openWidthAt: ([piece = '', point = '']) => ({
		article: 'el',
		name: `ancho de ${piece} en ${point}, con las pinzas abiertas`,
		gender: 'm'
	}),
	sewn: ([edge = '']) => ({ article: 'la', name: `longitud de ${edge}`, gender: 'f' })
};
const ALL_DECIMALS = 15;

/** A rule's formula in words, with its arithmetic. */
export const formulas: typeof english = (v) => ({
	number: (value) => ({
		name: value === Math.PI ? 'π' : v.number(value, ALL_DECIMALS)
	}),
	distance: ({ from, to }) => ({ article: 'la', name: `distancia ${from}–${to}`, gender: 'f' }),
	length: (line) => ({ article: 'la', name: `longitud ${del(line)}`, gender: 'f' }),
	measured: ({ what, names }) => MEASURED[what](names),
	greater: ({ one, other }) => ({
		article: 'el',
		name: `mayor entre ${el(one)} y ${el(other)}`,
		gender: 'm'
	}),
	lesser: ({ one, other }) => ({ article: 'el', name: `menor entre ${el(one)} y ${el(other)}`, gender: 'm' }),
	part: ({ whole, by }) => {
		const fraction = FRACTIONS[by];
		return fraction && { ...fraction, name: `${fraction.name} ${del(whole)}` };
	},
	bracketed: (inside) => ({ name: `(${el(inside)})` }),
	negative: (of) => ({ name: `− ${el(of)}` }),
	joined: ({ sign, left, right }) => ({ name: `${el(left)} ${sign} ${el(right)}` }),
	arithmetic: ({ words, sum, result, exact }) =>
		[
			el(words),
			...(sum === undefined ? [] : [sum]),
			`${exact ? '' : v.unit === 'in' ? 'unas ' : 'unos '}${result}`
		].join(' = ')
});
