import { mm, printLength, type Mm, type Unit } from '#shared/units.ts';
import { boundsOf, pathData, type Bounds } from '#geometry/path.ts';
import type { Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { at } from '#geometry/point.ts';
import { draftLineKind, drawnNow, namePlaces, POINT_NAME_SIZE } from '../drawing/draft-lines.ts';
import { escaped } from './xml.ts';

/** The side of the square that is measured on paper before a print is trusted. */
export const CHECK_SQUARE: Mm = mm(100);

/** Line widths in millimetres, each twice the one before it but for the rounding of ISO 128's series (from memory). */
const WIDTHS = { outline: 0.7, line: 0.35, level: 0.18, traced: 0.18 } as const;

const DASHES: Readonly<Record<string, string>> = {
	level: ' stroke-dasharray="4 2"',
	traced: ' stroke-dasharray="0.2 1.6"'
};

const lineElement = (method: Method, name: string, draft: Pick<Draft, 'lines'>): string => {
	const line = draft.lines[name];
	if (!line) return '';
	const kind = draftLineKind(method, name);
	const dashes = DASHES[kind] ?? '';
	return `<path id="line-${name}" d="${pathData(line.path)}" stroke-width="${WIDTHS[kind]}"${dashes}/>`;
};

const pointElements = (points: Draft['points']): string => {
	const places = namePlaces(points);
	return Object.entries(points)
		.map(([name, { x, y }]) => {
			const place = places[name] ?? at(x, y);
			const circle = `<circle cx="${x.toFixed(3)}" cy="${y.toFixed(3)}" r="0.6"/>`;
			return `${circle}<text x="${place.x.toFixed(3)}" y="${place.y.toFixed(3)}">${escaped(name)}</text>`;
		})
		.join('');
};

/**
 * The ink of a draft as SVG elements in millimetres: its lines, its points and their names. Where a part was moved,
 * only its newest place is drawn: on paper that is cut, the older ones would be taken for edges.
 */
export const draftInk = (method: Method, draft: Draft): string => {
	const { points, lines } = drawnNow(method, draft);
	const elements = Object.keys(lines).map((name) => lineElement(method, name, draft));
	return (
		`<g fill="none" stroke="#000" stroke-linecap="round" stroke-linejoin="round">${elements.join('')}</g>` +
		`<g font-family="sans-serif" font-size="${POINT_NAME_SIZE}">${pointElements(points)}</g>`
	);
};

/** The part of the sheet that a draft covers, with room for the names at its edge. */
export const draftBounds = (draft: Draft): Bounds => {
	const { left, top, right, bottom } = boundsOf(
		Object.values(draft.lines).map(({ path }) => path),
		Object.values(draft.points)
	);
	const room = 8;
	return { left: mm(left - room), top: mm(top - room), right: mm(right + room), bottom: mm(bottom + room) };
};

/** A square of exactly 100 mm with the words that say what it is for, its corner at x, y. */
export const checkSquare = (x: Mm, y: Mm, unit: Unit): string => {
	const side = CHECK_SQUARE;
	const inches = unit === 'in' ? ` (${printLength(side, 'in')}, very nearly)` : '';
	return (
		`<rect id="check-square" x="${x}" y="${y}" width="${side}" height="${side}" fill="none" stroke="#000" stroke-width="0.35"/>` +
		`<text x="${x + side / 2}" y="${y + side / 2 - 2}" font-family="sans-serif" font-size="4.5" text-anchor="middle">Each side is 100 mm${inches}.</text>` +
		`<text x="${x + side / 2}" y="${y + side / 2 + 5}" font-family="sans-serif" font-size="4.5" text-anchor="middle">If not, print again at 100 %.</text>`
	);
};

/**
 * A whole draft at true scale in one SVG file: one user unit is one millimetre, and width and height
 * are given in mm. The check square stands to the right of the draft.
 */
export const draftSvg = (method: Method, draft: Draft, bodyName: string, unit: Unit): string => {
	const { left, top, right, bottom } = draftBounds(draft);
	const width = right - left + CHECK_SQUARE + 10;
	const height = Math.max(bottom - top, CHECK_SQUARE + 20);
	const title = escaped(`${method.name} for ${bodyName}`);
	const size = `width="${width.toFixed(3)}mm" height="${height.toFixed(3)}mm"`;
	const box = `viewBox="${left.toFixed(3)} ${top.toFixed(3)} ${width.toFixed(3)} ${height.toFixed(3)}"`;
	return (
		`<svg xmlns="http://www.w3.org/2000/svg" ${size} ${box}><title>${title}</title>` +
		draftInk(method, draft) +
		checkSquare(right, mm(top + 15), unit) +
		`<text x="${right.toFixed(3)}" y="${(top + 10).toFixed(3)}" font-family="sans-serif" font-size="5">${title}</text></svg>`
	);
};
