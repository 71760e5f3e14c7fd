import type { Body } from '#shared/body.ts';
import type { Compass, StepFile } from '#shared/method.ts';
import { mm, radians } from '#shared/units.ts';
import { scopeOf, type Draft } from '#drafting/evaluate.ts';
import type { Formula } from '#drafting/formula/formula.ts';
import { allowanceNames, parseFormula, type KnownNames } from '#drafting/formula/parse.ts';
import { lengthOf, numberOf, type Scope } from '#drafting/formula/value.ts';
import type { Method } from '#drafting/method.ts';
import { COMPASS } from '#drafting/steps/compass.ts';
import { readStep, stepMakes, workStep } from '#drafting/steps/kinds.ts';
import type { FormulaReader } from '#drafting/steps/step-rules.ts';
import { turnAngle } from '#drafting/steps/motion.ts';
import { movedBy, turning } from '#geometry/motion.ts';
import { at, between, directionTo, moved, type SheetPoint } from '#geometry/point.ts';
import { fileOf } from '../../drafting/lesson-method.ts';

/**
 * Where a mistake leads, worked from what its list says and from the draft alone: by the drafting engine where the
 * step is done with other fields, else by plain geometry. None of the checker's wrong rules is used.
 */

/** What a mistake is: a place in words, or the step's own fields that were others; null for one that was left out. */
export type How = string | Readonly<Record<string, unknown>>;

/** The lengths that a list may name beside those of the draft. */
const RULERS = { cm: mm(10), inch: mm(25.4) } as const;

/** The method's own file, as far as it is used here. */
interface File {
	readonly amounts?: Readonly<Record<string, string>>;
	readonly steps: readonly Readonly<Record<string, unknown>>[];
}

const namesOf = (method: Method): KnownNames => {
	const made = (kind: 'point' | 'line'): string[] => [
		...method.steps.filter((step) => stepMakes(step) === kind).map(({ name }) => name),
		...Object.entries(method.uses).flatMap(([alias, used]) =>
			used.steps.filter((step) => stepMakes(step) === kind).map(({ name }) => `${alias}.${name}`)
		)
	];
	const { allowances, shares } = allowanceNames(method.allowances);
	return {
		allowances: [...allowances, ...Object.keys(RULERS)],
		shares,
		points: made('point'),
		lines: made('line')
	};
};

/** A mistake's place for a body; undefined where it leads nowhere. */
type Lead = (scope: Scope) => SheetPoint | undefined;

const POINT = '([A-Z]\\d*)';
const pattern = (...parts: readonly string[]): RegExp => new RegExp(`^${parts.join(' +')}$`);
const SHAPES = {
	point: pattern(POINT),
	meet: pattern('meet', POINT, POINT),
	between: pattern('between', POINT, POINT, 'at', '(.+)'),
	turn: pattern('turn', POINT, 'about', POINT, 'from', POINT, 'to', `${POINT}(?: +by (.+))?`),
	toward: pattern(POINT, '(toward|square)', POINT, 'by', '(.+)'),
	legs: pattern(POINT, '((?:up|down|across|in) .+)')
} as const;

const legsOf = (text: string, formula: (text: string) => Formula) =>
	text.split(';').map((leg) => {
		const [, go = 'down', by = ''] = /^ *(\w+) +(.+)$/.exec(leg) ?? [];
		return { go: go as Compass, by: formula(by) };
	});

/** Reads a place in words. Throws where it has none of the shapes, BadInput where a formula is wrong. */
const placeInWords = (
	text: string,
	formula: (text: string, wanted?: 'length' | 'share') => Formula
): Lead => {
	const found = (shape: keyof typeof SHAPES): readonly string[] | undefined =>
		SHAPES[shape].exec(text)?.slice(1);
	const [point, meet, share, turn, toward, legs] = [
		found('point'),
		found('meet'),
		found('between'),
		found('turn'),
		found('toward'),
		found('legs')
	];
	if (point) return (scope) => scope.point(point[0] ?? '');
	if (meet) return (scope) => at(scope.point(meet[0] ?? '').x, scope.point(meet[1] ?? '').y);
	if (share) {
		const [from = '', to = '', by = ''] = share;
		const of = formula(by, 'share');
		return (scope) => between(scope.point(from), scope.point(to), numberOf(of, scope));
	}
	if (turn) {
		const [move = '', about = '', from = '', to = '', by = '1'] = turn;
		const of = formula(by, 'share');
		return (scope) => {
			const centre = scope.point(about);
			const angle = turnAngle(centre, scope.point(from), scope.point(to)) * numberOf(of, scope);
			return movedBy(turning(centre, radians(angle)), scope.point(move));
		};
	}
	if (toward) {
		const [from = '', how = '', to = '', by = ''] = toward;
		const of = formula(by);
		return (scope) => {
			const way = directionTo(scope.point(from), scope.point(to));
			const turned = way && how === 'square' ? { dx: way.dy, dy: -way.dx } : way;
			return turned && moved(scope.point(from), turned, lengthOf(of, scope));
		};
	}
	if (legs) {
		const [from = '', ways = ''] = legs;
		const all = legsOf(ways, formula);
		return (scope) =>
			all.reduce((place, { go, by }) => moved(place, COMPASS[go], lengthOf(by, scope)), scope.point(from));
	}
	throw new Error(`no place is said by "${text}"`);
};

/** Reads where a mistake at a step leads. Throws, naming the mistake, where that cannot be read. */
export const readLead = (method: Method, stepName: string, how: How): Lead => {
	const file = fileOf(method.id) as File;
	const place = `${method.id}, ${stepName}: ${JSON.stringify(how)}`;
	const names = namesOf(method);
	const amounts: Record<string, Formula> = {};
	for (const [key, text] of Object.entries(file.amounts ?? {}))
		amounts[key] = parseFormula(text, place, { ...names, amounts });
	const known: KnownNames = { ...names, amounts };
	const formula = (text: string, wanted: 'length' | 'share' = 'length'): Formula =>
		parseFormula(text, place, known, wanted);
	if (typeof how === 'string') return placeInWords(how, formula);
	const written = file.steps.find(({ name }) => name === stepName);
	if (!written) throw new Error(`${place}: there is no such step`);
	const reader: FormulaReader = Object.assign(
		(text: string, _field: string, wanted?: 'length' | 'share') => formula(text, wanted),
		{ quantity: (text: string) => mm(parseFloat(text) * 10) }
	);
	const fields = Object.entries({ ...written, ...how }).filter(([, value]) => value !== null);
	const asText = fields.map(([key, value]) => [key, typeof value === 'number' ? String(value) : value]);
	const step = readStep(Object.fromEntries(asText) as StepFile, reader, 'en');
	return (scope) => {
		const work = workStep(step, scope);
		return work.kind === 'point' ? work.point : undefined;
	};
};

/** The scope of a draft, with the rulers that a list may name. */
export const scopeFor = (method: Method, body: Body, draft: Draft): Scope => {
	const scope = scopeOf(method, body, draft);
	const isRuler = (key: string): key is keyof typeof RULERS => Object.hasOwn(RULERS, key);
	return { ...scope, allowance: (key) => (isRuler(key) ? RULERS[key] : scope.allowance(key)) };
};
