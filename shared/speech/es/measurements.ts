import type { measurements as english } from '../en/measurements.ts';
import { capital, el } from './grammar.ts';
import { measurementNoun } from './nouns.ts';

/** What is said of the invented bodies, by their ids. */
const BODIES: Readonly<Record<string, string>> = {
	heron:
		'Un cuerpo inventado: no se midió a nadie. De proporciones regulares; es el de los números resueltos de las lecciones.',
	wren: 'Un cuerpo inventado: no se midió a nadie. Menudo, de espalda corta y poco busto.',
	plover: 'Un cuerpo inventado: no se midió a nadie. De cadera ancha y cintura estrecha.',
	lark: 'Un cuerpo inventado: no se midió a nadie. Alto y largo de espalda, anotado en pulgadas tal como las da la cinta.',
	gannet: 'Un cuerpo inventado: no se midió a nadie. De espalda ancha y costados rectos.',
	eider:
		'Un cuerpo inventado: no se midió a nadie. De busto y cintura amplios y hombros caídos, con ajustes propios.',
	siskin:
		'Un cuerpo inventado: no se midió a nadie. De poco busto y muy derecho, con el delantero tan largo como la espalda, así que su patrón base no lleva pinza.'
};

/** So many measurements are named; of more only their number is said. */
const FEW = 3;

/** The page of measurements. */
export const measurements: typeof english = (v) => ({
	heading: 'Medidas',
	about:
		'Traza con uno de los cuerpos inventados de la clase de Alder Row, o con tus propias medidas. Lo que escribes se queda en este navegador: no se envía a ninguna parte.',
	draftFor: 'Trazar con las medidas de',
	yourOwn: 'tuyas',
	invented: 'inventadas',
	demoBody: ({ id }) => BODIES[id] ?? '',
	addOwn: 'Añadir las tuyas',
	allTaken: 'Ya están todas: empieza a trazar',
	notTaken: 'sin tomar',
	name: 'Nombre',
	more: 'Más medidas: ninguna hace falta',
	noneNeeded:
		'Para cualquier trazado bastan las diez de arriba. Cada una de estas da más seguridad en algo, sea una comprobación del trazado terminado o un número que eliges tú; deja vacía la que no hayas tomado.',
	howToTake: 'Cómo se toma',
	howToTakeThis: ({ title }) => `Cómo se toma: ${title}`,
	allowances: 'Ajustes: tus propios números',
	usual: 'Una casilla vacía quiere decir el número habitual, que está en gris.',
	range: ({ range }) => {
		const { least, most } = v.range(range);
		return `de ${least} a ${most}`;
	},
	save: 'Guardar en un archivo',
	remove: 'Quitar…',
	reallyRemove: 'Sí, quitar estas medidas',
	keep: 'Dejarlas',
	ready: 'Se puede trazar',
	wanted: ({ keys }) =>
		keys.length > FEW
			? `Faltan ${v.number(keys.length)} medidas por tomar`
			: `${v.plural(keys.length, { one: 'Falta', other: 'Faltan' })} por tomar: ${v.list(keys.map((key) => el(measurementNoun(key))))}`,
	lookAt: ({ of }) => `Revisa ${el(measurementNoun(of))}`,
	cannotDraw: 'con estos números no se puede trazar una de sus líneas',
	open: 'Abrir un archivo de medidas',
	opened: ({ name }) => `${name}: abierto y elegido.`,
	notOpened: ({ file, clause }) => `No se abrió ${file}: ${clause}.`,
	notSaved: 'no es un archivo de medidas como los que guarda esta página',
	because: ({ reason }) => capital(reason)
});
