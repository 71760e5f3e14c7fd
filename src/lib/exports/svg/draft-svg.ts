import { mm, printLength, type Mm, type Unit } from '#shared/units.ts';
import { boundsOf, pathData, type Bounds } from '#geometry/path.ts';
import type { Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { movedAway } from '#drafting/moved.ts';

/** The side of the square that is measured on paper before a print is trusted. */
export const CHECK_SQUARE: Mm = mm(100);

/** Line widths in millimetres, each twice the one before it but for the rounding of ISO 128's series (from memory). */
const WIDTHS = { outline: 0.7, line: 0.35, level: 0.18, traced: 0.18 } as const;

/** Height of the names of points. */
const NAME_SIZE: Mm = mm(4);

/** What no XML file may hold, not even escaped (XML 1.0, section 2.2): a reader refuses the whole file for one of them. */
const FORBIDDEN = /[^\t\n\r\u{20}-\u{D7FF}\u{E000}-\u{FFFD}\u{10000}-\u{10FFFF}]/gu;

const escaped = (text: string): string =>
	text.replace(FORBIDDEN, '').replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);

/** Which of the line widths a line has: what is traced off the draft before is drawn as thinly as a level, and dotted. */
const kindOf = (method: Method, name: string): keyof typeof WIDTHS => {
	if (method.outline.includes(name)) return 'outline';
	const kind = method.steps.find((step) => step.name === name)?.kind;
	return kind === 'level' || kind === 'traced' ? kind : 'line';
};
const DASHES: Readonly<Record<string, string>> = {
	level: ' stroke-dasharray="4 2"',
	traced: ' stroke-dasharray="0.2 1.6"'
};

const lineElement = (method: Method, name: string, draft: Draft): string => {
	const line = draft.lines[name];
	if (!line) return '';
	const kind = kindOf(method, name);
	const dashes = DASHES[kind] ?? '';
	return `<path id="line-${name}" d="${pathData(line.path)}" stroke-width="${WIDTHS[kind]}"${dashes}/>`;
};

/** Where a name may stand beside its point, in millimetres, the preferred first: each corner, and further out. */
const NAME_OFFSETS = [
	[1.5, -1.5],
	[1.5, 4.5],
	[-7, -1.5],
	[-7, 4.5],
	[9, 1.5],
	[-14, 1.5]
] as const;
/** How near two names may stand, in millimetres: a name of two letters is about so wide. */
const NAME_ROOM = 6;

/** The place of each point's name: beside the point, and clear of the names written before it. */
const namePlaces = (points: Draft['points']): Readonly<Record<string, readonly [number, number]>> => {
	const taken: (readonly [number, number])[] = [];
	const places = Object.entries(points).map(([name, { x, y }]) => {
		const choices = NAME_OFFSETS.map(([across, down]) => [x + across, y + down] as const);
		const free = choices.find(([left, top]) =>
			taken.every(([a, b]) => Math.abs(a - left) >= NAME_ROOM || Math.abs(b - top) >= NAME_SIZE)
		);
		const place = free ?? choices[0] ?? [x, y];
		taken.push(place);
		return [name, place] as const;
	});
	return Object.fromEntries(places);
};

const pointElements = (points: Draft['points']): string => {
	const places = namePlaces(points);
	return Object.entries(points)
		.map(([name, { x, y }]) => {
			const [left, top] = places[name] ?? [x, y];
			const circle = `<circle cx="${x.toFixed(3)}" cy="${y.toFixed(3)}" r="0.6"/>`;
			return `${circle}<text x="${left.toFixed(3)}" y="${top.toFixed(3)}">${escaped(name)}</text>`;
		})
		.join('');
};

/**
 * The ink of a draft as SVG elements in millimetres: its lines, its points and their names. Where a part was moved,
 * only its newest place is drawn: on paper that is cut, the older ones would be taken for edges.
 */
export const draftInk = (method: Method, draft: Draft): string => {
	const away = movedAway(method, draft);
	const lines = Object.keys(draft.lines)
		.filter((name) => !away.has(name))
		.map((name) => lineElement(method, name, draft));
	const points = Object.fromEntries(Object.entries(draft.points).filter(([name]) => !away.has(name)));
	return (
		`<g fill="none" stroke="#000" stroke-linecap="round" stroke-linejoin="round">${lines.join('')}</g>` +
		`<g font-family="sans-serif" font-size="${NAME_SIZE}">${pointElements(points)}</g>`
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
