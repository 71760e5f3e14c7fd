import type { onPaper as english } from '../en/on-paper.ts';
import { el, El } from './grammar.ts';

/** La página en la que se comprueba un trazado en papel, se mida como se mida. */
export const onPaper: typeof english = (v) => ({
	page: ({ draft }) => `Comprobar un trazado en papel: ${draft}`,
	heading: 'Comprueba un trazado en papel',
	about:
		'Has trazado en papel. Mide dónde están tus puntos: cada uno se compara con su sitio calculado, ' +
		'y se explica qué ha fallado, igual que en la pantalla.',
	draft: 'Trazado',
	body: 'Trazado para',
	way: 'Cómo se mide',
	ways: { tape: 'Con cinta', photograph: 'Con una foto' },
	waiting: 'Un momento…',
	notCome: 'Esta parte de la página no ha llegado. Mira la conexión y vuelve a cargar la página.',
	found: 'Lo que se ha encontrado',
	near: 'A qué distancia debe quedar un punto',
	picture: 'El trazado calculado con tus puntos encima',
	computed: 'calculado',
	yours: 'tuyo, con el círculo en el que está',
	tally: ({ right, open, wrong }) =>
		v.list([
			v.plural(right, { one: '1 punto está bien', other: `${v.number(right)} puntos están bien` }),
			...(open > 0
				? [
						v.plural(open, {
							one: '1 está demasiado cerca del límite para saberlo',
							other: `${v.number(open)} están demasiado cerca del límite para saberlo`
						})
					]
				: []),
			...(wrong > 0
				? [v.plural(wrong, { one: '1 no está bien', other: `${v.number(wrong)} no están bien` })]
				: [])
		]) + '.',
	allowed: ({ within }) =>
		`Un punto puede estar a ${v.small(within) ?? ''} de su sitio. Lo que se mide tiene su propio error: cuando ese error deja la duda, no se dice que esté bien ni mal.`,
	point: 'Punto',
	against: 'Respecto al sitio calculado',
	error: 'Su propio error',
	within: ({ error }) => `± ${v.small(error) ?? 'un pelo'}`,
	all: ({ count }) => `Los ${v.number(count)} puntos, uno por uno`,
	right: ({ steps }) =>
		steps.length === 1 && steps[0] ? `${El(steps[0])} está bien.` : `Bien: ${v.list(steps.map(el))}.`,
	toSheet: 'Ponlos en la hoja',
	aboutSheet:
		'Tus puntos pasan a ser tus marcas en este trazado, y sigues desde ellos en la pantalla. Lo que está mal, o no se sabe, se queda como está hasta que lo cambies.',
	replaces: ({ count }) =>
		v.plural(count, {
			one: 'Ya hay 1 paso de este trazado en tu hoja; si un punto medido tiene su nombre, lo sustituye.',
			other: `Ya hay ${v.number(count)} pasos de este trazado en tu hoja; los que tengan el nombre de un punto medido se sustituyen.`
		}),
	handsIn: 'Este trazado lo ha puesto tu clase: se entregan tus puntos, y nada más de tu papel.',
	putDown: ({ count }) =>
		v.plural(count, {
			one: '1 punto está en tu hoja.',
			other: `${v.number(count)} puntos están en tu hoja.`
		}),
	goOn: 'Sigue desde ellos en la pantalla'
});
