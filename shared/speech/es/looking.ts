import type { looking as english } from '../en/looking.ts';

/** What there is to look at beside the steps: the closed outline, the finished draft, the points and their distances, the end of a part, the draft on the first page. */
export const looking: typeof english = (v) => {
	return {
		closed: ({ draft }) => `${draft}: el contorno está cerrado.`,
		bothHalves: 'Aquí ves las dos mitades, abiertas por la línea central.',
		inOne: 'Aquí lo ves entero.',
		toSheet: 'Volver a la hoja',

		goodFor: 'Para qué ha servido esta parte',
		next: 'Lo que viene ahora',
		nextPart: ({ part, lesson }) => `${part}, que empieza con: ${lesson}`,
		patternOf: ({ garment }) => `La página del patrón: ${garment}`,
		practise: 'Practicar estas reglas con cuerpos nuevos',

		pointsAre: 'Puntos de la hoja, contados desde la esquina',
		point: 'Punto',
		across: 'Hacia fuera',
		down: 'Hacia abajo',
		linesAre: 'Líneas de la hoja',
		line: 'Línea',
		long: 'Largo',
		fromPoint: 'De',
		toPoint: 'a',
		samePoint: 'Elige dos puntos distintos.',
		closeList: 'Cerrar la lista',

		livingTitle: 'Mueve un número y el trazado lo sigue',
		livingAbout: 'Patrón base de espalda y de delantero. Cada punto se calcula de nuevo.',

		left: ({ left, all }) => [
			v.plural(left, {
				one: `Queda por trazar ${left} de ${all} pasos.`,
				other: `Quedan por trazar ${left} de ${all} pasos.`
			}),
			' Están aquí:'
		],
		leftIn: ({ left }) => v.plural(left, { one: `queda ${left} paso`, other: `quedan ${left} pasos` }),
		everyRight: ['Todos los pasos son correctos.', ' El trazado está terminado.'],
		tally: ({ mistakes, consequences }) => [
			`${v.plural(mistakes, { one: `${mistakes} error`, other: `${mistakes} errores` })}, ` +
				`${v.plural(consequences, { one: `${consequences} consecuencia`, other: `${consequences} consecuencias` })}.`,
			' Una consecuencia es correcta a partir de una marca anterior tuya, y no cuesta nada.'
		],
		near: 'Ninguna marca se aparta más de lo que se apartaría un lápiz afilado.',
		furthest: 'Donde más se ha apartado tu lápiz, en el orden del trazado:',
		printDraft: 'Imprimir el trazado a escala real',
		differences: 'Diferencias',
		allSteps: ({ count }) => `Los ${count} pasos, uno por uno`,
		step: 'Paso',
		verdict: 'Resultado',
		yourMark: 'Tu marca frente a la calculada',
		standing: {
			unfinished: 'sin trazar',
			right: 'correcto',
			wrong: 'no es correcto',
			'not-valid': 'no se puede usar',
			'cannot-tell': 'no se sabe',
			excused: 'dispensado',
			'our-fault': 'fallo nuestro',
			unchecked: 'sin comprobar',
			kept: 'no es correcto, se queda'
		},
		inLesson: ({ standing, step, lesson: title }) => `${standing}: ${step}, en la lección «${title}»`,
		fromOwn: ', a partir de una marca anterior tuya',
		shown: ', trazado por el programa',
		/** Leads to the pages of classes. */
		checkPaper: '¿Has trazado en papel? Compruébalo aquí',
		classes: 'Las clases de una escuela: entra en la tuya, o da clase'
	};
};
