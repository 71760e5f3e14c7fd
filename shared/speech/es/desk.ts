import type { desk as english, NamedStep, Place, Slant, Turned } from '../en/desk.ts';
import type { Compass } from '../../method.ts';
import type { Mm, Radians, Unit } from '../../units.ts';
import { capital, del, el, El } from './grammar.ts';
import { farDown, farOut, smallIn } from './slight.ts';
import { markNoun } from './verdicts.ts';

/** What a slanting way is told from, which a narrow sheet has room for. */
const PLUMB: Readonly<Record<Slant['straight'], string>> = {
	down: 'la vertical',
	up: 'la vertical',
	across: 'la horizontal',
	in: 'la horizontal'
};
const WAYS: Readonly<Record<Slant['straight'], string>> = {
	down: 'hacia abajo',
	up: 'hacia arriba',
	across: 'hacia fuera',
	in: 'hacia dentro'
};

/** The same as they are typed. */
const SHORT: Readonly<Record<Compass, string>> = {
	down: 'abajo',
	up: 'arriba',
	across: 'fuera',
	in: 'dentro'
};

/** The sheet, its tool, the dock and typed entry. */
export const desk: typeof english = (v) => {
	const unitName = (unit: Unit): string => (unit === 'in' ? 'pulgadas' : unit);
	const small = (length: Mm): string => smallIn(v, length);
	const onSheet = ({ x, y }: Place): string => `${farOut(v, x)}, ${farDown(v, y)}`;
	const turned = ({ angle, open }: Turned): string => {
		const size = v.fixed(Math.abs((angle * 180) / Math.PI), 1);
		const turn = angle === 0 ? 'sin girar' : `giro ${angle > 0 ? 'horario' : 'antihorario'}: ${size}°`;
		return open ? `abertura en ${open.at}: ${v.length(open.width)} · ${turn}` : turn;
	};
	const inSpeech = ({ point, label }: NamedStep): string =>
		point === undefined ? el(label) : `${point}, ${el(label)}`;
	return {
		unitName,
		inSpeech,
		titled: ({ point, label }) => (point === undefined ? '' : `${point}: `) + El(label),

		row: ({ point, label }) => (point === undefined ? El(label) : `${point}, ${el(label)}`),

		yourSheet: 'Tu hoja',
		startsFrom: ({ steps }) => `Este paso parte ${v.list(steps.map(del))}, que aún no has trazado.`,
		draftEarlier: 'Traza por mí los pasos anteriores',
		notNeeded: ({ name }) => `Este paso no hace falta para ${name}.`,
		nextLesson: ({ title }) => `Siguiente lección: ${title}`,
		nextStep: ({ label }) => `Siguiente: ${el(label)}`,
		check: 'Comprobar',
		change: 'Cambiarlo',

		allRight: 'todos los pasos de esta lección son correctos',
		nothingHere: 'aquí no hay nada que trazar para este cuerpo',
		yourTurn: ({ left }) => `te toca · ${v.plural(left, { one: `queda ${left}`, other: `quedan ${left}` })}`,
		sheet: 'Hoja',
		undo: 'Deshacer',
		undoKeys: 'Deshacer (Ctrl Z)',
		redo: 'Rehacer',
		redoKeys: 'Rehacer (Ctrl Mayús Z)',
		zoomOut: 'Alejar',
		zoomOutKeys: 'Alejar (−)',
		zoomIn: 'Acercar',
		zoomInKeys: 'Acercar (+)',
		step: 'De cerca',
		showStep: 'Ver este paso de cerca',
		all: 'Entero',
		showAll: 'Ver el trazado entero',
		showAllKeys: 'Ver el trazado entero (0)',
		options: 'Puntos y opciones de la hoja',
		points: 'Puntos y distancias',
		goesOn: 'Lo que es correcto pasa solo al paso siguiente',
		grid: 'Cuadrícula',
		gridAbout: 'Cuadrícula a la que se ajustan las marcas',

		sheetFor: ({ label, target, turns }) =>
			`Hoja para ${el(label)}. Las flechas ${turns ? 'giran la parte' : `mueven ${target}`}; Intro comprueba.`,
		sheetLocked: ({ label }) => `Hoja para ${el(label)}. Los pasos anteriores aún no están trazados.`,
		draftingSheet: 'hoja de trazado',
		needsScript: 'La hoja necesita JavaScript. El texto y las figuras se pueden leer sin él.',
		now: (step) => `Ahora, ${inSpeech(step)}.`,
		endOfLevel: 'el extremo del nivel',
		firstEnd: 'el primer extremo',
		lastEnd: 'el último extremo',
		handleOut: ({ point }) => `el tirador que sale de ${point}`,
		handleInto: ({ point }) => `el tirador que llega a ${point}`,
		out: ({ point }) => `de ${point}`,
		into: ({ point }) => `a ${point}`,
		handles: 'Tirador que se mueve',

		at: ({ point }) => `en ${point}`,
		from: ({ far, point, way: { straight, off } }) => {
			const angle = v.degrees(off);
			const way =
				angle === v.degrees(0 as Radians) ? `recto ${WAYS[straight]}` : `a ${angle} de ${PLUMB[straight]}`;
			return `a ${v.length(far)} de ${point}, ${way}`;
		},
		onSheet,
		turned,
		curveLong: ({ length, wanted }) => `la curva mide ${v.length(length)}; debe medir ${v.length(wanted)}`,
		moved: ({ by }) => `se ha movido ${v.length(by)}`,
		live: ({ told }) => capital(told),
		placed: ({ target, where }) => `${target}: ${where}`,
		moving: ({ target, told, place }) => `${target}: ${told}; ${onSheet(place)}`,

		sayIt: ({ put }) => (put === 'ends' ? 'Los dos extremos de la línea' : 'Dónde va, como lo dirías'),
		suchAs: ({ put }) =>
			({
				place: 'desde B abajo 12/2+1',
				way: 'fuera 12, abajo 7',
				level: '12/2+1',
				ends: 'B a D',
				handles: 'dentro 3 luego arriba 2'
			})[put],
		fromWords: 'desde|de',
		toWords: 'hasta|a',
		thenWords: 'y luego|luego|y después|después',
		wayWords: {
			down: 'hacia abajo|abajo',
			up: 'hacia arriba|arriba',
			across: 'hacia fuera|hacia afuera|afuera|fuera',
			in: 'hacia dentro|hacia adentro|adentro|dentro'
		},
		saidDistance: ({ from, go, sum }) => `desde ${from} ${SHORT[go]} ${sum}`,
		saidPlace: ({ across, down }) =>
			[across && `fuera ${across}`, down && `abajo ${down}`].filter(Boolean).join('; '),
		comesTo: ({ value }) => `= ${v.length(value)}`,
		unusable: ({ rule }) => `${capital(rule)}${rule.endsWith('?') ? '' : '.'} No cuenta como intento.`,
		tooFarOff: 'eso queda más lejos de lo que llega la hoja',
		noSuchPoint: ({ name }) => `todavía no hay ningún punto ${name} en la hoja`,
		sayStart: 'di desde qué punto; por ejemplo, «desde B»',
		sayWay: 'di hacia dónde va: abajo, arriba, fuera o dentro',
		sayEnds: 'nombra los dos puntos entre los que va; por ejemplo, «B a D»',

		nudge: 'Mover poco a poco',
		nudgeIn: 'Mover hacia dentro',
		nudgeUp: 'Mover hacia arriba',
		nudgeDown: 'Mover hacia abajo',
		nudgeOut: 'Mover hacia fuera',
		turnBack: 'Girar en sentido antihorario',
		turnOn: 'Girar en sentido horario',

		handleTold: ({ share, to, length, off }) =>
			[
				`${v.fixed(share, 2)} ${to === 'corner' ? 'a la esquina' : 'del camino recto'}`,
				v.length(length),
				...(off === undefined ? [] : [`${v.degrees(off)} de desvío`])
			].join(' · '),

		told: 'Lo que se dice de este paso',
		help: 'Ayuda',
		askWhere: '¿Dónde miro?',
		askRule: '¿Cuál es la regla?',
		askNumber: 'Muéstrame el número',

		draftedForYou: 'Lo ha trazado el programa.',
		fromOwn: ({ marks }) =>
			`Es correcto a partir de lo que trazaste en ${v.list(marks.map((mark) => el(markNoun(mark))))}: un desliz cuenta como un solo error.`,
		about: ({ far, from }) =>
			from === undefined
				? `Mide más o menos ${v.length(far)}.`
				: `Queda más o menos a ${v.length(far)} de ${from}.`,
		movedAlong: ({ steps }) =>
			v.plural(steps.length, {
				one: `Se ha movido a la vez ${v.list(steps.map(el))}, y sigue siendo correcto.`,
				other: `Se han movido a la vez ${v.list(steps.map(el))}, y siguen siendo correctos.`
			}),
		goOn: 'Seguir así, tal como está',
		allowedPoint: ({ within }) => `Vale como correcto todo lo que quede a menos de ${small(within)}.`,
		allowedCurve: ({ within, length }) =>
			`La curva puede desviarse ${small(within)} y ser ${small(length)} más larga o más corta.`,
		allowedEnds: ({ within }) => `Sus extremos pueden quedar a ${small(within)} de su sitio.`,

		missing: 'Faltan algunas medidas',
		needs: ({ measurements, name }) =>
			`Este trazado necesita medidas que en ${name} todavía no están: ${v.list(measurements.map(el))}.`,
		enter: ({ count }) => [
			v.plural(count, { one: 'Escríbela', other: 'Escríbelas' }),
			' o traza para uno de los cuerpos inventados.'
		],
		cannotYet: ({ name }) => `Todavía no se puede trazar para ${name}`,
		refused: ({ because }) => `${capital(because)}.`,
		lookAtMeasurements: 'Revisar las medidas',
		notMeasured: 'sin medir'
	};
};
