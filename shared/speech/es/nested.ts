import { mm, type Mm } from '../../units.ts';
import type { nested as english } from '../en/nested.ts';

/** Several sizes of a pattern on one sheet. */
export const nested: typeof english = (v) => {
	const small = (length: Mm): string => (v.unit === 'in' ? v : v.inUnit('mm')).length(length);
	const signed = (length: Mm): string => {
		const size = v.bare(mm(Math.abs(length)));
		return `${length < 0 && size !== '0' ? '−' : '+'}${size}`;
	};
	return {
		heading: 'Varias tallas en una hoja',
		about:
			'Cada talla tiene una línea con su propio ritmo y su nombre al lado; unas líneas finas pasan por la misma esquina de todas, para poder dibujar una talla entre dos. Son tallas normalizadas, y la tuya puede ser una de ellas.',
		open: 'Elegir tallas',
		close: 'Ocultar las tallas',
		sizes: 'Tallas (de dos a siete)',
		own: ({ body }) => `${body}, con lo elegido arriba`,
		count: 'Elige de dos a siete tallas.',
		key: 'Tallas',
		size: ({ name }) => `Talla ${name}`,
		title: ({ what, sizes }) => `${what}, tallas ${v.list(sizes)}`,
		forSizes: ({ sizes }) => `Tallas ${v.list(sizes)}`,
		cutOne: 'Corta por la línea de una talla. Si tus contornos quedan entre dos, dibuja entre ellas.',
		estimated:
			'Los contornos de las tallas normalizadas son de EN 13402-3, de memoria, y los largos se estiman con un estudio de 1988.',
		refused: ({ size, reasons }) => `la talla ${size} no se puede trazar: ${reasons.join('; ')}`,
		twoToSeven: ({ count, most }) =>
			`en una hoja se distinguen de 2 a ${v.number(most)} tallas, no ${v.number(count)}`,
		twice: ({ name }) => `la talla ${name} está dos veces`,
		notWith: ({ flag }) => `${flag} no va con --sizes`,
		noFormat: ({ format, formats }) => `varias tallas se guardan como ${v.list(formats)}, no como ${format}`,

		growth: 'Cuánto crece cada borde',
		growthAbout:
			'Longitudes por la línea de costura, y cuánto crece cada una desde la talla anterior. Se nombra la costura cuyos dos lados no crecen igual: en esa talla no se uniría como en las demás.',
		piece: 'Pieza',
		edge: 'Borde',
		grown: ({ length, by }) => (by === undefined ? v.bare(length) : `${v.bare(length)} (${signed(by)})`),
		none: '–',
		even: 'Cada costura crece igual por sus dos lados, con menos de 1 mm de diferencia por talla.',
		uneven: ({ label, from, to, first, second }) =>
			`${label}: de la talla ${from} a la ${to} el primer lado crece ${small(first)} y el segundo ${small(second)}.`,
		save: 'Guardar la hoja',
		columns: { piece: 'pieza', edge: 'borde', grows: 'crece' },
		unevenColumn: 'costura desigual',
		format: 'Qué se guarda',
		formats: {
			pages: 'Páginas para unir (PDF)',
			sheet: 'Una hoja grande (PDF)',
			svg: 'Dibujo (SVG)',
			dxf: 'Dibujo para un trazador (DXF)',
			csv: 'El crecimiento como tabla (CSV)'
		},
		preview: 'Cómo quedan las tallas una sobre otra'
	};
};
