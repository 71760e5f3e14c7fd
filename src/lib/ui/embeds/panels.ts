import { mm, type Mm } from '#shared/units.ts';
import { outlineOf, type Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { stepInk } from '#drafting/steps/kinds.ts';
import { boundsOf, pathMapped, polyline, type Bounds, type Path } from '#geometry/path.ts';
import { at, type SheetPoint } from '#geometry/point.ts';

/** A method, and the draft that it gave. */
export interface MethodDraft {
	readonly method: Method;
	readonly draft: Draft;
}

/** A panel as it lies on the figure of front and back. */
export interface Panel {
	readonly name: 'front' | 'back';
	readonly outline: Path;
	readonly levels: readonly Path[];
	/** Where its name is written: in the free middle between waist and hip. */
	readonly middle: SheetPoint;
}

/** The front's dart: the cloth that is folded away, the fold, and where the sewn dart ends. */
export interface DartDrawing {
	readonly mouth: Path;
	readonly fold: Path;
	readonly tip: SheetPoint;
}

/** Front and back as they lie beside each other. */
export interface BesideEachOther {
	readonly front: Panel;
	readonly back: Panel;
	/** None where this body needs none. */
	readonly dart: DartDrawing | undefined;
	/** How far across the centre line of the back lies; that of the front is the sheet's own. */
	readonly farCentre: Mm;
	readonly bounds: Bounds;
}

const panelOf = (
	name: 'front' | 'back',
	{ method, draft }: MethodDraft,
	laid: (point: SheetPoint) => SheetPoint
): Panel | undefined => {
	const outline = outlineOf(method, draft);
	const { W, H, V } = draft.points;
	if (!outline || !W || !H || !V) return undefined;
	const levels = method.steps
		.filter((step) => stepInk(step) === 'level')
		.flatMap(({ name: level }) => {
			const line = draft.lines[level];
			return line ? [line.path] : [];
		});
	return {
		name,
		outline: pathMapped(outline, laid),
		levels: levels.map((path) => pathMapped(path, laid)),
		middle: laid(at((W.x + V.x) / 2, (W.y + H.y) / 2))
	};
};

const dartOf = ({ points: { D1, T, E, X, Y } }: Draft): DartDrawing | undefined =>
	D1 && T && E && X && Y ? { mouth: polyline(D1, T, E, D1), fold: polyline(X, T), tip: Y } : undefined;

/**
 * Lays the back beside the front as on the body: the front's centre line at the far left, the back
 * turned over with its own at the far right, side seam toward side seam, the waists level. The widest
 * places of the two lie `apart` from each other. Nothing where one of them has no outline.
 */
export const besideEachOther = (
	front: MethodDraft,
	back: MethodDraft,
	apart: Mm
): BesideEachOther | undefined => {
	const wide = ({ draft }: MethodDraft): Mm =>
		boundsOf(Object.values(draft.lines).map(({ path }) => path)).right;
	const farCentre = mm(wide(front) + apart + wide(back));
	const down = (front.draft.points['W']?.y ?? 0) - (back.draft.points['W']?.y ?? 0);
	const left = panelOf('front', front, (point) => point);
	const right = panelOf('back', back, ({ x, y }) => at(farCentre - x, y + down));
	return (
		left &&
		right && {
			front: left,
			back: right,
			dart: dartOf(front.draft),
			farCentre,
			bounds: boundsOf([left.outline, right.outline])
		}
	);
};
