import type { command as english } from '../en/command.ts';
import { USAGE } from './usage.ts';

const CANNOT_READ: Readonly<Record<string, string>> = {
	ENOENT: 'este archivo no existe',
	EISDIR: 'esto es una carpeta, no un archivo',
	ENOTDIR: 'una parte de esta ruta no es una carpeta',
	EACCES: 'este usuario no puede leer el archivo',
	ENAMETOOLONG: 'este nombre es demasiado largo',
	ELOOP: 'estos enlaces dan vueltas en círculo',
	EINVAL: 'el sistema no puede leer esto',
	ERR_STRING_TOO_LONG: 'este archivo es demasiado grande',
	ERR_FS_FILE_TOO_LARGE: 'este archivo es demasiado grande',
	ERR_INVALID_ARG_VALUE: 'esto no es el nombre de un archivo'
};
const CANNOT_WRITE: Readonly<Record<string, string>> = {
	ENOENT: 'esta carpeta no existe',
	EISDIR: 'esto es una carpeta, no un archivo',
	ENOTDIR: 'una parte de esta ruta no es una carpeta',
	EEXIST: 'esto es un archivo, no una carpeta',
	EACCES: 'este usuario no puede escribir aquí',
	EPERM: 'este usuario no puede escribir aquí',
	EROFS: 'aquí no se puede escribir nada',
	ENOSPC: 'el disco está lleno',
	EDQUOT: 'el disco está lleno',
	EFBIG: 'el archivo sería mayor de lo que este usuario puede escribir',
	ELOOP: 'estos enlaces dan vueltas en círculo',
	ENAMETOOLONG: 'este nombre es demasiado largo',
	ERR_INVALID_ARG_VALUE: 'esto no es el nombre de un archivo'
};

const ASK = {
	draft: 'escribe qué método hay que trazar, como back-block',
	pattern: 'escribe qué prenda, como course-dress',
	export: 'escribe qué prenda o qué método, como course-dress',
	check: 'escribe qué método hay que comprobar, como back-block'
} as const;

const ANSWERS = {
	right: 'bien',
	wrong: 'mal',
	unfinished: 'sin hacer',
	'not-valid': 'no válido',
	'cannot-tell': 'no se sabe',
	excused: 'dispensado',
	'our-fault': 'no juzgado'
} as const;

const didYouMean = (near: string | undefined): string =>
	near === undefined ? '' : ` (¿querías decir «${near}»?)`;

export const command: typeof english = (v) => ({
	cannotRead: ({ code }) => CANNOT_READ[code] ?? `esto no se puede leer (${code})`,
	cannotWrite: ({ code }) => CANNOT_WRITE[code] ?? `aquí no se puede escribir nada (${code})`,
	// The engine's own words about JSON come in English alone; where in the text it stumbled is a number.
	notJson: ({ problem }) => {
		const position = /position (\d+)/.exec(problem)?.[1];
		return position === undefined ? 'esto no es JSON' : `esto no es JSON (posición ${position})`;
	},
	keyTwice: 'esta clave está aquí dos veces',
	keyLost: 'nada puede llamarse así',
	standardInput: 'entrada estándar',
	cannotPrint: ({ code }) =>
		`salida estándar: ${CANNOT_WRITE[code] ?? `aquí no se puede escribir nada (${code})`}`,

	usage: ({ of }) => USAGE[of],
	noCommand: ({ name, near }) =>
		`No hay ninguna orden «${name}»${didYouMean(near)}. Prueba square-across --help.`,
	noOption: ({ flag, near }) => `no hay ninguna opción ${flag}${didYouMean(near)}`,
	needsFile: ({ flag }) => `detrás de ${flag} falta el nombre de un archivo`,
	needsValue: ({ flag }) => `detrás de ${flag} falta un valor`,
	noValue: ({ flag }) => `${flag} no lleva ningún valor`,
	givenTwice: ({ flag, values }) => `${flag} está dos veces: ${values.join(', ')}`,
	ask: ({ of }) => ASK[of],
	oneAtATime: ({ kind, more }) =>
		`${kind === 'method' ? 'un solo método' : 'una sola prenda'} cada vez; sobra «${more}»`,
	bodyOrBodies: ({ body, bodies }) => `escribe --body o --bodies, no los dos (${body}, ${bodies})`,
	giveBody: 'escribe --body ARCHIVO para un cuerpo, o --bodies ARCHIVO.csv para muchos',
	isGarment: ({ id }) =>
		`«${id}» es una prenda, no un método; sus piezas se hacen con: square-across pattern ${id}`,
	isMethod: ({ id }) => `«${id}» es un método, no una prenda; se traza con: square-across draft ${id}`,
	noLanguage: ({ seen, known }) => `--language admite ${v.either(known)}, no ${seen}`,

	notTable: () => 'esto no es una tabla',
	emptyFile: 'el archivo está vacío',
	noRows: 'hay un encabezado, pero ninguna fila debajo',
	twoColumns: ({ name }) => `dos columnas se llaman «${name}»`,
	columns: ({ names }) => v.plural(names.length, { one: 'columna ', other: 'columnas ' }) + names.join(', '),
	missingColumns: ({ id, near, needed, count }) =>
		`${v.plural(count, { one: 'falta', other: 'faltan' })}${didYouMean(near)}; ${id} necesita ${needed.join(', ')}`,
	formerName: ({ key, now }) => `${key} ahora se llama ${now}, y así se lee`,
	ignored: ({ columns, more }) =>
		`se pasa por alto, porque ninguna columna se llama así: ${columns.map(({ name, near }) => `${name}${didYouMean(near)}`).join(', ')}${more > 0 ? ` y ${more} más` : ''}`,
	row: ({ number, line }) => `fila ${number} (línea ${line})`,
	tooWide: ({ cells, headings }) =>
		`${cells} celdas bajo ${headings} encabezados; pon la coma decimal entre comillas: "96,5"`,
	notUnit: ({ seen }) => `una unidad es cm, mm o in, no ${seen}`,
	emptyCell: ({ id }) => `vacía; ${id} necesita esta medida`,
	submissionShape: ({ seen }) => `una entrega es {"placements":{...}} y puede llevar un cuerpo, no ${seen}`,
	bodyMissing: 'falta; escribe uno en la línea, o --body para todas',
	line: ({ number }) => `línea ${number}`,
	couldNotJudge: ({ place }) => `${place}: el programa no ha podido juzgar esto`,
	giveOneBody: 'escribe --body ARCHIVO.json',
	stdinOrPlacements: ({ file }) => `escribe --stdin o --placements, no los dos (${file})`,
	marksForOne: ({ file }) => `--marks es para una sola persona, no para --stdin (${file})`,
	tapeAlone: ({ file }) => `--tape va solo, sin --placements ni --stdin (${file})`,
	measuredWithTape: '--measured-with va con --tape',
	noTape: ({ seen, tapes }) => `se mide con ${tapes.join(' o ')}, no con ${seen}`,
	tapePair: ({ seen }) => `una distancia va de un punto a otro, como "O-A", no ${seen}`,
	tapeColumns: ({ name }) => `falta la columna ${name}; una tabla de lecturas tiene from, to y read`,
	noTapePoint: ({ name, near }) => `aquí no se mide ningún punto ${name}${didYouMean(near)}`,
	tapeOpen: ({ points }) => `Sin encontrar con estas distancias: ${points.join(', ')}.`,
	givePlacements:
		'escribe --placements ARCHIVO.json o --tape ARCHIVO para una persona, o --stdin para muchas',
	placementsShape: ({ seen }) => `esto no es {"A":[fuera,abajo],...}: ${seen}`,
	typedNeeds:
		'una distancia escrita necesita aquí "from" (un punto ya trazado) y "go" (up, down, across o in)',

	answer: ({ answer }) => ANSWERS[answer],
	off: ({ by }) => `a ${v.inUnit('mm').length(by)}`,
	notes: ({ notes }) => notes.join(' o '),
	passedOver: ({ steps }) => `${steps.join(', ')}: con este cuerpo no se pide, y se pasa por alto`,
	fromOwnMarks: 'viene de marcas propias anteriores',
	checkTitle: ({ name, body }) => `${name} para ${body}`,
	checkTotal: ({ mark, outOf, mistakes, consequences, excused, cannotTell }) =>
		`${v.fixed(mark, 2)} de ${outOf}; errores: ${mistakes}, consecuencias: ${consequences}${excused === undefined ? '' : `, dispensados: ${excused}`}${cannotTell === undefined ? '' : `, por medir otra vez: ${cannotTell}`}`,
	marks: 'Notas',

	refused: ({ reasons }) => reasons.join('; '),
	missing: ({ id, count }) =>
		v.plural(count, { one: `falta; ${id} la necesita`, other: `faltan; ${id} las necesita` }),
	edgesShape: ({ seen }) => `los márgenes de los bordes son {"front.side":1.5,...}, no ${seen}`,
	onFold: 'este borde queda en el doblez de la tela y no se corta',

	endsOther: ({ to, ending, format }) => `«${to}» termina en .${ending}, pero --as dice ${format}`,
	noEnding: ({ to, formats }) =>
		`«${to}» no termina en .${formats.join(', .')}; escribe --as ${formats.join('|')}`,
	isFileName: ({ to, ending }) =>
		`varios archivos van a una carpeta, y «${to}» es el nombre de un archivo; escribe --to CARPETA --as ${ending}`,
	notDate: ({ text }) => `«${text}» no es una fecha como 2026-01-31`,
	noPieceNamed: 'detrás de --pieces no se nombra ninguna pieza, así que no hay nada que dibujar',
	giveTo: 'escribe --to ARCHIVO, como vestido.pdf, o una carpeta para varios archivos',
	onlyFor: ({ flag, format, formats }) => `${flag} vale para ${formats.join(', ')}, no para ${format}`,
	isDraft: ({ id, format, formats }) =>
		`${id} es un trazado, y un archivo ${format} lleva las piezas de una prenda; elige ${formats.join(', ')}`,
	hasNoPieces: ({ id }) => `${id} es un trazado y no tiene piezas que elegir ni que separar`,
	noToile: ({ id, ids }) => `${id} no se corta como prenda de prueba; elige ${ids.join(' o ')}`,
	rowsFailed: ({ failed, rows }) =>
		v.plural(failed, {
			one: `${failed} de ${rows} filas no se ha podido hacer`,
			other: `${failed} de ${rows} filas no se han podido hacer`
		}),
	marksPdf: ({ to }) => `una hoja de notas es un .pdf, no «${to}»`,

	draftTitle: ({ name, body }) => `${name} para ${body}, en cm desde la esquina`,
	pointHeadings: ['punto', 'hacia fuera', 'hacia abajo'],
	lineHeadings: ['línea', 'longitud'],
	patternTitle: ({ name, body }) => `${name} para ${body}, en cm`,
	edgeHeadings: ['borde', 'longitud', 'margen'],
	seamHeadings: ['primero', 'segundo', 'a embeber', 'diferencia'],
	seams: 'Costuras, medidas por la línea de costura',
	runs: 'Paso de las líneas por las costuras y por los dobleces',
	numbers: 'Números',
	warnings: 'Avisos',
	none: 'ninguno',
	order: 'Orden de confección',
	cautions: 'Precauciones',
	agree: ({ within }) => (within ? 'coinciden' : 'NO COINCIDEN'),
	smooth: ({ within }) => (within ? 'sin pico' : 'HACE PICO'),
	outOfBounds: 'fuera de los límites',

	wrongPort: ({ most, seen }) => `--port debe ser un número entero de 0 a ${most}; dice «${seen}».`,
	closedPort: ({ port }) => `Este usuario no puede abrir el puerto ${port}.`,
	wrongHost: ({ seen }) => `--host debe ser una dirección de este equipo; dice «${seen}».`,
	takenPort: ({ first, last }) =>
		`${first === last ? `El puerto ${first} está ocupado` : `Los puertos del ${first} al ${last} están ocupados`}. Elige otro con --port.`,
	serving: ({ address, everywhere }) =>
		`Square Across está en ${address}${everywhere ? ' y en las demás direcciones de este equipo' : ''} (Ctrl+C lo detiene)`,
	building: ({ seconds }) => `Preparando las lecciones (unos ${seconds} s, una sola vez)…`,
	built: 'Listo.',
	buildFailed: 'No se ha podido preparar la aplicación:',
	takesNothing: ({ command: name, seen }) => `${name} no lleva nada detrás; dice «${seen}».`
});
