import type { Voice } from '../voice.ts';

const near = (name: string | undefined): string => (name === undefined ? '' : ` (did you mean "${name}"?)`);

const ALLOWED =
	'numbers, + - * /, brackets, measurements, allowances, distance(A, B), length(line), greater(a, b), lesser(a, b), choice(over, yes, no) and pi';

/** What holds a circle together, said only so far as it can be read at a glance. */
const circle = (names: readonly string[], word: string): string => names.slice(0, 8).join(` ${word} `);

interface Named {
	readonly name: string;
}

/** What is wrong with a method file or a garment file. */
export const reading = (_voice: Voice) => ({
	pointName: 'a point is named by one capital letter, with a number after it if need be',
	lineName: 'a line is named in small letters, such as shoulder or armholeLevel',
	pieceName: 'a name here is written in small letters, such as front or armhole',
	edgeName: 'an edge is named with its piece, such as front.side',
	takenName: 'this name means something else to the program; choose another',

	takenAllowance: 'this name is taken by another allowance or by a measurement',
	inheritedAllowance: 'a method that it uses has this allowance already',
	twoSteps: 'another step has this name already',
	twoEdges: ({ name }: Named) => `two edges are called "${name}"`,
	levelsAndGirths: ({ levels, girths }: { readonly levels: number; readonly girths: number }) =>
		`there are ${levels} levels for ${girths} girths; each level has one`,
	noSource: ({ need, near: like }: { readonly need: string; readonly near: string | undefined }) =>
		`it starts from "${need}", which no step makes${near(like)}`,
	stepsInCircle: ({ names }: { readonly names: readonly string[] }) =>
		`these steps go round in a circle: ${circle(names, 'needs')}`,
	methodsInCircle: ({ names }: { readonly names: readonly string[] }) =>
		`these methods go round in a circle: ${circle(names, 'uses')}`,
	needsBound: 'a need says atLeast, moreThan or atMost',
	noMethodUsed: (given: { readonly near: string | undefined }) =>
		`no method is used by this name${near(given.near)}`,
	noTraced: (given: { readonly method: string; readonly name: string; readonly near: string | undefined }) =>
		`${given.method} has no "${given.name}"${near(given.near)}`,
	carriedKind: ({ of, name }: Named & { readonly of: string }) =>
		`${of} cannot become ${name}: a point stays a point, a line a line`,

	inFormula: (given: { readonly position: number; readonly text: string; readonly slip: string }) =>
		`position ${given.position} of "${given.text}": ${given.slip}`,
	drawnNames: 'distance() and length() take the names of points and lines, nothing else',
	unknownFunction: ({ name }: Named) => `"${name}" is not known; a formula may hold ${ALLOWED}`,
	takesNames: ({ name, wanted, count }: Named & { readonly wanted: number; readonly count: number }) =>
		`${name}() takes ${wanted} name(s), not ${count}`,
	lacksPart: ({ name }: Named) => `${name}() lacks a part`,
	dividesByNothing: 'it divides by nothing',
	notAllowed: ({ sign }: { readonly sign: string }) =>
		`"${sign}" is not allowed; a formula may hold ${ALLOWED}`,
	cannotStand: `this cannot stand in a formula, which may hold ${ALLOWED}`,
	oneSort: ({ name }: Named) => `${name}() takes formulas of one sort: lengths, or plain numbers`,
	plainNumber: 'a plain number cannot be added to a length or taken from it; name an allowance instead',
	notFormula: ({ description }: { readonly description: string }) =>
		`${description}; a formula may hold ${ALLOWED}`,
	notLength: 'this is not a length',
	notShare: 'this must be a plain share such as 1 / 2',
	tooLong: ({ most }: { readonly most: number }) => `a formula may have ${most} signs`,
	notFinite: 'it divides by nothing, or comes to more than any draft measures',

	fileTooLong: ({ most }: { readonly most: number }) => `a file of this kind may have ${most} kB`,
	tooDeep: ({ most }: { readonly most: number }) => `this is nested more than ${most} levels deep`,
	tab: 'a tab stands where spaces must',
	twoDocuments: 'a second document begins here; the file may hold one',
	twice: ({ name }: Named) => `"${name}" stands here twice`,
	alias: 'anchors and aliases (& and *) are not known here; write the values out',
	tag: 'tags (!) are not known here',
	notYaml: ({ code }: { readonly code: string }) => `this is not YAML (${code})`
});
