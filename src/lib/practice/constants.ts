import { mm, type Mm } from '#shared/units.ts';

/** Every number that practice is steered by, each with its reason. They steer what is asked next; nobody is graded by them. */

/**
 * Bayesian knowledge tracing: how likely a rule is known before the first try, is learnt at a try, is
 * met by luck, and is missed in spite of being known.
 *
 * Luck: a place within 2 mm on a sheet of half a metre is met by chance once in many thousands, but the usual
 * wrong rules do now and then come out right for one body; the wrong point and its rule are one of some fifty
 * pairs; a typed number is not guessed. One in twenty is more than any of these. Slips: one in ten is usual for
 * work by hand. Known and learnt: usual for a subject that has just been taught. With these, two right answers
 * on different bodies lift a rule from 0.2 over MASTERED (0.845, 0.991), and one miss then takes it below
 * again (0.936).
 */
export const KNOWLEDGE = { known: 0.2, learnt: 0.15, luck: 0.05, slip: 0.1 } as const;

/** From here on a rule counts as mastered: the bound that knowledge tracing is commonly used with. */
export const MASTERED = 0.95;

/** Days on which a rule must have been right to be called secure: what was right twice in one evening may be gone by the next. */
export const DAYS_TO_BE_SECURE = 2;

/** After so many tries without mastery a worked example is shown: some learners never reach mastery by trying alone. */
export const TRIES_BEFORE_EXAMPLE = 10;

/** Bodies that are remembered for a rule, so that none counts twice. Nobody meets the first of so many again by chance. */
export const BODIES_REMEMBERED = 40;

/**
 * Spaced review: how likely a rule should still be known when it comes up again, and the longest wait in days (a
 * course and the year after it). Without fuzz the same answers give the same days; nothing is scheduled within a day.
 */
export const REVIEW = {
	request_retention: 0.9,
	maximum_interval: 365,
	enable_fuzz: false,
	enable_short_term: false
} as const;

/** Bodies looked at for one that tells the missteps of a step apart. */
export const TELLING_DRAWS = 24;

/** Missteps nearer to each other than so many tolerances of a point can be taken for one another. */
export const TELLING_TOLERANCES = 2;

/** Choices of what went wrong at a point: enough that guessing is poor, few enough to be read. */
export const CHOICES = 4;

/**
 * How far a seeded slip may put a point from its place in a draft that is searched for it. Further, and it is
 * found at a glance or lies off the sheet; half the bust for a quarter is some 25 cm.
 */
export const FARTHEST_SLIP: Mm = mm(300);

/** How much two seams to be trued differ: more than the rounding of three lengths read, and no more than a slip of the hand. */
export const SEAM_SLIP: readonly [least: Mm, most: Mm] = [mm(8), mm(20)];

/** How much more a rule that is due weighs in a set than one that is as well known and not due: it is what a set is for. */
export const DUE_WEIGHT = 1;

/** What a rule weighs of the draft that was asked last: a change of draft makes one think which rule it is. */
export const SAME_DRAFT = 1 / 3;

/** Points on the sheet before it can be asked where a rule starts: from fewer it would be guessed. */
export const FEWEST_STARTS = 4;

/** How many points the first help names, the one that a rule starts from among them: fewer to look at, and still to be known. */
export const STARTS_IN_HELP = 3;

/** The days after which it is tried what has stayed of a part, on new bodies and without help; and how many exercises that takes. */
export const PROBE = { after: 7, exercises: 5 } as const;

/** The share of a probe that is right at first where a part has stayed. */
export const STAYED = 0.8;

/** What every rule weighs in a set, however well known: the rest of a set is chosen by what is not known yet. */
export const LEAST_WEIGHT = 0.05;
