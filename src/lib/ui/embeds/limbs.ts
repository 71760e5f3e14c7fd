import { pathMapped, type Path } from '#geometry/path.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import { cubic, straight } from '#geometry/segment.ts';

/** What the dress stand lacks, for the figures of measurements: an arm and the legs. Their shapes are invented. */

/** The right arm from its outer side, slightly bent: the body looks to the right. */
export const ARM: Readonly<Record<'shoulder' | 'elbow' | 'wrist', SheetPoint>> = {
	shoulder: at(0, 20),
	elbow: at(-14, 322),
	wrist: at(58, 544)
};
const [WRIST_BACK, WRIST_FRONT] = [at(30, 550), at(88, 532)];
const [UPPER_BACK, UPPER_FRONT] = [at(-64, 136), at(64, 136)];

export const armLines: readonly Path[] = [
	[
		cubic(ARM.shoulder, at(-48, 24), at(-66, 70), UPPER_BACK),
		cubic(UPPER_BACK, at(-62, 210), at(-60, 262), at(-50, 322)),
		cubic(at(-50, 322), at(-40, 384), at(0, 460), WRIST_BACK),
		cubic(WRIST_BACK, at(32, 590), at(40, 640), at(62, 688)),
		cubic(at(62, 688), at(76, 716), at(100, 716), at(102, 688)),
		cubic(at(102, 688), at(106, 660), at(108, 640), at(106, 616)),
		cubic(at(106, 616), at(112, 640), at(134, 646), at(134, 624)),
		cubic(at(134, 624), at(130, 590), at(100, 572), WRIST_FRONT),
		cubic(WRIST_FRONT, at(82, 440), at(66, 370), at(50, 300)),
		cubic(at(50, 300), at(56, 250), at(64, 200), UPPER_FRONT),
		cubic(UPPER_FRONT, at(66, 70), at(48, 24), ARM.shoulder)
	]
];

/** The body behind the arm, and the elbow's crease. */
export const armSeams: readonly Path[] = [
	[
		cubic(at(-34, -66), at(-34, -20), at(-100, 20), at(-106, 130)),
		cubic(at(-106, 130), at(-106, 240), at(-70, 330), at(-78, 440)),
		cubic(at(-78, 440), at(-84, 520), at(-140, 560), at(-134, 712))
	],
	[
		cubic(at(42, -66), at(40, -20), at(96, 60), at(118, 190)),
		cubic(at(118, 190), at(128, 270), at(84, 340), at(92, 440)),
		cubic(at(92, 440), at(96, 500), at(118, 540), at(118, 580))
	],
	[cubic(at(50, 300), at(36, 306), at(26, 312), at(16, 322))]
];

/** Round the arm where it is fullest, from the shoulder point over the elbow to the wrist, and round the wrist. */
export const UPPER_ARM_TAPE: Path = [cubic(UPPER_BACK, at(-34, 152), at(34, 152), UPPER_FRONT)];
export const ARM_TAPE: Path = [
	cubic(ARM.shoulder, at(-6, 120), at(-22, 220), ARM.elbow),
	cubic(ARM.elbow, at(-4, 400), at(34, 470), ARM.wrist)
];
export const WRIST_TAPE: Path = [cubic(WRIST_BACK, at(48, 556), at(74, 548), WRIST_FRONT)];

/** The right half of the legs from before, from the waist to the floor. */
const FLOOR = 706;
export const LEGS: Readonly<Record<'waist' | 'hip' | 'floor', SheetPoint>> = {
	waist: at(91, 0),
	hip: at(125, 128),
	floor: at(125, FLOOR)
};
const OVER_HIP = cubic(LEGS.waist, at(93, 44), at(124, 78), LEGS.hip);
const LEG: Path = [
	OVER_HIP,
	cubic(LEGS.hip, at(126, 230), at(100, 310), at(94, 400)),
	cubic(at(94, 400), at(92, 440), at(102, 480), at(92, 550)),
	cubic(at(92, 550), at(84, 610), at(72, 640), at(72, 676)),
	cubic(at(72, 676), at(84, 688), at(94, 696), at(94, FLOOR)),
	straight(at(94, FLOOR), at(38, FLOOR)),
	cubic(at(38, FLOOR), at(38, 690), at(42, 684), at(42, 672)),
	cubic(at(42, 672), at(42, 620), at(22, 540), at(28, 480)),
	cubic(at(28, 480), at(34, 430), at(30, 400), at(26, 370)),
	cubic(at(26, 370), at(14, 300), at(6, 240), at(0, 196))
];
const bothSides = (path: Path): readonly Path[] => [path, pathMapped(path, ({ x, y }) => at(-x, y))];

export const legsLines: readonly Path[] = [...bothSides(LEG), [straight(at(-180, FLOOR), at(180, FLOOR))]];

/** The waist's tie, and the body above it. */
export const legsSeams: readonly Path[] = [
	[cubic(at(-91, 0), at(-50, 11), at(50, 11), at(91, 0))],
	...bothSides([cubic(LEGS.waist, at(92, -24), at(100, -44), at(108, -66))])
];

/** From the waist's tie over the hip, and straight down to the floor. */
export const LEGS_TAPE: Path = [OVER_HIP, straight(LEGS.hip, LEGS.floor)];
