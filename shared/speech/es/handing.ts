import type { handing as english } from '../en/handing.ts';
import { LOCALES } from '../language.ts';

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
		attempts: 'Intentos por paso (vacío: los que se quiera)',
		wrongCost: 'Lo que quita un intento fallido, en centésimas de un paso',
		hintCost: 'Lo que quita cada ayuda, en centésimas de un paso',
		opens: 'Se abre (vacío: enseguida)',
		closes: 'Se cierra (vacío: queda abierto)',
		more: 'Puntuación y plazos',
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
		markSoFar: ({ mark, outOf }) => `Puntos hasta ahora: ${v.number(mark)} de ${v.number(outOf)}`,
		toWork: 'Todos tus trabajos',
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

		learner: 'Alumno',
		markHeading: 'Puntos',
		receipts: 'Entregado',
		late: ({ count }) => `${count} fuera de plazo`,
		nothing: 'nada todavía'
	};
};
