import { mm, radians } from '#shared/units.ts';
import { boundsOf, pathMapped, polyline } from '#geometry/path.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import { planOf } from '#tape/plan.ts';
import { drawnNow, draftLineKind, namePlaces } from '../drawing/draft-lines.ts';
import type { Drawing, Stroke } from '../drawing/drawing.ts';
import { PAGE_MARGIN, type Paper } from '../sheets/tiles.ts';
import type { SheetOptions, WorkedMethod } from './body-words.ts';
import { addPage, addTextPages, closeFile, openFile } from './file.ts';
import { drawingOperators } from './operators.ts';
import { table } from './text-pages.ts';

/** Height of the names in the figure, of its title, and room about it, in millimetres. */
const [NAMES, TITLE, ROOM] = [mm(3.4), mm(5), 12] as const;
/** Height of a row that is written in by hand: ruled paper for handwriting has lines 8 to 9 mm apart. */
const ROW = mm(8.5);
/** Two distances stand beside one another: which, from and to, room to write. */
const SHARES = [0.08, 0.17, 0.25, 0.08, 0.17, 0.25] as const;
/** Half a cross at a point, in millimetres. */
const CROSS = 1;

/** The draft as large as the page has room for, with its points and the distances between them. */
const figure = (
	{ method, draft }: WorkedMethod,
	plan: ReturnType<typeof planOf>,
	{ width, height }: Paper,
	title: string
): Drawing => {
	const lines = Object.entries(drawnNow(method, draft).lines);
	const own = plan.points.flatMap((name) => draft.points[name] ?? []);
	const whole = boundsOf(
		lines.map(([, { path }]) => path),
		own
	);
	const begin = PAGE_MARGIN + ROOM;
	const scale = Math.min(
		(width - 2 * begin) / (whole.right - whole.left),
		(height - 2 * begin - TITLE) / (whole.bottom - whole.top)
	);
	const put = ({ x, y }: SheetPoint): SheetPoint =>
		at(begin + (x - whole.left) * scale, begin + TITLE + (y - whole.top) * scale);
	const points = Object.fromEntries(
		plan.points.flatMap((name) => {
			const point = draft.points[name];
			return point ? [[name, put(point)] as const] : [];
		})
	);
	const between = plan.takings.flatMap(({ from, to }): Stroke[] => {
		const [a, b] = [points[from], points[to]];
		return a && b ? [{ kind: 'leader', path: polyline(a, b) }] : [];
	});
	const crosses = Object.values(points).flatMap(({ x, y }): Stroke[] => [
		{ kind: 'line', path: polyline(at(x - CROSS, y), at(x + CROSS, y)) },
		{ kind: 'line', path: polyline(at(x, y - CROSS), at(x, y + CROSS)) }
	]);
	const words = (text: string, place: SheetPoint, size = NAMES) => ({
		...{ text, at: place, size },
		...{ middle: false, turn: radians(0) }
	});
	return {
		name: method.name,
		strokes: [
			...lines.map(([name, { path }]): Stroke => ({
				kind: draftLineKind(method, name) === 'outline' ? 'cutting' : 'level',
				path: pathMapped(path, put)
			})),
			...between,
			...crosses
		],
		words: [
			words(title, at(begin, PAGE_MARGIN + TITLE + 2), TITLE),
			...Object.entries(namePlaces(points)).map(([name, place]) => words(name, place))
		]
	};
};

/**
 * The distances by which a paper draft is checked by tape: a figure with the points, then a table with room to write what the tape
 * reads. The same input gives the same bytes.
 */
export const tapeSheetPdf = async (work: WorkedMethod, options: SheetOptions): Promise<Uint8Array> => {
	const { method, body, draft, speech } = work;
	const { paper: words } = speech.words;
	const plan = planOf(method, draft);
	const file = await openFile({ ...options, speech });
	const title = words.workedFor({ what: method.name, body: body.name });
	addPage(file, options.paper, drawingOperators([figure(work, plan, options.paper, title)], file.font));
	const cells = plan.takings.map(({ from, to }, i) => [speech.number(i + 1), `${from} – ${to}`, '']);
	const half = Math.ceil(cells.length / 2);
	const rows = cells.slice(0, half).map((cell, i) => [...cell, ...(cells[half + i] ?? ['', '', ''])]);
	const headings = [words.tapeNumber, words.fromTo, words.tapeReads];
	addTextPages(file, options.paper, [
		{ kind: 'title', text: options.title },
		{ kind: 'text', text: words.tapeHow },
		...table([...headings, ...headings], SHARES, rows, ROW)
	]);
	return closeFile(file);
};
