import { mm } from '../../units.ts';
import type { lesson as english } from '../en/lesson.ts';

const SEEN = {
	front: 'El maniquí se ve por delante',
	back: 'El maniquí se ve por detrás',
	arm: 'El brazo derecho se ve por su lado de fuera',
	legs: 'El cuerpo se ve por delante, de la cintura abajo'
} as const;

/** What lessons embed beside the steps: figures, tapes, comparisons. */
export const lesson: typeof english = (v) => {
	return {
		about: ({ part, minutes }) => `${part} · unos ${minutes} minutos`,
		lessons: 'Lecciones',
		toSheet: '↑ La hoja',
		notYetHere: 'Esta lección todavía no está escrita en español. Aquí tienes su texto en inglés.',

		absent: 'no hace falta para este cuerpo',
		locked: 'más adelante',
		open: 'por hacer',
		placed: 'sin comprobar',
		right: 'correcto',
		wrong: 'no es correcto todavía',
		kept: 'se queda como está',
		lookAt: 'Ver este paso',
		draftThis: 'Trazar este paso',
		actOn: ({ act, step }) => `${act}: ${step}`,

		girthsFor: ({ label, name }) => `${label}: ${name}`,
		against: ({ value, first }) => `${value < first ? '−' : '+'}${v.length(mm(Math.abs(value - first)))}`,
		againstFirst:
			'Una barra oscura es el cuerpo; una clara, la tela. La última columna dice cuánto más o menos mide cada una que la primera.',
		piecesNotLoaded: 'No se han podido cargar las piezas.',
		tryAgain: 'Intentarlo de nuevo',
		piecesOurFault: 'No se han podido calcular las piezas. El fallo es nuestro, no tuyo.',
		piecesWaiting: 'Calculando las piezas…',
		pieceFile: ({ piece, name }) => `${piece} de ${name}`,
		oneScale: 'Todas a la misma escala; la línea discontinua va sobre el doblez.',
		layingFile: ({ name }) => `Piezas sobre la tela, para ${name}`,

		drawnFor: ({ name }) => `Dibujado para ${name}.`,
		savePicture: 'Guardar como imagen',
		pictureFailed: ({ failure }) =>
			({
				notLoaded: 'No se ha podido cargar lo que hace las imágenes; prueba cuando tengas conexión',
				tooLarge: 'Este navegador no ha podido hacer la imagen',
				ourFault: 'No se ha podido hacer la imagen; el fallo es nuestro'
			})[failure],

		tape: ({ title, what, seen }) => `${title}: por dónde pasa la cinta métrica: ${what}. ${SEEN[seen]}.`,
		tapeGoes: ({ what }) => `: ${what}.`,
		seenFrom: ({ seen }) => `${SEEN[seen]}; su forma es inventada.`,
		sideNeck: 'lado del cuello',
		nape: 'nuca',
		armpit: 'nivel de la axila',
		bustPoint: 'punto de busto',
		shoulderPoint: 'punto de hombro',
		waist: 'cintura',
		hip: 'cadera',
		elbow: 'codo',
		wrist: 'muñeca',
		floor: 'suelo',

		yourOwn: ({ title }) => `Tu ${title.toLowerCase()}`,
		inNamed: ({ title, name }) => `${title}, en «${name}»`,
		ofNamed: ({ title, name }) => `${title} de ${name}`,
		fold: 'doblez',
		whose: 'De quién son las medidas',
		keepIt: 'Guardar',
		writeFirst: 'Escribe primero el número.',
		forgotten: ({ title, name }) => `Borrado: ${title.toLowerCase()}, en «${name}».`,
		keptIn: ({ length, name }) => `Guardado: ${v.length(length)}, en «${name}», solo en este dispositivo.`,
		notKept: ({ length }) =>
			`${v.length(length)} vale hasta que cierres esta página: el navegador no lo guarda.`,
		example: ({ name, length }) => `En el cuerpo inventado ${name} mide ${v.length(length)}.`,
		youDraftFor: ({ name, invented }) =>
			`Estás trazando para ${name}${invented ? ', un cuerpo inventado' : ''}.`,
		draftForMine: 'Trazar con mis medidas',
		draftFor: ({ name }) => `Trazar para ${name}`,

		compared: 'Tu trazado, en azul, sobre el calculado, en tinta.',
		computed: 'calculado',
		yours: 'el tuyo',
		forBody: ({ name }) => `para ${name}`,
		comparedFile: ({ method, name }) => `${method}, comparado, para ${name}`
	};
};
