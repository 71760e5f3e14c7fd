import type { Caution, Cloth, CutCount, EdgeKind, RunName } from '../../garment.ts';
import type { garments as english } from '../en/garments.ts';
import { El, el } from './grammar.ts';

const CLOTHS: Readonly<Record<Cloth, string>> = { fabric: 'tela', lining: 'forro', interfacing: 'entretela' };

const EDGE_KINDS: Readonly<Record<EdgeKind, string>> = {
	seam: 'costura',
	fold: 'doblez',
	hem: 'bajo',
	opening: 'borde libre',
	dart: 'pinza'
};

const CAUTIONS: Readonly<Record<Caution, string>> = {
	tools:
		'Las tijeras, las cuchillas, los alfileres y las agujas cortan y pinchan. Sigue las normas del taller en el que trabajas.',
	iron: 'La plancha caliente quema la piel y la tela. Pruébala antes en un retal y déjala de pie cuando la sueltes.',
	wash: 'La tela que se va a lavar se lava antes de cortarla, porque encoge.',
	toile: 'Cose primero un trazado nuevo en tela barata. Ninguna regla sabe cómo es tu postura.',
	children:
		'Si es para un niño: los cordones y las cintas pueden engancharse (EN 14682) y la ropa de dormir puede arder (EN 14878; 16 CFR 1615 y 1616). Las normas locales van por delante.'
};

const counted = ({ in: cloth, count }: CutCount, onFold: boolean): string => {
	const some = `${count} en ${CLOTHS[cloth]}`;
	if (onFold) return `${some}, al doblez`;
	if (count % 2 === 1) return some;
	return count === 2 ? `${some}, un par` : `${some}, ${count / 2} pares`;
};

const runName = (run: RunName): string =>
	'label' in run ? run.label : `${run.piece}: ${run.edge} en el doblez`;

const EIGHTHS = ['', '1/8', '1/4', '3/8', '1/2', '5/8', '3/4', '7/8'] as const;

const OWN = { twin: 'el mismo borde de la otra', itself: 'el otro borde de esta pieza' } as const;

/** Pieces, cutting, notches, seams and their reports. */
export const garments: typeof english = (v) => ({
	cloth: ({ cloth }) => CLOTHS[cloth],
	edgeKind: ({ kind }) => EDGE_KINDS[kind],
	notchStyle: ({ style }) => ({ single: 'sencillo', double: 'doble' })[style],
	caution: ({ caution }) => CAUTIONS[caution],
	made: ({ name, chosen }) => (chosen.length === 0 ? name : `${name} (${v.list(chosen)})`),
	toile: ({ garment }) => `${garment}, prenda de prueba`,
	forBody: ({ body }) => `Para ${body}`,
	cut: ({ cut, onFold }) => `Corta ${cut.map((each) => counted(each, onFold)).join('; ')}`,
	layOnFold: ({ edge }) => `Coloca ${el(edge)} sobre el doblez de la tela`,
	onBias: 'Al bies: los hilos cruzan la pieza a 45°',
	grainAlongFold: 'El hilo va a lo largo del doblez',
	grainAlongMark: ({ mark }) => `El hilo va a lo largo de la línea marcada «${mark}»`,
	grainAsArrow: 'El hilo va como indica la flecha',
	gathered: 'frunce aquí',
	buttonAndHole: 'botón y ojal',
	buttons: ({ count, width, hole }) =>
		`${v.plural(count, { one: '1 botón', other: `${count} botones` })} de ${v.length(width)}: cada aspa es uno, y se cosen en el delantero izquierdo. Ojales de ${v.length(hole)}, horizontales, en el delantero derecho; empiezan por el extremo más cercano al borde`,
	selvedge: 'paralelo al orillo',
	arrowToSelvedge: 'Coloca el hilo de la flecha paralelo al orillo',
	meets: ({ pieces, own, notch }) =>
		`con ${own === undefined ? v.list(pieces.map(({ number, name }) => `${number} ${name}`)) : OWN[own]}${notch === undefined ? '' : `, piquete ${{ single: 'sencillo', double: 'doble' }[notch]}`}`,
	edgeMeets: ({ edge, meets }) => `${El(edge)}: ${meets}`,
	noAllowance: 'Sin margen fuera de la línea de costura',
	allowances: (said) => {
		const none = [...said.none.map(el), ...(said.fold ? ['el doblez'] : [])];
		return [
			`Margen ${v.length(said.usual)}`,
			...said.differing.map(({ allowance, edges }) => `${v.list(edges.map(el))} ${v.length(allowance)}`),
			...(none.length > 0 ? [`sin margen en ${v.list(none)}`] : [])
		].join('; ');
	},
	run: ({ run }) => runName(run),
	runOff: ({ run, degrees }) => `${runName(run)}: un pico de ${v.fixed(degrees, 1)}°`,
	seamOff: ({ seam, difference, long }) =>
		`${seam}: al segundo lado ${long ? 'le sobran' : 'le faltan'} ${v.length(difference)}`,
	lengthOff: ({ label, length, because }) =>
		`${label}: ${v.length(length)}${because === undefined ? '' : `; ${because}`}`,
	ratioOff: ({ label, ratio, because }) =>
		`${label}: ${v.fixed(ratio, 2)}${because === undefined ? '' : `; ${because}`}`,
	worn: ({ garment, back, hem, buttons, gathered, sleeve }) =>
		[
			`${garment}, tal como se lleva, por delante y por detrás: ${v.length(back)} de largo en el centro de la espalda, ${v.length(hem)} de contorno de bajo`,
			...(gathered === undefined ? [] : [`la cintura fruncida ${v.fixed(gathered, 1)} veces`]),
			...(buttons === 0 ? [] : [v.plural(buttons, { one: '1 botón', other: `${buttons} botones` })]),
			...(sleeve === undefined ? [] : [`mangas de ${v.length(sleeve)} de largo`])
		].join(', '),
	wornSide: ({ side }) => ({ front: 'Delantero', back: 'Espalda' })[side],
	wornCaption: 'Tal como se lleva, dibujado con los números del propio patrón.',
	wornFile: ({ garment, name }) => `${garment} de ${name}, tal como se lleva`,
	metres: ({ tenths }) => `${v.fixed(tenths / 10, 1)} m`,
	yards: ({ eighths }) => {
		const [whole, part] = [Math.floor(eighths / 8), EIGHTHS[eighths % 8] ?? ''];
		const count = [whole > 0 || part === '' ? String(whole) : '', part].filter(Boolean).join(' ');
		return `${count} ${eighths > 8 ? 'yardas' : 'yarda'}`;
	}
});
