import { SAME_PLACE } from '#shared/tolerances.ts';
import { mm, type Mm } from '#shared/units.ts';
import type { MeasurementKey } from '#shared/measurements.ts';
import { pathLength, type Path } from '#geometry/path.ts';
import { distance, type SheetPoint } from '#geometry/point.ts';
import type { Formula } from './formula.ts';

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
		case 'negative':
			return -numberOf(formula.of, scope);
		case 'greater':
			return Math.max(numberOf(formula.left, scope), numberOf(formula.right, scope));
		case 'lesser':
			return Math.min(numberOf(formula.left, scope), numberOf(formula.right, scope));
		case 'choice':
			return numberOf(chosenOf(formula, scope), scope);
		case 'operation': {
			const [left, right] = [numberOf(formula.left, scope), numberOf(formula.right, scope)];
			if (formula.sign === '+') return left + right;
			if (formula.sign === '-') return left - right;
			return formula.sign === '*' ? left * right : left / right;
		}
	}
};

/** The one of a choice's two formulas that holds for this body. Floating-point noise is nothing. */
export const chosenOf = ({ over, yes, no }: Extract<Formula, { kind: 'choice' }>, scope: Scope): Formula =>
	numberOf(over, scope) > SAME_PLACE ? yes : no;

/** The value of a formula that was read as a length. */
export const lengthOf = (formula: Formula, scope: Scope): Mm => mm(numberOf(formula, scope));
