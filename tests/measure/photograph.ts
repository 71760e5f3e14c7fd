import { chanceOf } from '#practice/chance.ts';
import { movedBy } from '#geometry/motion.ts';
import { at, distance } from '#geometry/point.ts';
import { aligned } from '#photograph/aligned.ts';
import { inkCrossing } from '#photograph/ink.ts';
import type { PicturePoint } from '#photograph/picture.ts';
import { lookedAt, readingOf } from '#photograph/reading.ts';
import { errorOf } from '#photograph/sureness.ts';
import { toSheet } from '#photograph/view.ts';
import { pressed, seenBy, type Camera } from '../photograph/camera.ts';
import { CONDITIONS, type Condition } from '../photograph/pictures.ts';
import { cornerMarkers, sceneOf, type LaidMarker, type Place } from '../photograph/scene.ts';
import { below, cornerErrors, rms, taken } from '../photograph/sheet-pictures.ts';

/**
 * How exactly photographs are read: pictures of twelve million pixels that a camera of the tests takes of a sheet of 594 by 841 mm
 * with a marker in each corner, whose places the program is not told. `-- 100` is how many of each condition, a second word
 * keeps to conditions that begin so (or so, parted by commas), `cards` as a third lays the large cards of 70 mm instead of the 40 mm of a worksheet.
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
	/** The same with a pixel of error in all. */
	readonly tappedInAll: number[];
	/** What the taps' own errors are on the sheet, with a camera that is known without an error. */
	readonly alone: number[];
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

/** How far a step of some pixels goes on the sheet about a place, by how the camera itself sees it. */
const onPaper = (camera: Camera, { x, y }: Place, { u, v }: PicturePoint): number => {
	const [here, right, down] = [
		seenBy(camera, { x, y }),
		seenBy(camera, { x: x + 1, y }),
		seenBy(camera, { x, y: y + 1 })
	];
	const [a, b, c, d] = [right.u - here.u, down.u - here.u, right.v - here.v, down.v - here.v];
	return Math.hypot(d * u - b * v, a * v - c * u) / Math.abs(a * d - b * c);
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
	const strays = truths.map(() => ({ u: chance.normal(), v: chance.normal() }));
	const tapsBy = (share: number) =>
		truths.map(({ place, own }, i) => ({
			place,
			own: { u: own.u + share * (strays[i]?.u ?? 0), v: own.v + share * (strays[i]?.v ?? 0) }
		}));
	const taps = tapsBy(1);
	const told = offOf(taps, rectified);
	counts.tapped.push(...told.map(({ off }) => off));
	counts.tappedInAll.push(...offOf(tapsBy(Math.SQRT1_2), rectified).map(({ off }) => off));
	counts.alone.push(...truths.map(({ place }, i) => onPaper(camera, place, strays[i] ?? { u: 0, v: 0 })));
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

const none = (): Counts => ({
	pictures: 0,
	found: 0,
	corners: [],
	tapped: [],
	tappedInAll: [],
	alone: [],
	crossed: [],
	shares: [],
	eight: { within: 0, open: 0, outside: 0 },
	times: [],
	bulge: 0
});

const rowOf = (name: string, counts: Counts): string => {
	const share = counts.shares.filter((each) => each <= 1).length / counts.shares.length;
	const offered = counts.crossed.length / (counts.pictures * CROSSES.length);
	const { within, open, outside } = counts.eight;
	const p95 = (each: readonly number[], by = 1): string => (by * below(0.95, each)).toFixed(2);
	return [
		name,
		`${String(counts.found)}/${String(4 * counts.pictures)}`,
		rms(counts.corners).toFixed(3),
		`${p95(counts.tappedInAll)} (${p95(counts.alone, Math.SQRT1_2)})`,
		`${p95(counts.tapped)} (${p95(counts.alone)})`,
		`${p95(counts.crossed)} (${(offered * 100).toFixed(0)} %)`,
		`${(share * 100).toFixed(1)} %`,
		`${String(within)} / ${String(open)} / ${String(outside)}`,
		`${((100 * counts.bulge) / counts.pictures).toFixed(0)} %`,
		below(0.5, counts.times).toFixed(0)
	].join(' | ');
};

const HEAD = [
	'condition',
	'markers found',
	'corners px rms',
	'tapped with 1 px in all, mm p95 (the taps alone)',
	'with 1 px on each axis (the taps alone)',
	'at crossings mm p95 (offered)',
	'within what is stated',
	'8 mm off: within / open / outside',
	'told to bulge',
	'ms'
].join(' | ');
const wanted = CONDITIONS.filter(({ name }) => ONLY.split(',').some((start) => name.startsWith(start)));
const all = wanted.map((condition) => ({ condition, counts: none() }));
const table = (): string =>
	[HEAD, ...all.map(({ condition, counts }) => rowOf(condition.name, counts))].join('\n');

console.log(
	`${String(COUNT)} pictures a condition, markers of ${LARGE ? '70' : '40'} mm at places that are not known, 48 points in each`
);
for (let n = 0; n < COUNT; n++) {
	for (const { condition, counts } of all) measure(condition, n, counts);
	// Hours may lie ahead: what there is so far is told.
	if (n % 10 === 9 && n + 1 < COUNT) console.error(`after ${String(n + 1)}:\n${table()}`);
}
console.log(table());
