import type { Done, site as english } from '../en/site.ts';

/** What stands round every page: the frame, the contents, notices, titles. */
export const site: typeof english = (v) => {
	const steps = ({ done, all }: Done): string => `${done === all ? '✓ ' : ''}${done} de ${all} pasos`;
	return {
		title: ({ page }) => `${page} · Square Across`,

		skip: 'Ir al contenido',
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
		printOne: 'Imprimir un trazado',
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
		tryAgain: 'Volver a intentarlo',
		allLessons: 'Todas las lecciones',

		unnamed: 'Mis medidas'
	};
};
