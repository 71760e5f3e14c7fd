import type { ReadingKind } from '../../reading-kind.ts';
import type { Mm } from '../../units.ts';
import type { sureness as english } from '../en/sureness.ts';
import { el } from './grammar.ts';
import { measurementNoun } from './nouns.ts';

const KINDS: Readonly<Record<ReadingKind, { readonly title: string; readonly what: string }>> = {
	largeGirth: { title: 'Contornos grandes', what: 'busto, cintura, cadera' },
	smallGirth: { title: 'Contornos pequeños', what: 'cuello, brazo, muñeca' },
	length: { title: 'Largos', what: 'y anchos' }
};

/** How far the points of a draft can move because of how the body was measured. */
export const sureness: typeof english = (v) => {
	const size = (length: Mm): string => v.small(length) ?? v.slight(length);
	/** In tenths of a millimetre, where two sizes that differ by little are compared. */
	const finely = (length: Mm): string => (v.unit === 'in' ? v : v.inUnit('mm')).length(length);
	const hundred = (share: number): string => v.number(Math.round(share * 100));
	return {
		heading: '¿Cuánto puede moverse cada punto?',
		open: 'Mostrar cuánto puede moverse cada punto',
		close: 'Ocultarlo',
		working: 'Calculando: el trazado se hace con unos miles de lecturas…',
		failed: 'No se pudo calcular. Ábrelo otra vez para intentarlo de nuevo.',
		about: ({ body }) =>
			`Una cinta nunca da dos veces la misma lectura. Aquí el trazado de ${body} se hizo una y otra vez con lecturas que se desvían como pueden desviarse las tuyas. Diecinueve veces de cada veinte, un punto queda a no más de su ± de donde está dibujado.`,
		errors: 'Cuánto se desvía una lectura (dos de cada tres se desvían menos)',
		kind: ({ kind }) => KINDS[kind],
		source:
			'Lo habitual es el error que la norma ISO 20685 admite entre dos maneras de medir. Quien empieza con la cinta se desvía más.',
		twice: ({ keys }) =>
			`Medidas dos veces, y por eso más seguras: ${v.list(keys.map((key) => el(measurementNoun(key))))}.`,
		drawing: ({ draft }) => `${draft}: alrededor de cada punto, cuánto puede moverse`,
		ovals:
			'Los óvalos pálidos muestran hacia dónde se mueve cada punto y cuánto, a la escala del trazado; la banda pálida a lo largo de una línea, lo mismo de sus puntos.',
		tolerance: ({ tolerance, half, together, counts }) =>
			`Por qué una marca puede desviarse ${size(tolerance)}: la cinta por sí sola mueve la mitad de estos puntos más de ${finely(half)}, y una marca que además se desvía ${size(tolerance)} hace que sean ${finely(together)}. ${counts ? 'En este trazado la marca cuenta casi tanto como la cinta: dibújala tan fina como puedas.' : 'Dibujar más fino no haría que la prenda sentara mejor; dibujar con tan poca precisión como lee la cinta haría que sentara peor.'}`,
		still: ({ tolerance }) =>
			`Las medidas no mueven ningún punto de este trazado, así que solo la marca misma, ${size(tolerance)}, es insegura.`,
		listAbout: 'Puntos, los menos seguros primero',
		point: 'Punto',
		within: '±',
		most: 'Lo mueve más',
		lines: 'Líneas: cuánto puede variar su longitud',
		line: 'Línea',
		plusMinus: ({ reach }) => `± ${size(reach)}`,
		unmoved: 'no se mueve',
		mostOf: ({ key, share }) => `${el(measurementNoun(key))} (${hundred(share)} %)`,
		there: ({ share }) => `está en ${hundred(share)} de cada 100 pruebas`,
		bends: 'probado: cerca de aquí una regla deja paso a otra',
		bendsAbout:
			'«Probado»: donde una regla deja paso a otra (empieza una pinza, el costado llega a su máximo), un punto no sigue la cinta de manera pareja. Se contó en 2048 pruebas, bien repartidas.',
		notDrafted: ({ share }) =>
			`En ${hundred(share)} de cada 100 pruebas las lecturas no se pudieron trazar: dos de ellas casi se contradicen.`,
		errorRange: ({ range }) => {
			const { least, most } = v.range(range);
			return `una lectura se desvía de ${least} a ${most}`;
		},

		title: ({ name, body }) =>
			`${name}, ${body}: cuánto puede moverse cada punto, en mm, diecinueve veces de cada veinte`,
		headings: ['punto', '±', 'lo mueve más', ''],
		lineHeadings: ['línea', 'longitud ±', 'la mueve más', ''],
		share: ({ share }) => `${hundred(share)} %`,
		errorShape: ({ seen }) => `un error de lectura es CLAVE=MM, como bust=6 o length=4, no «${seen}»`,
		errorKey: ({ seen, known }) => `ninguna medida se llama «${seen}»; las clases son ${v.list(known)}`
	};
};
