import type { Body } from '#shared/body.ts';
import { MEASUREMENT_KEYS, notTaken, type MeasurementKey } from '#shared/measurements.ts';
import { SAME_PLACE } from '#shared/tolerances.ts';
import { mm, type Mm } from '#shared/units.ts';
import { depends } from '#drafting/conditions.ts';
import { NotDrafted, type Draft } from '#drafting/evaluate.ts';
import { formulaKeys, type Formula } from '#drafting/formula/formula.ts';
import { lengthOf, numberOf, type PieceScope, type Scope } from '#drafting/formula/value.ts';
import { chained, pathEnd, pathStart, polyline, type Path } from '#geometry/path.ts';
import { distance, type SheetPoint } from '#geometry/point.ts';
import { levelAcross, widthAtLevel, type ClosedDart } from '#geometry/width.ts';
import { edgeAt, type EdgesOfPieces } from './chains.ts';
import type { Garment, PieceRule, PlaceRule, WearKind, WearRule } from './garment.ts';

/** Where a check is made on a piece: the line along which it was measured, on the sheet of the piece's draft. */
export interface WearPlace {
	readonly piece: string;
	readonly path: Path;
}

/** Whether the finished garment is what it must be to the body that wears it. */
export interface WearReport {
	readonly name: string;
	readonly label: string;
	readonly kind: WearKind;
	/** Millimetres, degrees, or a plain number; undefined where it is not known. */
	readonly value: number | undefined;
	readonly least: number | undefined;
	readonly most: number | undefined;
	readonly state: 'holds' | 'fails' | 'not-known';
	/** The measurements that would have to be taken to know it. */
	readonly needs: readonly MeasurementKey[];
	/** What it means, where it fails. */
	readonly because: string | undefined;
	readonly place: WearPlace | undefined;
}

/** What wear checks are worked from: the drafts by their short names, and the edges of the pieces. */
export interface Worn {
	readonly drafts: Readonly<Record<string, Draft>>;
	readonly edges: EdgesOfPieces;
}

const draftOfPiece = (rule: PieceRule | undefined, { drafts }: Worn, name: string): Draft => {
	const draft = rule && drafts[rule.draft];
	if (!draft) throw new NotDrafted('piece', name);
	return draft;
};

/** A piece's edges as one line; undefined where they do not join. */
const outlineOf = (edges: EdgesOfPieces, piece: string): Path | undefined =>
	chained((edges[piece] ?? []).map(({ path }) => path));

/** A dart is closed about the place where its legs meet: a drawn one may be sewn to a tip that lies short of it. */
const closedDart = (one: Path, other: Path, tip: SheetPoint): ClosedDart => {
	const ends = [pathStart(other), pathEnd(other)];
	const meet = [pathStart(one), pathEnd(one)].find((end) =>
		ends.some((each) => distance(end, each) <= SAME_PLACE)
	);
	return { legs: [one, other], tip: meet ?? tip };
};

/** What formulas may measure on a garment's pieces. A piece whose draft is not there throws NotDrafted. */
const pieceScope = (garment: Garment, worn: Worn): PieceScope => {
	const ruleOf = (key: string): PieceRule | undefined => garment.pieces.find((each) => each.key === key);
	const dartsOf = (key: string): readonly ClosedDart[] => {
		const rule = ruleOf(key);
		const { lines, points } = draftOfPiece(rule, worn, key);
		return (rule?.darts ?? []).flatMap(({ legs, tip }) => {
			const [one, other, end] = [lines[legs[0]], lines[legs[1]], points[tip]];
			return one && other && end ? [closedDart(one.path, other.path, end)] : [];
		});
	};
	const widthOf = (key: string, darts: readonly ClosedDart[], level: Mm): Mm => {
		const outline = outlineOf(worn.edges, key);
		if (!outline) throw new NotDrafted('piece', key);
		return widthAtLevel(outline, darts, level);
	};
	return {
		width: (key, level) => widthOf(key, dartsOf(key), level),
		openWidth: (key, level) => widthOf(key, [], level),
		edge: (name) => {
			const [piece = '', edge = ''] = name.split('.');
			draftOfPiece(ruleOf(piece), worn, piece);
			return edgeAt(worn.edges, { piece, edge })?.length ?? mm(0);
		}
	};
};

/** The level of a place across its piece. */
const levelPath = (edges: EdgesOfPieces, piece: string, { y }: SheetPoint): Path | undefined => {
	const outline = outlineOf(edges, piece);
	return outline && levelAcross(outline, y);
};

const placeOf = (rule: PlaceRule, garment: Garment, worn: Worn): WearPlace | undefined => {
	const draft = draftOfPiece(
		garment.pieces.find(({ key }) => key === rule.piece),
		worn,
		rule.piece
	);
	const path = (): Path | undefined => {
		if ('lines' in rule) {
			const lines = rule.lines.flatMap((name) => draft.lines[name] ?? []);
			return chained(lines.map((line) => line.path));
		}
		const [first, second] = ('level' in rule ? [rule.level] : rule.points).map((name) => draft.points[name]);
		if (!first) return undefined;
		return 'level' in rule ? levelPath(worn.edges, rule.piece, first) : second && polyline(first, second);
	};
	const found = path();
	return found && { piece: rule.piece, path: found };
};

/** Whether a number keeps the bounds of a check; floating-point noise is nothing. */
const stands = (value: number, { least, most }: WearRule): 'low' | 'high' | undefined => {
	if (least !== undefined && value < least - SAME_PLACE) return 'low';
	return most !== undefined && value > most + SAME_PLACE ? 'high' : undefined;
};

/** The measurements of a formula that were not taken. */
const lacking = (formula: Formula | undefined, body: Body): readonly MeasurementKey[] => {
	const named = formula ? formulaKeys(formula, 'measurement') : [];
	return notTaken(
		MEASUREMENT_KEYS.filter((key) => named.includes(key)),
		body
	);
};

const reportOf = (
	rule: WearRule,
	garment: Garment,
	body: Body,
	worn: Worn,
	scope: Scope
): WearReport | undefined => {
	const { name, label, kind, least, most } = rule;
	const bounds = { name, label, kind, least, most };
	const unsure = [...lacking(rule.when, body), ...lacking(rule.unless, body)];
	const needs = [...new Set([...unsure, ...lacking(rule.formula, body)])];
	try {
		const place = rule.at && placeOf(rule.at, garment, worn);
		if (unsure.length === 0 && !depends(rule, scope)) return undefined;
		if (needs.length > 0)
			return { ...bounds, value: undefined, state: 'not-known', needs, because: undefined, place };
		const value = numberOf(rule.formula, scope);
		const wrong = stands(value, rule);
		return {
			...bounds,
			value,
			state: wrong ? 'fails' : 'holds',
			needs,
			because: wrong && rule[wrong],
			place
		};
	} catch (error) {
		if (error instanceof NotDrafted) return undefined;
		throw error;
	}
};

/** Girths beside each other, in millimetres. */
export interface GirthsReport {
	readonly name: string;
	readonly label: string;
	readonly rows: readonly { readonly label: string; readonly of: 'body' | 'cloth'; readonly value: Mm }[];
}

/** The girths that a garment shows beside each other, as they are for a body. `scope` knows the drafts. */
export const girthsReports = (garment: Garment, worn: Worn, scope: Scope): readonly GirthsReport[] => {
	const whole = { ...scope, pieces: pieceScope(garment, worn) };
	return garment.girths.map(({ name, label, rows }) => ({
		name,
		label,
		rows: rows.map((row) => ({ label: row.label, of: row.of, value: lengthOf(row.formula, whole) }))
	}));
};

/**
 * The wear checks of a garment for a body, in the order of its file. `scope` knows the drafts and the pieces. A check whose points, lines
 * or pieces are not drafted is passed over; one that needs a measurement that was not taken is not known, and never guessed.
 */
export const wearReports = (
	garment: Garment,
	body: Body,
	worn: Worn,
	scope: Scope
): readonly WearReport[] => {
	const whole = { ...scope, pieces: pieceScope(garment, worn) };
	return garment.wear.flatMap((rule) => reportOf(rule, garment, body, worn, whole) ?? []);
};
