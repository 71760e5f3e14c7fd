import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { parse } from 'svelte/compiler';
import { PROJECT } from '../architecture/tree-copy.ts';

/** Words that stand in code, where no other language can say them. */
export interface Left {
	readonly file: string;
	readonly line: number;
	readonly text: string;
}

interface Node {
	readonly type: string;
	readonly [key: string]: unknown;
}

/** Two words with a space between them, or one with a capital as on a button: ids and keys are neither. */
const SENTENCE = /\p{L}{2,}[,;:.’'”)]* [(«“"]?\p{L}{2,}|\p{L}[,;:.]? \p{Ll}{2,} |^\p{Lu}\p{Ll}+[.:!?…]?$/u;
/** Any word: between tags, whatever is written is read. */
const WORD = /\p{L}{2,}/u;
/** Attributes of elements that are read; a component may show any of its own. */
const READ_ALOUD = new Set([
	'title',
	'aria-label',
	'aria-description',
	'aria-roledescription',
	'placeholder',
	'alt',
	'content',
	'label'
]);
/** What is thrown or logged about a fault of ours is for whoever mends it. */
const FOR_US = /^(Error|TypeError|RangeError|console)$/;

const isNode = (value: unknown): value is Node =>
	typeof value === 'object' && value !== null && typeof (value as Partial<Node>).type === 'string';

/** The first name of a call's function: `console` of `console.error(...)`. */
const callee = ({ callee: called }: Node): string => {
	let at: unknown = called;
	while (isNode(at) && at.type === 'MemberExpression') at = at['object'];
	return isNode(at) && typeof at['name'] === 'string' ? at['name'] : '';
};

/** Whether nothing below a node is shown to anyone: names of modules, types, faults of ours, names of classes. */
const isForMachines = (node: Node): boolean => {
	if (/^(Import|ExportAll|StyleSheet|StyleDirective|ClassDirective|Comment)/.test(node.type)) return true;
	if (node.type.startsWith('TS')) return !/Expression$/.test(node.type);
	// What an error of our own says of itself: only bad input is shown, and it holds data.
	if (node.type === 'CallExpression' && isNode(node['callee']) && node['callee'].type === 'Super')
		return true;
	if (node.type === 'NewExpression' || node.type === 'CallExpression') return FOR_US.test(callee(node));
	return false;
};

/** The words that a node itself says, with values left out; undefined where it says none. */
const saidBy = (node: Node): string | undefined => {
	if (node.type === 'Literal') return typeof node['value'] === 'string' ? node['value'] : undefined;
	if (node.type !== 'TemplateLiteral') return undefined;
	const parts = node['quasis'] as readonly { readonly value: { readonly cooked: string } }[];
	// Tags of a drawing are not read; what stands between them is.
	return parts
		.map(({ value }) => value.cooked)
		.join('…')
		.replace(/<[^>]*>/g, '');
};

/** The parts of a node that can hold words. */
const partsOf = (node: Node, component: boolean): readonly unknown[] => {
	if (node.type === 'Attribute') {
		return component || READ_ALOUD.has(String(node['name'])) || node['name'] === 'children'
			? [node['value']]
			: [];
	}
	const skipped = new Set([
		'parent',
		'loc',
		'range',
		'tokens',
		'comments',
		'leadingComments',
		'trailingComments'
	]);
	if ((node.type === 'Property' || node.type === 'PropertyDefinition') && node['computed'] === false)
		skipped.add('key');
	if (node.type === 'MemberExpression') skipped.add('property');
	if (node.type === 'TemplateLiteral') skipped.add('quasis');
	if (node.type.startsWith('TS')) return [node['expression']];
	return Object.entries(node).flatMap(([key, value]) => (skipped.has(key) ? [] : [value]));
};

const wordsIn = (root: unknown, text: string, file: string): Left[] => {
	const found: Left[] = [];
	const note = (node: Node, said: string): void => {
		found.push({
			file,
			line: text.slice(0, Number(node['start'])).split('\n').length,
			text: said.replace(/\s+/g, ' ').trim()
		});
	};
	const walk = (value: unknown, component: boolean): void => {
		if (Array.isArray(value)) {
			for (const each of value) walk(each, component);
			return;
		}
		if (!isNode(value) || isForMachines(value)) return;
		if (value.type === 'Text') {
			const said = String(value['data']);
			if (WORD.test(said)) note(value, said);
			return;
		}
		const said = saidBy(value);
		if (said !== undefined && SENTENCE.test(said.trim())) note(value, said);
		const within = value.type === 'Component' || (component && value.type === 'Attribute');
		for (const part of partsOf(value, within)) walk(part, within);
	};
	walk(root, false);
	return found;
};

/** The words that stand in one file's code. */
export const wordsInCode = (file: string, text: string): readonly Left[] => {
	// A module is read as the script of a component that has nothing else, so that one parser reads all.
	const whole = file.endsWith('.svelte')
		? text
		: `<script module lang="ts">${text.replace(/^#!/, '//')}</script>`;
	const { fragment, instance, module } = parse(whole, { modern: true });
	return [fragment, instance?.content, module?.content].flatMap((part) => wordsIn(part, whole, file));
};

/** Where people's sentences are to be found: everywhere but in the catalogues, and in tests. */
const isSearched = (file: string): boolean =>
	/\.(ts|js|svelte)$/.test(file) &&
	!file.startsWith(path.join('shared', 'speech')) &&
	!file.endsWith('.test.ts');

/** All words that stand in the program's code. */
export const wordsLeft = (): readonly Left[] =>
	['src', 'shared']
		.flatMap((folder) =>
			readdirSync(path.join(PROJECT, folder), { recursive: true, encoding: 'utf8' }).map((name) =>
				path.join(folder, name)
			)
		)
		.filter(isSearched)
		.sort()
		.flatMap((file) => wordsInCode(file, readFileSync(path.join(PROJECT, file), 'utf8')));
