import { SAME_PLACE } from '#shared/tolerances.ts';
import { mm, type Mm } from '#shared/units.ts';
import type { MeasurementKey } from '#shared/measurements.ts';
import { endDirection, pathLength, startDirection, type Path } from '#geometry/path.ts';
import { angleBetween, distance, type SheetPoint } from '#geometry/point.ts';
import type { Formula, Measured } from './formula.ts';

/** What a formula may measure on the pieces of a garment. */
export interface PieceScope {
	/** How wide a piece is at a level of its draft, darts closed. */
	width(piece: string, level: Mm): Mm;
	/** The same, darts left open. */
	openWidth(piece: string, level: Mm): Mm;
	/** The length of an edge (`front.side`); nothing where the piece does not have it. */
	edge(name: string): Mm;
}

/** What a formula is worked from: a body's numbers, and the points and lines drafted so far. */
export interface Scope {
	measurement(key: MeasurementKey): Mm;
	allowance(key: string): Mm;
	/** The value of an allowance that is a choice among named values: a plain number. */
	share(key: string): number;
	point(name: string): SheetPoint;
	line(name: string): Path;
	/** Whether this body's draft has such a point or line. */
	has(name: string): boolean;
	/** What several steps depend on, each worked once: only where nothing that is drafted moves any more. */
	readonly known?: Map<Formula, number> | undefined;
	/** What can be measured on pieces, where there are any. */
	readonly pieces?: PieceScope | undefined;
}

/** The value of a formula: millimetres for a length, a plain number for a share. Errors are the scope's. */
export const numberOf = (formula: Formula, scope: Scope): number => {
	switch (formula.kind) {
		case 'number':
			return formula.value;
		case 'measurement':
			return scope.measurement(formula.key);
		case 'allowance':
			return scope.allowance(formula.key);
		case 'share':
			return scope.share(formula.key);
		case 'distance':
			return distance(scope.point(formula.from), scope.point(formula.to));
		case 'length':
			return pathLength(scope.line(formula.line));
		case 'measured':
			return measuredOf(formula, scope);
		case 'negative':
			return -numberOf(formula.of, scope);
		case 'greater':
			return Math.max(numberOf(formula.left, scope), numberOf(formula.right, scope));
		case 'lesser':
			return Math.min(numberOf(formula.left, scope), numberOf(formula.right, scope));
		case 'choice':
			return numberOf(chosenOf(formula, scope), scope);
		case 'operation': {
			const left = numberOf(formula.left, scope);
			const right = numberOf(formula.right, scope);
			if (formula.sign === '+') return left + right;
			if (formula.sign === '-') return left - right;
			return formula.sign === '*' ? left * right : left / right;
		}
	}
};

const DEGREES = 180 / Math.PI;

const piecesOf = ({ pieces }: Scope): PieceScope => {
	if (!pieces) throw new Error('there are no pieces to measure');
	return pieces;
};

/** What is measured, in millimetres or degrees. */
const measuredOf = ({ what, names: [first = '', second = ''], above }: Measured, scope: Scope): number => {
	switch (what) {
		case 'rise':
			return scope.point(first).y - scope.point(second).y;
		case 'across':
			return scope.point(second).x - scope.point(first).x;
		case 'angle': {
			const [from, to] = [scope.point(first), scope.point(second)];
			return Math.atan2(from.y - to.y, to.x - from.x) * DEGREES;
		}
		case 'turn': {
			const [arriving, leaving] = [endDirection(scope.line(first)), startDirection(scope.line(second))];
			return arriving && leaving ? angleBetween(arriving, leaving) * DEGREES : 0;
		}
		case 'widthAt':
		case 'openWidthAt': {
			const level = mm(scope.point(second).y - (above ? numberOf(above, scope) : 0));
			const pieces = piecesOf(scope);
			return what === 'widthAt' ? pieces.width(first, level) : pieces.openWidth(first, level);
		}
		case 'sewn':
			return piecesOf(scope).edge(first);
	}
};

/** The one of a choice's two formulas that holds for this body. Floating-point noise is nothing. */
export const chosenOf = ({ over, yes, no }: Extract<Formula, { kind: 'choice' }>, scope: Scope): Formula =>
	numberOf(over, scope) > SAME_PLACE ? yes : no;

/** The value of a formula that was read as a length. */
export const lengthOf = (formula: Formula, scope: Scope): Mm => mm(numberOf(formula, scope));
