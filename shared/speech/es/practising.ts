import { momentIn } from '../day.ts';
import type { Mm } from '../../units.ts';
import type { practising as english } from '../en/practising.ts';
import { el, ofThem } from './grammar.ts';
import { farDown, farOut } from './slight.ts';

type Many = Parameters<ReturnType<typeof english>['missed']['start']>[0];

/** Lo que se dice de los ejercicios que se ponen a una clase, y de los varios intentos de un trabajo. */
export const practising: typeof english = (v) => {
	const at = ({ step, seam }: Many): string =>
		step
			? `En ${step.point === undefined ? '' : `${step.point}, `}${el(step.label)},`
			: `En la costura «${seam}»,`;
	const some = (many: Many, one: string, other: string): string =>
		`${at(many)} ${many.count} de ${many.of} ${v.plural(many.count, { one, other })}`;
	const where = (across: Mm, down: Mm): string =>
		`${farOut(v, across)}, ${farDown(v, down)}, desde la esquina`;
	return {
		what: 'Qué se pone',
		whats: { lessons: 'pasos de lecciones, trazados en la mesa', practice: 'ejercicios de práctica' },
		exercises: 'Ejercicios de práctica',
		exercisesAbout:
			'Cada alumno tiene sus propios ejercicios, cada uno con otro cuerpo inventado, y así nadie puede copiar respuestas.',
		drafts: 'De qué trazados',
		kinds: 'Tipos de ejercicio',
		kindNames: {
			'find-start': 'decir desde qué punto se mide un paso',
			'next-point': 'colocar el punto siguiente',
			'find-wrong': 'encontrar el punto mal puesto de un trazado terminado, y qué se hizo mal en él',
			'work-number': 'calcular un número',
			'true-seams': 'casar dos costuras, donde un patrón se cose a otro'
		},
		count: 'Cuántos ejercicios (de 1 a 40)',
		tries: 'Intentos por paso o por ejercicio (vacío: los que se quiera)',
		wholeAttempts: 'Cuántas veces se puede hacer desde el principio',
		times: ({ times }) =>
			times === null ? 'las que se quiera' : times === 1 ? 'una' : `hasta ${times} veces`,
		wholeAttemptsAbout:
			'De varias veces cuenta la mejor; se guardan todas, y los números sorteados son otros cada vez.',

		exercise: ({ number }) => `Ejercicio ${number}`,
		yourExercises: 'Tus ejercicios',
		stands: {
			right: 'correcto',
			wrong: 'aún no está bien',
			kept: 'respondido',
			begun: 'empezado',
			new: 'aún sin responder',
			missed: 'no está bien'
		},
		answerKept: 'Guardado. Puedes cambiarlo hasta que lo entregues.',
		allAnswered: 'Has respondido todos los ejercicios.',
		allRight: 'Todos los ejercicios están bien.',

		attempt: ({ number }) => `${number}.ª vez`,
		attemptOf: ({ number, of }) => (of === null ? `${number}.ª vez` : `${number}.ª vez de ${of}`),
		attempts: 'Veces',
		counts: 'cuenta',
		bestOf: ({ count }) => `la mejor de ${count} veces`,
		earlier: 'Esta vez ya está entregada. Puedes mirarla; se queda como está.',
		beginAnew: 'Empezar de nuevo',
		beginLater: 'Puedes empezar de nuevo en cuanto se guarde lo que has hecho; cuenta la mejor vez.',
		reallyBegin: 'Sí, empezar de nuevo: lo que he hecho se guarda, y cuenta la mejor vez',
		markOf: ({ mark, outOf }) => `${v.number(mark)} de ${v.number(outOf)}`,

		noSheets:
			'Son ejercicios: cada uno se responde junto a su figura, en la pantalla, así que no hay nada que trazar en papel.',
		doneBy: ({ done, begun, learners }) =>
			`${ofThem(v, { count: done, of: learners }, { one: 'tiene', other: 'tienen' })} bien todos los ejercicios, ${begun} ${v.plural(begun, { one: 'ha', other: 'han' })} empezado`,
		answersOf: ({ name }) => `Las respuestas de ${name}`,
		asked: 'Se pregunta',
		answers: 'Respuestas',
		noAnswer: 'No se ha respondido nada.',
		openedHelp: ({ at: time }) => `Abrió la ayuda. ${momentIn(v.language, time)}`,
		said: ({ answer, at: time }) => `${answer} (${momentIn(v.language, time)})`,
		saidPoint: ({ point }) => `Nombró ${point}.`,
		saidPlace: ({ across, down }) => `Lo puso a ${where(across, down)}.`,
		saidWrong: ({ point, did }) =>
			did === undefined
				? `Señaló ${point} como el mal puesto.`
				: `Señaló ${point} como el mal puesto: ${did}`,
		saidNumber: ({ typed, unit }) => `Escribió ${typed} ${unit}.`,
		saidSeams: ({ first, by, unit, moved }) =>
			`Dijo que ${first ? 'el primero' : 'el segundo'} es más largo por ${by} ${unit}${moved ? ', y movió el punto' : ''}.`,
		rightIs: 'La regla:',
		learnersMarks: 'lo que colocó el alumno',
		chooseExercise:
			'Elige un ejercicio en la tabla para ver sus respuestas, darle otra nota o escribir junto a él.',

		missed: {
			start: (many) =>
				`${some(many, 'ha nombrado', 'han nombrado')} otro punto que aquel desde el que se mide.`,
			place: (many) =>
				`${some(many, 'ha puesto', 'han puesto')} el punto en otro sitio, de un modo que ninguna regla explica.`,
			number: (many) =>
				`${some(many, 'ha calculado', 'han calculado')} otro número, de un modo que ninguna regla explica.`,
			point: (many) =>
				`${some(many, 'no ha visto', 'no han visto')} que el punto era el mal puesto del trazado.`,
			rule: (many) =>
				`${some(many, 'ha visto', 'han visto')} el punto mal puesto, pero le ${v.plural(many.count, { one: 'ha dado', other: 'han dado' })} otra razón.`,
			longer: (many) => `${some(many, 'ha tomado', 'han tomado')} el borde más corto por el más largo.`,
			difference: (many) =>
				`${some(many, 'ha calculado', 'han calculado')} otra diferencia entre los dos bordes.`
		},
		board: {
			start: 'Antes de calcular un número: ¿desde qué punto empieza la cinta?',
			place: 'Vamos a colocar juntos este punto una vez más.',
			number: 'Vamos a calcular juntos este número una vez más.',
			point: 'Mide cada punto desde los anteriores: ¿cuál no sigue su regla?',
			rule: '¿Qué habría llevado a este sitio? Prueba cada razón con la cinta.',
			longer: 'Mide cada borde a lo largo de su línea, tramo a tramo, y suma los tramos.',
			difference: 'Mide cada borde a lo largo de su línea, tramo a tramo, y suma los tramos.'
		}
	};
};
