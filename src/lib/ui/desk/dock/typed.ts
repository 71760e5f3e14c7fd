import { BadInput } from '#shared/bad-input.ts';
import { message, type Message } from '#shared/speech/message.ts';
import type { Compass } from '#shared/method.ts';
import type { Typed } from '#shared/placement.ts';
import type { Mm, Unit } from '#shared/units.ts';
import { readDistance, withUnit } from '#drafting/formula/sum.ts';
import { COMPASS } from '#drafting/steps/compass.ts';
import { stepTyped } from '#drafting/steps/kinds.ts';
import type { Step } from '#drafting/steps/step-rules.ts';
import { at, moved, type SheetPoint } from '#geometry/point.ts';

/** What the fields of a typed entry hold: a distance with its start and its way, or how far across and down. */
export interface Fields {
	form: Typed['form'];
	sum: string;
	from: string;
	go: Compass;
	across: string;
	down: string;
}

/** The fields that something is written into. */
export type Written = 'sum' | 'across' | 'down';

/** The fields written into in each form of entry. */
const WRITTEN: Readonly<Record<Typed['form'], readonly Written[]>> = {
	distance: ['sum'],
	coordinates: ['across', 'down']
};

/** A field that cannot be used. It is not counted as a try. */
const bad = (field: Written, slip: Message): BadInput => new BadInput(field, slip);

/** What was typed for a step before, as it was written; else what suits the kind of step. */
export const firstFields = (
	step: Step,
	origin: string | undefined,
	before: Typed | undefined,
	unit: Unit
): Fields => ({
	form: stepTyped(step) ? 'distance' : 'coordinates',
	sum: '',
	go: stepTyped(step) ?? 'down',
	from: origin ?? 'O',
	across: '',
	down: '',
	...(before && (before.unit === unit ? before : inOtherUnit(before, before.unit)))
});

/** Fields that were typed in `unit`, for a learner who has turned to another: the numbers take their unit with them. */
export const inOtherUnit = <F extends Partial<Fields>>(fields: F, unit: Unit): F => ({
	...fields,
	...(fields.sum === undefined ? {} : { sum: withUnit(fields.sum, unit) }),
	...(fields.across === undefined ? {} : { across: withUnit(fields.across, unit) }),
	...(fields.down === undefined ? {} : { down: withUnit(fields.down, unit) })
});

/** Whether something is written that differs from what was settled. */
export const isPending = (fields: Fields, settled: Fields): boolean => {
	const keys =
		fields.form === 'distance'
			? (['form', 'sum', 'from', 'go'] as const)
			: (['form', 'across', 'down'] as const);
	const isEmpty = WRITTEN[fields.form].every((field) => fields[field].trim() === '');
	return !isEmpty && keys.some((key) => fields[key] !== settled[key]);
};

/** What an entry is read against. */
export interface Around {
	readonly unit: Unit;
	readonly points: Readonly<Record<string, SheetPoint>>;
	/** From where across and down are counted: the corner, or a handle's own end. */
	readonly zero: SheetPoint;
	/** Where the mark stands now: an empty field leaves it there. */
	readonly standing: SheetPoint | undefined;
}

/** Nothing is drafted further than this from the corner, in millimetres. */
const FURTHEST_MM = 5000;

const onSheet = (place: SheetPoint, field: Written): SheetPoint => {
	if (Math.max(Math.abs(place.x), Math.abs(place.y)) <= FURTHEST_MM) return place;
	throw bad(field, message('desk', 'tooFarOff'));
};

const lengthIn = (fields: Fields, field: Written, unit: Unit): Mm => {
	try {
		return readDistance(fields[field], unit).value;
	} catch (error) {
		if (error instanceof BadInput) throw bad(field, error.slip);
		throw error;
	}
};

/** The place that was typed. Throws BadInput, whose place is the field, where a field cannot be read, or where nothing was written. */
export const typedPlace = (fields: Fields, { unit, points, zero, standing }: Around): SheetPoint => {
	if (fields.form === 'distance') {
		const start = points[fields.from];
		if (!start) throw bad('sum', message('desk', 'chooseStart'));
		return onSheet(moved(start, COMPASS[fields.go], lengthIn(fields, 'sum', unit)), 'sum');
	}
	const isEmpty = (field: Written): boolean => fields[field].trim() === '';
	if (isEmpty('across') && isEmpty('down') && !standing) throw bad('across', message('desk', 'writeBoth'));
	const kept = standing ?? zero;
	const x = isEmpty('across') ? kept.x : zero.x + lengthIn(fields, 'across', unit);
	const y = isEmpty('down') ? kept.y : zero.y + lengthIn(fields, 'down', unit);
	onSheet(at(x, zero.y), 'across');
	return onSheet(at(x, y), 'down');
};

/** What is kept beside a typed point: the entry as it was written. */
export const typedOf = ({ form, sum, from, go, across, down }: Fields, unit: Unit): Typed =>
	form === 'distance' ? { form, sum, from, go, unit } : { form, across, down, unit };
