import type { MeasurementKey } from '../../measurements.ts';
import type { Mm } from '../../units.ts';
import type { Voice } from '../voice.ts';
import { the } from './grammar.ts';
import { measurementNoun } from './nouns.ts';

/** A kind of file or of sheet: in a list, on its button, and what it is good for. */
interface Kind {
	readonly name: string;
	readonly save: string;
	readonly about: string;
}

/** Making and saving files. */
export const files = (v: Voice) => {
	const FILES = {
		pages: {
			name: 'PDF in pages',
			save: 'Save the PDF',
			about:
				'For a printer at home: pages that are joined with tape. Print at 100 %, and measure the square on the first page.'
		},
		sheet: {
			name: 'PDF on a large sheet',
			save: 'Save the PDF',
			about:
				'For a copy shop with a wide printer. Ask for a print at 100 %, and measure the square on the first sheet.'
		},
		svg: {
			name: 'SVG drawing',
			save: 'Save the drawing',
			about: 'For a drawing program: in millimetres, each piece and each kind of line a group with a name.'
		},
		png: {
			name: 'Picture (PNG)',
			save: 'Save the picture',
			about: 'To look at or to show, not to cut by: 4 dots to the millimetre, fewer for what is very large.'
		},
		dxf: {
			name: 'Drawing file (DXF)',
			save: 'Save the drawing file',
			about:
				'For a cutting room: a block for each piece, in millimetres. Its layers are after ASTM D6673, from memory: no conformity is promised.'
		},
		csv: {
			name: 'Table (CSV)',
			save: 'Save the table',
			about:
				'For a spreadsheet: the lengths of all edges and seams, where the notches lie, and the numbers to note.'
		},
		json: {
			name: 'Data (JSON)',
			save: 'Save the data',
			about: 'For another program: every line of every piece, and the reports, in millimetres.'
		}
	} as const satisfies Record<string, Kind>;
	const SHEETS = {
		draft: {
			name: 'The draft',
			save: 'Save the draft as PDF',
			about: 'The computed draft in pages, with the check squares and a map.'
		},
		worksheet: {
			name: 'A worksheet',
			save: 'Save the worksheet as PDF',
			about:
				'The bare grid in pages, and what to draw on it step by step, for drafting by hand. At full size it has the markers by which a photograph of it is read.'
		},
		rules: {
			name: 'A rule sheet',
			save: 'Save the rule sheet as PDF',
			about: "The measurements, and each step's rule with the arithmetic for this body."
		},
		tape: {
			name: 'A tape sheet',
			save: 'Save the tape sheet as PDF',
			about: 'The distances by which a draft on paper is checked with a tape, with room for what it reads.'
		},
		drawing: {
			name: 'A drawing',
			save: 'Save the drawing as SVG',
			about: 'For a drawing program: in millimetres, each kind of line a group with a name.'
		},
		picture: {
			name: 'A picture',
			save: 'Save the picture as PNG',
			about:
				'The computed draft as one picture, to be shown on a screen or put into a text. It is not for measuring.'
		}
	} as const satisfies Record<string, Kind>;
	const SCALES = { full: 'Full size', half: 'Half', quarter: 'A quarter' } as const;
	const SIZES = { full: '', half: ', half size', quarter: ', quarter size' } as const;
	const TITLES = {
		draft: '',
		worksheet: 'Worksheet, ',
		rules: 'Rule sheet, ',
		tape: 'Tape sheet, ',
		cards: 'Step cards, ',
		drawing: '',
		picture: ''
	} as const;
	return {
		kindOfFile: 'Kind of file',
		file: ({ kind }: { kind: keyof typeof FILES }): string => FILES[kind].name,
		saveFile: ({ kind }: { kind: keyof typeof FILES }): string => FILES[kind].save,
		aboutFile: ({ kind }: { kind: keyof typeof FILES }): string => FILES[kind].about,
		atTrueScale: ({ method }: { method: string }) => `${method} at true scale`,
		printAtFull: ({ body }: { body: string }) =>
			`For ${body}. Choose your paper, print at 100 % (actual size), and measure the square on the first page before you trust the rest.`,
		stitchingLine:
			'The outline is the stitching line: it has no seam allowance yet. Mind cutting tools and irons, and the rules of the room you work in.',
		saveIt: 'Save it',
		whatIsSaved: 'What is saved',
		sheet: ({ sheet }: { sheet: keyof typeof SHEETS }): string => SHEETS[sheet].name,
		saveSheet: ({ sheet }: { sheet: keyof typeof SHEETS }): string => SHEETS[sheet].save,
		aboutSheet: ({ sheet }: { sheet: keyof typeof SHEETS }): string => SHEETS[sheet].about,
		withNumbers: 'With the worked numbers of each step',
		paper: 'Paper',
		roll: ({ width }: { width: Mm }) => `Roll ${v.inUnit('cm').length(width)} wide`,
		scale: 'Scale',
		scaleOf: ({ scale }: { scale: keyof typeof SCALES }): string => SCALES[scale],
		asToile: 'As a toile, to try on in cheap cloth: 2.5 cm outside every seam',
		saveToile: 'Save the toile as PDF',
		eachPiece: 'A file for each piece',
		counting: 'The pages are being counted …',
		pages: ({ pages, paper }: { pages: number; paper: string }) =>
			`${v.plural(pages, { one: '1 page', other: `${pages} pages` })} of ${paper}, after a first one with the check squares and a map.`,
		sheets: ({ sheets, paper }: { sheets: number; paper: string }) =>
			`${v.plural(sheets, { one: '1 sheet', other: `${sheets} sheets` })} of ${paper}, after a first one with the check squares and a map.`,
		/** `paper` is paper off a roll. */
		offRoll: ({ sheets, paper }: { sheets: number; paper: string }) =>
			`${v.plural(sheets, { one: '1 sheet', other: `${sheets} sheets` })} off ${paper}, after a first one with the check squares and a map.`,
		pagesOfWords:
			'With all the pieces come pages of words: what to cut and to buy, what the lines mean, and how it is sewn.',
		pageMap: ({ printed, blank }: { printed: readonly string[]; blank: readonly string[] }) =>
			`How the pages lie together: ${printed.join(', ')}` +
			(blank.length > 0 ? `; left out, since nothing is on them: ${blank.join(', ')}` : ''),
		allPieces: ({ count }: { count: number }) => `Pieces: all ${count}`,
		somePieces: ({ count, of }: { count: number; of: number }) => `Pieces: ${count} of ${of}`,
		pieces: 'Pieces',
		all: 'All',
		none: 'None',

		cancel: 'Cancel',
		howFar: 'How far it is',
		madeOf: ({ done, of }: { done: number; of: number }) => `${done} of ${of} are made`,
		beingMade: 'Being made …',
		stopped: 'Stopped; nothing was saved.',
		made: ({ name }: { name: string }) => `Made: ${name}.`,
		madeMany: ({ count }: { count: number }) => `${count} files are made.`,
		saveEach: 'Save each:',
		dots: ({ dots }: { dots: number }) => `${v.number(dots, 1)} dots to the millimetre.`,
		notMade: ({ told }: { told: string }) =>
			`This could not be made. The fault is ours, not yours (${told}). Try once more.`,
		notLoaded: 'What makes files could not be loaded. Is this device connected? Try once more.',
		chooseOne: 'choose at least one piece',
		noPiece: 'no piece is chosen',
		noSheet: 'Choose at least one kind of sheet.',
		lacks: ({ body, keys }: { body: string; keys: readonly MeasurementKey[] }) =>
			`${body} lacks ${v.list(keys.map((key) => the(measurementNoun(key))))}`,
		/** The reasons are clauses of a refusal. */
		cannotDraft: ({ body, reasons }: { body: string; reasons: readonly string[] }) =>
			`nothing can be drafted for ${body} yet: ${reasons.join('; ')}`,

		/** Names of files. */
		sheetTitle: ({ sheet, method }: { sheet: keyof typeof TITLES; method: string }) =>
			`${TITLES[sheet]}${method}`,
		sized: ({ name, scale }: { name: string; scale: keyof typeof SIZES }) => `${name}${SIZES[scale]}`,
		/** What is printed is called by its scale and its paper as well: one that was printed on other paper, or smaller, is soon cut. */
		onPaper: ({ name, scale, paper }: { name: string; scale: keyof typeof SIZES; paper: string }) =>
			`${name}${SIZES[scale] || ', full size'}, ${paper}`,
		pieceFile: ({ number, piece, name }: { number: number; piece: string; name: string }) =>
			`${number} ${piece}, ${name}`,
		toRead:
			'What the browser prints of this page is to be read: it is not to scale. Save the PDF and print that.',
		measurementsFile: 'measurements'
	};
};
