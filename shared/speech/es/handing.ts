import type { handing as english } from '../en/handing.ts';
import { LOCALES } from '../language.ts';
import { ofThem } from './grammar.ts';

/** Lo que se dice de los trabajos: cómo se ponen, se entregan y se puntúan. */
export const handing: typeof english = (v) => {
	const time = (at: number): string =>
		new Intl.DateTimeFormat(LOCALES[v.language], { dateStyle: 'medium', timeStyle: 'short' }).format(at);
	const steps = (count: number): string => v.plural(count, { one: '1 paso', other: `${count} pasos` });
	return {
		assignments: 'Trabajos de la clase',
		none: 'Aún no hay ningún trabajo.',
		set: 'Poner un trabajo',
		setIt: 'Ponerlo a la clase',
		called: 'Cómo se llama',
		lessons: 'Lecciones',
		lessonsAbout: 'Se trazan los pasos de estas lecciones en la mesa de siempre, y cada marca se entrega.',
		chosen: ({ count }) => v.plural(count, { one: '1 elegida', other: `${count} elegidas` }),
		onlySteps: 'Solo algunos pasos de la única lección elegida',
		from: 'Del paso',
		to: 'al paso',
		forWhom: 'Se traza para',
		oneBody: 'un cuerpo inventado, el mismo para todos',
		eachBody: 'un cuerpo inventado distinto para cada alumno, y así nadie puede copiar números',
		ownBody: 'el cuerpo de cada alumno; sus medidas se entregan solo si está de acuerdo',
		followThrough: 'Lo que es correcto solo a partir de un error anterior',
		share: { full: 'cuenta entero', half: 'cuenta la mitad', none: 'no cuenta' },
		garment: 'Una prenda entera',
		garmentNone: 'no, lo de arriba',
		level: 'Cuánto debe acercarse una marca',
		levels: {
			strict: ({ within }) => `con rigor: a menos de ${v.small(within)}`,
			normal: ({ within }) => `como siempre: a menos de ${v.small(within)}`,
			beginner: ({ within }) => `para principiantes: a menos de ${v.small(within)}`
		},
		mode: 'Cómo se hace',
		modes: {
			practice: 'como práctica: cada marca se comprueba enseguida',
			exam: 'como examen: lo correcto se dice cuando el alumno lo entrega, o cuando se cierra'
		},
		hints: 'Se puede pedir ayuda (nunca en un examen)',
		change: 'Cambiarlo',
		changeIt: 'Cambiarlo para la clase',
		frozen: 'Alguien ha entregado ya algo: lo que se pidió queda como estaba.',
		extra: 'Más tiempo para un alumno',
		extraAbout: ({ minutes }) => (minutes === 0 ? '' : `${v.number(minutes)} minutos más`),
		extraMinutes: 'Minutos después del cierre',
		giveTime: 'Dar el tiempo',
		wrongCost: 'Lo que quita un intento fallido, en centésimas de un paso',
		hintCost: 'Lo que quita cada ayuda, en centésimas de un paso',
		opens: 'Se abre (vacío: enseguida)',
		closes: 'Se cierra (vacío: queda abierto)',
		more: 'Notas y plazos',
		opensAt: ({ at }) => `se abre el ${time(at)}`,
		closesAt: ({ at }) => `hasta el ${time(at)}`,
		closedAt: ({ at }) => `cerrado el ${time(at)}`,
		stays: 'queda abierto',
		preview: 'Verlo como lo ve la clase',
		previewed: 'Así lo ve la clase. No se entrega nada.',
		take: 'Quitarlo',
		reallyTake: 'Sí, quitarlo con todo lo entregado',

		yourWork: 'Tus trabajos',
		nothingSet: 'Aún no te han puesto ningún trabajo.',
		start: 'Empezar',
		goOn: 'Continuar',
		mark: ({ mark, outOf }) => `${v.number(mark)} de ${v.number(outOf)}`,
		markSoFar: ({ mark, outOf }) => `Nota hasta ahora: ${v.number(mark)} de ${v.number(outOf)}`,
		toWork: 'Todos tus trabajos',
		orOnPaper: '¿Has trazado en papel? Mídelo y entrega tus puntos:',
		chooseLesson: 'Elige en qué lección vas a trazar.',
		steps: ({ count }) => steps(count),
		draftedFor: ({ name }) => `Trazas para ${name}, un cuerpo inventado.`,
		draftedForOwn: 'Trazas para tus propias medidas.',
		consent: 'Esto se traza para tu propio cuerpo',
		consentAbout:
			'Para puntuarlo, el servidor de la clase necesita las medidas con las que trazas. Van al servidor de quien te da clase y ' +
			'a ningún otro sitio; quien te da clase ve tu trazado. Las encuentras entre todo lo que se guarda de ti, y se borran cuando lo borras.',
		consentGive: 'Entregar estas medidas y empezar',
		whichBody: 'Tus medidas',
		noOwnBody: 'En este dispositivo aún no hay medidas tuyas. Tómalas primero, en la página de medidas.',
		toMeasurements: 'Medidas',

		exam: 'Esto es un examen. Cada marca se guarda como la pones; lo correcto se dice cuando lo entregas, o cuando se cierra.',
		examOver: 'Está entregado. Cada paso muestra lo correcto.',
		examStep: 'Traza este paso según su regla, con los números de arriba.',
		endExam: 'Entregar el examen',
		reallyEnd: 'Sí, entregarlo: después ya no cuenta nada',
		endLater: 'Puedes entregarlo en cuanto todo esté guardado.',
		handedInAt: ({ at }) => `entregado el ${time(at)}`,
		noHelp: 'Aquí no se da ayuda.',
		keep: 'Guardarla',
		kept: 'Guardada.',
		allKept: 'todos los pasos de esta lección están guardados',

		saved: 'Guardado',
		waiting: ({ count }) => `En espera (${count})`,
		receipt: ({ number, at }) => `recibo ${number}, ${time(at)}`,
		noReceipt: 'aún no has entregado nada',
		away: 'El servidor no responde. Sigue trazando: se envía solo en cuanto se pueda.',
		signInAgain: 'Tu sesión ha terminado. Entra en otra página de este sitio; entonces se envía.',
		notKept: 'Este navegador no guarda nada: deja la página abierta hasta que todo esté guardado.',
		putAside: ({ count }) =>
			v.plural(count, {
				one: 'El servidor no pudo aceptar 1 marca. Se conserva aquí; dilo a quien te da clase.',
				other: `El servidor no pudo aceptar ${count} marcas. Se conservan aquí; dilo a quien te da clase.`
			}),
		ended: 'Está cerrado: lo que hagas ahora se guarda y no cuenta.',

		plan: 'Plan de las clases',
		planOf: ({ name }) => `Plan de las clases: ${name}`,
		did: 'Lo que ha hecho la clase',
		didNothing: 'La clase aún no tiene ningún trabajo: abajo está el comienzo del curso.',
		lesson: 'Lección',
		doneBy: ({ done, begun, learners }) =>
			`${ofThem(v, { count: done, of: learners }, { one: 'tiene', other: 'tienen' })} correctos todos los pasos, ${begun} ${v.plural(begun, { one: 'ha', other: 'han' })} empezado`,
		comesNext: 'Lo que sigue',
		allDone: 'La clase ya ha tenido todas las lecciones del curso.',
		minutes: ({ minutes }) => v.plural(minutes, { one: '1 minuto', other: `${minutes} minutos` }),
		bring: 'Qué hay que traer',
		bringPaper:
			'papel de puntos o cuadriculado tan grande como el trazado, o una hoja de trabajo de la clase',
		bringTools: 'un lápiz, una goma, una regla larga, una escuadra y la cinta métrica',
		bringNumbers: ({ names }) => `estas medidas, ya tomadas: ${v.list(names)}`,
		bringText: 'nada más que esta página: la lección se lee y se mira',
		toPrint: 'Para imprimir',
		sheetsFor: ({ name }) => `Hojas: ${name}`,
		sheetsOf: ({ name }) => `Hojas de la clase: ${name}`,
		sheetsAbout: 'Un archivo con las hojas de cada alumno, con los números del cuerpo para el que traza.',
		sheetKinds: {
			worksheet: 'hojas de trabajo: los pasos, y la cuadrícula para trazar',
			rules: 'hojas de reglas: cada regla con sus cuentas',
			cards: 'fichas de los pasos, para recortar'
		},
		whichSheets: 'Qué hojas',
		saveSheets: 'Guardar las hojas en un PDF',
		withoutBody: ({ names }) =>
			`Nadie puede saber las medidas de ${v.list(names)} antes de que acepten entregarlas: se quedan fuera.`,
		forLearner: ({ learner, body }) => `${learner} (${body})`,

		learner: 'Alumno',
		markHeading: 'Nota',
		receipts: 'Entregado',
		late: ({ count }) => `${count} fuera de plazo`,
		nothing: 'nada todavía'
	};
};
