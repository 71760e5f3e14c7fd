import { at, distance } from '#geometry/point.ts';
import { movedBy } from '#geometry/motion.ts';
import { aligned } from '#photograph/aligned.ts';
import { readingOf } from '#photograph/reading.ts';
import { errorOf } from '#photograph/sureness.ts';
import { toSheet } from '#photograph/view.ts';
import { chanceOf } from '#practice/chance.ts';
import { seenBy } from '../photograph/camera.ts';
import { CONDITIONS, heldOver, type Condition } from '../photograph/pictures.ts';
import { rimMarkers, sceneOf } from '../photograph/scene.ts';
import { below, closeUps, PLACES } from '../photograph/sheet-pictures.ts';

/**
 * How often paper that stands up is said to bulge, and whether points then lie within what is stated of them: pictures of the markers
 * alone. Four of a worksheet's 40 mm in the corners of the sheet, six with those half way down its long sides; with `cards` as a third
 * word four and eight cards of 70 mm, these half way across as well. `-- 100` is how many of each condition, a second word keeps to
 * conditions that begin so.
 */
const COUNT = Number(process.argv[2] ?? 100);
const ONLY = process.argv[3] ?? '';
const LARGE = process.argv[4] === 'cards';
const LAYOUTS = LARGE ? [4, 8] : [4, 6];
const HEIGHTS = [0, 1, 2, 3, 5];
const markers = LARGE ? rimMarkers(8, 70, [0, 1, 2, 3, 4, 5, 6, 7]) : rimMarkers(6);
const scene = sceneOf(markers, []);

interface Counts {
	pictures: number;
	warned: number;
	readonly off: number[];
	readonly errors: number[];
	within: number;
}

const measure = (condition: Condition, height: number, n: number, of: (layout: number) => Counts): void => {
	const chance = chanceOf(n, 'bulge', condition.name);
	// The least height draws what a bulge draws, so that the same camera looks at every height.
	const camera = heldOver({ ...condition, bulge: Math.max(height, 1e-9) }, chance);
	const found = closeUps(scene, markers, camera, condition, chance);
	const taps = PLACES.map((place) => {
		const { u, v } = seenBy(camera, place);
		return { place, own: { u: u + chance.normal(), v: v + chance.normal() } };
	});
	for (const layout of LAYOUTS) {
		const { width, height: high } = camera;
		const used = found.filter(({ id }) => markers.findIndex((each) => each.id === id) < layout);
		const reading = readingOf({ width, height: high, markers: used, screen: false }, 1);
		if (!reading) continue;
		const counts = of(layout);
		counts.pictures += 1;
		if (reading.warnings.includes('bulge')) counts.warned += 1;
		const pairs = taps.map(({ place, own }) => ({
			found: toSheet(reading.rectified.view, own),
			right: at(place.x, place.y),
			weight: 1,
			error: errorOf(reading.rectified, own)
		}));
		const motion = aligned(pairs)?.motion;
		if (!motion) throw new Error('there are many');
		for (const { found: own, right, error } of pairs) {
			const off = distance(movedBy(motion, own), right);
			counts.off.push(off);
			counts.errors.push(error);
			if (off <= error) counts.within += 1;
		}
	}
};

const all = CONDITIONS.filter(({ name }) => name.startsWith(ONLY)).flatMap((condition) =>
	HEIGHTS.map((height) => ({
		condition,
		height,
		counts: new Map(
			LAYOUTS.map((layout): [number, Counts] => [
				layout,
				{ pictures: 0, warned: 0, off: [], errors: [], within: 0 }
			])
		)
	}))
);
const rowOf = ({ condition, height, counts }: (typeof all)[number]): string =>
	[
		condition.name,
		String(height),
		...[...counts.values()].flatMap(({ pictures, warned, off, errors, within }) => [
			`${((100 * warned) / pictures).toFixed(0)} %`,
			below(0.95, off).toFixed(2),
			below(0.5, errors).toFixed(2),
			`${((100 * within) / off.length).toFixed(1)} %`
		])
	].join(' | ');
const HEAD = [
	'condition',
	'bulge mm',
	...LAYOUTS.flatMap((count) => [
		`${String(count)} markers: warned`,
		'tapped mm p95',
		'stated mm median',
		'within it'
	])
].join(' | ');
const table = (): string => [HEAD, ...all.map(rowOf)].join('\n');

console.log(
	`${String(COUNT)} pictures of each, markers of ${LARGE ? '70' : '40'} mm, ${String(PLACES.length)} points tapped in each`
);
for (let n = 0; n < COUNT; n++) {
	for (const { condition, height, counts } of all)
		measure(condition, height, n, (layout) => {
			const own = counts.get(layout);
			if (!own) throw new Error('each has counts');
			return own;
		});
	if (n % 10 === 9 && n + 1 < COUNT) console.error(`after ${String(n + 1)}:\n${table()}`);
}
console.log(table());
