import type { markers as english } from '../en/markers.ts';

/** Lo que se imprime en las hojas de marcas, y cómo se llaman. */
export const markers: typeof english = (v) => ({
	title: 'Marcas para una fotografía',
	card: ({ number }) => `Tarjeta ${v.number(number)}`,
	cutOut:
		'Recorta las cuatro tarjetas por las líneas. Pon una en cada esquina del dibujo, plana y sin tapar ninguna línea.',
	cutOutBetween:
		'Otras cuatro tarjetas: pon una a la mitad de cada lado del dibujo. Con ellas se ve si el papel se abomba.',
	drawWithin: 'Dibuja entre las marcas, o pon ahí una pieza de papel. Tienen que verse todas.',
	check: ({ length }) =>
		`Imprime al 100 % (tamaño real). Esta línea debe medir ${v.length(length)}: si no es así, escribe cuánto mide.`
});
