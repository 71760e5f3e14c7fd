import { POINT_TOLERANCE } from '#shared/tolerances.ts';
import { mm, type Mm } from '#shared/units.ts';

/**
 * How common each wrong rule is, and the other numbers of the weighing. A prior is a share of all wrong
 * placements. Teachers' experience: common practice, no source. Only the ratios matter, and no
 * diagnosis hangs on a factor of ten: whatever is as close as that is told as one of several. Families that the outside list
 * (tests/measure) has more often or less were moved toward it by halves, by that half of it which was not held back.
 */
export const PRIORS = {
	/** Half for quarter and the like: the fold is forgotten, or counted twice. The commonest of all. */
	fraction: 0.065,
	/** An allowance left out: it stands last in the rule, and the measurement fills the mind. */
	allowanceLeftOut: 0.05,
	/** Added twice: once in the head and once on the paper. */
	allowanceTwice: 0.016,
	/** Taken off: ease is thought of as what a garment is smaller by. */
	allowanceSubtracted: 0.022,
	/** The neighbouring measurement: the next line of the list. */
	measurement: 0.02,
	/** Any other length that the learner has at hand, read off the wrong line of the list. */
	anyLength: 0.004,
	/** A length added that the rule has not, or taken off. */
	added: 0.0003,
	/** A measurement typed as it stands, and nothing done with it. */
	untouched: 0.01,
	/** An allowance added that the rule has not, which another step near by has: its rule is still in the ear. */
	allowanceAdded: 0.002,
	/** Any other of the draft's. */
	anyAllowanceAdded: 0.0004,
	/** A term left out that is a measurement or a distance: seldom, since it is what the rule is about. */
	termLeftOut: 0.006,
	/** A share of the whole sum, where the rule means one term: a bracket that was not written. */
	shareOfSum: 0.01,
	/** Any other measurement of the body, each. */
	anyMeasurement: 0.002,
	/** A usual share of any measurement and nothing besides, each. */
	plainMeasurement: 0.0006,
	/** What is beyond whole centimetres, or inches, left out. */
	fractionDropped: 0.0015,
	/** The rule of another step of the draft: shared by all, the nearest most. */
	otherRule: 0.02,
	/** The length of another step added to the rule's or taken off: shared likewise. */
	ruleAdded: 0.004,
	/** A length that is in use laid off straight from where the rule starts, which it does not do: shared by all. */
	laidOff: 0.04,
	/** A part of a sum that is itself a sum left out, doubled, halved or with the other sign, each. */
	wholePart: 0.02,
	/** A curve measured from end to end with the ruler. */
	straightForCurved: 0.02,
	/** As far as another point lies, or as long as a line is: shared by all. */
	asFarAs: 0.025,
	/** The other of two lengths, the rule of another case, another of the named values, each. */
	otherFormula: 0.01,
	/** A number of the rule forgotten, each: one that is no share of a length, or it would be the whole for a half. */
	numberForgotten: 0.003,
	/** Left at a point that stands on the sheet and that the rule starts from: the rest was not done. Shared by those. */
	leftAtNeed: 0.06,
	/** Left at any other: shared by those. */
	leftAt: 0.025,
	/** Level with one point and straight above or below another, which is no rule of the step: shared by all pairs. */
	squares: 0.025,
	/** The same with two points that the step works with: shared by all pairs of those. */
	squaresOfNeeds: 0.02,
	/** Half of the way between two points, likewise. */
	halfway: 0.01,
	/** Another starting point: shared by all the points that stand on the sheet. */
	start: 0.16,
	/** Laid off toward another point: shared likewise. */
	toward: 0.04,
	/** The distance to another point: shared likewise. */
	distance: 0.06,
	/** The opposite way. */
	opposite: 0.025,
	/** Down for across and across for down. */
	crossed: 0.02,
	/** Along a slope for square, and square for along the slope. */
	slope: 0.045,
	/** Inches for centimetres: a tape carries both, one on each side. */
	unit: 0.012,
	/** The decimal point one place off, in the result. */
	decimal: 0.006,
	/** The tape read on the wrong side of a ten, so that the number is 10 cm too long or too short. */
	tape: 0.009,
	/** Two digits written in the wrong order. */
	digits: 0.004,
	/** The rule of the other panel. */
	otherPanel: 0.015,
	/** Twice as far as the square lines meet, or half, from where either comes: each. */
	metElsewhere: 0.004,
	/** The right place of another point that is still to come: shared by all of those. */
	otherPoint: 0.02,
	/** Brought only as far as the fold, where it is to be mirrored on it. */
	toFold: 0.015,
	/** What is to be moved left where it was: its new name is read as another name of the same place. */
	unmoved: 0.05,
	/** The line not looked for at all, or taken as it lies: the point beside the place stands on the sheet already. */
	notCrossed: 0.08,
	/** Moved straight onto the end of the other leg, as though paper stretched: whoever draws a turn, and does not make it, sees two ends that meet. */
	straightOnto: 0.06,
	/** Turned about another point, or onto another: shared by those that stand. */
	otherCentre: 0.03,
	otherGoal: 0.03,
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
	/** Shares that few rules have: a fifth, a twelfth, three quarters. */
	rareFraction: 0.15,
	/** Shares that are not each other's half or double: nobody folds a tape in three by mistake. */
	oddFraction: 0.4,
	/** A share of something that the rule takes whole, or of an allowance alone. */
	unlikelyFraction: 0.3,
	/** Neighbours that are alike only in their place on the body. */
	seldom: 0.3,
	/** A slip in reading the measurement itself, when the same slip with the result is the commoner. */
	inMeasurement: 0.5,
	/** Inches for a body written in centimetres, and the reverse, where the tape has to be turned round. */
	otherSide: 0.2,
	/** A distance that stands on the sheet, worked again by the rule that marked it. */
	workedAgain: 0.2,
	/** A sum that only comes to the number of a wrong rule, and shows another working. */
	onlyNumber: 0.1,
	/** Crossed, and besides the opposite way. */
	crossedAndOpposite: 0.25
} as const;

/**
 * How likely one allowance is taken for another, each: the same of the other panel; one that is called alike, as the eases are; one that
 * a step at most so many away uses; any of the draft.
 */
export const KINSHIP = { twin: 0.02, alike: 0.006, near: 0.003, any: 0.0008, steps: 5 } as const;

/** By how much a tape is read beside its mark, and how often, each way: the nearest marks are the likeliest to be taken for one another. */
export const TAPE_SLIPS = [
	{ size: 'centimetre', by: mm(10), prior: 0.003 },
	{ size: 'halfCentimetre', by: mm(5), prior: 0.002 },
	{ size: 'twoCentimetres', by: mm(20), prior: 0.001 },
	{ size: 'inch', by: mm(25.4), prior: 0.0012 },
	{ size: 'halfInch', by: mm(12.7), prior: 0.0006 }
] as const;

/** Two slips at once: a tenth of wrong placements, and either may come first. */
export const PAIR = 0.2;
/** Pairs that are rarer explain nothing. */
export const LEAST_PAIR = 5e-6;

/** How likely a learner worked from the marks that stand on the sheet, and not from where they should be. */
export const OWN_BASE = 0.75;

/** How much likelier a line that some rule of the draft uses is taken for another than one that none does. */
export const USED_LINE = 8;

/** How much likelier a line is taken for another of the same draft. */
export const SAME_DRAFT = 3;

/** How much likelier a point is taken for another of the same letter than for any other. */
export const ALIKE = 4;

/** How much likelier a start is than any other point of the sheet: the corner, and points that other steps start from. */
export const START_WEIGHTS = { corner: 3, usual: 2, other: 1 } as const;

/** Spread of a careful hand about the place that was meant, one axis (standard deviation): what is allowed is two of them. */
export const HAND: Mm = mm(POINT_TOLERANCE / 2);

/** Beyond six spreads a hand does not stray. */
export const STRAY: Mm = mm(6 * HAND);

/** Spread of a careless hand about the right place, one axis: the rule was known, the ruler slipped. */
export const CARELESS_HAND: Mm = mm(2.5);

/** How often a wrong placement is no wrong rule at all, but a careless hand. */
export const CARELESS: number = 0.2;

/** How often a wrong placement has a cause that is not among these rules, and lies anywhere. */
export const UNKNOWN: number = 0.5;

/** Where such a placement may lie: a half panel from the neck to the hip and a hand's breadth round it, 40 by 75 cm, in square millimetres. */
export const SHEET_AREA: number = 400 * 750;

/** How often the way is right and only the distance wrong from a cause that is not among these rules ... */
export const UNKNOWN_DISTANCE: number = 0.1;
/** ... half of them anywhere from nothing to the length of a half panel ... */
export const DISTANCES: Mm = mm(650);
/** ... and half near the right place, the fewer the further: so far off on average. */
export const SLIP: Mm = mm(15);

/** A misstep is certain where it is so much of all that could have led there ... */
export const CERTAIN = 0.96;
/** ... and so many times as likely as the next misstep: priors are guesses, and two that explain a place alike are both told. */
export const CLEARLY_ABOVE = 20;

/** Below this share of all that could have led there, even the likeliest are not worth telling. */
export const WORTH_TELLING = 0.15;

/** A misstep is told beside others where it is at least so much of the likeliest. */
export const BESIDE = 1 / 5;

/** More than so many help nobody. */
export const MOST_TOLD = 3;

/** Of two that lead to one place the rarer goes without saying where the other is so many times as common. */
export const OUTDONE = 1.3;
