import { mm, type Mm } from '#shared/units.ts';
import type { TapeView } from '#shared/speech/en/lesson.ts';
import type { MeasurementKey } from '#shared/measurements.ts';
import { pathMapped, pathSamples, type Path } from '#geometry/path.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import { cubic, straight } from '#geometry/segment.ts';
import {
	ARM,
	ARM_TAPE,
	armLines,
	armSeams,
	LEGS,
	LEGS_TAPE,
	legsLines,
	legsSeams,
	UPPER_ARM_TAPE,
	WRIST_TAPE
} from './limbs.ts';

/**
 * A dress stand for the figures that show where a tape goes. Its shape is invented: the right half of
 * the outline, from the pit of the neck out and down to the hip, mirrored for the left. What it lacks is in limbs.ts.
 */
const SIDE_NECK = at(58, 0);
const SHOULDER = at(188, 42);
const NAPE = at(0, 15);
const BUST_POINT = at(84, 268);
const ARMPIT = at(166, 214);
/** Halfway down the armhole. */
const ACROSS_LEVEL = mm(134);
const WAIST_LEVEL = mm(432);
const HIP_LEVEL = mm(622);
const BUST_LEVEL = BUST_POINT.y;

/** The right half of the outline: shoulder, armhole, side, foot. */
const HALF: Path = [
	cubic(SIDE_NECK, at(90, 18), at(150, 24), SHOULDER),
	cubic(SHOULDER, at(180, 92), at(158, 140), ARMPIT),
	cubic(ARMPIT, at(176, 262), at(170, 300), at(156, 340)),
	cubic(at(156, 340), at(142, 384), at(136, 400), at(136, WAIST_LEVEL)),
	cubic(at(136, WAIST_LEVEL), at(138, 490), at(184, 540), at(186, HIP_LEVEL)),
	cubic(at(186, HIP_LEVEL), at(186, 660), at(182, 690), at(176, 712))
];

const mirror = ({ x, y }: SheetPoint): SheetPoint => at(-x, y);
const mirrored = (path: Path): Path => pathMapped(path, mirror);

/** The neck of the stand, up to its cap. */
const NECK: Path = [cubic(SIDE_NECK, at(46, -18), at(46, -40), at(48, -66))];

/** How far out the stand reaches at a level. */
const reachAt = (level: Mm): Mm => {
	const samples = pathSamples(HALF, mm(2)).filter(({ y }) => Math.abs(y - level) < 4);
	return mm(Math.max(...samples.map(({ x }) => x)));
};

/** How far out the stand reaches anywhere. */
export const STAND_REACH: Mm = mm(Math.max(...pathSamples(HALF, mm(2)).map(({ x }) => x)));

/** A tape round the body, as its near half is seen: a shallow curve from side to side. */
const girth = (level: Mm, sag: number): Path => {
	const out = reachAt(level);
	return [cubic(at(-out, level), at(-out * 0.55, level + sag), at(out * 0.55, level + sag), at(out, level))];
};

/** The places of a body that a figure names. */
export type PlaceName =
	| 'sideNeck'
	| 'nape'
	| 'bustPoint'
	| 'shoulderPoint'
	| 'armpit'
	| 'waist'
	| 'hip'
	| 'elbow'
	| 'wrist'
	| 'floor';

/** Where the tape goes for one measurement, and from which side it is seen. */
export interface TapeDrawing {
	readonly view: TapeView;
	readonly tape: Path;
	/** A ruler or a strip of card that is held level, to measure to. */
	readonly level?: Path;
	readonly marks: readonly { readonly name: PlaceName; readonly at: SheetPoint }[];
}

const front = (tape: Path, ...marks: TapeDrawing['marks']): TapeDrawing => ({ view: 'front', tape, marks });
const back = (tape: Path, ...marks: TapeDrawing['marks']): TapeDrawing => ({ view: 'back', tape, marks });
const arm = (tape: Path, ...marks: TapeDrawing['marks']): TapeDrawing => ({ view: 'arm', tape, marks });

const sideNeck: TapeDrawing['marks'][number] = { name: 'sideNeck', at: SIDE_NECK };
const bustPoint: TapeDrawing['marks'][number] = { name: 'bustPoint', at: BUST_POINT };
const waistUnder = (x: number): SheetPoint => at(x, WAIST_LEVEL + 8);
const nape: TapeDrawing['marks'][number] = { name: 'nape', at: NAPE };
const shoulderPoint: TapeDrawing['marks'][number] = { name: 'shoulderPoint', at: SHOULDER };
/** From arm to arm, halfway down the armhole. */
const across = (level: Mm): Path => [straight(at(-reachAt(level), level), at(reachAt(level), level))];
const overBust = cubic(SIDE_NECK, at(62, 90), at(82, 180), BUST_POINT);

/** The figure of every measurement. */
export const TAPES: Readonly<Record<MeasurementKey, TapeDrawing>> = {
	bust: front(girth(BUST_LEVEL, 18)),
	waist: front(girth(WAIST_LEVEL, 16)),
	hip: front(girth(HIP_LEVEL, 16)),
	neck: front([cubic(mirror(SIDE_NECK), at(-52, 52), at(52, 52), SIDE_NECK)], sideNeck),
	shoulderWidth: back([cubic(mirror(SHOULDER), at(-90, 66), at(90, 66), SHOULDER)], shoulderPoint),
	backLength: back([cubic(SIDE_NECK, at(66, 140), at(60, 300), waistUnder(58))], sideNeck, {
		name: 'waist',
		at: waistUnder(58)
	}),
	waistToHip: front(
		[cubic(at(136, WAIST_LEVEL), at(138, 490), at(184, 540), at(186, HIP_LEVEL))],
		{ name: 'waist', at: at(136, WAIST_LEVEL) },
		{ name: 'hip', at: at(186, HIP_LEVEL) }
	),
	frontLength: front(
		[overBust, cubic(BUST_POINT, at(86, 330), at(78, 390), waistUnder(78))],
		sideNeck,
		bustPoint,
		{ name: 'waist', at: waistUnder(78) }
	),
	bustHeight: front([overBust], sideNeck, bustPoint),
	bustSpan: front([straight(mirror(BUST_POINT), BUST_POINT)], bustPoint),
	napeToWaist: back([straight(NAPE, waistUnder(0))], nape, { name: 'waist', at: waistUnder(0) }),
	shoulderLength: front([cubic(SIDE_NECK, at(90, 18), at(150, 24), SHOULDER)], sideNeck, shoulderPoint),
	shoulderDrop: {
		...front([straight(at(SHOULDER.x, SIDE_NECK.y), SHOULDER)], sideNeck, shoulderPoint),
		level: [straight(SIDE_NECK, at(SHOULDER.x + 14, SIDE_NECK.y))]
	},
	acrossBack: back(across(ACROSS_LEVEL)),
	acrossChest: front(across(ACROSS_LEVEL)),
	scyeDepth: {
		...back([straight(NAPE, at(0, ARMPIT.y))], nape, { name: 'armpit', at: ARMPIT }),
		level: [straight(mirror(ARMPIT), ARMPIT)]
	},
	upperBust: front(girth(ARMPIT.y, 12), { name: 'armpit', at: ARMPIT }),
	underBust: front(girth(mm(336), 16)),
	upperArm: arm(UPPER_ARM_TAPE),
	armLength: arm(
		ARM_TAPE,
		{ name: 'shoulderPoint', at: ARM.shoulder },
		{ name: 'elbow', at: ARM.elbow },
		{ name: 'wrist', at: ARM.wrist }
	),
	wrist: arm(WRIST_TAPE),
	sideWaistToFloor: {
		view: 'legs',
		tape: LEGS_TAPE,
		marks: [
			{ name: 'waist', at: LEGS.waist },
			{ name: 'hip', at: LEGS.hip },
			{ name: 'floor', at: LEGS.floor }
		]
	}
};

/** The lines of the stand itself, the same for every measurement but for what its front and back show. */
export const standLines = (view: TapeView): readonly Path[] => {
	if (view === 'arm') return armLines;
	if (view === 'legs') return legsLines;
	const neckline: Path =
		view === 'front'
			? [cubic(mirror(SIDE_NECK), at(-44, 58), at(44, 58), SIDE_NECK)]
			: [cubic(mirror(SIDE_NECK), at(-40, 20), at(40, 20), SIDE_NECK)];
	const cap: Path = [cubic(at(-48, -66), at(-20, -76), at(20, -76), at(48, -66))];
	const foot: Path = [cubic(at(-176, 712), at(-90, 730), at(90, 730), at(176, 712))];
	return [HALF, mirrored(HALF), NECK, mirrored(NECK), neckline, cap, foot];
};

/** Faint lines that help to find the levels. */
export const standSeams = (view: TapeView): readonly Path[] => {
	if (view === 'arm') return armSeams;
	if (view === 'legs') return legsSeams;
	const panel: Path =
		view === 'front'
			? [
					cubic(at(112, 30), at(104, 120), at(88, 200), BUST_POINT),
					cubic(BUST_POINT, at(86, 340), at(70, 390), at(70, 440)),
					cubic(at(70, 440), at(72, 520), at(100, 600), at(100, 724))
				]
			: [
					cubic(at(112, 30), at(108, 160), at(76, 330), at(66, 440)),
					cubic(at(66, 440), at(70, 520), at(100, 600), at(100, 724))
				];
	return [
		panel,
		mirrored(panel),
		[straight(at(0, view === 'front' ? 44 : 15), at(0, 724))],
		girth(WAIST_LEVEL, 16)
	];
};
