import {
	isAlias,
	isCollection,
	isMap,
	isNode,
	isScalar,
	LineCounter,
	parseDocument,
	visit,
	type Node
} from 'yaml';
import { BadInput, cut } from '#shared/bad-input.ts';
import { message, type Message } from '#shared/speech/message.ts';

/** The longest file in bytes: ten times the longest there is, and short enough to be read in no time. */
const LONGEST = 64 * 1024;
/** The deepest nesting: four times the deepest there is. The parser goes down by calling itself, and would overflow. */
const DEEPEST = 40;

/** The first place that lies too deep, by indents, dashes and brackets; found without going down. */
const tooDeepAt = (text: string): number | undefined => {
	const indents: number[] = [];
	let open = 0;
	let start = 0;
	for (const line of text.split('\n')) {
		const lead = /^[ \t]*(?:[-?:] +)*/.exec(line)?.[0] ?? '';
		if (lead.length < line.length) {
			const columns = [lead.search(/\S|$/), ...[...lead.matchAll(/[-?:] +/g)].map((mark) => mark.index + 1)];
			for (const column of columns) {
				while ((indents.at(-1) ?? -1) >= column) indents.pop();
				indents.push(column);
			}
		}
		for (let i = 0; i < line.length; i++) {
			const sign = line[i];
			if (sign === '[' || sign === '{') open++;
			if (sign === ']' || sign === '}') open = Math.max(0, open - 1);
			if (open + indents.length > DEEPEST) return start + i;
		}
		start += line.length + 1;
	}
	return undefined;
};

/** What the parser finds, for the slips that people make; the others keep its code. */
const SLIPS: Readonly<Record<string, Message>> = {
	TAB_AS_INDENT: message('reading', 'tab'),
	MULTIPLE_DOCS: message('reading', 'twoDocuments'),
	TAG_RESOLVE_FAILED: message('reading', 'tag')
};

const keyOf = (node: unknown): string => (isScalar(node) ? String(node.value) : '');

/** The first key that stands twice, or the first alias. */
const firstSlip = (root: Node): readonly [offset: number, slip: Message] | undefined => {
	let found: readonly [number, Message] | undefined;
	visit(root, (_, node) => {
		if (!isNode(node)) return undefined;
		const offset = node.range?.[0] ?? 0;
		if (isAlias(node) || ((isScalar(node) || isCollection(node)) && node.anchor !== undefined))
			found = [offset, message('reading', 'alias')];
		if (isMap(node)) {
			const keys = new Set<string>();
			for (const { key } of node.items) {
				const name = keyOf(key);
				if (keys.has(name))
					found ??= [
						isNode(key) ? (key.range?.[0] ?? offset) : offset,
						message('reading', 'twice', { name: cut(name) })
					];
				keys.add(name);
			}
		}
		return found ? visit.BREAK : undefined;
	});
	return found;
};

/**
 * Reads the text of a method file, a garment file or their words. Throws BadInput whose place is the file with line and
 * column, as editors write them: `lessons/40-back-levels/method.yaml:3:5`.
 */
export const readYaml = (text: string, place: string): unknown => {
	if (Buffer.byteLength(text) > LONGEST)
		throw new BadInput(place, message('reading', 'fileTooLong', { most: LONGEST / 1024 }));
	const lines = new LineCounter();
	const refuse = (offset: number, slip: Message): never => {
		const { line, col } = lines.linePos(offset);
		throw new BadInput(`${place}:${line}:${col}`, slip);
	};
	for (let i = 0; i >= 0; i = text.indexOf('\n', i) + 1 || -1) lines.addNewLine(i);
	const deep = tooDeepAt(text);
	if (deep !== undefined) return refuse(deep, message('reading', 'tooDeep', { most: DEEPEST }));
	const document = parseDocument(text, { uniqueKeys: false, prettyErrors: false });
	const [problem] = [...document.errors, ...document.warnings];
	if (problem)
		return refuse(
			problem.pos[0],
			SLIPS[problem.code] ?? message('reading', 'notYaml', { code: problem.code })
		);
	const slip = document.contents && firstSlip(document.contents);
	if (slip) return refuse(...slip);
	return document.toJS({ maxAliasCount: 0 });
};
