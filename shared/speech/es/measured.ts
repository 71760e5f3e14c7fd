import type { measured as english } from '../en/measured.ts';
import { el } from './grammar.ts';

/** Lo que se dice de un sitio que se ha medido y queda demasiado cerca del límite para su propio error. */
export const measured: typeof english = (v) => ({
	cannotTell: ({ step }) => `No se puede saber si ${el(step)} está bien.`,
	again: ({ error }) =>
		`La medición deja ${v.small(error) ?? 'un pelo'} en el aire, demasiado para saberlo. Mídelo otra vez: no cuesta nada.`,
	asMeasured: ({ nearness }) => `Según la medición: ${nearness}`,
	toMeasure: 'hay que medirlo otra vez',
	someToMeasure: ({ count }) =>
		v.plural(count, {
			one: 'hay que medir otra vez 1 paso',
			other: `hay que medir otra vez ${v.number(count)} pasos`
		})
});
