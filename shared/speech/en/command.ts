import type { Mm } from '../../units.ts';
import type { Verdict } from '../../verdict.ts';
import type { Voice } from '../voice.ts';
import { USAGE } from './usage.ts';

/** Why the system does not let a file be read or written, for what a person can put right; other codes are shown as they are. */
const CANNOT_READ: Readonly<Record<string, string>> = {
	ENOENT: 'there is no such file',
	EISDIR: 'this is a folder, not a file',
	ENOTDIR: 'a part of this path is not a folder',
	EACCES: 'this user may not read the file',
	ENAMETOOLONG: 'this name is too long',
	ELOOP: 'these links lead round in a circle',
	EINVAL: 'the system cannot read this',
	ERR_STRING_TOO_LONG: 'this file is too large',
	ERR_FS_FILE_TOO_LARGE: 'this file is too large',
	ERR_INVALID_ARG_VALUE: 'this is not the name of a file'
};
const CANNOT_WRITE: Readonly<Record<string, string>> = {
	ENOENT: 'there is no such folder',
	EISDIR: 'this is a folder, not a file',
	ENOTDIR: 'a part of this path is not a folder',
	EEXIST: 'this is a file, not a folder',
	EACCES: 'this user may not write here',
	EPERM: 'this user may not write here',
	EROFS: 'nothing can be written here',
	ENOSPC: 'the disk is full',
	EDQUOT: 'the disk is full',
	EFBIG: 'the file would be larger than this user may write',
	ELOOP: 'these links lead round in a circle',
	ENAMETOOLONG: 'this name is too long',
	ERR_INVALID_ARG_VALUE: 'this is not the name of a file'
};

const ASK = {
	draft: 'name the method to draft, such as back-block',
	pattern: 'name the garment, such as course-dress',
	export: 'name the garment or the method, such as course-dress',
	check: 'name the method to check, such as back-block'
} as const;

interface Named {
	readonly name: string;
}
interface Near {
	readonly near: string | undefined;
}
interface Flag {
	readonly flag: string;
}
interface Count {
	readonly count: number;
}
interface Id {
	readonly id: string;
}
interface Seen {
	readonly seen: string;
}
interface To {
	readonly to: string;
}
interface Formats {
	readonly formats: readonly string[];
}
interface Within {
	readonly within: boolean;
}

interface Total {
	readonly mark: number;
	readonly outOf: number;
	readonly mistakes: number;
	readonly excused?: number;
	readonly cannotTell?: number;
	readonly consequences: number;
}

const didYouMean = (near: string | undefined): string =>
	near === undefined ? '' : ` (did you mean "${near}"?)`;

/** What the command line says. */
export const command = (v: Voice) => ({
	cannotRead: ({ code }: { readonly code: string }) => CANNOT_READ[code] ?? `this cannot be read (${code})`,
	cannotWrite: ({ code }: { readonly code: string }) =>
		CANNOT_WRITE[code] ?? `nothing can be written here (${code})`,
	notJson: ({ problem }: { readonly problem: string }) => `this is not JSON: ${problem}`,
	keyTwice: 'this key stands here twice',
	keyLost: 'nothing can have this name',
	standardInput: 'standard input',
	cannotPrint: ({ code }: { readonly code: string }) =>
		`standard output: ${CANNOT_WRITE[code] ?? `nothing can be written here (${code})`}`,

	usage: ({ of }: { readonly of: keyof typeof USAGE }): string => USAGE[of],
	noCommand: ({ name, near }: Named & Near) =>
		`There is no command "${name}"${didYouMean(near)}. Try square-across --help.`,
	noOption: ({ flag, near }: Flag & Near) => `there is no option ${flag}${didYouMean(near)}`,
	needsFile: ({ flag }: Flag) => `${flag} needs the name of a file after it`,
	needsValue: ({ flag }: Flag) => `${flag} needs a value after it`,
	noValue: ({ flag }: Flag) => `${flag} takes no value`,
	givenTwice: ({ flag, values }: Flag & { readonly values: readonly string[] }) =>
		`${flag} was given twice: ${values.join(', ')}`,
	ask: ({ of }: { readonly of: 'draft' | 'pattern' | 'export' | 'check' }): string => ASK[of],
	oneAtATime: ({ kind, more }: { readonly kind: 'method' | 'garment'; readonly more: string }) =>
		`one ${kind} at a time; "${more}" is one word too many`,
	bodyOrBodies: ({ body, bodies }: { readonly body: string; readonly bodies: string }) =>
		`give --body or --bodies, not both (${body}, ${bodies})`,
	giveBody: 'give --body FILE for one body, or --bodies FILE.csv for many',
	isGarment: ({ id }: Id) =>
		`"${id}" is a garment, not a method; its pieces are made by: square-across pattern ${id}`,
	isMethod: ({ id }: Id) => `"${id}" is a method, not a garment; it is drafted by: square-across draft ${id}`,
	noLanguage: ({ seen, known }: { readonly seen: string; readonly known: readonly string[] }) =>
		`--language is ${v.either(known)}, not ${seen}`,

	notTable: ({ problem }: { readonly problem: string }) => `this is not a table: ${problem}`,
	emptyFile: 'the file is empty',
	noRows: 'there is a heading, but no row below it',
	twoColumns: ({ name }: Named) => `two columns are called "${name}"`,
	columns: ({ names }: { readonly names: readonly string[] }) => `column ${names.join(', ')}`,
	missingColumns: ({ id, near, needed }: Id & Near & Count & { readonly needed: readonly string[] }) =>
		`missing${didYouMean(near)}; ${id} needs ${needed.join(', ')}`,
	formerName: ({ key, now }: { readonly key: string; readonly now: string }) =>
		`${key} is called ${now} now, and is read as that`,
	ignored: ({ columns, more }: { readonly columns: readonly (Named & Near)[]; readonly more: number }) =>
		`ignored, because no column has this name: ${columns.map(({ name, near }) => `${name}${didYouMean(near)}`).join(', ')}${more > 0 ? `, and ${more} more` : ''}`,
	row: ({ number, line }: { readonly number: number; readonly line: number }) =>
		`row ${number} (line ${line})`,
	tooWide: ({ cells, headings }: { readonly cells: number; readonly headings: number }) =>
		`${cells} cells under ${headings} headings; put a decimal comma between quotes: "96,5"`,
	notUnit: ({ seen }: Seen) => `a unit is cm, mm or in, not ${seen}`,
	emptyCell: ({ id }: Id) => `empty; ${id} needs this measurement`,
	submissionShape: ({ seen }: Seen) =>
		`a submission is {"placements":{...}} and may have a body, not ${seen}`,
	bodyMissing: 'missing; give one in the line, or --body for all',
	line: ({ number }: { readonly number: number }) => `line ${number}`,
	couldNotJudge: ({ place }: { readonly place: string }) => `${place}: the program could not judge this`,
	giveOneBody: 'give --body FILE.json',
	stdinOrPlacements: ({ file }: { readonly file: string }) =>
		`give --stdin or --placements, not both (${file})`,
	marksForOne: ({ file }: { readonly file: string }) =>
		`--marks is for one learner, not for --stdin (${file})`,
	tapeAlone: ({ file }: { readonly file: string }) =>
		`--tape is given alone, without --placements or --stdin (${file})`,
	measuredWithTape: '--measured-with belongs to --tape',
	noTape: ({ seen, tapes }: Seen & { readonly tapes: readonly string[] }) =>
		`what it was measured with is ${tapes.join(' or ')}, not ${seen}`,
	tapePair: ({ seen }: Seen) => `a distance goes from one point to another, as "O-A", not ${seen}`,
	tapeColumns: ({ name }: Named) =>
		`the column ${name} is missing; a table of readings has from, to and read`,
	noTapePoint: ({ name, near }: Named & Near) => `no point ${name} is measured here${didYouMean(near)}`,
	tapeOpen: ({ points }: { readonly points: readonly string[] }) =>
		`Not found by these distances: ${points.join(', ')}.`,
	givePlacements: 'give --placements FILE.json or --tape FILE for one learner, or --stdin for many',
	placementsShape: ({ seen }: Seen) => `this is not {"A":[across,down],...}: ${seen}`,
	typedNeeds:
		'a typed distance needs "from" (a point that is drafted) and "go" (up, down, across or in) here',

	answer: ({ answer }: { readonly answer: Verdict['answer'] }): string => answer,
	off: ({ by }: { readonly by: Mm }) => `${v.inUnit('mm').length(by)} off`,
	notes: ({ notes }: { readonly notes: readonly string[] }) => notes.join(' or '),
	passedOver: ({ steps }: { readonly steps: readonly string[] }) =>
		`${steps.join(', ')}: not asked for with this body, and passed over`,
	fromOwnMarks: 'from own earlier marks',
	checkTitle: ({ name, body }: Named & { readonly body: string }) => `${name} for ${body}`,
	checkTotal: ({ mark, outOf, mistakes, consequences, excused, cannotTell }: Total) =>
		`${v.fixed(mark, 2)} of ${outOf}; mistakes: ${mistakes}, consequences: ${consequences}${excused === undefined ? '' : `, excused: ${excused}`}${cannotTell === undefined ? '' : `, to be measured again: ${cannotTell}`}`,
	marks: 'Marks',

	refused: ({ reasons }: { readonly reasons: readonly string[] }) => reasons.join('; '),
	missing: ({ id }: Id & Count) => `missing; ${id} needs it`,
	edgesShape: ({ seen }: Seen) => `allowances of edges are {"front.side":1.5,...}, not ${seen}`,
	onFold: 'this edge lies on the fold of the cloth and is not cut',

	endsOther: ({ to, ending, format }: To & { readonly ending: string; readonly format: string }) =>
		`"${to}" ends in .${ending}, but --as says ${format}`,
	noEnding: ({ to, formats }: To & Formats) =>
		`"${to}" does not end in .${formats.join(', .')}; say --as ${formats.join('|')}`,
	isFileName: ({ to, ending }: To & { readonly ending: string }) =>
		`many files go into a folder, and "${to}" is a file's name; say --to FOLDER --as ${ending}`,
	notDate: ({ text }: { readonly text: string }) => `"${text}" is not a date such as 2026-01-31`,
	noPieceNamed: 'no piece is named after --pieces, so there is nothing to draw',
	giveTo: 'give --to FILE, such as dress.pdf, or for many files a folder',
	onlyFor: ({ flag, format, formats }: Flag & Formats & { readonly format: string }) =>
		`${flag} is for ${formats.join(', ')}, not for ${format}`,
	isDraft: ({ id, format, formats }: Id & Formats & { readonly format: string }) =>
		`${id} is a draft, and a ${format} file holds the pieces of a garment; take ${formats.join(', ')}`,
	hasNoPieces: ({ id }: Id) => `${id} is a draft, which has no pieces to choose or to set apart`,
	noToile: ({ id, ids }: Id & { readonly ids: readonly string[] }) =>
		`${id} is not cut as a toile; take ${ids.join(' or ')}`,
	rowsFailed: ({ failed, rows }: { readonly failed: number; readonly rows: number }) =>
		`${failed} of ${rows} rows could not be made`,
	marksPdf: ({ to }: To) => `a marks sheet is a .pdf, not "${to}"`,

	draftTitle: ({ name, body }: Named & { readonly body: string }) =>
		`${name} for ${body}, in cm from the corner`,
	pointHeadings: ['point', 'across', 'down'],
	lineHeadings: ['line', 'length'],
	patternTitle: ({ name, body }: Named & { readonly body: string }) => `${name} for ${body}, in cm`,
	edgeHeadings: ['edge', 'length', 'allowance'],
	seamHeadings: ['first', 'second', 'to ease', 'off by'],
	seams: 'Seams, along the stitching line',
	runs: 'Runs across seams and into folds',
	numbers: 'Numbers',
	warnings: 'Warnings',
	none: 'none',
	order: 'Order of sewing',
	cautions: 'Cautions',
	agree: ({ within }: Within): string => (within ? 'agree' : 'DO NOT AGREE'),
	smooth: ({ within }: Within): string => (within ? 'smooth' : 'A CORNER'),
	outOfBounds: 'out of bounds',

	wrongPort: ({ most, seen }: Seen & { readonly most: number }) =>
		`--port must be a whole number from 0 to ${most}; saw "${seen}".`,
	closedPort: ({ port }: { readonly port: number }) => `This user may not open port ${port}.`,
	wrongHost: ({ seen }: Seen) => `--host must be an address of this machine; saw "${seen}".`,
	takenPort: ({ first, last }: { readonly first: number; readonly last: number }) =>
		`${first === last ? `Port ${first} is` : `Ports ${first} to ${last} are`} taken. Choose another with --port.`,
	serving: ({ address, everywhere }: { readonly address: string; readonly everywhere: boolean }) =>
		`Square Across is at ${address}${everywhere ? ', and at the other addresses of this machine' : ''} (Ctrl+C stops it)`,
	building: ({ seconds }: { readonly seconds: number }) => `Building (about ${seconds} s, once)…`,
	built: 'Built.',
	buildFailed: 'The app could not be built:',
	takesNothing: ({ command: name, seen }: Seen & { readonly command: string }) =>
		`${name} takes no arguments; saw "${seen}".`
});
