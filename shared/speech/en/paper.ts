import type { Mm } from '../../units.ts';
import type { Noun } from '../noun.ts';
import type { Voice } from '../voice.ts';
import { capital, The, the } from './grammar.ts';

/** What a drawing says of its own scale. */
const SCALES: Readonly<Record<'full' | 'half' | 'quarter', string>> = {
	full: 'Drawn at full size.',
	half: 'Drawn at half size, for class work: do not cut cloth by it.',
	quarter: 'Drawn at a quarter of its size, for class work: do not cut cloth by it.'
};

/** What the lines and marks of a piece mean to whoever cuts and sews. */
const LINES = {
	cutting: 'Cut here.',
	stitching: 'Sew here. Between this line and the one that is cut lies the allowance.',
	fold: 'Lay this edge on the fold of the cloth, as the bracket shows, and do not cut it.',
	grain: 'The threads: lay the arrow parallel to the selvedge, the woven edge of the cloth.',
	notch: 'Notches, single and double: snip a little way in. Notches of the same seam meet.',
	mark: 'A line to mark on the cloth: a centre, a level, or the line along which a dart is folded.',
	dart: 'A dart: fold it along its middle line and sew from the mouth to the tip, which has a small ring.',
	drill: 'A cross in a ring is a point to mark on the cloth: its name stands beside it.',
	button:
		'A slanting cross is a button; the line with two bars is its buttonhole. One front has the buttons, the other the buttonholes.',
	gather: 'Gather this edge.',
	wear: 'What does not fit the body, where it was measured: read “Can it be worn?” before you cut.'
} as const;

/** What is printed on pages, pieces and sheets. */
export const paper = (v: Voice) => ({
	/** Papers by their ids; paper off a roll is said by its width, as it is sold. */
	sheet: ({ id }: { id: string }) => (id === 'letter' ? 'US Letter' : id.toUpperCase()),
	roll: ({ width }: { width: Mm }) => `a roll ${v.inUnit('cm').length(width)} wide`,
	madeFor: ({ what, body }: { what: string; body: string }) => `${what} for ${body}`,
	workedFor: ({ what, body }: { what: string; body: string }) => `${what}, for ${body}`,
	scale: ({ scale }: { scale: keyof typeof SCALES }) => SCALES[scale],
	fold: 'on the fold',
	edgeOnFold: ({ title }: { title: string }) => `${capital(title)}, on the fold`,
	grid: 'grid',
	printAtFull: ({ pages, paper: name }: { pages: number; paper: string }) =>
		`${pages === 1 ? 'One page' : `${pages} pages`} of ${name}. Print at 100 % (actual size), then measure the squares before you trust the rest.`,
	squaresOnSheet:
		'The large sheet has the same two squares: measure them there as well, since it is often printed by another machine.',
	howToJoin:
		'Cut the left and the top edge of a page off where it says so, lay it on the dotted line of its neighbour, cross on cross, and tape. Pages in brackets on the map are empty and are not printed.',
	eachSide100: 'Each side is 100 mm.',
	eachSide4: 'Each side is 4 inches.',
	cutOff: ({ edge }: { edge: 'left' | 'top' }) => `cut the ${edge} edge off`,
	pageEmpty: ({ page }: { page: string }) => `${page} is empty`,
	pageGoesOn: ({ page, edge }: { page: string; edge: 'right' | 'bottom' }) =>
		`${page} goes on ${edge === 'right' ? 'the right' : 'below'}`,
	fullSize: '100 %',
	pageOf: ({ page, of }: { page: number; of: number }) => `page ${page} of ${of}`,
	gridScale: ({ reduced }: { reduced: number }) => `Scale 1 : ${reduced}.`,
	gridDots: ({ apart }: { apart: Mm }) => `From dot to dot is ${v.length(apart)} of the sheet.`,
	nothingToPrint: 'there is nothing to print: nothing of it is drawn',
	noStep: ({ method, step }: { method: string; step: string }) => `${method} has no step "${step}"`,
	label: ({ noun }: { noun: Noun }) => the(noun),
	pointTitle: ({ point, noun }: { point: string; noun: Noun }) => `${point}: ${the(noun)}`,
	lineTitle: ({ noun }: { noun: Noun }) => The(noun),
	madeOn: ({ day }: { day: string }) => `Made on ${day}.`,
	cuttingList: 'Cutting list',
	pieceNumber: 'No.',
	pairMeans:
		'The two pieces of a pair mirror each other: cut both at once from folded cloth, or turn the paper over for the second.',
	cutting: 'Cut',
	whatYouNeed: 'What you need',
	clothWidth: 'Cloth',
	fabricWide: ({ width }: { width: Mm }) => `Fabric ${v.length(width)} wide`,
	interfacingWide: ({ width }: { width: Mm }) => `Interfacing ${v.length(width)} wide`,
	/** The cloth is too narrow for pieces on its fold, which then have a seam there. */
	clothJoined: ({ cloth, pieces }: { cloth: string; pieces: readonly string[] }) =>
		`${cloth}; with a seam in place of the fold: ${v.list(pieces)}`,
	clothNeeded: 'So much of it, about',
	clothEstimate:
		'This is an estimate: lay the pieces out before you buy, and allow more for cloth that shrinks, has a nap or a pattern to be matched.',
	tooNarrow: 'too narrow',
	number: 'Numbers of this garment',
	howMuch: 'How much',
	buttons: ({ width }: { width: Mm }) => `Buttons ${v.length(width)} wide`,
	linesMean: 'What the lines and marks mean',
	lineMeans: ({ kind }: { kind: keyof typeof LINES }): string => LINES[kind],
	pageMark:
		'Not part of the pattern: a cross in a square stands where two pages join. Lay the crosses on one another.',
	sewingOrder: 'Order of sewing',
	seamsAgree: ({ open, seams }: { open: number; seams: number }) =>
		open === 0 ? `All ${seams} seams match.` : `${open} of ${seams} seams do not match.`,
	finished: 'Finished measurements',
	round: 'Round the body',
	finishedRound: 'Finished',
	usualRound: 'Usual',
	usualMeans:
		'What is usual is common practice, from no published standard: the body with the least and the most room that such a garment is worn with.',
	measurements: 'Measurements',
	changedNumbers: 'Changed numbers',
	nothingChanged: 'Every number is the usual one.',
	usual: 'Usual',
	measurement: 'Measurement',
	allowance: 'Allowance',
	chosen: 'Chosen',
	allowanceTitle: ({ noun }: { noun: Noun }) => capital(noun.name),
	rules: 'Rules',
	cutCards: 'Cut the cards apart along the lines. The number that is worked and a sketch go on the right.',
	step: 'Step',
	rule: 'Rule',
	worked: 'Worked',
	tapeHow:
		'Lay the paper flat. Measure straight from mark to mark, in order, and write down what the tape reads. A point is found as soon as two distances reach it from points that were found before.',
	tapeNumber: 'No.',
	fromTo: 'From – to',
	tapeReads: 'The tape reads',
	worksheetStart:
		'Point O is where the rows of dots marked 0 cross. Across is to the right of it, down is below it. Draw each step on the grid before you read the next.',
	givenLengths: ({ given }: { given: readonly { readonly noun: Noun; readonly length: Mm }[] }) =>
		`${capital(v.list(given.map(({ noun, length }) => `${the(noun)} is ${v.length(length)}`)))}.`,
	answer: 'Answer',
	note: 'Note',
	mark: 'Mark',
	total: 'Total',
	outOf: ({ outOf }: { outOf: number }) => `out of ${v.number(outOf)}`,
	workOf: ({ work, learner }: { work: string; learner: string }) => `${work}. ${learner}`,
	workOfNobodyYet: ({ work }: { work: string }) => `${work}. Name: ____________________________`,
	drawingFile: 'Units: millimetres. Layers after ASTM D6673 (withdrawn), from memory.',
	degrees: 'deg',
	/** What has a key in files, as a table names it: by the key that is written into them, and in another language also in its own words. */
	keyed: ({ key }: { key: string; noun: Noun }) => key,
	columns: {
		what: 'what',
		piece: 'piece',
		name: 'name',
		label: 'label',
		kind: 'kind',
		across: 'across_mm',
		down: 'down_mm',
		length: 'length_mm',
		allowance: 'allowance_mm',
		otherLength: 'other_length_mm',
		within: 'within'
	},
	rows: { point: 'point', line: 'line', edge: 'edge', notch: 'notch', seam: 'seam', number: 'number' },
	lengthKind: 'length',
	within: ({ within }: { within: boolean }): string => (within ? 'yes' : 'no')
});
