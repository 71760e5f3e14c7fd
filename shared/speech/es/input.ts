import { MM_PER } from '../../units.ts';
import type { input as english, Kind } from '../en/input.ts';
import { wordsOf } from '../given-words.ts';
import { capital, el } from './grammar.ts';
import { allowanceNoun, MEASUREMENT_WORDS, measurementNoun, STANDING } from './nouns.ts';

/** Lengths that people know and a drafter does not use. */
const OTHER_UNITS = /^(m|km|metros?|ft|pies?|yd|yardas?|dm)$/;
const WAYS = /^(abajo|arriba|fuera|dentro|izquierda|derecha)$/;
/** Words whose numbers stand beside the step. */
const GIVEN = wordsOf({
	...STANDING,
	...Object.fromEntries(Object.entries(MEASUREMENT_WORDS).map(([key, { noun }]) => [key, noun]))
});

/** What may be named: "ningún punto", "ninguna línea", and how the names that there are are led in. */
const KINDS: Readonly<Record<Kind, readonly [word: string, lead: string]>> = {
	allowance: ['ningún ajuste', 'los ajustes son'],
	command: ['ninguna orden', 'las órdenes son'],
	draft: ['ningún trazado', 'los trazados son'],
	edge: ['ningún borde', 'los bordes son'],
	format: ['ningún tipo de archivo', 'los tipos son'],
	given: ['ninguna medida ni ningún ajuste', 'hay'],
	garment: ['ninguna prenda', 'las prendas son'],
	garmentOrMethod: ['ninguna prenda ni ningún método', 'hay'],
	language: ['ningún idioma', 'los idiomas son'],
	lesson: ['ninguna lección', 'las lecciones son'],
	line: ['ninguna línea', 'las líneas son'],
	measurement: ['ninguna medida', 'las medidas son'],
	method: ['ningún método', 'los métodos son'],
	option: ['ninguna opción', 'las opciones son'],
	paper: ['ningún papel', 'los papeles son'],
	piece: ['ninguna pieza', 'las piezas son'],
	point: ['ningún punto', 'los puntos son'],
	scale: ['ninguna escala', 'las escalas son'],
	step: ['ningún paso', 'los pasos son'],
	value: ['ningún valor', 'los valores son']
};

const near = (name: string | undefined): string => (name === undefined ? '' : ` (¿querías decir «${name}»?)`);

const LENGTH = 'escribe un número como 96, 96.5, 96,5 o 37 3/4, seguido de cm, mm o " si quieres';

export const input: typeof english = (v) => ({
	unknown: ({ kind, name, near: like, known }) => {
		const [word, lead] = KINDS[kind];
		const what = name === undefined ? `${word} con este nombre` : `${word} «${name}»`;
		return `no hay ${what}${near(like)}${known ? `; ${lead} ${known.join(', ')}` : ''}`;
	},
	noSuchStep: (given) => `no hay ningún paso con este nombre${near(given.near)}`,
	twoNames: ({ now }) => `ahora se llama ${now}, que está al lado; deja solo uno de los dos`,
	didYouMean: (given) => near(given.near),

	notWritten: ({ seen }) => `una longitud es un número o un texto como "37 3/4", no ${seen}`,
	notLength: ({ seen }) => `${seen} no es una longitud; ${LENGTH}`,
	notNumber: ({ seen }) => `${seen} no es un número`,
	outside: ({ of, range, value, unit, seen }) => {
		const own = v.inUnit(unit);
		const { least, most } = own.range(range);
		const noun = typeof of === 'string' ? measurementNoun(of) : allowanceNoun(of);
		const written = seen === undefined ? '' : ` (está escrito ${seen}, en ${unit})`;
		const must = noun.plural ? 'deben' : 'debe';
		return `${el(noun)} ${must} estar entre ${least} y ${most}, no ${own.outside(value, range)}${written}`;
	},

	notInches: ({ of, value }) => {
		const noun = measurementNoun(of);
		const would = noun.plural ? 'medirían' : 'mediría';
		return `ningún cuerpo es tan grande en pulgadas: ${el(noun)} ${would} ${v.inUnit('cm').length(value)}; si son centímetros, escribe cm`;
	},

	sumWord: ({ written }) => {
		const word = written.toLowerCase();
		if (WAYS.test(word)) return `«${written}» tiene su propia casilla; escribe aquí solo el número`;
		if (OTHER_UNITS.test(word)) return `«${written}» no se usa aquí; escribe cm, mm o in detrás de un número`;
		const shown = GIVEN.has(word) ? ', y su número está junto al paso' : '';
		return `escribe solo números, como 12/2+1; «${written}» es una palabra${shown}`;
	},
	sumNumber: ({ text }) =>
		`«${text}» no es un número; escríbelo con un solo punto o una sola coma, como 12,5`,
	sumSign: ({ text }) => `«${text}» no puede estar en una cuenta; escribe números con + − × ÷ y paréntesis`,
	sumClosed: 'se cierra un paréntesis que no se abrió',
	sumOpened: 'se abre un paréntesis que no se cierra',
	sumBetween: ({ before, after }) => `escribe un signo (+ − × ÷) entre «${before}» y «${after}»`,
	sumMissingAfter: ({ text }) => `falta un número después de «${text}»`,
	sumMissingBefore: ({ text }) => `falta un número antes de «${text}»`,
	sumTooLong: ({ most }) => `es demasiado largo; una cuenta puede tener ${most} signos y cifras`,
	sumEmpty: 'escribe un número o una cuenta como 38,4/2+3',
	sumByNothing: ({ text }) => `«${text}» divide entre cero`,
	tooFar: ({ length, inMm }) => {
		const metres = `eso son ${v.number(Number((length / (100 * MM_PER.cm)).toPrecision(3)))} m`;
		return inMm ? `${metres}: ¿querías decir mm?` : `${metres}, más de lo que mide la hoja`;
	},

	sentence: ({ clause }) => `${capital(clause)}.`,
	supposed: ({ value, how }) => `${value}, ${how === 'estimated' ? 'estimada' : 'calculada'}`,
	notMeasured: 'sin medir'
});
