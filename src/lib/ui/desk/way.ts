import { mm, radians, type Mm, type Radians } from '#shared/units.ts';
import type { Drafted } from '#drafting/evaluate.ts';
import { COMPASS } from '#drafting/steps/compass.ts';
import { turnAngle } from '#drafting/steps/motion.ts';
import type { Answer } from '#drafting/steps/step-rules.ts';
import { movedBy, turning } from '#geometry/motion.ts';
import {
	alongness,
	directionTo,
	distance,
	moved,
	squareTo,
	type Direction,
	type SheetPoint
} from '#geometry/point.ts';

/**
 * The way that a moving point keeps to, however it is moved: round a centre, as a panel turns about a pin,
 * or straight on. How far it has gone is told along the way; round a centre, clockwise as the sheet is seen
 * counts as forward.
 */
export interface Way {
	/** Where the point lies before it is moved. */
	readonly begin: SheetPoint;
	/** The centre of a way that goes round. */
	readonly about: SheetPoint | undefined;
	/** How far along the way one place is from another, both taken to the way. */
	gone(from: SheetPoint, to: SheetPoint): Mm;
	/** The place so far along the way from where it begins. */
	placeAt(gone: Mm): SheetPoint;
	/** The direction in which the way runs forward where it passes a place. */
	forward(place: SheetPoint): Direction | undefined;
}

/** A way round a centre; undefined where the point lies on the centre itself. */
const roundWay = (about: SheetPoint, begin: SheetPoint): Way | undefined => {
	const radius = distance(about, begin);
	if (radius === 0) return undefined;
	return {
		begin,
		about,
		gone: (from, to) => mm(turnAngle(about, from, to) * radius),
		placeAt: (gone) => movedBy(turning(about, radians(gone / radius)), begin),
		forward: (place) => {
			const out = directionTo(about, place);
			return out && squareTo(out);
		}
	};
};

const straightWay = (begin: SheetPoint, along: Direction): Way => ({
	begin,
	about: undefined,
	gone: (from, to) => mm((to.x - from.x) * along.dx + (to.y - from.y) * along.dy),
	placeAt: (gone) => moved(begin, along, gone),
	forward: () => along
});

/** The way that an answer keeps to; undefined for one that may be put anywhere, and while its start is not drafted. */
export const wayOf = (answer: Answer, { points }: Drafted): Way | undefined => {
	const begin = answer.put === 'way' ? points[answer.from] : undefined;
	if (answer.put !== 'way' || !begin) return undefined;
	if ('go' in answer.on) return straightWay(begin, COMPASS[answer.on.go]);
	const about = points[answer.on.about];
	return about && roundWay(about, begin);
};

/**
 * The place on the way that lies nearest to another, to whole steps of the finest printed length: a snap to
 * the grid would let the point leave its way, and one to the goal would give it away.
 */
export const heldTo = (way: Way, place: SheetPoint, fine: Mm): SheetPoint =>
	way.placeAt(mm(Math.round(way.gone(way.begin, place) / fine) * fine));

/** Below this a way runs too square to an arrow for the arrow to say which way is meant: the sine of 30 degrees. */
const MEANT = 0.5;

/**
 * Whether an arrow key means forward along the way (1) or back (-1): whichever is seen to go where the arrow
 * points. Where the way runs square to it, right and down go forward.
 */
export const meantBy = (way: Way, place: SheetPoint, right: number, down: number): 1 | -1 => {
	const forward = way.forward(place);
	const along = forward ? alongness(forward, { dx: right, dy: down }) : 0;
	if (Math.abs(along) >= MEANT) return along > 0 ? 1 : -1;
	return right + down > 0 ? 1 : -1;
};

/** The angle by which a place is turned from where the way begins; undefined on a straight way. */
export const turnedBy = ({ about, begin }: Way, place: SheetPoint): Radians | undefined =>
	about && turnAngle(about, begin, place);

/** The least turn that is spoken of, as it is printed: a twentieth of a degree. */
const UNTURNED: Radians = radians(Math.PI / 3600);

/** A turn as it is spoken of: none where it is too small to be. */
export const spokenTurn = (angle: Radians): Radians => (Math.abs(angle) < UNTURNED ? radians(0) : angle);
