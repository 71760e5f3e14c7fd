import type { Chance } from '#practice/chance.ts';
import type { Camera, Film, Vector } from './camera.ts';
import { SHEET } from './scene.ts';

/** How a picture is taken. */
export interface Condition {
	readonly name: string;
	/** Greatest tilt, in degrees. */
	readonly tilt: number;
	readonly bend: number;
	/** Greatest height of the paper over the table, in millimetres. */
	readonly bulge: number;
	readonly film: Film;
}

export const GOOD: Condition = {
	name: 'good',
	tilt: 15,
	bend: 0.003,
	bulge: 0,
	film: { blur: 0.8, noise: 3, uneven: 0.25, quality: 90 }
};

/** The conditions of the goals, one thing worse at a time. */
export const CONDITIONS: readonly Condition[] = [
	GOOD,
	{ ...GOOD, name: 'tilt to 25°', tilt: 25 },
	{ ...GOOD, name: 'lens 1 %', tilt: 25, bend: 0.01 },
	{ ...GOOD, name: 'lens 2 %', tilt: 25, bend: 0.02 },
	{ ...GOOD, name: 'defocus', film: { ...GOOD.film, blur: 2.5 } },
	{ ...GOOD, name: 'noise', film: { ...GOOD.film, noise: 10, quality: 70 } },
	{ ...GOOD, name: 'uneven light', film: { ...GOOD.film, uneven: 0.6 } },
	{ ...GOOD, name: 'bulge 3 mm', bulge: 3 },
	{
		name: 'all at once',
		tilt: 25,
		bend: 0.02,
		bulge: 3,
		film: { blur: 1.8, noise: 8, uneven: 0.5, quality: 70 }
	}
];

const turned = (about: Vector, angle: number, v: Vector): Vector => {
	const [x, y, z] = about;
	const [c, s] = [Math.cos(angle), Math.sin(angle)];
	const dot = x * v[0] + y * v[1] + z * v[2];
	return [
		v[0] * c + (y * v[2] - z * v[1]) * s + x * dot * (1 - c),
		v[1] * c + (z * v[0] - x * v[2]) * s + y * dot * (1 - c),
		v[2] * c + (x * v[1] - y * v[0]) * s + z * dot * (1 - c)
	];
};

/** A bulge that is highest somewhere in the sheet's middle half and nothing at its edges. */
const bulging = (height: number, chance: Chance): Camera['height3d'] => {
	if (height === 0) return () => 0;
	const [px, py] = [0.5 + 0.5 * chance.fraction(), 0.5 + 0.5 * chance.fraction()];
	return (x, y) => {
		const [a, b] = [x / SHEET.width, y / SHEET.height];
		if (a <= 0 || a >= 1 || b <= 0 || b >= 1) return 0;
		return height * Math.sin(Math.PI * a ** (1 / (2 * px))) * Math.sin(Math.PI * b ** (1 / (2 * py)));
	};
};

/** A telephone's main camera, 26 mm in the terms of a 35 mm film, held upright over the sheet, which fills 88 % of the picture. */
export const heldOver = (
	{ tilt, bend, bulge }: Condition,
	chance: Chance,
	{ width = 3000, height = 4000, fills = 0.88 }: { width?: number; height?: number; fills?: number } = {}
): Camera => {
	const focal = (26 / 43.27) * Math.hypot(width, height);
	const away = Math.max((SHEET.height * focal) / height, (SHEET.width * focal) / width) / fills;
	const direction = chance.fraction() * 2 * Math.PI;
	const axis: Vector = [Math.cos(direction), Math.sin(direction), 0];
	const angle = (tilt * Math.sqrt(chance.fraction()) * Math.PI) / 180;
	const roll = chance.normal() * 0.03;
	const look = turned(axis, angle, [0, 0, 1]);
	const across = turned(axis, angle, [Math.cos(roll), Math.sin(roll), 0]);
	const down = turned(axis, angle, [-Math.sin(roll), Math.cos(roll), 0]);
	// Tilted, the near edge is seen larger: so much further away that all of it is in the picture.
	const far = away * (1 + 0.9 * Math.sin(angle));
	const middle = [SHEET.width / 2 + chance.normal() * 6, SHEET.height / 2 + chance.normal() * 6] as const;
	return {
		width,
		height,
		focal,
		turn: [across, down, look],
		at: [middle[0] - look[0] * far, middle[1] - look[1] * far, -look[2] * far],
		bend,
		height3d: bulging(bulge, chance)
	};
};
