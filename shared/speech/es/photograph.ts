import { mm } from '../../units.ts';
import type { photograph as english } from '../en/photograph.ts';
import { el, El } from './grammar.ts';

const REFUSED = {
	'no-picture': 'Este archivo no es una imagen que se pueda leer. Elige un archivo JPEG, PNG o WebP.',
	heic: 'Esta imagen está guardada como HEIC y este navegador no la puede leer. Guárdala como JPEG (en los ajustes de la cámara: «más compatible») y elígela otra vez.',
	huge: 'Este archivo pesa más de 80 megabytes. Elige la imagen tal como la hizo la cámara.',
	'many-pixels':
		'Esta imagen tiene más de 60 megapíxeles, demasiados para un navegador. Guarda una copia más pequeña.',
	small: 'Esta imagen es demasiado pequeña para medir en ella: un lado tiene menos de 400 píxeles.',
	broken: 'Esta imagen no se puede leer: el archivo está dañado o solo ha llegado una parte.'
} as const;

const WARNINGS = {
	'one-corner':
		'Las marcas están muy juntas. Lejos de ellas un error pequeño crece: pon una en cada esquina del dibujo.',
	few: 'Se han encontrado menos de tres marcas, así que no se puede ver si el papel está plano.',
	blur: 'La imagen está borrosa. Sujeta la cámara sin moverla y deja que enfoque el papel.',
	bulge:
		'Las marcas no están en un mismo plano, o no son todas de una misma impresión: el papel se abomba. Aplánalo con pesos y repite la foto. Hasta entonces, el error propio de cada punto es mayor.',
	coarse: 'La hoja se ve pequeña en la imagen. Acércate hasta que la llene.',
	screen:
		'Parece la foto de una pantalla. En una pantalla nada tiene su tamaño verdadero: fotografía el papel.'
} as const;

/** Cómo se mide un trazado o una pieza en una fotografía. */
export const photograph: typeof english = (v) => ({
	about:
		'Pon las marcas junto al dibujo, fotografíalo todo desde arriba y toca tus puntos en la imagen. La imagen no sale de este dispositivo.',
	print: '1. Imprime las marcas',
	which: 'Qué marcas',
	sheets: {
		cards: 'Ocho tarjetas, para un papel grande',
		'small-sheet': 'Una hoja, A4 o Carta',
		'large-sheet': 'Una hoja, A3',
		worksheet: 'La hoja de trabajo del trazado'
	},
	onWorksheet:
		'La hoja de trabajo a tamaño real lleva marcas alrededor de la cuadrícula. Guárdala donde se imprime y se guarda el trazado, en «Una hoja de trabajo», y traza en ella.',
	paper: 'Papel',
	make: 'Hacer las marcas (PDF)',
	flat: 'Aplana el papel con pesos y pon una tarjeta en cada esquina del dibujo, sin tapar ninguna línea; con otra más a la mitad de cada lado se ve si el papel se abomba. Sujeta la cámara justo encima del centro. Lo que se abomba 3 mm queda hasta 2 mm desplazado en el borde.',
	take: '2. Haz la foto',
	choose: 'Elegir una imagen',
	camera: 'Usar la cámara',
	hold: 'No te muevas: hacer la foto',
	holding: ({ frame, of }) => `No te muevas: ${v.number(frame)} de ${v.number(of)}`,
	sharpest: 'Se ha tomado la más nítida de diez imágenes.',
	close: 'Cerrar la cámara',
	cameraDenied:
		'No hay permiso para usar la cámara. Dáselo a esta página en los ajustes del navegador, o elige una imagen.',
	noCamera: 'No se ha encontrado ninguna cámara. Elige una imagen.',
	live: 'Lo que ve la cámara',
	looking: 'Buscando las marcas…',
	cancel: 'Parar',
	stopped: 'Parado.',
	notLoaded: 'No ha llegado lo que lee las imágenes. Comprueba la conexión y prueba otra vez.',
	ourFault: ({ told }) => `No se ha podido leer la imagen, y es fallo nuestro: ${told}`,
	refused: ({ why }): string => REFUSED[why],
	warning: ({ warning }): string => WARNINGS[warning],
	found: ({ count, residual }) =>
		`${v.plural(count, { one: 'Se ha encontrado 1 marca', other: `Se han encontrado ${v.number(count)} marcas` })}. Sus esquinas concuerdan con ${v.fixed(Math.max(0.01, residual), 2)} mm de diferencia.`,
	agree: ({ residual }) =>
		`Los cuatro puntos concuerdan con tus distancias, con ${v.seen(residual)} de diferencia.`,
	noMarkers:
		'No se ha encontrado ninguna marca en la imagen. Toca cuatro puntos de distancias conocidas, o haz otra foto.',
	check: 'La línea de control de las marcas',
	checkWhat: ({ length }) =>
		`Mídela en tu impresión: debe medir ${v.length(length)}. Si es así, déjalo vacío.`,
	outOfScale: ({ percent }) =>
		`Las marcas se imprimieron un ${v.fixed(Math.abs(percent), 1)} % demasiado ${percent > 0 ? 'grandes' : 'pequeñas'}. Se tiene en cuenta.`,
	notALength: 'Escribe una medida entre 9/10 y 11/10 de la que debe ser.',
	tap: '3. Toca tus puntos',
	next: ({ step }) => `Toca ${el(step)} en la imagen`,
	points: 'Puntos',
	what: 'Qué se toca',
	whats: { places: 'puntos', curves: 'curvas, a lo largo' },
	lines: 'Curvas',
	isTapped: 'tocado',
	picture: 'Tu imagen, con lo que has tocado y el trazado calculado',
	loupe: 'Lupa: las flechas mueven la marca un píxel, con Mayúsculas diez; Intro pasa al siguiente',
	here: '¿El cruce está aquí?',
	takeIt: 'Tomar el cruce',
	taken: 'En el cruce de dos líneas.',
	byHand: 'Puesto a mano.',
	remove: 'Quitarlo',
	goOn: 'Punto siguiente',
	right: 'A la derecha, mm',
	down: 'Hacia abajo, mm',
	move: 'Mover',
	drawDraft: 'Dibujar el trazado calculado en la imagen',
	mirrored: 'Tu dibujo es la imagen especular del trazado calculado: se compara dado la vuelta.',
	two: 'Toca al menos dos puntos: así se sabe cómo está puesto el dibujo, y los demás se buscan donde deben estar.',
	place: ({ number }) => `sitio ${v.number(number)}`,
	frame:
		'El dibujo se pone sobre el trazado calculado de modo que la mayoría de los puntos coincidan, los primeros antes que los últimos.',
	four: 'Cuatro puntos conocidos',
	fourAbout:
		'Toca cuatro puntos muy separados, sin tres en fila: valen las esquinas del papel. Luego mide las distancias entre ellos.',
	corner: ({ letter }) => `punto ${letter}`,
	between: ({ from, to }) => `De ${from} a ${to}`,
	five: 'Bastan cinco de las seis; la sexta muestra si concuerdan.',
	disagree:
		'Estas distancias no pueden ser todas correctas: ningún grupo de cuatro puntos las tiene. Mídelas otra vez.',
	along: ({ step, count }) =>
		count === 0
			? `Toca a lo largo de ${el(step)}, de un extremo al otro: los dos extremos y al menos tres sitios en medio`
			: `${El(step)}: ${v.plural(count, { one: '1 sitio', other: `${v.number(count)} sitios` })}; sigue hasta el otro extremo`,
	curve: ({ greatest, longer, deeper }) =>
		`A ${v.seen(greatest)} como mucho de la línea calculada; ${Math.abs(longer) < 0.5 ? 'igual de larga' : `${v.seen(mm(Math.abs(longer)))} más ${longer > 0 ? 'larga' : 'corta'}`}${deeper === undefined ? '' : `; ${Math.abs(deeper) < 0.5 ? 'igual de honda' : `${v.seen(mm(Math.abs(deeper)))} más ${deeper > 0 ? 'honda' : 'plana'}`}`}.`,
	ends: ({ start, end }) => `Sus extremos quedan a ${v.seen(start)} y ${v.seen(end)} de los calculados.`,
	undo: 'Quitar el último sitio',
	pieceAbout:
		'Pon la pieza plana con las marcas alrededor, fotografíala desde arriba y toca sus esquinas y piquetes; luego recorre sus bordes curvos.',
	pieceWhich: 'Pieza',
	pieceLine: 'Medida por',
	pieceLines: { cutting: 'la línea de corte', stitching: 'la línea de costura' },
	pieceCorner: ({ number }) => `esquina ${v.number(number)}`,
	pieceNotch: ({ number }) => `piquete ${v.number(number)}`,
	pieceOver: 'La pieza está dada la vuelta: se compara así.',
	pieceWithin: ({ within }) => `Una esquina puede quedar a ${v.seen(within)} de su sitio.`,
	pieceCurve: ({ from, to }) => ({
		article: 'el',
		gender: 'm',
		name: `borde de la esquina ${v.number(from)} a la esquina ${v.number(to)}`
	}),
	pieceCurveTitle: ({ from, to, edges }) =>
		`De la esquina ${v.number(from)} a la ${v.number(to)}: ${edges.join(', ')}`,
	pieceWhats: { places: 'esquinas y piquetes', curves: 'bordes curvos, a lo largo' },
	pieceCurveWithin: ({ point, curve, length }) =>
		`Un borde curvo puede desviarse ${v.seen(curve)}, sus extremos ${v.seen(point)}, y ser ${v.seen(length)} más largo o más corto.`,
	pieceCurveRow: ({ error }) => `± ${v.seen(error)}`,
	pieceAnswers: { right: 'bien', wrong: 'no está bien', 'cannot-tell': 'no se puede saber' },
	pieceRow: ({ off, error }) => `a ${v.seen(off)}, ± ${v.seen(error)}`,
	pieceSide: ({ from, to, longer }) =>
		`De la ${from} a la ${to}: ${Math.abs(longer) < 0.5 ? 'tan largo como lo calculado' : `${v.seen(mm(Math.abs(longer)))} más ${longer > 0 ? 'largo' : 'corto'}`}.`
});
