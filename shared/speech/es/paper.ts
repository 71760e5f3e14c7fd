import type { paper as english } from '../en/paper.ts';
import { capital, El, el } from './grammar.ts';

const SCALES: Readonly<Record<'full' | 'half' | 'quarter', string>> = {
	full: 'Dibujado a tamaño real.',
	half: 'Dibujado a la mitad de su tamaño, para la clase: no cortes tela con él.',
	quarter: 'Dibujado a la cuarta parte de su tamaño, para la clase: no cortes tela con él.'
};

/** What the lines and marks of a piece mean to whoever cuts and sews. */
const LINES = {
	cutting: 'Corta aquí.',
	stitching: 'Cose aquí. Entre esta línea y la de corte está el margen de costura.',
	fold: 'Coloca este borde sobre el doblez de la tela, como indica la llave, y no lo cortes.',
	grain: 'El hilo: coloca la flecha paralela al orillo, el borde tejido de la tela.',
	notch: 'Piquetes, sencillos y dobles: haz un corte corto. Los de una misma costura se encuentran.',
	mark: 'Una línea que se marca en la tela: un centro, un nivel o la línea por la que se dobla una pinza.',
	dart: 'Una pinza: dóblala por su línea central y cósela desde la boca hasta el vértice, que lleva un anillo pequeño.',
	drill: 'Una cruz dentro de un anillo es un punto que se marca en la tela: su nombre está al lado.',
	button:
		'Un aspa es un botón; la línea con dos topes, su ojal. Un delantero lleva los botones y el otro, los ojales.',
	gather: 'Frunce este borde.',
	wear: 'Lo que no le va bien al cuerpo, donde se midió: lee «¿Se puede llevar?» antes de cortar.'
} as const;

/** What is printed on pages, pieces and sheets. */
export const paper: typeof english = (v) => ({
	sheet: ({ id }) => (id === 'letter' ? 'Carta' : id.toUpperCase()),
	roll: ({ width }) => `un rollo de ${v.inUnit('cm').length(width)} de ancho`,
	madeFor: ({ what, body }) => `${what} para ${body}`,
	workedFor: ({ what, body }) => `${what}, para ${body}`,
	scale: ({ scale }) => SCALES[scale],
	fold: 'al doblez',
	edgeOnFold: ({ title }) => `${capital(title)}, al doblez`,
	grid: 'cuadrícula',
	printAtFull: ({ pages, paper: name }) =>
		`${pages === 1 ? 'Una página' : `${pages} páginas`} de ${name}. Imprime al 100 % (tamaño real) y mide los cuadrados antes de fiarte del resto.`,
	squaresOnSheet:
		'La hoja grande lleva los mismos dos cuadrados: mídelos también en ella, porque muchas veces se imprime en otra máquina.',
	howToJoin:
		'Corta el borde izquierdo y el superior de cada página donde se indique, ponla sobre la línea de puntos de su vecina, cruz sobre cruz, y pégala con cinta adhesiva. Las páginas entre paréntesis en el plano están vacías y no se imprimen.',
	eachSide100: 'Cada lado mide 100 mm.',
	eachSide4: 'Cada lado mide 4 pulgadas.',
	cutOff: ({ edge }) => `corta el borde ${edge === 'left' ? 'izquierdo' : 'superior'}`,
	pageEmpty: ({ page }) => `${page} está vacía`,
	pageGoesOn: ({ page, edge }) => `${page} sigue ${edge === 'right' ? 'a la derecha' : 'debajo'}`,
	fullSize: '100 %',
	pageOf: ({ page, of }) => `página ${page} de ${of}`,
	gridScale: ({ reduced }) => `Escala 1 : ${reduced}.`,
	gridDots: ({ apart }) => `De punto a punto hay ${v.length(apart)} de la hoja.`,
	nothingToPrint: 'no hay nada que imprimir: no tiene nada dibujado',
	noStep: ({ method, step }) => `${method} no tiene ningún paso «${step}»`,
	label: ({ noun }) => el(noun),
	pointTitle: ({ point, noun }) => `${point}: ${el(noun)}`,
	lineTitle: ({ noun }) => El(noun),
	madeOn: ({ day }) => `Hecho el ${day}.`,
	cuttingList: 'Lista de corte',
	pieceNumber: 'N.º',
	pairMeans:
		'Las dos piezas de un par son simétricas: córtalas a la vez en tela doblada, o da la vuelta al papel para la segunda.',
	cutting: 'Corte',
	whatYouNeed: 'Lo que necesitas',
	clothWidth: 'Tela',
	fabricWide: ({ width }) => `Tela de ${v.length(width)} de ancho`,
	interfacingWide: ({ width }) => `Entretela de ${v.length(width)} de ancho`,
	clothJoined: ({ cloth, pieces }) => `${cloth}; con costura en lugar del doblez: ${v.list(pieces)}`,
	clothNeeded: 'Hace falta, más o menos',
	clothEstimate:
		'Es una estimación: coloca las piezas antes de comprar, y cuenta con más si la tela encoge, tiene pelo o lleva un dibujo que casar.',
	tooNarrow: 'demasiado estrecha',
	number: 'Números de esta prenda',
	howMuch: 'Cuánto',
	buttons: ({ width }) => `Botones de ${v.length(width)}`,
	linesMean: 'Qué significan las líneas y las marcas',
	lineMeans: ({ kind }) => LINES[kind],
	pageMark:
		'No es parte del patrón: una cruz dentro de un cuadrado está donde se unen dos páginas. Pon una cruz sobre la otra.',
	sewingOrder: 'Orden de confección',
	seamsAgree: ({ open, seams }) =>
		open === 0 ? `Las ${seams} costuras coinciden.` : `${open} de ${seams} costuras no coinciden.`,
	finished: 'Medidas de la prenda terminada',
	round: 'Contorno',
	finishedRound: 'Terminada',
	usualRound: 'Lo habitual',
	usualMeans:
		'Lo habitual es práctica común y no sale de ninguna norma publicada: el cuerpo con la menor y la mayor holgura con que se lleva una prenda así.',
	measurements: 'Medidas',
	changedNumbers: 'Números cambiados',
	nothingChanged: 'Todos los números son los habituales.',
	usual: 'Habitual',
	measurement: 'Medida',
	allowance: 'Ajuste',
	chosen: 'Elegido',
	allowanceTitle: ({ noun }) => capital(noun.name),
	rules: 'Reglas',
	cutCards: 'Recorta las fichas por las líneas. A la derecha van el número que resulta y un dibujo.',
	step: 'Paso',
	rule: 'Regla',
	worked: 'Con números',
	tapeHow:
		'Extiende el papel bien plano. Mide en línea recta de marca a marca, en orden, y apunta lo que marca la cinta. Un punto queda encontrado en cuanto le llegan dos distancias desde puntos ya encontrados.',
	tapeNumber: 'N.º',
	fromTo: 'De – a',
	tapeReads: 'La cinta marca',
	worksheetStart:
		'El punto O está donde se cruzan las filas de puntos marcadas con 0. «Hacia fuera» es a su derecha y «hacia abajo», por debajo de él. Dibuja cada paso en la cuadrícula antes de leer el siguiente.',
	givenLengths: ({ given }) =>
		`${capital(v.list(given.map(({ noun, length }) => `${el(noun)} mide${noun.plural ? 'n' : ''} ${v.length(length)}`)))}.`,
	answer: 'Respuesta',
	note: 'Observación',
	mark: 'Nota',
	total: 'Total',
	outOf: ({ outOf }) => `de ${v.number(outOf)}`,
	workOf: ({ work, learner }) => `${work}. ${learner}`,
	workOfNobodyYet: ({ work }) => `${work}. Nombre: ____________________________`,
	drawingFile: 'Unidades: milímetros. Capas según la ASTM D6673 (retirada), de memoria.',
	degrees: 'grados',
	keyed: ({ key, noun }) => `${noun.name} (${key})`,
	columns: {
		what: 'qué',
		piece: 'pieza',
		name: 'nombre',
		label: 'descripción',
		kind: 'tipo',
		across: 'hacia_fuera_mm',
		down: 'hacia_abajo_mm',
		length: 'longitud_mm',
		allowance: 'margen_mm',
		otherLength: 'otra_longitud_mm',
		within: 'coincide'
	},
	rows: { point: 'punto', line: 'línea', edge: 'borde', notch: 'piquete', seam: 'costura', number: 'número' },
	lengthKind: 'longitud',
	within: ({ within }) => (within ? 'sí' : 'no')
});
