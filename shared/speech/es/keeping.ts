import type { keeping as english } from '../en/keeping.ts';
import { el } from './grammar.ts';

/** What is kept in the browser, by name, and what is told of it where it cannot be kept or read back. */
export const keeping: typeof english = (v) => ({
	keepsNothing:
		'Este navegador no guarda tu trabajo: su memoria está llena o no permite guardar. Puedes pasar de una ' +
		'lección a otra, pero lo que traces ahora se perderá al cerrar la página o volver a cargarla.',
	settings: 'Tus preferencias',
	bodies: 'Tus propias medidas',
	draftOf: ({ method, body }) => `Tu trazado de «${method}»${body === undefined ? '' : ` para ${body}`}`,
	choicesFor: ({ garment, body }) => `Lo que elegiste de «${garment}» para ${body}`,
	practised: 'Lo que practicaste',
	taped: ({ draft }) => `Lo que ha marcado tu cinta: ${draft}`,
	probes: 'Lo que se te ha quedado de las partes terminadas',
	practiceSet: 'Tu serie de práctica',
	partsOf: ({ what, parts }) => `${what}: ${v.list(parts)}`,
	called: ({ label }) => el(label),
	bodyNumber: ({ number }) => `número ${number}`,
	breaksRule: ({ place, rule }) => `${place || 'el conjunto'}: ${rule}`,
	// The engine's own words come in English alone.
	unreadable: () => 'no está bien escrito',

	notReadBack: ({ reason }) => `: no se ha podido leer (${reason}).`,
	staysAs: [
		'En la memoria del navegador no cabe una copia, así que se queda donde está, como ',
		', y no se guarda nada nuevo en su lugar. Guárdalo en un archivo y después quítalo de este navegador.'
	],
	setAsideAs: ['No se ha perdido nada: queda apartado en este navegador como ', '.'],
	renamed:
		'En tus medidas guardadas, el ancho de espalda ahora se llama ancho de hombros. Es la misma medida, de un punto de hombro al otro, y su número no ha cambiado.',
	restIsHere: 'Todo lo demás está aquí.',
	saveAsFile: 'Guardarlo en un archivo',
	remove: 'Quitarlo',
	close: 'Cerrar'
});
