import type { Done, site as english } from '../en/site.ts';
import { el } from './grammar.ts';

/** What stands round every page: the frame, the contents, notices, titles. */
export const site: typeof english = (v) => {
	const steps = ({ done, all }: Done): string => `${done === all ? '✓ ' : ''}${done} de ${all} pasos`;
	return {
		title: ({ page }) => `${page} · Square Across`,

		main: 'Principal',
		lessons: 'Lecciones',
		practice: 'Práctica',
		patterns: 'Patrones',
		measurements: 'Medidas',
		draftingFor: 'Trazar para',
		invented: ({ name }) => `${name} (inventado)`,
		unit: 'Unidad',
		inches: 'pulgadas',

		homeTitle: 'Square Across: traza un patrón con tus propias medidas',
		homeAbout: 'Lecciones para trazar patrones de prendas, paso a paso, con tus propias medidas.',
		opening: 'Traza un patrón con tus propias medidas',
		promise:
			'Colocas cada punto sobre papel punteado. Square Across calcula el mismo paso con tus números, te dice ' +
			'cuánto te has acercado y hacia qué lado te has desviado, y te explica la regla. Al final imprimes el ' +
			'trazado a escala real.',
		begin: ({ lesson }) => `Empieza por: ${lesson}`,
		goOn: ({ lesson }) => `Sigue con: ${lesson}`,
		noAccount: 'Sin registrarte. Tus medidas no salen de este dispositivo.',
		allDrafted: ({ name }) => `Todos los pasos están trazados para ${name}.`,
		whatNext: 'Lo que puedes hacer ahora:',
		seePatterns: 'Ver los patrones',
		draftAnother: 'Trazar para otro cuerpo',
		draftOwn: 'Trazar con tus propias medidas',
		print: ({ draft }) => `Imprimir: ${draft}`,
		partLength: ({ lessons, steps: count, minutes }) =>
			`${v.plural(lessons, { one: `${lessons} lección`, other: `${lessons} lecciones` })} · ` +
			(count.all > 0 ? steps(count) : `${minutes} min`),
		steps,
		notNeeded: 'no hace falta para este cuerpo',
		minutes: ({ minutes }) => `${minutes} min`,
		imprint:
			'La clase de Alder Row, los cuerpos con nombre de pájaro y sus medidas son inventados. Las reglas de ' +
			'trazado son práctica común en la costura.',
		notices: 'Programas de otras personas en esta aplicación, con sus licencias',

		noSuchPage: 'Esta página no existe',
		wentWrong: 'Aquí ha fallado algo',
		allLessons: 'Todas las lecciones',

		keepsNothing:
			'Este navegador no guarda tu trabajo: su memoria está llena o no permite guardar. Puedes pasar de una ' +
			'lección a otra, pero lo que traces ahora se perderá al cerrar la página o volver a cargarla.',
		settings: 'Tus preferencias',
		bodies: 'Tus propias medidas',
		unnamed: 'Mis medidas',
		draftOf: ({ method, body }) => `Tu trazado de «${method}»${body === undefined ? '' : ` para ${body}`}`,
		choicesFor: ({ garment, body }) => `Lo que elegiste de «${garment}» para ${body}`,
		practised: 'Lo que practicaste',
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
	};
};
