import { Bezier } from 'bezier-js';
import { describe, expect, it } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { draftDrawing } from '#exports/drawing/draft-drawing.ts';
import { draftLineKind } from '#exports/drawing/draft-lines.ts';
import type { StrokeKind } from '#exports/drawing/drawing.ts';
import { drawingsSvg } from '#exports/svg/drawings-svg.ts';
import { backBlock, lessonMethod } from '../drafting/lesson-method.ts';
import { draftOf, smallMethod } from '../drafting/small-method.ts';
import { elements, numberOf, numbersIn, readSvg, type SvgElement } from './read-svg.ts';

const METHODS = [backBlock(), lessonMethod('10-the-sheet')];
const fileOf = (...[method, draft, title = 'X']: [...Parameters<typeof draftDrawing>, string?]): string =>
	drawingsSvg([draftDrawing(method, draft)], title);
const read = (file: string): SvgElement => readSvg(file.trimEnd());
const FILES = METHODS.flatMap((method) =>
	DEMO_BODIES.map(({ body }) => {
		const draft = draftOf(method, body);
		return { method, draft, root: read(fileOf(method, draft)), spot: `${method.id} for ${body.name}` };
	})
);

/** The pieces of path data: straight ones as their two places, cubic ones as four. */
const piecesOf = (data: string | undefined): readonly (readonly { x: number; y: number }[])[] => {
	let at = { x: NaN, y: NaN };
	return [...(data ?? '').matchAll(/([A-Z])([^A-Z]*)/g)].flatMap(([, letter, rest]) => {
		const numbers = numbersIn(rest);
		const places = numbers.flatMap((x, i) => (i % 2 ? [] : [{ x, y: numbers[i + 1] ?? NaN }]));
		const expected = { M: 1, L: 1, C: 3 }[letter ?? ''];
		if (places.length !== expected) throw new Error(`unknown path data: ${letter ?? ''}${rest ?? ''}`);
		const piece = [at, ...places];
		at = places.at(-1) ?? at;
		return letter === 'M' ? [] : [piece];
	});
};

/** A piece as bezier-js sees it, an independent library; a straight one is a cubic with its handles on the chord. */
const curveOf = (piece: readonly { x: number; y: number }[]): Bezier => {
	const [from, to] = [piece[0], piece.at(-1)];
	if (!from || !to) throw new Error('an empty piece');
	const share = (t: number) => ({ x: from.x + (to.x - from.x) * t, y: from.y + (to.y - from.y) * t });
	return new Bezier(piece.length === 4 ? [...piece] : [from, share(1 / 3), share(2 / 3), to]);
};

/** The group of one kind of line; nothing is in it where none is drawn. */
const groupOf = (root: SvgElement, kind: StrokeKind): SvgElement | undefined =>
	elements(root, 'g').find(({ attributes }) => attributes['id']?.endsWith(`-${kind}`));
const linesIn = (root: SvgElement | undefined): readonly (readonly Bezier[])[] =>
	(root ? elements(root, 'path') : []).map(({ attributes }) => piecesOf(attributes['d']).map(curveOf));

/** What each kind of line of a draft is on paper. */
const ON_PAPER = { outline: 'cutting', level: 'level', traced: 'traced', line: 'line' } as const;
const KINDS = Object.values(ON_PAPER);

describe('scale: one user unit is one millimetre', () => {
	it('width and height in mm are those of the viewBox, to the last digit', () => {
		for (const { root, spot } of FILES) {
			const { width = '', height = '', viewBox = '' } = root.attributes;
			const [, , boxWidth, boxHeight] = viewBox.split(' ');
			expect(width, spot).toBe(`${boxWidth ?? ''}mm`);
			expect(height, spot).toBe(`${boxHeight ?? ''}mm`);
			expect(Number(boxWidth)).toBeGreaterThan(100);
			expect(Number(boxHeight)).toBeGreaterThan(100);
		}
	});

	it('nothing is scaled on the way, and nothing but a word is moved', () => {
		for (const { root } of FILES) {
			expect(elements(root, 'svg')).toHaveLength(1);
			for (const tag of ['svg', 'g', 'path', 'text'])
				for (const { attributes } of elements(root, tag)) {
					for (const name of ['preserveAspectRatio', 'style']) expect(attributes[name]).toBeUndefined();
					if (tag === 'text')
						expect(attributes['transform']).toMatch(/^translate\([^)]+\) rotate\(0\.000\)$/);
					else expect(attributes['transform']).toBeUndefined();
				}
		}
	});
});

describe('lines', () => {
	it('are all there, once each, as long as in the draft', () => {
		let [curved, straight] = [0, 0];
		for (const { root, method, draft, spot } of FILES) {
			const drawn = KINDS.map((kind) => linesIn(groupOf(root, kind)));
			expect(elements(root, 'path')).toHaveLength(drawn.flat().length);
			// The crosses of points are lines too, two to each, and come last.
			expect(drawn.flat()).toHaveLength(
				Object.keys(draft.lines).length + 2 * Object.keys(draft.points).length
			);
			for (const [i, kind] of (['outline', 'level', 'traced', 'line'] as const).entries()) {
				const own = Object.entries(draft.lines).filter(([name]) => draftLineKind(method, name) === kind);
				for (const [at, [name, { length, path }]] of own.entries()) {
					const line = drawn[i]?.[at] ?? [];
					const written = line.reduce((sum, piece) => sum + piece.length(), 0);
					expect(Math.abs(written - length), `${spot}, ${name}`).toBeLessThan(0.01);
					expect(line).toHaveLength(path.length);
					if (path[0].kind === 'cubic') curved += 1;
					else straight += 1;
				}
			}
		}
		expect(curved).toBeGreaterThan(20);
		expect(straight).toBeGreaterThan(40);
	});

	it('keep to the sheet', () => {
		for (const { root, spot } of FILES) {
			const [left = NaN, top = NaN, width = NaN, height = NaN] = numbersIn(root.attributes['viewBox']);
			for (const { x, y } of linesIn(root)
				.flat()
				.map((curve) => curve.bbox())) {
				expect(x.min, spot).toBeGreaterThan(left);
				expect(y.min).toBeGreaterThan(top);
				expect(x.max).toBeLessThan(left + width);
				expect(y.max).toBeLessThan(top + height);
			}
		}
	});

	it('the outline is the heaviest, levels are the finest and dashed', () => {
		const [first] = FILES;
		if (!first) throw new Error('no file');
		const drawn = (kind: StrokeKind) => {
			const group = groupOf(first.root, kind);
			return {
				width: numberOf(group, 'stroke-width'),
				dashed: 'stroke-dasharray' in (group?.attributes ?? {})
			};
		};
		expect(drawn('cutting')).toEqual({ width: 0.7, dashed: false });
		expect(drawn('level')).toEqual({ width: 0.18, dashed: true });
		for (const name of first.method.outline) expect(draftLineKind(first.method, name), name).toBe('outline');
		for (const name of ['armholeLevel', 'waistLevel', 'hipLevel'])
			expect(draftLineKind(first.method, name), name).toBe('level');
	});
});

describe('points', () => {
	it('stand where the draft has them, each with its name beside it', () => {
		for (const { root, draft, spot } of FILES) {
			const points = Object.entries(draft.points);
			const crosses = linesIn(groupOf(root, 'line')).slice(-2 * points.length);
			expect(crosses, spot).toHaveLength(2 * points.length);
			for (const [i, [name, { x, y }]] of points.entries()) {
				for (const [line] of crosses.slice(2 * i, 2 * i + 2)) {
					expect(line?.get(0.5).x, name).toBeCloseTo(x, 3);
					expect(line?.get(0.5).y, name).toBeCloseTo(y, 3);
				}
				const label = elements(root, 'text').find(({ text }) => text === name);
				const [across = NaN, down = NaN] = numbersIn(label?.attributes['transform']);
				expect(Math.hypot(across - x, down - y), name).toBeLessThan(4);
			}
		}
	});
});

describe('names', () => {
	const [method] = METHODS;
	if (!method) throw new Error('no method');
	const draft = draftOf(method);
	const titles = (file: string) => elements(read(file), 'title').map(({ text }) => text);

	it.each([
		['a plain name', 'Heron'],
		['quotes', 'O’Neill "the heron" O\'Neill'],
		['elements', '<script>alert(1)</script>'],
		['the end of a title', '</title><svg onload="x">'],
		['references', 'a & b &amp; c &#60; d'],
		['other XML', ']]> <!-- --> <?xml?>'],
		['signs from everywhere', '🪶 Großer Brachvogel · 大杓鷸'],
		['300 signs', '<"&🪶x'.repeat(50)],
		['nothing', '']
	])('%s: a name is read back as it was given', (_, name) => {
		const title = `The back block for ${name}`;
		expect(titles(fileOf(method, draft, title))).toEqual([title, 'The back block']);
	});

	it('signs that no XML file may hold are left out', () => {
		const told = (name: string) => titles(fileOf(method, draft, name))[0];
		expect(told('He\u0000r\u0008o\u001Bn\uFFFE\uFFFF')).toBe('Heron');
		expect(told('H\uD83Deron\uDE00')).toBe('Heron');
		expect(told('tab\tand line\n')).toBe('tab\tand line\n');
	});

	it('a method’s name is escaped too', () => {
		const { name } = { ...smallMethod([]), name: 'Skirt & "bodice" <1>' };
		expect(titles(fileOf({ ...method, name }, draft))[1]).toBe(name);
	});
});

describe('the same draft', () => {
	it('gives the same file, to the letter, however often it is worked out', () => {
		for (const method of METHODS)
			for (const { body } of DEMO_BODIES)
				expect(fileOf(method, draftOf(method, body))).toBe(
					fileOf(structuredClone(method), draftOf(structuredClone(method), structuredClone(body)))
				);
	});

	it('of another body gives another file', () => {
		const [method] = METHODS;
		const files = DEMO_BODIES.map(({ body }) => method && fileOf(method, draftOf(method, body)));
		expect(new Set(files).size).toBe(DEMO_BODIES.length);
	});

	it('holds no number that is none, and no minus nought', () => {
		for (const { method, draft } of FILES) {
			const file = fileOf(method, draft);
			expect(file).not.toMatch(/NaN|Infinity|undefined|\de-\d/);
			expect(file).not.toMatch(/[ "(LMC]-0(\.0+)?[ ")LC]/);
		}
	});
});

describe('a draft of which parts were moved', () => {
	const front = lessonMethod('62-dress-front-top');
	const draft = draftOf(front);
	const { strokes, words } = draftDrawing(front, draft);
	const names = words.map(({ text }) => text);

	it('is printed with the newest place of each part alone', () => {
		const isDrawn = (line: string) => strokes.some(({ path }) => path === draft.lines[line]?.path);
		for (const line of ['armhole', 'side', 'sideFoot1', 'sideTop2', 'cut'])
			expect(isDrawn(line), line).toBe(true);
		for (const line of ['sideFoot', 'sideFoot2', 'sideStart', 'armholeBelow'])
			expect(isDrawn(line), line).toBe(false);
		expect(names).toEqual(expect.arrayContaining(['F', 'F1', 'G3', 'U2']));
		for (const name of ['F2', 'G2', 'U1']) expect(names).not.toContain(name);
	});

	it('what was traced is thin and dotted, but for what stays an edge of the piece', () => {
		const kindOf = (method: typeof front, line: string) => {
			const own = draftOf(method);
			return draftDrawing(method, own).strokes.find(({ path }) => path === own.lines[line]?.path)?.kind;
		};
		expect(groupOf(read(fileOf(front, draft)), 'traced')?.attributes['stroke-width']).toBe('0.18');
		expect(kindOf(front, 'blockNeck')).toBe('traced');
		expect(kindOf(lessonMethod('69-dress-facing'), 'standEdge')).toBe('cutting');
	});

	it('a line laid down once more is printed in both places where both are edges', () => {
		const band = lessonMethod('84-waistband');
		const own = draftOf(band);
		expect(Object.keys(own.lines)).toEqual(expect.arrayContaining([...band.outline, 'edge', 'fold']));
		const paths = draftDrawing(band, own).strokes.map(({ path }) => path);
		for (const [name, { path }] of Object.entries(own.lines)) expect(paths, name).toContain(path);
	});
});
