import type { desk as english, NamedStep, Place, Slant, Turned } from '../en/desk.ts';
import type { Mm, Radians, Unit } from '../../units.ts';
import { capital, del, el, El } from './grammar.ts';
import { smallIn } from './slight.ts';

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

/** The sheet, its tool, the dock and typed entry. */
export const desk: typeof english = (v) => {
	const unitName = (unit: Unit): string => (unit === 'in' ? 'pulgadas' : unit);
	const small = (length: Mm): string => smallIn(v, length);
	const onSheet = ({ x, y }: Place): string => `${v.length(x)} hacia fuera, ${v.length(y)} hacia abajo`;
	const turned = ({ angle, open }: Turned): string => {
		const size = v.fixed(Math.abs((angle * 180) / Math.PI), 1);
		const turn =
			angle === 0 ? 'sin girar' : `giro de ${size}° en sentido ${angle > 0 ? 'horario' : 'antihorario'}`;
		return open ? `abertura de ${v.length(open.width)} en ${open.at} · ${turn}` : turn;
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
		type: 'Escribir',
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
		step: 'Paso',
		showStep: 'Ver este paso',
		showStepKeys: 'Ver este paso (0)',
		all: 'Todo',
		showAll: 'Ver todo el trazado',
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
		out: ({ point }) => `sale de ${point}`,
		into: ({ point }) => `llega a ${point}`,
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

		startPoint: 'Desde',
		endPoint: 'hasta',
		choose: 'elige',
		orTap: 'o toca los dos puntos en la hoja',
		distanceOrSum: ({ unit }) => `Distancia o cuenta en ${unitName(unit)}`,
		suchAs: 'p. ej. 12/2+1',
		direction: 'Dirección',
		down: 'hacia abajo',
		across: 'hacia fuera',
		up: 'hacia arriba',
		in: 'hacia dentro',
		acrossFrom: ({ point }) => (point === undefined ? 'Hacia fuera' : `Hacia fuera desde ${point}`),
		downFrom: ({ point }) => (point === undefined ? 'Hacia abajo' : `Hacia abajo desde ${point}`),
		place: 'Colocar',
		anotherWay: 'Otra manera de escribir el lugar',
		byAcrossDown: 'hacia fuera, hacia abajo',
		byDistance: 'distancia',
		comesTo: ({ value }) => `= ${v.length(value)}`,
		unusable: ({ rule }) => `${capital(rule)}${rule.endsWith('?') ? '' : '.'} No cuenta como intento.`,
		tooFarOff: 'eso queda más lejos de lo que llega la hoja',
		chooseStart: 'elige el punto del que parte',
		writeBoth: 'escribe cuánto hacia fuera y cuánto hacia abajo',
		writeHandle: 'Escribe cuánto hacia fuera y cuánto hacia abajo está este tirador.',

		nudge: 'Mover poco a poco',
		nudgeIn: 'Mover hacia dentro',
		nudgeUp: 'Mover hacia arriba',
		nudgeDown: 'Mover hacia abajo',
		nudgeOut: 'Mover hacia fuera',
		turnBack: 'Girar en sentido antihorario',
		turnOn: 'Girar en sentido horario',

		curveLength: ({ length }) => ['', v.length(length), ' de largo'],
		leaves: ({ point, off }) => ` · sale de ${point} a ${v.fixed((off * 180) / Math.PI, 1)}° de la escuadra`,
		reaches: ({ point, off }) => ` · llega a ${point} a ${v.fixed((off * 180) / Math.PI, 1)}° de la escuadra`,

		help: 'Ayuda',
		askWhere: '¿Dónde miro?',
		askRule: '¿Cuál es la regla?',
		askNumber: 'Muéstrame el número',

		draftedForYou: 'Lo ha trazado el programa.',
		fromOwn: ({ points }) =>
			`Es correcto a partir de lo que trazaste en ${v.list(points)}: un desliz cuenta como un solo error.`,
		theRule: 'La regla:',
		alongCurve: ({ length }) => `La curva mide ${v.length(length)}.`,
		goOn: 'Seguir así, tal como está',
		allowedPoint: ({ within }) => `Vale como correcto todo lo que quede a menos de ${small(within)}.`,
		allowedCurve: ({ within, length }) =>
			`La curva puede desviarse ${small(within)} y ser ${small(length)} más larga o más corta.`,
		allowedEnds: ({ within }) => `Sus extremos pueden quedar a ${small(within)} de su sitio.`,

		missing: 'Faltan algunas medidas',
		needs: ({ measurements, name }) =>
			`Para este trazado hacen falta estas medidas de ${name}: ${v.list(measurements.map(el))}.`,
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
