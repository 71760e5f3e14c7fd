import { chanceOf } from '#practice/chance.ts';
import { movedBy } from '#geometry/motion.ts';
import { at, distance } from '#geometry/point.ts';
import { aligned } from '#photograph/aligned.ts';
import { inkCrossing } from '#photograph/ink.ts';
import type { PicturePoint } from '#photograph/picture.ts';
import { lookedAt, readingOf } from '#photograph/reading.ts';
import { errorOf } from '#photograph/sureness.ts';
import { toSheet } from '#photograph/view.ts';
import { pressed, seenBy } from '../photograph/camera.ts';
import { CONDITIONS, type Condition } from '../photograph/pictures.ts';
import { cornerMarkers, sceneOf, type LaidMarker, type Place } from '../photograph/scene.ts';
import { below, cornerErrors, rms, taken } from '../photograph/sheet-pictures.ts';

/**
 * How exactly photographs are read: pictures of twelve million pixels that a camera of the tests takes of a sheet of 594 by 841 mm
 * with a marker in each corner, whose places the program is not told. `-- 100` is how many of each condition, a second word
 * keeps to conditions that begin so, `cards` as a third lays the large cards of 70 mm instead of the 40 mm of a worksheet.
 */
const COUNT = Number(process.argv[2] ?? 100);
const ONLY = process.argv[3] ?? '';
const LARGE = process.argv[4] === 'cards';

const TOLERANCE = 2;
/** How far a point is drawn wrong on purpose. */
const WRONG = 8;
const CROSSES: readonly Place[] = Array.from({ length: 6 * 8 }, (_, i) => ({
	x: 90.3 + (i % 6) * 82.7,
	y: 80.9 + Math.floor(i / 6) * 96.3
}));
const markers: readonly LaidMarker[] = LARGE
	? cornerMarkers(70, 0, [0.05, -0.03, 0.04, 0.1])
	: cornerMarkers(40, 8, [0.05, -0.03, 0.04, 0.1]);
const scene = sceneOf(
	markers,
	CROSSES.flatMap(({ x, y }) => [
		[
			{ x: x - 9, y: y - 1 },
			{ x: x + 9, y: y + 1 }
		],
		[
			{ x: x + 2, y: y - 9 },
			{ x: x - 2, y: y + 9 }
		]
	])
);

interface Counts {
	pictures: number;
	found: number;
	readonly corners: number[];
	readonly tapped: number[];
	readonly crossed: number[];
	readonly shares: number[];
	readonly eight: { within: number; open: number; outside: number };
	readonly times: number[];
	bulge: number;
}

/** What is told of places that were found, once they are laid on the true ones. */
const offOf = (
	found: readonly { own: PicturePoint; place: Place }[],
	rectified: Parameters<typeof errorOf>[0]
) => {
	const pairs = found.map(({ own, place }) => ({
		found: toSheet(rectified.view, own),
		right: at(place.x, place.y),
		weight: 1,
		own
	}));
	const motion = aligned(pairs)?.motion;
	if (!motion) throw new Error('there are many');
	return pairs.map((pair) => ({
		off: distance(movedBy(motion, pair.found), pair.right),
		error: errorOf(rectified, pair.own),
		pair,
		motion
	}));
};

const measure = (condition: Condition, n: number, counts: Counts): void => {
	const chance = chanceOf(n, 'measure', condition.name);
	const { camera, picture } = taken(scene, markers, condition, chance);
	const truths = CROSSES.map((place) => ({ place, own: seenBy(camera, place) }));
	pressed(
		picture,
		truths.map(({ own }) => own),
		40,
		condition.film.quality
	);
	const start = performance.now();
	const looked = lookedAt(picture, () => undefined);
	const reading = readingOf(looked, 1);
	counts.times.push(performance.now() - start);
	counts.pictures += 1;
	counts.found += looked.markers.length;
	counts.corners.push(...cornerErrors(looked.markers, markers, camera));
	if (!reading) return;
	const { rectified, warnings } = reading;
	if (warnings.includes('bulge')) counts.bulge += 1;
	const taps = truths.map(({ place, own }) => ({
		place,
		own: { u: own.u + chance.normal(), v: own.v + chance.normal() }
	}));
	const told = offOf(taps, rectified);
	counts.tapped.push(...told.map(({ off }) => off));
	counts.shares.push(...told.map(({ off, error }) => off / error));
	const offered = taps.flatMap(({ place, own }) => {
		const crossing = inkCrossing(picture, own, 12);
		return crossing ? [{ place, own: crossing }] : [];
	});
	counts.crossed.push(...offOf(offered, rectified).map(({ off }) => off));
	for (const { pair, error, motion } of told) {
		const angle = chance.fraction() * 2 * Math.PI;
		// Its place is drawn wrong, and so the right one lies elsewhere.
		const right = at(pair.right.x + WRONG * Math.cos(angle), pair.right.y + WRONG * Math.sin(angle));
		const off = distance(movedBy(motion, pair.found), right);
		if (off + error <= TOLERANCE) counts.eight.within += 1;
		else if (off - error > TOLERANCE) counts.eight.outside += 1;
		else counts.eight.open += 1;
	}
};

console.log(
	`${String(COUNT)} pictures a condition, markers of ${LARGE ? '70' : '40'} mm at places that are not known, 48 points in each`
);
console.log(
	'condition       found   corners px rms   tapped mm p95   at crossings mm p95 (offered)   within its error   8 mm off: within / open / outside   told to bulge   ms'
);
for (const condition of CONDITIONS.filter(({ name }) => name.startsWith(ONLY))) {
	const counts: Counts = {
		pictures: 0,
		found: 0,
		corners: [],
		tapped: [],
		crossed: [],
		shares: [],
		eight: { within: 0, open: 0, outside: 0 },
		times: [],
		bulge: 0
	};
	for (let n = 0; n < COUNT; n++) measure(condition, n, counts);
	const share = counts.shares.filter((each) => each <= 1).length / counts.shares.length;
	const offered = counts.crossed.length / (counts.pictures * CROSSES.length);
	const { within, open, outside } = counts.eight;
	console.log(
		[
			condition.name.padEnd(14),
			`${String(counts.found)}/${String(4 * counts.pictures)}`.padEnd(9),
			rms(counts.corners).toFixed(3).padEnd(16),
			below(0.95, counts.tapped).toFixed(2).padEnd(15),
			`${below(0.95, counts.crossed).toFixed(2)} (${(offered * 100).toFixed(0)} %)`.padEnd(31),
			`${(share * 100).toFixed(1)} %`.padEnd(18),
			`${String(within)} / ${String(open)} / ${String(outside)}`.padEnd(35),
			String(counts.bulge).padEnd(15),
			below(0.5, counts.times).toFixed(0)
		].join('  ')
	);
}
