import { mm, type Mm } from '#shared/units.ts';

/**
 * How common each wrong rule is, and the other numbers of the weighing. A prior is a share of all wrong
 * placements. Teachers' experience: common practice, no source. Only the ratios matter, and no
 * diagnosis hangs on a factor of two: whatever is as close as that is told as "either ... or ...".
 */
export const PRIORS = {
	/** Half for quarter and the like: the fold is forgotten, or counted twice. The commonest of all. */
	fraction: 0.05,
	/** An allowance left out: it stands last in the rule, and the measurement fills the mind. */
	allowanceLeftOut: 0.05,
	/** Added twice: once in the head and once on the paper. */
	allowanceTwice: 0.012,
	/** Taken off: ease is thought of as what a garment is smaller by. */
	allowanceSubtracted: 0.015,
	/** The neighbouring measurement: the next line of the list. */
	measurement: 0.03,
	/** The allowance of the other panel, or of the next girth. */
	allowanceNeighbour: 0.02,
	/** Any other length that the learner has at hand, read off the wrong line of the list. */
	anyLength: 0.004,
	/** A length added that the rule has not, or taken off. */
	added: 0.0003,
	/** A measurement typed as it stands, and nothing done with it. */
	untouched: 0.01,
	/** Another starting point: shared by all the points that stand on the sheet. */
	start: 0.16,
	/** Laid off toward another point: shared likewise. */
	toward: 0.04,
	/** The distance to another point: shared likewise. */
	distance: 0.04,
	/** The opposite way. */
	opposite: 0.015,
	/** Down for across and across for down. */
	crossed: 0.02,
	/** Along a slope for square, and square for along the slope. */
	slope: 0.03,
	/** Inches for centimetres: a tape carries both, one on each side. */
	unit: 0.015,
	/** The decimal point one place off, in the result. */
	decimal: 0.012,
	/** The tape read on the wrong side of a ten, so that the number is 10 cm too long or too short. */
	tape: 0.012,
	/** Two digits written in the wrong order. */
	digits: 0.01,
	/** The rule of the other panel. */
	otherPanel: 0.015,
	/** The right place of another point that is still to come: shared by all of those. */
	otherPoint: 0.03,
	/** What is to be moved left where it was: its new name is read as another name of the same place. */
	unmoved: 0.04,
	/** The line not looked for at all, or taken as it lies: the point beside the place stands on the sheet already. */
	notCrossed: 0.08,
	/** Moved straight onto the end of the other leg, as though paper stretched: whoever draws a turn, and does not make it, sees two ends that meet. */
	straightOnto: 0.06,
	/** The angle of another dart of the same piece: shared by none, since there are two or three of them. */
	otherDart: 0.03,
	/** As long as another line than the rule's: shared by all that are drawn. */
	otherLine: 0.06,
	/** A curve of a wrong shape: shapes are recognised and not weighed, so that one number does. */
	curve: 0.1
} as const;

/** What lowers a prior. */
export const LOWERED = {
	/** A second thing is changed. */
	anotherStep: 0.1,
	/** Shares that are not each other's half or double: nobody folds a tape in three by mistake. */
	oddFraction: 0.4,
	/** A share of something that the rule takes whole, or of an allowance alone. */
	unlikelyFraction: 0.3,
	/** Neighbours that are alike only in their place on the body. */
	seldom: 0.3,
	/** A slip in reading the measurement itself, when the same slip with the result is the commoner. */
	inMeasurement: 0.5,
	/** Inches for a body written in centimetres, and the reverse, where the tape has to be turned round. */
	otherSide: 0.4,
	/** A sum that only comes to the number of a wrong rule, and shows another working. */
	onlyNumber: 0.1,
	/** Crossed, and besides the opposite way. */
	crossedAndOpposite: 0.25
} as const;

/** How much likelier a start is than any other point of the sheet: the corner, and points that other steps start from. */
export const START_WEIGHTS = { corner: 3, usual: 2, other: 1 } as const;

/** Spread of a careful hand about the place that was meant, one axis (standard deviation): a pencil point and a pointer's tip. */
export const HAND: Mm = mm(1.1);

/** Beyond six spreads a hand does not stray. */
export const STRAY: Mm = mm(6 * HAND);

/** Spread of a careless hand about the right place, one axis: the rule was known, the ruler slipped. */
export const CARELESS_HAND: Mm = mm(2.5);

/** How often a wrong placement is no wrong rule at all, but a careless hand. */
export const CARELESS: number = 0.1;

/** How often a wrong placement has a cause that is not among these rules. */
export const UNKNOWN: number = 0.3;

/** Where such a placement may lie: a half panel from the neck to the hip and a hand's breadth round it, 40 by 75 cm, in square millimetres. */
export const SHEET_AREA: number = 400 * 750;

/** How often the way is right and only the distance wrong from a cause that is not among these rules. */
export const UNKNOWN_DISTANCE: number = 0.03;

/** The distances among which such a one lies: from nothing to the length of a half panel. */
export const DISTANCES: Mm = mm(650);

/** A misstep is certain where it is so much of all that could have led there ... */
export const CERTAIN = 0.85;
/** ... and so many times as likely as the next misstep: priors are guesses, and two that explain a place alike are both told. */
export const CLEARLY_ABOVE = 12;

/** Two or three missteps are told where together they are so much of all that could have led there. */
export const TOGETHER = 0.7;

/** A misstep is told beside others where it is at least so much of the likeliest. */
export const BESIDE = 1 / CLEARLY_ABOVE;

/** More than so many explain nothing. */
export const MOST_TOLD = 3;
