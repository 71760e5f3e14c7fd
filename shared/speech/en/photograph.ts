import { mm, type Mm } from '../../units.ts';
import type { Noun } from '../noun.ts';
import type { Voice } from '../voice.ts';
import { the, The } from './grammar.ts';

const REFUSED = {
	'no-picture': 'This file is no picture that can be read. Choose a JPEG, PNG or WebP file.',
	heic: 'This picture is kept as HEIC, which this browser cannot read. Save it as JPEG (in the camera’s settings: “most compatible”), then choose it again.',
	huge: 'This file is larger than 80 megabytes. Choose the picture as the camera took it.',
	'many-pixels':
		'This picture has more than 60 megapixels, too many for a browser. Save a smaller copy of it.',
	small: 'This picture is too small to measure in: a side has fewer than 400 pixels.',
	broken: 'This picture cannot be read: the file is damaged, or only a part of it came.'
} as const;

const WARNINGS = {
	'one-corner':
		'The markers lie close together. Far from them a small error grows: lay one at each corner of the drawing.',
	few: 'Fewer than three markers were found, so it cannot be seen whether the paper lies flat.',
	blur: 'The picture is blurred. Hold the camera still, and let it focus on the paper.',
	bulge:
		'The markers do not lie in one plane, or are not all of one print: the paper bulges. Weight it flat, then take the picture again. Until then each point’s own error is larger.',
	coarse: 'The sheet is small in the picture. Come nearer, so that it fills the picture.',
	screen:
		'This seems to be a picture of a screen. On a screen nothing has its true size: photograph the paper.'
} as const;

/** How a draft or a piece is measured in a photograph. */
export const photograph = (v: Voice) => ({
	about:
		'Lay the markers beside your drawing, photograph the whole from above, and tap your points in the picture. The picture stays on this device.',
	print: '1. Print the markers',
	which: 'Which markers',
	sheets: {
		cards: 'Eight cards, for a large sheet',
		'small-sheet': 'One sheet, A4 or Letter',
		'large-sheet': 'One sheet, A3',
		worksheet: 'The worksheet of the draft'
	},
	onWorksheet:
		'A worksheet at full size has markers round its grid. Save it where the draft is printed and saved, under “A worksheet”, and draft on it.',
	paper: 'Paper',
	make: 'Make the markers (PDF)',
	flat: 'Weight the paper flat and lay a card at each corner of the drawing, beside every line; with one more half way along each side it is seen whether the paper bulges. Hold the camera right above the middle. What bulges by 3 mm is up to 2 mm off at the edge.',
	take: '2. Take the picture',
	choose: 'Choose a picture',
	camera: 'Use the camera',
	hold: 'Hold still, and take it',
	holding: ({ frame, of }: { frame: number; of: number }) =>
		`Hold still: ${v.number(frame)} of ${v.number(of)}`,
	sharpest: 'The sharpest of ten pictures was taken.',
	close: 'Close the camera',
	cameraDenied:
		'The camera may not be used. Allow it for this page in the browser’s settings, or choose a picture.',
	noCamera: 'No camera was found. Choose a picture instead.',
	live: 'What the camera sees',
	looking: 'Looking for the markers …',
	cancel: 'Stop',
	stopped: 'Stopped.',
	notLoaded: 'What reads pictures did not come. Look at the connection, then try again.',
	ourFault: ({ told }: { told: string }) => `The picture could not be read, and it is our fault: ${told}`,
	refused: ({ why }: { why: keyof typeof REFUSED }): string => REFUSED[why],
	warning: ({ warning }: { warning: keyof typeof WARNINGS }): string => WARNINGS[warning],
	found: ({ count, residual }: { count: number; residual: Mm }) =>
		`${v.plural(count, { one: '1 marker was found', other: `${v.number(count)} markers were found` })}. Their corners agree to ${v.fixed(Math.max(0.01, residual), 2)} mm.`,
	agree: ({ residual }: { residual: Mm }) =>
		`The four points agree with your distances to ${v.seen(residual)}.`,
	noMarkers:
		'No markers were found in the picture. Tap four points whose distances you know instead, or take another picture.',
	check: 'The check line of the markers',
	checkWhat: ({ length }: { length: Mm }) =>
		`Measure it on your print: it should be ${v.length(length)}. Leave it empty if it is.`,
	outOfScale: ({ percent }: { percent: number }) =>
		`The markers were printed ${v.fixed(Math.abs(percent), 1)} % too ${percent > 0 ? 'large' : 'small'}. This is taken into account.`,
	notALength: 'Type a length between 9/10 and 11/10 of what it should be.',
	tap: '3. Tap your points',
	next: ({ step }: { step: Noun }) => `Tap ${the(step)} in the picture`,
	points: 'Points',
	what: 'What is tapped',
	whats: { places: 'points', curves: 'curves, along their way' },
	lines: 'Curves',
	isTapped: 'tapped',
	picture: 'Your picture, with what was tapped and the computed draft',
	loupe: 'Loupe: arrow keys move the mark by a pixel, with Shift by ten; Enter goes on to the next',
	here: 'Is the crossing here?',
	takeIt: 'Take the crossing',
	taken: 'On the crossing of two lines.',
	byHand: 'Put by hand.',
	remove: 'Take it away',
	goOn: 'Next point',
	right: 'To the right, mm',
	down: 'Down, mm',
	move: 'Move',
	drawDraft: 'Draw the computed draft into the picture',
	mirrored: 'Your drawing is a mirror image of the computed draft: it is compared turned over.',
	two: 'Tap at least two points: then it is known how the drawing lies, and the others are looked for where they should be.',
	place: ({ number }: { number: number }) => `place ${v.number(number)}`,
	frame:
		'The drawing is laid on the computed draft so that most points agree, the first ones before the later ones.',
	four: 'Four known points',
	fourAbout:
		'Tap four points that lie far apart, no three in a row: corners of the paper will do. Then measure the distances between them.',
	corner: ({ letter }: { letter: string }) => `point ${letter}`,
	between: ({ from, to }: { from: string; to: string }) => `${from} to ${to}`,
	five: 'Five of the six are enough; the sixth shows whether they agree.',
	disagree: 'These distances cannot all be right: no four points lie so. Measure them again.',
	along: ({ step, count }: { step: Noun; count: number }) =>
		count === 0
			? `Tap along ${the(step)}, from one end to the other: both ends, and at least three places between`
			: `${The(step)}: ${v.plural(count, { one: '1 place', other: `${v.number(count)} places` })}; go on to its other end`,
	curve: ({ greatest, longer, deeper }: { greatest: Mm; longer: Mm; deeper: Mm | undefined }) =>
		`At most ${v.seen(greatest)} from the computed line; ${Math.abs(longer) < 0.5 ? 'as long' : `${v.seen(mm(Math.abs(longer)))} ${longer > 0 ? 'longer' : 'shorter'}`}${deeper === undefined ? '' : `; ${Math.abs(deeper) < 0.5 ? 'as hollow' : `${v.seen(mm(Math.abs(deeper)))} ${deeper > 0 ? 'deeper' : 'flatter'}`}`}.`,
	ends: ({ start, end }: { start: Mm; end: Mm }) =>
		`Its ends lie ${v.seen(start)} and ${v.seen(end)} from theirs.`,
	undo: 'Take the last place away',
	pieceAbout:
		'Lay the piece flat with the markers round it, photograph it from above, and tap its corners and notches; then go along its curved edges.',
	pieceWhich: 'Piece',
	pieceLine: 'Measured along',
	pieceLines: { cutting: 'the cutting line', stitching: 'the stitching line' },
	pieceCorner: ({ number }: { number: number }) => `corner ${v.number(number)}`,
	pieceNotch: ({ number }: { number: number }) => `notch ${v.number(number)}`,
	pieceOver: 'The piece lies turned over: it is compared so.',
	pieceWithin: ({ within }: { within: Mm }) => `A corner may lie ${v.seen(within)} from its place.`,
	pieceCurve: ({ from, to }: { from: number; to: number }): Noun => ({
		article: 'the',
		name: `edge from corner ${v.number(from)} to corner ${v.number(to)}`
	}),
	pieceCurveTitle: ({ from, to, edges }: { from: number; to: number; edges: readonly string[] }) =>
		`From corner ${v.number(from)} to corner ${v.number(to)}: ${edges.join(', ')}`,
	pieceWhats: { places: 'corners and notches', curves: 'curved edges, along their way' },
	pieceCurveWithin: ({ point, curve, length }: Record<'point' | 'curve' | 'length', Mm>) =>
		`A curved edge may stray ${v.seen(curve)}, its ends ${v.seen(point)}, and be ${v.seen(length)} too long or too short.`,
	pieceCurveRow: ({ error }: { error: Mm }) => `± ${v.seen(error)}`,
	pieceAnswers: { right: 'right', wrong: 'not right', 'cannot-tell': 'cannot be told' },
	pieceRow: ({ off, error }: { off: Mm; error: Mm }) => `${v.seen(off)} off, ± ${v.seen(error)}`,
	pieceSide: ({ from, to, longer }: { from: string; to: string; longer: Mm }) =>
		`From ${from} to ${to}: ${Math.abs(longer) < 0.5 ? 'as long as computed' : `${v.seen(mm(Math.abs(longer)))} ${longer > 0 ? 'longer' : 'shorter'}`}.`
});
