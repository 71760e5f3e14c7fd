import { the } from '#shared/speech/en/grammar.ts';
import { parse } from 'yaml';
import { isMeasurementKey } from '#shared/measurements.ts';
import type { Method } from '#drafting/method.ts';
import { isGiven } from '#drafting/steps/kinds.ts';
import type { Garment } from '#garment/garment.ts';
import { lessonMetaSchema, type LessonMeta } from '#shared/lesson-meta.ts';
import type { LessonFile } from './lesson-files.ts';

/** What lessons may lean on. */
export interface Known {
	readonly components: readonly string[];
	readonly methods: ReadonlyMap<string, Method>;
	readonly garments: ReadonlyMap<string, Garment>;
}

/** A component as it stands in a lesson's text. */
interface Tag {
	readonly name: string;
	readonly closing: boolean;
	readonly values: Readonly<Record<string, string>>;
	/** What is left of the tag when its name and its quoted values are taken away. */
	readonly rest: string;
	/** Counted from the top of the file. */
	readonly line: number;
}

/** The values that each component takes, all of them needed. */
const VALUES: Readonly<Record<string, readonly string[]>> = {
	Step: ['name'],
	Figure: ['upto', 'caption'],
	GarmentPieces: [],
	Girths: ['of'],
	GarmentWorn: [],
	LayingFigure: [],
	OrderOfSewing: [],
	PieceFigure: ['piece', 'caption'],
	SewnSeam: ['seam'],
	Tape: ['of'],
	Toile: [],
	TryIt: ['of'],
	Comparison: []
};

const FRONT_MATTER = /^---\n([\s\S]*?)\n---\n/;

const metaOf = (text: string): { meta?: LessonMeta; problem?: string } => {
	const front = FRONT_MATTER.exec(text);
	if (!front) return { problem: 'there is no front matter between two lines of ---' };
	const parsed = lessonMetaSchema.safeParse(parse(front[1] ?? ''));
	if (parsed.success) return { meta: parsed.data };
	const [issue] = parsed.error.issues;
	return { problem: `front matter: ${issue?.path.join('.') ?? ''}: ${issue?.message ?? ''}` };
};

const tagsIn = (text: string): readonly Tag[] =>
	[...text.matchAll(/<(\/?)([A-Za-z]\w*)([^>]*)>/g)].map((found) => {
		const [, slash = '', name = '', inside = ''] = found;
		const pairs = [...inside.matchAll(/(\w+)="([^"]*)"/g)].map(([, key = '', value = '']) => [key, value]);
		return {
			name,
			closing: slash !== '',
			values: Object.fromEntries(pairs) as Record<string, string>,
			rest: inside.replace(/\w+="[^"]*"/g, '').trim(),
			line: text.slice(0, found.index).split('\n').length
		};
	});

const stepTags = (text: string): readonly Tag[] =>
	tagsIn(text).filter(({ name, closing }) => name === 'Step' && !closing);

/** The steps that a lesson asks for, in order. */
const stepsOf = ({ text }: LessonFile): readonly string[] =>
	stepTags(text).map(({ values }) => values['name'] ?? '');

const badComponent = (tag: Tag, { components }: Known): string | undefined => {
	if (!components.includes(tag.name)) return `there is no component <${tag.name}>`;
	if (tag.closing) return undefined;
	const wanted = VALUES[tag.name] ?? [];
	const given = Object.keys(tag.values);
	const missing = wanted.filter((key) => !tag.values[key]);
	const spare = given.filter((key) => !wanted.includes(key));
	if (missing.length > 0) return `<${tag.name}> needs ${missing.join(', ')}`;
	if (spare.length > 0) return `<${tag.name}> knows no ${spare.join(', ')}`;
	// A step holds text and is closed later; every other component stands alone.
	if (tag.rest !== (tag.name === 'Step' ? '' : '/')) return `<${tag.name}> is written wrongly`;
	return undefined;
};

const badReference = (tag: Tag, method: Method | undefined): string | undefined => {
	const { of, name, upto } = tag.values;
	if (tag.name !== 'Girths' && of !== undefined && !isMeasurementKey(of))
		return `there is no measurement "${of}"`;
	const step = name ?? upto;
	if (step === undefined) return undefined;
	if (!method) return `<${tag.name}> needs a method in the front matter`;
	const found = method.steps.find((each) => each.name === step);
	if (!found) return `${method.id} has no step "${step}"`;
	return name !== undefined && isGiven(found)
		? `${the(found.label)} is given and is no step to do`
		: undefined;
};

/** The components that show something of the lesson's garment. */
const OF_GARMENT = [
	'GarmentPieces',
	'Girths',
	'GarmentWorn',
	'LayingFigure',
	'OrderOfSewing',
	'PieceFigure',
	'SewnSeam',
	'Toile'
];

const badGarment = (tag: Tag, garment: Garment | undefined): string | undefined => {
	if (tag.closing || !OF_GARMENT.includes(tag.name)) return undefined;
	if (!garment) return `<${tag.name}> needs a garment in the front matter`;
	const { of, piece, seam } = tag.values;
	if (piece !== undefined && garment.pieces.every(({ key }) => key !== piece))
		return `${garment.id} has no piece "${piece}"`;
	if (of !== undefined && garment.girths.every(({ name }) => name !== of))
		return `${garment.id} has no girths "${of}"`;
	if (seam !== undefined && garment.seams.every(({ name }) => name !== seam))
		return `${garment.id} has no seam "${seam}"`;
	return undefined;
};

/** Markdown inside a step is read as Markdown only between blank lines. */
const badStepLines = (text: string): string[] => {
	const lines = text.split('\n');
	const problems: string[] = [];
	let open: number | undefined;
	for (const [i, line] of lines.entries()) {
		const alone = /^<\/?Step\b[^>]*>$/.test(line);
		if (/<\/?Step\b/.test(line) && !alone) problems.push(`line ${i + 1}: <Step> must have a line of its own`);
		if (line.startsWith('<Step')) {
			if (open !== undefined) problems.push(`line ${i + 1}: the step of line ${open} is not closed`);
			if (lines[i + 1] !== '') problems.push(`line ${i + 1}: a blank line must follow <Step>`);
			open = i + 1;
		} else if (line === '</Step>') {
			if (open === undefined) problems.push(`line ${i + 1}: no step is open`);
			if (lines[i - 1] !== '') problems.push(`line ${i + 1}: a blank line must stand before </Step>`);
			open = undefined;
		}
	}
	return open === undefined ? problems : [...problems, `line ${open}: the step is not closed`];
};

/** Braces are YAML's in the front matter, and code anywhere below it. */
const badBraces = (text: string): string[] =>
	text
		.replace(FRONT_MATTER, (front) => front.replace(/[{}]/g, ''))
		.split('\n')
		.flatMap((line, i) => (/[{}]/.test(line) ? [`line ${i + 1}: a brace would be read as code`] : []));

/** All that is wrong with one lesson, each with its lesson and line. */
export const problemsIn = (lesson: LessonFile, known: Known): readonly string[] => {
	const { meta, problem } = metaOf(lesson.text);
	const method = meta?.method === undefined ? undefined : known.methods.get(meta.method);
	const problems = problem === undefined ? [] : [problem];
	if (meta?.method !== undefined && !method) problems.push(`there is no method "${meta.method}"`);
	const garment = meta?.garment === undefined ? undefined : known.garments.get(meta.garment);
	if (meta?.garment !== undefined && !garment) problems.push(`there is no garment "${meta.garment}"`);
	for (const tag of tagsIn(lesson.text)) {
		const found = badComponent(tag, known) ?? badReference(tag, method) ?? badGarment(tag, garment);
		if (found !== undefined) problems.push(`line ${tag.line}: ${found}`);
	}
	problems.push(...badStepLines(lesson.text), ...badBraces(lesson.text));
	return problems.map((each) => `${lesson.id}: ${each}`);
};

/** What is wrong with the lessons of a method taken together: each of its steps is asked for once, and in order. */
export const problemsAcross = (lessons: readonly LessonFile[], method: Method): readonly string[] => {
	const asked = lessons.filter(({ text }) => metaOf(text).meta?.method === method.id).flatMap(stepsOf);
	const wanted = method.steps.filter((step) => !isGiven(step)).map(({ name }) => name);
	const missing = wanted.filter((name) => !asked.includes(name));
	const twice = asked.filter((name, i) => asked.indexOf(name) !== i);
	const problems = [
		...missing.map((name) => `${method.id}: no lesson asks for ${name}`),
		...twice.map((name) => `${method.id}: ${name} is asked for twice`)
	];
	if (problems.length > 0 || asked.join() === wanted.join()) return problems;
	const at = asked.findIndex((name, i) => name !== wanted[i]);
	return [`${method.id}: ${asked[at] ?? ''} is asked for before ${wanted[at] ?? ''}`];
};

/** Lessons are short: half of them under 30 lines, nine in ten under 65. */
export const tooLong = (lessons: readonly LessonFile[]): readonly string[] => {
	const share = (limit: number): number =>
		lessons.filter(({ text }) => text.trimEnd().split('\n').length < limit).length / lessons.length;
	return [
		...(share(30) < 0.5 ? ['fewer than half of the lessons are under 30 lines'] : []),
		...(share(65) < 0.9 ? ['fewer than nine in ten lessons are under 65 lines'] : [])
	];
};
