import type { files as english } from '../en/files.ts';
import { el } from './grammar.ts';
import { measurementNoun } from './nouns.ts';

/** Making and saving files. */
export const files: typeof english = (v) => {
	const FILES = {
		pages: {
			name: 'PDF en páginas',
			save: 'Guardar el PDF',
			about:
				'Para una impresora de casa: páginas que se unen con cinta adhesiva. Imprime al 100 % y mide el cuadrado de la primera página.'
		},
		sheet: {
			name: 'PDF en una hoja grande',
			save: 'Guardar el PDF',
			about:
				'Para una copistería con impresora ancha. Pide que lo impriman al 100 % y mide el cuadrado de la primera hoja.'
		},
		svg: {
			name: 'Dibujo SVG',
			save: 'Guardar el dibujo',
			about:
				'Para un programa de dibujo: en milímetros; cada pieza y cada clase de línea es un grupo con su nombre.'
		},
		png: {
			name: 'Imagen (PNG)',
			save: 'Guardar la imagen',
			about:
				'Para mirar o enseñar, no para cortar con ella: 4 puntos por milímetro, y menos si es muy grande.'
		},
		dxf: {
			name: 'Archivo de dibujo (DXF)',
			save: 'Guardar el archivo de dibujo',
			about:
				'Para una sala de corte: un bloque por pieza, en milímetros. Las capas siguen la norma ASTM D6673, de memoria: no se promete que la cumplan.'
		},
		csv: {
			name: 'Tabla (CSV)',
			save: 'Guardar la tabla',
			about:
				'Para una hoja de cálculo: lo que miden todos los bordes y costuras, dónde van los piquetes y los números que conviene apuntar.'
		},
		json: {
			name: 'Datos (JSON)',
			save: 'Guardar los datos',
			about: 'Para otro programa: cada línea de cada pieza, y los informes, en milímetros.'
		}
	};
	const SHEETS = {
		draft: {
			name: 'El trazado',
			save: 'Guardar el trazado en PDF',
			about: 'El trazado calculado, en páginas, con los cuadrados de control y un plano.'
		},
		worksheet: {
			name: 'Una hoja de trabajo',
			save: 'Guardar la hoja de trabajo en PDF',
			about:
				'La cuadrícula sola, en páginas, y lo que hay que dibujar en ella paso a paso, para trazar a mano. A tamaño real lleva las marcas con las que se lee una fotografía de ella.'
		},
		rules: {
			name: 'Una hoja de reglas',
			save: 'Guardar la hoja de reglas en PDF',
			about: 'Las medidas, y la regla de cada paso con las cuentas para este cuerpo.'
		},
		tape: {
			name: 'Una hoja de cinta',
			save: 'Guardar la hoja de cinta en PDF',
			about:
				'Las distancias con las que se comprueba con cinta un trazado en papel, con sitio para lo que marca.'
		},
		drawing: {
			name: 'Un dibujo',
			save: 'Guardar el dibujo en SVG',
			about: 'Para un programa de dibujo: en milímetros; cada clase de línea es un grupo con su nombre.'
		},
		picture: {
			name: 'Una imagen',
			save: 'Guardar la imagen en PNG',
			about:
				'El trazado calculado en una sola imagen, para enseñarlo en una pantalla o ponerlo en un texto. No sirve para medir.'
		}
	};
	const SCALES = { full: 'Tamaño real', half: 'La mitad', quarter: 'Un cuarto' };
	const SIZES = { full: '', half: ', a la mitad', quarter: ', a un cuarto' };
	const TITLES = {
		draft: '',
		worksheet: 'Hoja de trabajo, ',
		rules: 'Hoja de reglas, ',
		tape: 'Hoja de cinta, ',
		cards: 'Fichas de los pasos, ',
		drawing: '',
		picture: ''
	};
	return {
		kindOfFile: 'Clase de archivo',
		file: ({ kind }) => FILES[kind].name,
		saveFile: ({ kind }) => FILES[kind].save,
		aboutFile: ({ kind }) => FILES[kind].about,
		atTrueScale: ({ method }) => `${method} a escala real`,
		printAtFull: ({ body }) =>
			`Para ${body}. Elige tu papel, imprime al 100 % (tamaño real) y mide el cuadrado de la primera página antes de fiarte del resto.`,
		stitchingLine:
			'El contorno es la línea de costura: todavía no lleva margen de costura. Ten cuidado con las herramientas de corte y la plancha, y respeta las normas del lugar donde trabajas.',
		saveIt: 'Guárdalo',
		whatIsSaved: 'Qué se guarda',
		sheet: ({ sheet }) => SHEETS[sheet].name,
		saveSheet: ({ sheet }) => SHEETS[sheet].save,
		aboutSheet: ({ sheet }) => SHEETS[sheet].about,
		withNumbers: 'Con los números calculados de cada paso',
		paper: 'Papel',
		roll: ({ width }) => `Rollo de ${v.inUnit('cm').length(width)} de ancho`,
		scale: 'Escala',
		scaleOf: ({ scale }) => SCALES[scale],
		asToile: 'Como prenda de prueba: 2,5 cm por fuera de cada costura',
		saveToile: 'Guardar la prenda de prueba como PDF',
		eachPiece: 'Un archivo por pieza',
		counting: 'Se están contando las páginas…',
		pages: ({ pages, paper }) =>
			`${v.plural(pages, { one: '1 página', other: `${pages} páginas` })} de ${paper}, después de una primera con los cuadrados de control y un plano.`,
		sheets: ({ sheets, paper }) =>
			`${v.plural(sheets, { one: '1 hoja', other: `${sheets} hojas` })} de ${paper}, después de una primera con los cuadrados de control y un plano.`,
		offRoll: ({ sheets, paper }) =>
			`${v.plural(sheets, { one: '1 hoja', other: `${sheets} hojas` })} de ${paper}, después de una primera con los cuadrados de control y un plano.`,
		pagesOfWords:
			'Con todas las piezas van páginas de texto: qué se corta y qué se compra, qué significan las líneas y cómo se cose.',
		pageMap: ({ printed, blank }) =>
			`Cómo se juntan las páginas: ${printed.join(', ')}` +
			(blank.length > 0 ? `; se omiten, porque no llevan nada: ${blank.join(', ')}` : ''),
		allPieces: ({ count }) => v.plural(count, { one: 'Piezas: la única', other: `Piezas: las ${count}` }),
		somePieces: ({ count, of }) => `Piezas: ${count} de ${of}`,
		pieces: 'Piezas',
		all: 'Todas',
		none: 'Ninguna',

		cancel: 'Cancelar',
		howFar: 'Cuánto lleva hecho',
		madeOf: ({ done, of }) => `${v.plural(done, { one: 'Hecho', other: 'Hechos' })} ${done} de ${of}`,
		beingMade: 'Se está haciendo…',
		stopped: 'Detenido; no se ha guardado nada.',
		made: ({ name }) => `Hecho: ${name}.`,
		madeMany: ({ count }) => `Hay ${count} archivos hechos.`,
		saveEach: 'Guarda cada uno:',
		dots: ({ dots }) => `${v.number(dots, 1)} puntos por milímetro.`,
		notMade: ({ told }) =>
			`No se ha podido hacer. El fallo es nuestro, no tuyo (${told}). Inténtalo otra vez.`,
		notLoaded: 'No se ha podido cargar lo que hace los archivos. ¿Tienes conexión? Inténtalo otra vez.',
		chooseOne: 'elige al menos una pieza',
		noPiece: 'no se ha elegido ninguna pieza',
		noSheet: 'Elige al menos una clase de hoja.',
		lacks: ({ body, keys }) =>
			`a ${body} ${v.plural(keys.length, { one: 'le falta', other: 'le faltan' })} ${v.list(keys.map((key) => el(measurementNoun(key))))}`,
		cannotDraft: ({ body, reasons }) => `para ${body} todavía no se puede trazar nada: ${reasons.join('; ')}`,

		sheetTitle: ({ sheet, method }) => `${TITLES[sheet]}${method}`,
		sized: ({ name, scale }) => `${name}${SIZES[scale]}`,
		onPaper: ({ name, scale, paper }) => `${name}${SIZES[scale] || ', a tamaño real'}, ${paper}`,
		pieceFile: ({ number, piece, name }) => `${number} ${piece}, ${name}`,
		toRead:
			'Lo que el navegador imprime de esta página es para leer: no está a escala. Guarda el PDF e imprime ese.',
		measurementsFile: 'medidas'
	};
};
