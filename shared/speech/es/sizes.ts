import type { SizeTableId } from '../../sizes/tables.ts';
import { mm } from '../../units.ts';
import type { sizes as english } from '../en/sizes.ts';
import { El } from './grammar.ts';
import { measurementNoun } from './nouns.ts';

const TABLES: Readonly<Record<SizeTableId, { readonly name: string; readonly source: string }>> = {
	women: {
		name: 'Mujer',
		source:
			'Contornos: los intervalos de la norma EN 13402-3, de memoria, sin volver a leerla. Números: los del comercio en el continente, también de memoria. Todos los largos son estimados.'
	},
	men: {
		name: 'Hombre',
		source:
			'Contornos: los intervalos de la norma EN 13402-3, de memoria, sin volver a leerla. Números: la mitad del pecho, como cuenta el comercio en el continente, de memoria. La cadera y todos los largos son estimados. Los trazados de este curso están hechos para un busto.'
	},
	old: {
		name: 'Nueva York, 1911',
		source:
			'I. Rosenfeld, The Practical Designer, Nueva York 1911, lección 142, en pulgadas. Una sola talla; el libro imprime «waist 2.5» y quiere decir 25. Lo que no da es estimado.'
	}
};

/** Standard sizes, and the one that is nearest to a body. */
export const sizes: typeof english = (v) => {
	const errors = (value: number): string => v.fixed(Math.abs(value), 1);
	return {
		heading: 'Tallas normalizadas',
		about:
			'Una talla es un cuerpo que nadie tiene: contornos que fija un acuerdo, y largos como los tiene la mayoría de quienes miden eso. Siempre que puedas, traza con tu propia cinta.',
		table: 'Tabla',
		size: 'Talla',
		tableName: ({ table }) => TABLES[table].name,
		source: ({ table }) => TABLES[table].source,
		bodyName: ({ table, name }) =>
			table === 'women' ? `Talla ${name}` : `Talla ${name}, ${TABLES[table].name}`,
		draftFor: ({ name }) => `Trazar con la talla ${name}`,
		added: ({ name }) => `${name} se añadió a los cuerpos de arriba y está elegida.`,
		estimated: ({ value, sd }) => `estimada: ${v.bare(value)} ± ${v.length(mm(Math.round(sd)))}`,
		estimates:
			'«Estimada»: la media de las mujeres o los hombres del estudio de medidas del ejército de EE. UU. de 1988 que tienen esos contornos; dos de cada tres quedan dentro del ±. El largo delantero sale algo corto, porque no se tomó sobre el busto: ese mídelo tú.',
		nearest: ({ body }) => `¿Qué talla se acerca más a ${body}?`,
		nearestIs: ({ name, errors: apart }) =>
			apart <= 1
				? `La talla ${name}: sus contornos difieren menos de lo que una cinta lee distinto de una vez a otra.`
				: `La talla ${name}. Sus contornos están, en promedio, a ${errors(apart)} errores de medida: más de lo que explicaría volver a leer la cinta.`,
		wanting: 'Para decirlo hacen falta los contornos de la tabla: busto, cintura y, en las de mujer, cadera.',
		differ: 'En qué difieres más',
		measurement: 'Medida',
		own: 'Propia',
		ofSize: ({ name }) => `Talla ${name}`,
		difference: 'Diferencia',
		apart: ({ by, errors: apart }) =>
			`${v.length(by)} ${by < 0 ? 'menos' : 'más'} (${errors(apart)} errores)`.replace('-', ''),
		alike: 'En nada por más del doble del error de medida.',
		inErrors:
			'Un error es cuánto se desvía una lectura y, si el largo es estimado, también cuánto difieren las personas de una misma talla. Hasta dos errores no se muestra nada.',
		noun: ({ key }) => El(measurementNoun(key)),

		notSize: ({ seen }) => `una talla es 42 o, con su tabla, men:50, no «${seen}»`,
		noTable: ({ seen, tables }) => `no hay una tabla de tallas «${seen}»; hay ${v.list(tables)}`,
		noSize: ({ seen, near, table, names }) =>
			`la tabla «${table}» no tiene la talla «${seen}»${near === undefined ? '' : ` (¿querías decir «${near}»?)`}; tiene ${names.join(', ')}`,
		oneOfBodies: 'escribe uno de --body, --bodies y --size',
		apartHeadings: ['medida', 'propia', 'talla', 'diferencia', 'errores', ''],
		estimatedWord: 'estimada',
		lacks: ({ keys }) => `faltan: ${keys.join(', ')}`
	};
};
