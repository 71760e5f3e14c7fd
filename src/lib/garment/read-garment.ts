import { CUTTING_ALLOWANCES, type Allowance } from '#shared/allowances.ts';
import { BadInput } from '#shared/bad-input.ts';
import { garmentFileSchema, garmentWordsSchema, type GarmentFile } from '#shared/garment.ts';
import { MEASUREMENT_KEYS } from '#shared/measurements.ts';
import { oneOf, parseLength, parsed, readNumber as readShare } from '#shared/reading.ts';
import type { Language } from '#shared/speech/language.ts';
import { message } from '#shared/speech/message.ts';
import { readNoun, type Noun } from '#shared/speech/noun.ts';
import { allowanceNames, parseFormula, type KnownNames } from '#drafting/formula/parse.ts';
import { readUses, type FindMethod, type Told } from '#drafting/read-method.ts';
import type { Method } from '#drafting/method.ts';
import { stepMakes } from '#drafting/steps/kinds.ts';
import type { ButtonRule, EdgeRef, EdgeRule, Garment, NumberRule, PieceRule, SeamRule } from './garment.ts';
import { readGirths, readWear } from './read-wear.ts';
import { translated } from './translated.ts';
import { readWorn } from './worn/read-worn.ts';

type PieceFile = GarmentFile['pieces'][number];
type SeamFile = GarmentFile['seams'][number];
type NumberFile = GarmentFile['numbers'][number];

/** The allowances by kind, as formulas: what an edge is cut with where it says nothing of its own. */
const USUAL: Readonly<Record<EdgeRule['kind'], string>> = {
	seam: 'seamAllowance',
	opening: 'seamAllowance',
	dart: 'seamAllowance',
	hem: 'hemAllowance',
	fold: '0 * seamAllowance'
};

const stepNames = (method: Method, kind: 'point' | 'line'): readonly string[] =>
	method.steps.filter((step) => stepMakes(step) === kind).map(({ name }) => name);

/** What an edge is called: as its file says, else in English after its name (`standTop` is "the stand top edge", and a hem "the hem"). */
export const edgeWords = (
	{ name, label }: Pick<PieceFile['edges'][number], 'name' | 'label'>,
	language: Language
): { readonly noun: Noun; readonly title: string } => {
	if (label !== undefined) {
		const noun = readNoun(label, language);
		return { noun, title: noun.name };
	}
	const title = name.replace(/[A-Z0-9]+/g, (sign) => ` ${sign.toLowerCase()}`);
	const whole = /(^| )(edge|hem)$/.test(title) ? title : `${title} edge`;
	return { noun: { name: whole, article: 'the' }, title };
};

/** What the pieces of a garment are read with. */
interface Reading {
	readonly uses: Readonly<Record<string, Method>>;
	readonly known: KnownNames;
	readonly language: Language;
	readonly place: string;
}

const readButtons = (
	{ on, at, beyond, width, hole }: NonNullable<PieceFile['buttons']>,
	place: string,
	known: KnownNames
): ButtonRule => {
	const where = `${place}: buttons`;
	return {
		on,
		at,
		beyond: parseLength(beyond, 'cm', where),
		width: parseFormula(width, where, known),
		hole: parseFormula(hole, where, known)
	};
};

const readPiece = (file: PieceFile, number: number, { uses, known, language, place }: Reading): PieceRule => {
	const where = `${place}: piece ${file.key}`;
	oneOf('draft', file.draft, Object.keys(uses), where);
	const draft = uses[file.draft] as Method;
	const [points, lines] = [stepNames(draft, 'point'), stepNames(draft, 'line')];
	const edges = file.edges.map((edge): EdgeRule => {
		const at = `${where}: edge ${edge.name}`;
		for (const line of [...edge.lines, ...edge.instead]) oneOf('line', line, lines, at);
		return {
			...edge,
			...edgeWords(edge, language),
			allowance: parseFormula(edge.allowance ?? USUAL[edge.kind], `${at}: allowance`, known)
		};
	});
	const twice = edges.find(({ name }, i) => edges.findIndex((each) => each.name === name) !== i);
	if (twice) throw new BadInput(where, message('reading', 'twoEdges', { name: twice.name }));
	for (const point of [
		...file.grain,
		...file.drills.flatMap((each) => ('point' in each ? each.point : [])),
		...file.darts.map(({ tip }) => tip),
		...file.levels.map((each) => each.point),
		...(file.buttons ? [...file.buttons.on, file.buttons.at] : [])
	])
		oneOf('point', point, points, where);
	for (const line of [
		...file.marks.map((each) => each.line),
		...file.drills.flatMap((each) => ('end' in each ? each.end : [])),
		...file.darts.flatMap(({ legs }) => legs)
	])
		oneOf('line', line, lines, where);
	if (file.nest !== undefined) oneOf('point', file.nest, [...points, ...lines], where);
	const levels = file.levels.map(({ point, above, label }) => ({
		point,
		above: above === undefined ? undefined : parseFormula(above, where, known),
		label
	}));
	return { ...file, number, edges, levels, buttons: file.buttons && readButtons(file.buttons, where, known) };
};

const readRef = (name: string, pieces: readonly PieceRule[], place: string): EdgeRef => {
	const [piece = '', edge = ''] = name.split('.');
	const keys = pieces.map(({ key }) => key);
	const found = pieces.find(({ key }) => key === oneOf('piece', piece, keys, place));
	return {
		piece,
		edge: oneOf('edge', edge, found?.edges.map((each) => each.name) ?? [], `${place}: ${piece}`)
	};
};

const readSeam = (
	file: SeamFile,
	pieces: readonly PieceRule[],
	known: KnownNames,
	place: string
): SeamRule => {
	const where = `${place}: seam ${file.name}`;
	return {
		...file,
		first: file.first.map((name) => readRef(name, pieces, where)),
		second: file.second.map((name) => readRef(name, pieces, where)),
		within: parseLength(file.within, 'cm', where),
		ease: file.ease === undefined ? undefined : parseFormula(file.ease, `${where}: ease`, known)
	};
};

const readNumber = (file: NumberFile, known: KnownNames, place: string): NumberRule => {
	const where = `${place}: number ${file.name}`;
	const bound = (text: string | undefined): number | undefined => {
		if (text === undefined) return undefined;
		return file.kind === 'length' ? parseLength(text, 'cm', where) : readShare(text, where);
	};
	const wanted = file.kind === 'length' ? 'length' : 'share';
	return {
		...file,
		formula: parseFormula(file.formula, where, known, wanted),
		atLeast: bound(file.atLeast),
		atMost: bound(file.atMost),
		because: file.because
	};
};

const allowancesOf = (uses: Readonly<Record<string, Method>>): readonly Allowance[] => {
	const all = [...Object.values(uses).flatMap(({ allowances }) => allowances), ...CUTTING_ALLOWANCES];
	return [...new Map(all.map((each) => [each.key, each])).values()];
};

/** The points or lines that a garment's formulas may name: those of its drafts. */
const namesOf = (uses: Readonly<Record<string, Method>>, kind: 'point' | 'line'): readonly string[] =>
	Object.entries(uses).flatMap(([alias, method]) =>
		stepNames(method, kind).map((name) => `${alias}.${name}`)
	);

/**
 * Reads a garment from parsed YAML or JSON. `place` (the file's name) begins every error; `find` gives the
 * methods of its drafts, and names for one language. Names of drafts, lines, points, pieces and
 * edges that are not there are all found here, before any body is worked. Throws BadInput.
 */
export const readGarment = (
	input: unknown,
	place: string,
	find: FindMethod,
	{ language, words }: Told = { language: 'en' }
): Garment => {
	const written = parsed(garmentFileSchema, input, `${place}: `, 'garment');
	const file = words
		? translated(written, parsed(garmentWordsSchema, words.content, `${words.place}: `, 'garment'))
		: written;
	const uses = readUses(file.uses, place, find);
	const allowances = allowancesOf(uses);
	const known: KnownNames = {
		...allowanceNames(allowances),
		points: namesOf(uses, 'point'),
		lines: namesOf(uses, 'line')
	};
	const reading = { uses, known, language, place };
	const pieces = file.pieces.map((each, i) => readPiece(each, i + 1, reading));
	const onPieces = {
		...known,
		pieces: pieces.map(({ key }) => key),
		edges: pieces.flatMap(({ key, edges }) => edges.map(({ name }) => `${key}.${name}`))
	};
	const smooth = file.smooth.map(({ label, first, second }) => {
		const where = `${place}: smooth ${label}`;
		return { label, first: readRef(first, pieces, where), second: readRef(second, pieces, where) };
	});
	const named = new Set(Object.values(uses).flatMap(({ measurements }) => measurements));
	return {
		id: file.id,
		name: file.name,
		about: file.about,
		uses,
		allowances,
		measurements: MEASUREMENT_KEYS.filter((key) => named.has(key)),
		pieces,
		seams: file.seams.map((each) => readSeam(each, pieces, known, place)),
		smooth,
		numbers: file.numbers.map((each) => readNumber(each, known, place)),
		wear: file.wear.map((each) => readWear(each, { known: onPieces, allowances, pieces }, place)),
		worn: file.worn.map((each) =>
			readWorn(each, { known, pieces, edge: (name, at) => readRef(name, pieces, at) }, place)
		),
		girths: file.girths.map((each) => readGirths(each, onPieces, place)),
		order: file.order,
		toile: file.toile,
		cautions: file.cautions
	};
};
