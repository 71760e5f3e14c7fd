import type { Mm } from '../../units.ts';
import type { LineName, practice as english } from '../en/practice.ts';
import type { Noun } from '../noun.ts';
import { capital, El, el } from './grammar.ts';
import { partOf } from './nouns.ts';
import { smallIn, wayOff } from './slight.ts';

/** Exercises, what is said of answers, and how rules stand. */
export const practice: typeof english = (v) => {
	const small = (length: Mm): string => smallIn(v, length);
	const sum = (parts: readonly Mm[], whole: Mm): string =>
		parts.length > 1
			? `${parts.map((part) => v.length(part)).join(' + ')} = ${v.length(whole)}`
			: v.length(whole);
	const lineNoun = ({ noun, of }: LineName): Noun => (of ? partOf(noun, of) : noun);
	const named = (lines: readonly LineName[]): string => v.list(lines.map((line) => el(lineNoun(line))));
	const STANDINGS = {
		new: 'nueva',
		begun: 'todavía no',
		coming: 'en camino',
		secure: 'segura',
		due: 'toca repasar'
	} as const;
	const RESULTS = {
		right: 'correcto a la primera',
		wrong: 'no a la primera',
		helped: 'con ayuda',
		passed: 'saltado'
	} as const;
	return {
		heading: 'Práctica',
		about:
			'Diez ejercicios cortos, cada uno con un cuerpo nuevo: di de dónde parte una regla, coloca un punto, encuentra el fallo de un trazado terminado, calcula un número, iguala dos costuras. Las reglas que menos sabes salen más, y lo que ya sabías vuelve al cabo de unos días. Aquí no se ponen notas.',
		topics: '¿Qué has trazado ya?',
		topicsAbout: 'La práctica solo pregunta lo que ya conoces. Elige al menos uno.',
		begin: 'Empezar una serie de diez',
		again: 'Otros diez',
		exerciseOf: ({ number, of }) => `Ejercicio ${number} de ${of}`,
		result: ({ result }) => RESULTS[result],
		end: 'Terminar esta serie',
		finished: 'Serie terminada',
		summary: (all) =>
			`De ${all.of}: ${all.right} a la primera, ${all.wrong} no a la primera, ${all.helped} con ayuda${
				all.passed > 0
					? `, ${v.plural(all.passed, { one: '1 saltado', other: `${all.passed} saltados` })}`
					: ''
			}.`,

		probe: '¿Qué se te ha quedado?',
		probeAbout: ({ draft, count }) =>
			`Terminaste «${draft}» hace una semana o más. ${v.plural(count, { one: 'Un ejercicio', other: `${count} ejercicios` })} con cuerpos nuevos, sin ayuda, te dirán qué se te ha quedado. El resultado es solo para ti: se guarda en este navegador y no se envía a ninguna parte.`,
		probeBegin: 'Probar',
		probeDue: ({ draft }) => `Ha pasado una semana desde «${draft}»: comprueba qué se te ha quedado`,
		probeOver: ({ right, of, stayed }) =>
			`${right} de ${of} bien a la primera. ${stayed ? 'Se te ha quedado.' : 'Lo que fallaste saldrá más a menudo en la práctica, y puedes volver a leer sus lecciones.'}`,
		probes: 'Lo que se te había quedado al cabo de una semana',
		probeResult: ({ draft, right, of }) => `${draft}: ${right} de ${of} bien a la primera`,
		newcomer:
			'En este navegador todavía no hay nada trazado. Elige lo que hayas trazado en otra parte, o traza primero:',
		toLessons: 'las lecciones',
		startAmong: ({ points }) => `Es uno de estos: ${v.either(points)}.`,

		firstHow: 'Primero, cómo se hace',
		haveRead: 'Ya lo he leído',
		theRule: 'La regla:',
		next: 'Ejercicio siguiente',
		leave: 'Dejarlo y pasar al siguiente',
		pass: 'Saltar este',
		showHow: 'Enséñame cómo',
		check: 'Comprobar',
		numbersOf: ({ body }) => `Números de ${body}`,

		askStart: ({ point, noun }) => `¿Desde qué punto se mide ${point}, ${el(noun)}?`,
		startPoint: 'El punto de partida',
		tapStart: 'Tócalo en la hoja o elígelo aquí.',
		nameStart: 'nombra un punto que esté en la hoja',
		rightStart: ({ point, step }) => `Sí: ${step} se mide desde ${point}.`,
		wrongStart: ({ point, step }) => `${step} no se mide desde ${point}.`,
		usedToo: ({ point, step }) => `La regla de ${step} también usa ${point}, pero no se empieza a medir ahí.`,

		placeNext: ({ point, noun }) => `Coloca ${point}, ${el(noun)}.`,

		askNumber: ({ where, point, noun }) => `${where} ¿Qué distancia hay hasta ${point}, ${el(noun)}?`,
		yourNumber: 'Tu número, o una cuenta',
		soFar: 'Lo trazado hasta ahora.',
		noNumber: 'Todavía no has escrito ningún número.',
		rightNumber: 'Ese es el número.',
		wrongNumber: 'Ese no es el número todavía.',
		tooMuch: ({ by }) => `Hay ${small(by)} de más.`,
		tooLittle: ({ by }) => `Hay ${small(by)} de menos.`,

		askWrong: ({ body }) =>
			`Alguien ha trazado esto para ${body}. Un punto se puso donde no iba, y todo lo de después salió de ahí. ¿Qué punto es y qué se hizo mal en él?`,
		withSlip: 'El trazado terminado, con un fallo.',
		wrongPoint: 'El punto mal puesto',
		choose: 'elige',
		pointNamed: ({ point, noun }) => `${point}, ${el(noun)}`,
		whatWentWrong: ({ point }) => `¿Qué se hizo mal en ${point}?`,
		measured: `Medidas de esta hoja, desde la esquina (${v.unit})`,
		point: 'Punto',
		across: 'hacia fuera',
		down: 'hacia abajo',
		namePoint: 'di un punto del trazado, y qué se hizo mal en él',
		noSuspect: ({ point }) => `${point} no es un punto que pueda estar mal`,
		notThisPoint: ({ point }) => `El punto mal puesto no es ${point}.`,
		thisPoint: ({ point }) => `El punto mal puesto es ${point}. ¿Qué se hizo mal en él?`,
		offered: 'elige una de las respuestas que se ofrecen',
		foundWrong: ({ point }) => `Sí: el punto mal puesto es ${point}, y por ese motivo.`,
		notForThat: ({ point }) => `El punto mal puesto es ${point}, pero no por ese motivo.`,
		sound: ({ point }) => `${point} está donde lo pone su regla a partir de los puntos anteriores.`,
		movedBefore: 'Los puntos de los que parte no están todos donde deben.',

		askSeams: ({ point }) =>
			`Estos dos bordes se cosen el uno al otro. ¿Cuál es más largo, y por cuánto? Después mueve ${point} por su línea hasta que midan lo mismo.`,
		firstSeam: ({ lines }) => `Primero: ${named(lines)}`,
		secondSeam: ({ lines }) => `Segundo: ${named(lines)}`,
		line: (line) => `${El(lineNoun(line))}:`,
		bothSeams: 'El primer borde, con línea continua; el segundo, de puntos.',
		whichLonger: '¿Cuál es más largo?',
		theFirst: 'el primero',
		theSecond: 'el segundo',
		howMuch: '¿Por cuánto?',
		putAt: ({ point, from, length }) => `${point} está a ${v.length(length)} de ${from}; ponlo a`,
		sayLonger: 'di cuál de los dos bordes es más largo, y por cuánto',
		rightDifference: 'Esa es la diferencia.',
		wrongDifference: 'Esa no es la diferencia todavía.',
		longerIs: ({ lines }) => `El borde más largo: ${named(lines)}.`,
		differenceTooGreat: ({ by }) => `Tu diferencia tiene ${small(by)} de más.`,
		differenceTooSmall: ({ by }) => `Tu diferencia tiene ${small(by)} de menos.`,
		nowMove: ({ point }) => `Esa es la diferencia. Ahora mueve ${point}.`,
		pointLies: ({ point, across, down, tolerance }) =>
			`${point} está ${wayOff(v, { across, down, limit: tolerance })}.`,
		seamsAgree: 'Los dos bordes ya miden lo mismo.',
		seamsDisagree: 'Los dos bordes no miden lo mismo todavía.',
		measureEdges: 'Mide cada borde a lo largo de su línea, tramo a tramo, y suma los tramos.',
		seamRule: ({ first, second }) =>
			`Dos bordes que se cosen el uno al otro tienen que medir lo mismo: ${named(first)}, tanto como ${named(second)}.`,
		seamMeasures: ({ lines, parts, whole }) => `${capital(named(lines))}: ${sum(parts, whole)}.`,
		moveToward: (move) =>
			`Mueve ${move.point} ${v.length(move.by)} por su línea, hacia ${move.from}, para que quede a ${v.length(move.reach)} de ese punto.`,
		moveAway: (move) =>
			`Mueve ${move.point} ${v.length(move.by)} por su línea, alejándolo de ${move.from}, para que quede a ${v.length(move.reach)} de ese punto.`,

		nothingAnswered: 'Todavía no has respondido.',
		cannotBeAsked: ({ step, method, kind, near }) =>
			`«${step}» de ${method} no se puede preguntar como ${kind}${near === undefined ? '' : ` (¿querías decir «${near}»?)`}`,

		standings: 'Cómo llevas las reglas',
		standingsAbout:
			'Una guía de lo que conviene practicar, nunca una nota. Una regla es segura cuando te ha salido con cuerpos distintos y en días distintos.',
		allNew: ({ count }) => `Las ${count} reglas son todavía nuevas para ti.`,
		twoSeams: ({ seam }) => `Dos costuras: ${seam}`,
		known: 'Probabilidad de que la sepas',
		share: ({ share }) => `${Math.round(share * 100)} %`,
		standing: ({ standing }) => STANDINGS[standing]
	};
};
