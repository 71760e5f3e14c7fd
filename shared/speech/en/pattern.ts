import type { Mm, Radians } from '../../units.ts';
import type { Noun } from '../noun.ts';
import type { Voice } from '../voice.ts';
import { capital } from './grammar.ts';
import { smallIn } from './slight.ts';

/** One side of a seam: the pieces that it runs over, whether they are several, and how long it is. */
export interface SeamSide {
	readonly pieces: readonly string[];
	readonly several: boolean;
	readonly length: Mm;
}
/** The two sides of a seam as they are sewn. */
export interface SewnSides {
	readonly first: SeamSide;
	readonly second: SeamSide;
	/** Which side is longer than it should be, and by how much. */
	readonly longer?: { readonly side: 'first' | 'second'; readonly by: Mm } | undefined;
	/** Negative where the second is caught in a longer one. */
	readonly ease: Mm;
}
/** What a group of allowances is for. */
export type AllowanceGroupName = 'design' | 'ease' | 'cutting';
/** Pieces by what they are called. */
interface Pieces {
	readonly pieces: readonly string[];
}
/** A count of something, of so many. */
interface OpenOf {
	readonly open: number;
	readonly seams: number;
}

/** The pages of patterns. */
export const pattern = (v: Voice) => {
	const angle = (each: Radians): string => `${v.fixed(Math.abs((each * 180) / Math.PI), 1)}°`;
	const small = (length: Mm): string => smallIn(v, length);
	const LAID = { fold: 'on the fold', pairs: 'in pairs, right sides together', once: 'once' } as const;
	const GROUPS: Readonly<Record<AllowanceGroupName, readonly [title: string, about: string, usual: string]>> =
		{
			design: ['Design', 'What makes this garment look as it does.', 'Back to the usual design'],
			ease: [
				'Ease',
				'The block under it: room to move in, and where its lines lie.',
				'Back to the usual ease'
			],
			cutting: [
				'Cutting',
				'What is cut outside the stitching line. Each piece can also have its own, edge by edge.',
				'Back to the usual cutting'
			]
		};
	const sides = ({ first, second, longer, ease }: SewnSides): string => {
		const said = ({ pieces, several, length }: SeamSide): string =>
			`${v.list(pieces)} ${several ? 'together ' : ''}${v.length(length)}`;
		const both = `${said(first)}, ${said(second)}`;
		if (longer) {
			const { pieces } = longer.side === 'first' ? first : second;
			return `${both}: ${v.list(pieces)} is ${small(longer.by)} too long.`;
		}
		if (ease < 0) return `${both}: the second is caught in the seam of the first, and ends before it does.`;
		if (ease > 0) return `${both}: ${v.length(ease)} is eased in.`;
		const isOne = first.pieces.length === 1 && first.pieces[0] === second.pieces[0];
		if (isOne) return `${v.list(first.pieces)}: both edges are ${v.length(first.length)} long.`;
		const alike = v.length(first.length) === v.length(second.length);
		return alike && !first.several && !second.several
			? `${v.list(first.pieces)} and ${v.list(second.pieces)}: both edges are ${v.length(first.length)} long.`
			: `${both}: the same length.`;
	};
	return {
		title: ({ garment }: { garment: string }) => `${garment}: the pattern`,
		all: 'Patterns',
		allAbout: ({ body }: { body: string }) =>
			`A whole garment in one step: every piece ready to be cut, for ${body}. Choose another body at the top of the page.`,
		piecesOf: ({ garment, body }: { garment: string; body: string }) =>
			`The pieces of ${garment} for ${body}`,
		whatYouMake: 'What you can make',
		wornBy: ({ garment, name }: { garment: string; name: string }) =>
			`${garment} as ${name} wears it, front and back`,
		followsBody:
			'Each is drawn from its pattern’s own numbers, for the invented body that you draft for. Choose another at the top of the page.',
		someMissing: ({ body }: { body: string }) => `Some measurements of ${body} are missing.`,
		notYet: ({ body }: { body: string }) => `${body} cannot have it yet.`,
		size: ({ pieces, seams }: { pieces: number; seams: number }) =>
			`${v.plural(pieces, { one: '1 piece', other: `${pieces} pieces` })}, ${seams} seams`,

		allMatch: ({ pieces, body, seams }: { pieces: number; body: string; seams: number }) =>
			`${pieces} pieces for ${body}; all ${seams} seams match.`,
		someOpen: ({ pieces, body, open, seams }: OpenOf & { pieces: number; body: string }) =>
			`${pieces} pieces for ${body}; ${open} of ${seams} seams do not match.`,
		workedAgain: ({ summary }: { summary: string }) => `Worked again. ${summary}`,
		onThisPage: 'On this page',
		toSeams: 'Seams',
		toNumbers: 'Numbers',
		toCutting: 'Cutting list',
		checkPiece: 'Check a cut paper piece by photograph',
		checkNotCome: 'This part of the page did not come. Look at the connection, then load the page again.',
		toFabric: 'Fabric',
		toSewing: 'Sewing',
		toTable: 'To the table',
		toLessons: 'Its lessons',
		theNumbers: 'The numbers',
		changeNumbers: 'Change the numbers',
		undo: 'Undo the last change',
		piecesNow: 'The pieces, as they are now',
		notWorked: 'This could not be worked',
		faultIsOurs: 'The fault is ours, not yours. Put the last number back, or go back to the usual ones.',
		faultIsOursBelow:
			'The fault is ours, not yours. The pieces below are those of the last numbers that could be worked. Put the last number back, or go back to the usual ones.',
		lookFirst: 'Look at this before you cut',
		pieces: 'The pieces',
		doSeamsMatch: 'Do the seams match?',
		numbersToNote: 'Numbers to note',
		cuttingList: 'Cutting list',
		howMuchFabric: 'How much fabric?',
		sewingOrder: 'Order of sewing',
		takeCare: 'Take care',
		table: 'Take it to the table',
		tableAbout: 'The pattern at true scale, made here in your browser: no measurement leaves this device.',

		measurementsOf: ({ body }: { body: string }) => `Measurements: ${body}`,
		ownKept: 'Your own: kept in this browser as you type.',
		invented: ({ body }: { body: string }) =>
			`${body} is invented and stays as it is. Work on your own numbers instead:`,
		enterOwn: 'Enter your own',
		copyBody: ({ body }: { body: string }) => `Copy ${body} and change the copy`,
		copyName: ({ body }: { body: string }) => `My ${body}`,
		group: ({ group }: { group: AllowanceGroupName }) => GROUPS[group][0],
		groupAbout: ({ group }: { group: AllowanceGroupName }) =>
			`${GROUPS[group][1]} An empty field means the usual number, in grey.`,
		groupUsual: ({ group }: { group: AllowanceGroupName }) => GROUPS[group][2],
		changed: ({ count }: { count: number }) => `${count} changed`,
		numbers: ({ count }: { count: number }) => `${count} numbers`,
		toSlide: ({ noun }: { noun: Noun }) => `${capital(noun.name)}, to slide`,
		times: ({ value }: { value: number }) => `${v.fixed(value, 2)} times`,

		linesMean: 'What the lines mean',
		cutHere: 'cut here',
		sewHere: 'sew here',
		onFold: 'on the fold of the cloth',
		grain: 'grain',
		notches: 'notches, single and double',
		fold: 'fold',
		piece: (piece: {
			name: string;
			number: number;
			edges: readonly { readonly title: string; readonly length: Mm; readonly fold: boolean }[];
		}) =>
			`${piece.name}, piece ${piece.number}. Edges: ${v.list(
				piece.edges.map(
					({ title, length, fold }) => `${title} ${v.length(length)}${fold ? ' on the fold' : ''}`
				)
			)}.`,
		allowances: ({ own }: { own: number }) =>
			own > 0 ? `Allowance of each edge: ${own} of your own` : 'Allowance of each edge',
		edge: ({ title }: { title: string }) => capital(title),
		edgeIs: ({ kind, length }: { kind: string; length: Mm }) => `${kind}, ${v.length(length)} long`,
		usualAllowances: 'Back to the usual allowances',

		number: 'No.',
		pieceHeader: 'Piece',
		cloth: ({ cloth }: { cloth: string }) => capital(cloth),
		howLaid: 'How it is laid',
		laid: ({ laid, bias }: { laid: keyof typeof LAID; bias: boolean }): string =>
			bias ? `${LAID[laid]}, on the bias` : LAID[laid],

		seamsMatch: ({ seams }: { seams: number }) => `All ${seams} seams match.`,
		seamsOpen: ({ open, seams }: OpenOf) => `${open} of ${seams} seams do not match.`,
		howMeasured:
			'Both edges are measured along the stitching line, with darts closed. Choose a seam to see its two pieces laid edge to edge.',
		seams: 'Seams',
		seam: 'Seam',
		first: 'First',
		second: 'Second',
		difference: 'Difference',
		sewnTogether: 'Sewn together',
		matches: 'matches',
		caughtIn: 'caught in it',
		easedIn: ({ ease }: { ease: Mm }) => `matches, ${v.length(ease)} eased in`,
		secondLong: ({ by }: { by: Mm }) => `the second is ${v.slight(by)} too long`,
		secondShort: ({ by }: { by: Mm }) => `the second is ${v.slight(by)} too short`,
		noCorners: 'No line has a corner where it crosses a seam.',
		corners: ({ bent, lines }: { bent: number; lines: number }) =>
			`${bent} of ${lines} lines have a corner where they cross a seam.`,
		alsoAtFolds: 'The same holds at a fold, where a line meets its own image when the cloth is opened.',
		allLines: ({ lines }: { lines: number }) => `All ${lines} lines`,
		linesAcross: 'Lines across seams',
		line: 'Line',
		corner: 'Corner',
		angle: (at: { angle: Radians }) => angle(at.angle),
		runsOn: 'Runs on',
		smoothly: 'smoothly',
		atMost: (at: { angle: Radians }) => `no: at most ${angle(at.angle)}`,

		sewn: (sewn: SewnSides) => sides(sewn),
		sewnPicture: ({ label, sewn }: { label: string; sewn: SewnSides }) =>
			`${label}, laid edge to edge. ${sides(sewn)}`,
		tooLong: ({ by }: { by: Mm }) => `${small(by)} too long`,
		otherHalf: 'other half',
		laidFlat: ({ by }: { by: Mm }) => `Laid flat, the two lines part by up to ${small(by)}.`,
		shapesDiffer: 'Their shapes differ: one is bent to the other as it is sewn.',
		sameCurve: 'Laid one over the other, as they are sewn, they are the same curve.',
		dartsOpen: 'The darts are drawn open. They are sewn closed first, and are not in the lengths.',
		endSmooth: ({ label }: { label: string }) => `${label}: runs on smoothly`,
		endCorner: ({ label, angle: at }: { label: string; angle: Radians }) =>
			`${label}: a corner of ${angle(at)}`,

		clothWidth: 'Width of the cloth',
		anotherWidth: 'Another width',
		selvedges: 'selvedge to selvedge',
		yourCloth: 'Width of your cloth',
		yourClothWithin: ({ range }: { range: readonly [Mm, Mm] }) => {
			const { least, most } = v.range(range);
			return `edge to edge, from ${least} to ${most}`;
		},
		/** In bold how much cloth, as it is asked for in a shop; what stands before and after it. */
		estimateFor: ({ width, name }: { width: Mm; name: string }): readonly [string, string] => [
			'An estimate: about ',
			` of cloth ${v.length(width)} wide, for ${name}. Buy more where the cloth may shrink, has a nap, or has a pattern to be matched.`
		],
		/** `cloth` is a length as it is asked for in a shop. */
		estimate: ({ cloth, width }: { cloth: string; width: Mm }) =>
			`About ${cloth} of cloth ${v.length(width)} wide. This is an estimate: check it by laying your pieces out, and allow more for cloth that shrinks, has a nap or a pattern to be matched.`,
		laying: ({ width, length }: { width: Mm; length: Mm }) =>
			`The pieces laid on cloth ${v.length(width)} wide, folded lengthwise: ${v.length(length)} of it.`,
		clothMark: ({ halves }: { halves: number }) => `${v.number(halves / 2)} ${v.unit === 'in' ? 'yd' : 'm'}`,
		tooWide: ({ pieces }: Pieces) =>
			`This cloth is too narrow for: ${v.list(pieces)}. Without it the estimate says too little; choose a wider cloth.`,
		single: ({ pieces }: Pieces) =>
			`After the folded part the cloth is opened out. Cut from the single layer: ${v.list(pieces)}.`,
		joined: ({ pieces }: Pieces) =>
			`Too wide for half of this cloth: ${v.list(pieces)}. It is laid in two halves, each with an allowance in place of the fold, and sewn together there.`,
		interfacing: ({ cloth, width }: { cloth: string; width: Mm }) =>
			`Interfacing: about ${cloth}, ${v.length(width)} wide.`,
		odd: ({ pieces }: Pieces) => `Cut from one of the two layers only: ${v.list(pieces)}.`
	};
};
