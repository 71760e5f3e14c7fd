import type { Caution, Cloth, CutCount, EdgeKind, NotchStyle, RunName } from '../../garment.ts';
import type { Mm } from '../../units.ts';
import type { Noun } from '../noun.ts';
import type { Voice } from '../voice.ts';
import { The, the } from './grammar.ts';

const CLOTHS: Readonly<Record<Cloth, string>> = {
	fabric: 'fabric',
	lining: 'lining',
	interfacing: 'interfacing'
};

const EDGE_KINDS: Readonly<Record<EdgeKind, string>> = {
	seam: 'seam',
	fold: 'fold',
	hem: 'hem',
	opening: 'opening',
	dart: 'dart'
};

/**
 * What is said to whoever cuts and sews. The rules of the room, of the cloth's maker and of the law come before
 * anything said here. Standards named: EN 14682 (cords and drawstrings on children's clothing), EN 14878
 * (burning behaviour of children's nightwear), 16 CFR 1615 and 1616 (children's sleepwear, United States).
 */
const CAUTIONS: Readonly<Record<Caution, string>> = {
	tools: 'Scissors, blades, pins and needles cut and prick. Follow the rules of the room where you work.',
	iron: 'A hot iron burns skin and cloth. Try it on a scrap first, and stand it up when you let go of it.',
	wash: 'Cloth that will be washed is washed before it is cut, since it shrinks.',
	toile: 'Sew a new draft in cheap cloth first. No rule knows how you stand.',
	children:
		'For a child: cords and drawstrings can catch (EN 14682), and nightwear can burn (EN 14878; 16 CFR 1615 and 1616). The local rules come first.'
};

/**
 * How many are cut in one cloth. What does not lie on the fold is cut through two layers whose right sides meet, so an
 * even number is so many left and so many right (common practice, no source).
 */
const counted = ({ in: cloth, count }: CutCount, onFold: boolean): string => {
	const some = `${count} in ${CLOTHS[cloth]}`;
	if (onFold) return `${some} on the fold`;
	if (count % 2 === 1) return some;
	return count === 2 ? `${some}, as a pair` : `${some}, as ${count / 2} pairs`;
};

const runName = (run: RunName): string =>
	'label' in run ? run.label : `${run.piece}: ${run.edge} at the fold`;

/** Parts of a yard as the shop says them. */
const EIGHTHS = ['', '1/8', '1/4', '3/8', '1/2', '5/8', '3/4', '7/8'] as const;

/** What the drawing of a worn garment shows. */
interface WornSaid {
	readonly garment: string;
	/** Down the centre back, and the round of the hem. */
	readonly back: Mm;
	readonly hem: Mm;
	readonly buttons: number;
	/** How many times the waist is gathered, where it is. */
	readonly gathered: number | undefined;
	readonly sleeve: Mm | undefined;
}

/** A piece by its number and its name. */
interface NumberedPiece {
	readonly number: number;
	readonly name: string;
}

/** What an edge is sewn to: pieces, or the same edge of another one like it, or its own piece's other edge. */
interface Met {
	readonly pieces: readonly NumberedPiece[];
	readonly own: 'twin' | 'itself' | undefined;
	readonly notch: NotchStyle | undefined;
}

const OWN = { twin: 'the same edge of the other one', itself: 'the other edge of this piece' } as const;

/** Pieces, cutting, notches, seams and their reports. */
export const garments = (v: Voice) => ({
	cloth: ({ cloth }: { cloth: Cloth }) => CLOTHS[cloth],
	edgeKind: ({ kind }: { kind: EdgeKind }) => EDGE_KINDS[kind],
	notchStyle: ({ style }: { style: NotchStyle }) => ({ single: 'single', double: 'double' })[style],
	caution: ({ caution }: { caution: Caution }) => CAUTIONS[caution],
	/** A garment, and the named values that this one is made with. */
	made: ({ name, chosen }: { name: string; chosen: readonly string[] }) =>
		chosen.length === 0 ? name : `${name} (${v.list(chosen)})`,
	toile: ({ garment }: { garment: string }) => `${garment} as a toile`,
	forBody: ({ body }: { body: string }) => `For ${body}`,
	cut: ({ cut, onFold }: { cut: readonly CutCount[]; onFold: boolean }) =>
		`Cut ${cut.map((each) => counted(each, onFold)).join('; ')}`,
	layOnFold: ({ edge }: { edge: Noun }) => `Lay ${the(edge)} on the fold of the cloth`,
	onBias: 'On the bias: the threads cross the piece at 45°',
	grainAlongFold: 'The grain line runs along the fold',
	grainAlongMark: ({ mark }: { mark: string }) => `The grain line runs along the line marked “${mark}”`,
	grainAsArrow: 'The grain line runs as the arrow does',
	gathered: 'gather here',
	buttonAndHole: 'button and buttonhole',
	/** What is written on a piece of its buttons. */
	buttons: ({ count, width, hole }: { count: number; width: Mm; hole: Mm }) =>
		`${v.plural(count, { one: '1 button', other: `${count} buttons` })} ${v.length(width)} wide: a slanting cross each, to sew on to the left front. Buttonholes ${v.length(hole)} long, across, in the right front; they begin at the end nearer to the edge`,
	selvedge: 'parallel to the selvedge',
	arrowToSelvedge: 'Lay the arrow parallel to the selvedge',
	/** What an edge is sewn to: "to 2 Back bodice, double notch". */
	meets: ({ pieces, own, notch }: Met) =>
		`to ${own === undefined ? v.list(pieces.map(({ number, name }) => `${number} ${name}`)) : OWN[own]}${notch === undefined ? '' : `, ${notch} notch`}`,
	edgeMeets: ({ edge, meets }: { edge: Noun; meets: string }) => `${The(edge)}: ${meets}`,
	noAllowance: 'No allowance outside the stitching line',
	allowances: (said: {
		usual: Mm;
		differing: readonly { readonly allowance: Mm; readonly edges: readonly Noun[] }[];
		none: readonly Noun[];
		fold: boolean;
	}) => {
		const none = [...said.none.map(the), ...(said.fold ? ['the fold'] : [])];
		return [
			`Allowance ${v.length(said.usual)}`,
			...said.differing.map(({ allowance, edges }) => `${v.list(edges.map(the))} ${v.length(allowance)}`),
			...(none.length > 0 ? [`none on ${v.list(none)}`] : [])
		].join('; ');
	},
	run: ({ run }: { run: RunName }) => runName(run),
	runOff: ({ run, degrees }: { run: RunName; degrees: number }) =>
		`${runName(run)}: a corner of ${v.fixed(degrees, 1)}°`,
	seamOff: ({ seam, difference, long }: { seam: string; difference: Mm; long: boolean }) =>
		`${seam}: the second is ${v.length(difference)} too ${long ? 'long' : 'short'}`,
	lengthOff: ({ label, length, because }: { label: string; length: Mm; because: string | undefined }) =>
		`${label} is ${v.length(length)}${because === undefined ? '' : `: ${because}`}`,
	ratioOff: ({ label, ratio, because }: { label: string; ratio: number; because: string | undefined }) =>
		`${label} is ${v.fixed(ratio, 2)}${because === undefined ? '' : `: ${because}`}`,
	/** A garment as it is worn, for someone who cannot see its drawing. */
	worn: ({ garment, back, hem, buttons, gathered, sleeve }: WornSaid) =>
		[
			`${garment} as it is worn, front and back: ${v.length(back)} long down the centre back, the hem ${v.length(hem)} round`,
			...(gathered === undefined ? [] : [`the waist gathered ${v.fixed(gathered, 1)} times`]),
			...(buttons === 0 ? [] : [v.plural(buttons, { one: '1 button', other: `${buttons} buttons` })]),
			...(sleeve === undefined ? [] : [`sleeves ${v.length(sleeve)} long`])
		].join(', '),
	wornSide: ({ side }: { side: 'front' | 'back' }) => ({ front: 'Front', back: 'Back' })[side],
	wornCaption: 'As it is worn, drawn from the pattern’s own numbers.',
	wornFile: ({ garment, name }: { garment: string; name: string }) => `${garment} for ${name}, as it is worn`,
	metres: ({ tenths }: { tenths: number }) => `${v.fixed(tenths / 10, 1)} m`,
	yards: ({ eighths }: { eighths: number }) => {
		const [whole, part] = [Math.floor(eighths / 8), EIGHTHS[eighths % 8] ?? ''];
		const count = [whole > 0 || part === '' ? String(whole) : '', part].filter(Boolean).join(' ');
		return `${count} ${eighths > 8 ? 'yards' : 'yard'}`;
	}
});
