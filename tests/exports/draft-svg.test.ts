import { Bezier } from 'bezier-js';
import { describe, expect, it } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { mm, type Unit } from '#shared/units.ts';
import { CHECK_SQUARE, checkSquare, draftBounds, draftInk, draftSvg } from '#exports/svg/draft-svg.ts';
import { backBlock, lessonMethod } from '../drafting/lesson-method.ts';
import { draftOf, smallMethod } from '../drafting/small-method.ts';
import { elements, numberOf, numbersIn, readSvg, type SvgElement } from './read-svg.ts';

const METHODS = [backBlock(), lessonMethod('10-the-sheet')];
const FILES = METHODS.flatMap((method) =>
	DEMO_BODIES.map(({ body }) => {
		const draft = draftOf(method, body);
		const root = readSvg(draftSvg(method, draft, body.name, 'cm'));
		return { method, draft, root, spot: `${method.id} for ${body.name}` };
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

const linesIn = (root: SvgElement): ReadonlyMap<string, readonly Bezier[]> =>
	new Map(
		elements(root, 'path').map(({ attributes }) => [
			(attributes['id'] ?? '').replace('line-', ''),
			piecesOf(attributes['d']).map(curveOf)
		])
	);

describe('scale: one user unit is one millimetre', () => {
	it('width and height in mm are those of the viewBox, to the last digit', () => {
		for (const { root, spot } of FILES) {
			const { width = '', height = '', viewBox = '' } = root.attributes;
			const [, , boxWidth, boxHeight] = viewBox.split(' ');
			expect(width, spot).toBe(`${boxWidth ?? ''}mm`);
			expect(height, spot).toBe(`${boxHeight ?? ''}mm`);
			expect(Number(boxWidth)).toBeGreaterThan(200);
			expect(Number(boxHeight)).toBeGreaterThan(100);
		}
	});

	it('nothing is transformed or scaled on the way', () => {
		for (const { root } of FILES) {
			expect(elements(root, 'svg')).toHaveLength(1);
			for (const tag of ['svg', 'g', 'path', 'rect', 'circle', 'text'])
				for (const { attributes } of elements(root, tag))
					for (const name of ['transform', 'preserveAspectRatio', 'style'])
						expect(attributes[name]).toBeUndefined();
		}
	});

	it('the check square is 100 by 100, on the sheet and clear of the draft', () => {
		for (const { root, draft, spot } of FILES) {
			expect(CHECK_SQUARE).toBe(100);
			const squares = elements(root, 'rect');
			expect(squares).toHaveLength(1);
			const [square] = squares;
			expect(square?.attributes['id']).toBe('check-square');
			expect(square?.attributes['width']).toBe('100');
			expect(square?.attributes['height']).toBe('100');
			const [left = NaN, top = NaN, width = NaN, height = NaN] = numbersIn(root.attributes['viewBox']);
			const [x, y] = [numberOf(square, 'x'), numberOf(square, 'y')];
			expect(x, spot).toBeGreaterThan(left);
			expect(y).toBeGreaterThan(top);
			expect(x + 100).toBeLessThan(left + width);
			expect(y + 100).toBeLessThan(top + height);
			expect(x).toBeGreaterThanOrEqual(draftBounds(draft).right);
		}
	});

	it('says what the square is for, in the learner’s unit', () => {
		expect(checkSquare(mm(0), mm(0), 'cm')).toContain('>Each side is 100 mm.<');
		expect(checkSquare(mm(0), mm(0), 'in')).toContain('>Each side is 100 mm (3 15/16″, very nearly).<');
	});
});

describe('lines', () => {
	it('are all there, once each, as long as in the draft', () => {
		let [curved, straight] = [0, 0];
		for (const { root, draft, spot } of FILES) {
			const lines = linesIn(root);
			expect([...lines.keys()].sort(), spot).toEqual(Object.keys(draft.lines).sort());
			expect(elements(root, 'path')).toHaveLength(lines.size);
			for (const [name, { length, path }] of Object.entries(draft.lines)) {
				const written = (lines.get(name) ?? []).reduce((sum, piece) => sum + piece.length(), 0);
				expect(Math.abs(written - length), `${spot}, ${name}`).toBeLessThan(0.01);
				expect(lines.get(name)).toHaveLength(path.length);
				if (path[0].kind === 'cubic') curved += 1;
				else straight += 1;
			}
		}
		expect(curved).toBeGreaterThan(20);
		expect(straight).toBeGreaterThan(40);
	});

	it('keep to the sheet', () => {
		for (const { root, spot } of FILES) {
			const [left = NaN, top = NaN, width = NaN, height = NaN] = numbersIn(root.attributes['viewBox']);
			for (const curves of linesIn(root).values())
				for (const { x, y } of curves.map((curve) => curve.bbox())) {
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
		const drawn = (name: string) => {
			const path = elements(first.root, 'path').find(({ attributes }) => attributes['id'] === `line-${name}`);
			return {
				width: numberOf(path, 'stroke-width'),
				dashed: 'stroke-dasharray' in (path?.attributes ?? {})
			};
		};
		for (const name of first.method.outline) expect(drawn(name), name).toEqual({ width: 0.7, dashed: false });
		for (const name of ['armholeLevel', 'waistLevel', 'hipLevel'])
			expect(drawn(name), name).toEqual({ width: 0.18, dashed: true });
	});
});

describe('points', () => {
	it('stand where the draft has them, each with its name beside it', () => {
		for (const { root, draft, spot } of FILES) {
			const circles = elements(root, 'circle').map((each) => [numberOf(each, 'cx'), numberOf(each, 'cy')]);
			const points = Object.entries(draft.points);
			expect(circles, spot).toHaveLength(points.length);
			for (const [i, [name, { x, y }]] of points.entries()) {
				expect(circles[i]?.[0], name).toBeCloseTo(x, 3);
				expect(circles[i]?.[1], name).toBeCloseTo(y, 3);
				const label = elements(root, 'text').find(({ text }) => text === name);
				const away = Math.hypot(numberOf(label, 'x') - x, numberOf(label, 'y') - y);
				expect(away, name).toBeLessThan(4);
			}
		}
	});
});

describe('names', () => {
	const [method] = METHODS;
	if (!method) throw new Error('no method');
	const draft = draftOf(method);
	const titled = (name: string, unit: Unit = 'cm') => {
		const root = readSvg(draftSvg(method, draft, name, unit));
		const [title] = elements(root, 'title');
		const shown = elements(root, 'text').filter(({ text }) => text === title?.text);
		return { title: title?.text, shown: shown.length };
	};

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
		expect(titled(name)).toEqual({ title: `The back block for ${name}`, shown: 1 });
	});

	it('signs that no XML file may hold are left out', () => {
		expect(titled('He\u0000r\u0008o\u001Bn\uFFFE\uFFFF').title).toBe('The back block for Heron');
		expect(titled('H\uD83Deron\uDE00').title).toBe('The back block for Heron');
		expect(titled('tab\tand line\n').title).toBe('The back block for tab\tand line\n');
	});

	it('a method’s name is escaped too', () => {
		const odd = { ...smallMethod([]), name: 'Skirt & "bodice" <1>' };
		const root = readSvg(draftSvg({ ...method, name: odd.name }, draft, 'Heron', 'cm'));
		expect(elements(root, 'title')[0]?.text).toBe('Skirt & "bodice" <1> for Heron');
	});
});

describe('the same draft', () => {
	it('gives the same file, to the letter, however often it is worked out', () => {
		for (const method of METHODS)
			for (const { body } of DEMO_BODIES)
				expect(draftSvg(method, draftOf(method, body), body.name, 'cm')).toBe(
					draftSvg(
						structuredClone(method),
						draftOf(structuredClone(method), structuredClone(body)),
						body.name,
						'cm'
					)
				);
	});

	it('of another body gives another file', () => {
		const [method] = METHODS;
		const files = DEMO_BODIES.map(({ body }) => method && draftSvg(method, draftOf(method, body), 'X', 'cm'));
		expect(new Set(files).size).toBe(DEMO_BODIES.length);
	});

	it('holds no number that is none, and no minus nought', () => {
		for (const { method, draft } of FILES) {
			const file = draftSvg(method, draft, 'X', 'cm');
			expect(file).not.toMatch(/NaN|Infinity|undefined|e-\d/);
			expect(file).not.toMatch(/[ "LMC]-0(\.0+)?[ "LC]/);
		}
	});
});

describe('a draft of which parts were moved', () => {
	const front = lessonMethod('62-linnet-front-top');
	const ink = draftInk(front, draftOf(front));

	it('is printed with the newest place of each part alone', () => {
		for (const line of ['armhole', 'side', 'sideFoot1', 'sideTop2', 'cut'])
			expect(ink).toContain(`id="line-${line}"`);
		for (const line of ['sideFoot', 'sideFoot2', 'sideStart', 'armholeBelow'])
			expect(ink).not.toContain(`id="line-${line}"`);
		for (const name of ['F', 'F1', 'G3', 'U2']) expect(ink).toContain(`>${name}</text>`);
		for (const name of ['F2', 'G2', 'U1']) expect(ink).not.toContain(`>${name}</text>`);
	});

	it('what was traced is thin and dotted, but for what stays an edge of the piece', () => {
		const widthOf = (text: string, line: string): string =>
			new RegExp(`id="line-${line}"[^>]*stroke-width="([\\d.]+)"`).exec(text)?.[1] ?? '';
		expect(widthOf(ink, 'blockNeck')).toBe('0.18');
		const facing = lessonMethod('69-linnet-facing');
		expect(widthOf(draftInk(facing, draftOf(facing)), 'standEdge')).toBe('0.7');
	});
});
