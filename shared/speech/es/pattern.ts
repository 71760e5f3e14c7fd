import type { Mm, Radians } from '../../units.ts';
import type { AllowanceGroupName, pattern as english, SeamSide, SewnSides } from '../en/pattern.ts';
import { capital } from './grammar.ts';
import { smallIn } from './slight.ts';

/** The pages of patterns. */
export const pattern: typeof english = (v) => {
	const angle = (each: Radians): string => `${v.fixed(Math.abs((each * 180) / Math.PI), 1)}°`;
	const small = (length: Mm): string => smallIn(v, length);
	const LAID = { fold: 'al doblez', pairs: 'en parejas, derecho con derecho', once: 'una vez' };
	const GROUPS: Readonly<Record<AllowanceGroupName, readonly [title: string, about: string, usual: string]>> =
		{
			design: ['Diseño', 'Lo que da a esta prenda su aspecto.', 'Volver al diseño habitual'],
			ease: [
				'Holgura',
				'El patrón base que hay debajo: espacio para moverse, y por dónde van sus líneas.',
				'Volver a la holgura habitual'
			],
			cutting: [
				'Corte',
				'Lo que se corta por fuera de la línea de costura. Cada pieza puede tener además el suyo, borde a borde.',
				'Volver al corte habitual'
			]
		};
	const sides = ({ first, second, longer, ease }: SewnSides): string => {
		const said = ({ pieces, several, length }: SeamSide): string =>
			`${v.list(pieces)}${several ? ' en total' : ''} ${v.length(length)}`;
		const both = `${said(first)}; ${said(second)}`;
		if (longer) {
			const { pieces } = longer.side === 'first' ? first : second;
			return `${both}. En ${v.list(pieces)} hay ${small(longer.by)} de más.`;
		}
		if (ease < 0) return `${both}: el segundo queda tomado en la costura del primero y termina antes que él.`;
		if (ease > 0) return `${both}. Se embebe ${v.length(ease)}.`;
		const isOne = first.pieces.length === 1 && first.pieces[0] === second.pieces[0];
		if (isOne) return `${v.list(first.pieces)}: los dos bordes miden ${v.length(first.length)}.`;
		const alike = v.length(first.length) === v.length(second.length);
		return alike && !first.several && !second.several
			? `${v.list([...first.pieces, ...second.pieces])}: los dos bordes miden ${v.length(first.length)}.`
			: `${both}: miden lo mismo.`;
	};
	return {
		title: ({ garment }) => `${garment}: el patrón`,
		all: 'Patrones',
		allAbout: ({ body }) =>
			`Una prenda entera en un solo paso: todas las piezas listas para cortar, para ${body}. Elige otro cuerpo arriba, en la página.`,
		piecesOf: ({ garment, body }) => `${garment}: las piezas para ${body}`,
		whatYouMake: 'Lo que puedes hacer',
		wornBy: ({ garment, name }) => `${garment}, tal como lo lleva ${name}, por delante y por detrás`,
		followsBody:
			'Cada dibujo sale de los números de su patrón, para el cuerpo inventado para el que trazas. Elige otro en la parte de arriba de la página.',
		someMissing: ({ body }) => `${body}: faltan medidas.`,
		notYet: ({ body }) => `Para ${body} todavía no se puede trazar.`,
		size: ({ pieces, seams }) =>
			`${v.plural(pieces, { one: '1 pieza', other: `${pieces} piezas` })}, ${v.plural(seams, { one: '1 costura', other: `${seams} costuras` })}`,

		allMatch: ({ pieces, body, seams }) =>
			`${v.plural(pieces, { one: '1 pieza', other: `${pieces} piezas` })} para ${body}; ${v.plural(seams, { one: 'la única costura coincide', other: `las ${seams} costuras coinciden` })}.`,
		someOpen: ({ pieces, body, open, seams }) =>
			`${v.plural(pieces, { one: '1 pieza', other: `${pieces} piezas` })} para ${body}; ${v.plural(open, { one: `no coincide 1 de las ${seams} costuras`, other: `no coinciden ${open} de las ${seams} costuras` })}.`,
		workedAgain: ({ summary }) => `Calculado de nuevo. ${summary}`,
		onThisPage: 'En esta página',
		toSeams: 'Costuras',
		toNumbers: 'Números',
		toCutting: 'Lista de corte',
		checkPiece: 'Comprobar por foto una pieza de papel cortada',
		checkNotCome: 'Esta parte de la página no ha llegado. Comprueba la conexión y carga la página otra vez.',
		toFabric: 'Tela',
		toSewing: 'Confección',
		toTable: 'Mesa de corte',
		toLessons: 'Sus lecciones',
		theNumbers: 'Los números',
		changeNumbers: 'Cambiar los números',
		undo: 'Deshacer el último cambio',
		piecesNow: 'Las piezas, como están ahora',
		notWorked: 'Esto no se ha podido calcular',
		faultIsOurs:
			'El fallo es nuestro, no tuyo. Vuelve a poner el último número como estaba, o recupera los habituales.',
		faultIsOursBelow:
			'El fallo es nuestro, no tuyo. Las piezas de abajo son las de los últimos números que se pudieron calcular. Vuelve a poner el último número como estaba, o recupera los habituales.',
		lookFirst: 'Mira esto antes de cortar',
		pieces: 'Las piezas',
		doSeamsMatch: '¿Coinciden las costuras?',
		numbersToNote: 'Números que conviene apuntar',
		cuttingList: 'Lista de corte',
		howMuchFabric: '¿Cuánta tela hace falta?',
		sewingOrder: 'Orden de confección',
		takeCare: 'Ten cuidado',
		table: 'Llévalo a la mesa de corte',
		tableAbout:
			'El patrón a tamaño real, hecho aquí, en tu navegador: ninguna medida sale de este dispositivo.',

		measurementsOf: ({ body }) => `Medidas: ${body}`,
		ownKept: 'Son tuyas: se guardan en este navegador según las escribes.',
		invented: ({ body }) =>
			`Las medidas de ${body} son inventadas y no se cambian. Trabaja mejor con tus propios números:`,
		enterOwn: 'Escribir las mías',
		copyBody: ({ body }) => `Copiar ${body} y cambiar la copia`,
		copyName: ({ body }) => `${body}, mi copia`,
		group: ({ group }) => GROUPS[group][0],
		groupAbout: ({ group }) =>
			`${GROUPS[group][1]} Una casilla vacía quiere decir el número habitual, en gris.`,
		groupUsual: ({ group }) => GROUPS[group][2],
		changed: ({ count }) => v.plural(count, { one: '1 cambiado', other: `${count} cambiados` }),
		numbers: ({ count }) => v.plural(count, { one: '1 número', other: `${count} números` }),
		toSlide: ({ noun }) => `${capital(noun.name)}, con el deslizador`,
		times: ({ value }) => `${v.fixed(value, 2)} veces`,

		linesMean: 'Qué significan las líneas',
		cutHere: 'se corta',
		sewHere: 'se cose',
		onFold: 'al doblez de la tela',
		grain: 'hilo',
		notches: 'piquetes, sencillos y dobles',
		fold: 'doblez',
		piece: (piece) =>
			`${piece.name}, pieza ${piece.number}. Bordes: ${v.list(
				piece.edges.map(
					({ title, length, fold }) => `${title} ${v.length(length)}${fold ? ' al doblez' : ''}`
				)
			)}.`,
		allowances: ({ own }) =>
			own > 0
				? `Margen de cada borde: ${v.plural(own, { one: '1 tuyo', other: `${own} tuyos` })}`
				: 'Margen de cada borde',
		edge: ({ title }) => capital(title),
		edgeIs: ({ kind, length }) => `${kind}, ${v.length(length)} de largo`,
		usualAllowances: 'Volver a los márgenes habituales',

		number: 'N.º',
		pieceHeader: 'Pieza',
		cloth: ({ cloth }) => capital(cloth),
		howLaid: 'Cómo se coloca',
		laid: ({ laid, bias }) => (bias ? `${LAID[laid]}, al bies` : LAID[laid]),

		seamsMatch: ({ seams }) =>
			v.plural(seams, { one: 'La única costura coincide.', other: `Las ${seams} costuras coinciden.` }),
		seamsOpen: ({ open, seams }) =>
			v.plural(open, {
				one: `No coincide 1 de las ${seams} costuras.`,
				other: `No coinciden ${open} de las ${seams} costuras.`
			}),
		howMeasured:
			'Los dos bordes se miden por la línea de costura, con las pinzas cerradas. Elige una costura para ver sus dos piezas puestas borde con borde.',
		seams: 'Costuras',
		seam: 'Costura',
		first: 'Primero',
		second: 'Segundo',
		difference: 'Diferencia',
		sewnTogether: 'Al coser',
		matches: 'coincide',
		caughtIn: 'tomado en él',
		easedIn: ({ ease }) => `coincide, embebiendo ${v.length(ease)}`,
		secondLong: ({ by }) => `el segundo tiene ${v.slight(by)} de más`,
		secondShort: ({ by }) => `el segundo tiene ${v.slight(by)} de menos`,
		noCorners: 'Ninguna línea hace pico al cruzar una costura.',
		corners: ({ bent, lines }) =>
			v.plural(bent, {
				one: `Hace pico al cruzar una costura 1 de las ${lines} líneas.`,
				other: `Hacen pico al cruzar una costura ${bent} de las ${lines} líneas.`
			}),
		alsoAtFolds:
			'Lo mismo vale en un doblez, donde la línea se encuentra con su propio reflejo al abrir la tela.',
		allLines: ({ lines }) => v.plural(lines, { one: 'La única línea', other: `Las ${lines} líneas` }),
		linesAcross: 'Líneas que cruzan costuras',
		line: 'Línea',
		corner: 'Pico',
		angle: (at) => angle(at.angle),
		runsOn: 'Continúa',
		smoothly: 'sin pico',
		atMost: (at) => `no: como mucho ${angle(at.angle)}`,

		sewn: sides,
		sewnPicture: ({ label, sewn }) => `${label}, borde con borde. ${sides(sewn)}`,
		tooLong: ({ by }) => `${small(by)} de más`,
		otherHalf: 'la otra mitad',
		laidFlat: ({ by }) => `Puestas en plano, las dos líneas se separan hasta ${small(by)}.`,
		shapesDiffer: 'Tienen formas distintas: al coser, una se curva para seguir a la otra.',
		sameCurve: 'Una sobre otra, como se cosen, son la misma curva.',
		dartsOpen: 'Las pinzas se dibujan abiertas. Primero se cosen, y no cuentan en lo que mide el borde.',
		endSmooth: ({ label }) => `${label}: continúa sin pico`,
		endCorner: ({ label, angle: at }) => `${label}: hace un pico de ${angle(at)}`,

		clothWidth: 'Ancho de la tela',
		anotherWidth: 'Otro ancho',
		selvedges: 'de orillo a orillo',
		yourCloth: 'Ancho de tu tela',
		yourClothWithin: ({ range }) => {
			const { least, most } = v.range(range);
			return `de orillo a orillo, entre ${least} y ${most}`;
		},
		estimateFor: ({ width, name }) => [
			'Un cálculo aproximado: alrededor de ',
			` de tela de ${v.length(width)} de ancho, para ${name}. Compra más si la tela puede encoger, tiene pelo o lleva un dibujo que haya que casar.`
		],
		estimate: ({ cloth, width }) =>
			`Aproximadamente ${cloth} de tela de ${v.length(width)} de ancho. Es un cálculo aproximado: compruébalo colocando tus piezas, y cuenta con más si la tela encoge, tiene pelo o un dibujo que hay que casar.`,
		laying: ({ width, length }) =>
			`Las piezas sobre una tela de ${v.length(width)} de ancho, doblada a lo largo: ocupan ${v.length(length)}.`,
		clothMark: ({ halves }) => `${v.number(halves / 2)} ${v.unit === 'in' ? 'yd' : 'm'}`,
		tooWide: ({ pieces }) =>
			`Esta tela es demasiado estrecha para: ${v.list(pieces)}. Sin eso el cálculo se queda corto; elige una tela más ancha.`,
		single: ({ pieces }) =>
			`Pasada la parte doblada, la tela se abre. Corta en una sola capa: ${v.list(pieces)}.`,
		joined: ({ pieces }) =>
			`Demasiado ancha para la mitad de esta tela: ${v.list(pieces)}. Va en dos mitades, cada una con un margen en lugar del doblez, y ahí se unen con una costura.`,
		interfacing: ({ cloth, width }) => `Entretela: alrededor de ${cloth}, de ${v.length(width)} de ancho.`,
		odd: ({ pieces }) => `Corta solo en una de las dos capas: ${v.list(pieces)}.`
	};
};
