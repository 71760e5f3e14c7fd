import type { platform as english } from '../en/platform.ts';

/** Lo que se dice de las plataformas de aprendizaje, y a quien viene de una. */
export const platform: typeof english = (v) => ({
	opensApart: 'Esto se abre en una pestaña propia.',
	openApart: 'Abrir Square Across',
	platforms: 'Plataformas de aprendizaje',
	platformsAbout:
		'Quien sigue un enlace de una plataforma de aprendizaje (LTI 1.3) entra en la clase de su curso, sin una frase secreta propia; ' +
		'quienes enseñan allí enseñan también aquí. Pon allí:',
	loginAt: 'Dirección de inicio de sesión',
	launchAt: 'Dirección de redirección y de destino',
	keysAt: 'Dirección de las claves de este sitio',
	chooseAt: 'Dirección de enlace profundo (deep linking)',
	platformGives: 'Y aquí, lo que la plataforma dice de sí:',
	issuer: 'Emisor (ID de la plataforma)',
	client: 'ID de cliente',
	deployment: 'ID de despliegue',
	authorize: 'Dirección de autenticación',
	keys: 'Dirección de las claves públicas',
	token: 'Dirección de tokens de acceso, para las notas (puede quedar vacía)',
	addPlatform: 'Añadir la plataforma',
	removePlatform: 'Quitar',

	chooseLinks: '¿A qué lleva el enlace?',
	chooseAssignments: 'Puesto a esta clase',
	noneToChoose: 'Aún no hay nada puesto. Abre la clase, pon algo allí y elígelo después aquí.',
	chooseLessons: 'Lecciones para leer y probar, sin nota',
	allLessons: 'Todas las lecciones',
	putThere: 'Ponerlo en el curso',
	goBack: 'Volver a la plataforma',

	comment: ({ mark, outOf, mistakes }) =>
		`${v.number(mark)} de ${v.number(outOf)}, ${v.plural(mistakes, { one: '1 error', other: `${v.number(mistakes)} errores` })}`,
	sendings: 'Notas para la plataforma',
	arrived: ({ count }) =>
		v.plural(count, { one: 'Ha llegado 1 nota.', other: `Han llegado ${v.number(count)} notas.` }),
	allArrived: 'No espera ninguna.',
	waits: 'en espera',
	notTaken: 'no aceptada',
	sendAgain: 'Enviar otra vez',
	outcome: {
		answered: ({ status }) => `La plataforma no la ha aceptado (respuesta ${status ?? '?'}).`,
		noAnswer: () => 'La plataforma no ha respondido.',
		noToken: () =>
			'La plataforma no da permiso para enviar notas: mira las direcciones de tokens y de claves.',
		notAllowed: () => 'La plataforma no permite enviar notas: quien la cuida puede activarlo.',
		noColumn: () => 'La plataforma no tiene columna para esta tarea.'
	}
});
