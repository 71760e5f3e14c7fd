import { describe, expect, it } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import type { Body } from '#shared/body.ts';
import { mm, type Mm } from '#shared/units.ts';
import { distance } from '#geometry/point.ts';
import type { Garment } from '#garment/garment.ts';
import { sewnFor, type Sewn } from '#garment/sewn.ts';
import { buttonLevels } from '#garment/button-levels.ts';
import { halfWidth, hanging, QUARTER_ROUND, seenAcross } from '#garment/worn/section.ts';
import { wornOf } from '#garment/worn/view.ts';
import type { Worn, WornView } from '#garment/worn/worn.ts';
import { bodyOf, garmentOf, garments } from './garment-files.ts';

type Allowances = Readonly<Record<string, number>>;

/** A garment made for a body, and as it is worn. */
const made = (id: string, body: Body = bodyOf('heron'), allowances: Allowances = {}) => {
	const garment = garmentOf(id);
	const choices = { allowances, edges: {} };
	const work = sewnFor(garment, body, choices);
	if (work.kind === 'refused') throw new Error(`${body.name} cannot have ${id}`);
	const worn = wornOf(garment, body, work.sewn, choices);
	if (!worn) throw new Error(`${id} does not say how it is worn`);
	const [front, back] = worn.views as [WornView, WornView];
	return { sewn: work.sewn, worn, front, back };
};

const cloth = ({ layers }: WornView) =>
	layers.filter(({ side }) => side === 'outside').flatMap((each) => each.cloth);
/** The lowest places of a view at its sides: half of how wide its hem is seen. */
const hemHalf = (view: WornView): number => {
	const skirt = view.layers.find(({ side, cloth: places }) => side === 'outside' && places.length > 0);
	return Math.max(...(skirt?.cloth ?? []).map(({ x }) => x));
};
const lengthOf = ({ edges }: Sewn, name: string): number => {
	const [piece = '', edge = ''] = name.split('.');
	return edges[piece]?.find((each) => each.name === edge)?.length ?? 0;
};
const point = ({ drafts }: Sewn, name: string) => {
	const [draft = '', own = ''] = name.split('.');
	const found = drafts[draft]?.points[own];
	if (!found) throw new Error(`there is no ${name}`);
	return found;
};
const count = ({ layers }: WornView, kind: string): number =>
	layers.flatMap(({ lines }) => lines).filter((line) => line.kind === kind).length;

describe('the section that cloth is laid round', () => {
	it('is an ellipse seven tenths as deep as wide: its round is Ramanujan’s', () => {
		// S. Ramanujan, Modular equations and approximations to pi, 1914: pi (3 (a + b) - sqrt((3a + b) (a + 3b))), a = 1, b = 0.7.
		const ramanujan = Math.PI * (3 * 1.7 - Math.sqrt(3.7 * 3.1));
		expect(4 * QUARTER_ROUND).toBeCloseTo(ramanujan, 5);
	});
	it('shows the centre at nothing and the side at the very side, and what lies between in order', () => {
		const shares = Array.from({ length: 101 }, (_, i) => seenAcross(i / 100));
		expect(shares[0]).toBe(0);
		expect(shares.at(-1)).toBeCloseTo(1, 12);
		expect(shares.every((share, i) => i === 0 || share > (shares[i - 1] ?? 1))).toBe(true);
		expect(seenAcross(-0.3)).toBe(-seenAcross(0.3));
	});
	it('leaves close cloth as it is, and of looser cloth shows the more the looser it is, but never all', () => {
		expect(hanging(260, 240)).toBe(260);
		const seen = [300, 400, 600, 1200].map((own) => hanging(own, 240));
		expect(seen.every((each, i) => each > (seen[i - 1] ?? 0))).toBe(true);
		expect(seen.every((each, i) => each < ([300, 400, 600, 1200][i] ?? 0))).toBe(true);
	});
});

describe('a garment as it is worn has the lengths of its pattern', () => {
	const every = DEMO_BODIES.map(({ id, body }) => [id, body] as const);

	it.each(every)('down the centre: %s', (_, body) => {
		const block = made('body-block', body);
		for (const side of ['front', 'back'] as const)
			expect(block[side].length).toBeCloseTo(
				distance(point(block.sewn, `${side}.C`), point(block.sewn, `${side}.H`)),
				6
			);
		const dress = made('course-dress', body);
		for (const side of ['front', 'back'] as const)
			expect(dress[side].length).toBeCloseTo(
				point(dress.sewn, `${side}.W1`).y - point(dress.sewn, `${side}.C1`).y + 640,
				6
			);
		expect(made('straight-skirt', body).back.length).toBeCloseTo(600 + 30, 6);
		expect(made('circle-skirt', body, { fullness: 1 }).front.length).toBeCloseTo(600 + 30, 6);
	});

	it.each(every)('down to the neckline: %s', (_, body) => {
		const { sewn, front } = made('body-block', body);
		const neck = front.layers.flatMap(({ side, cloth: places }) => (side === 'inside' ? places : []));
		const depth = Math.max(...neck.map(({ y }) => y)) - point(sewn, 'front.N').y;
		expect(depth).toBeCloseTo(point(sewn, 'front.C').y - point(sewn, 'front.N').y, 6);
	});

	it('along the outer edge of a sleeve', () => {
		for (const sleeveLength of [450, 580, 700]) {
			const { worn, front } = made('sleeved-bodice', bodyOf('heron'), { sleeveLength });
			const outer = front.layers[0]?.lines[0]?.places ?? [];
			const drawn = outer.reduce(
				(sum, place, i) => sum + (i === 0 ? 0 : distance(outer[i - 1] ?? place, place)),
				0
			);
			expect(drawn).toBeCloseTo(sleeveLength, 6);
			expect(worn.sleeve).toBeCloseTo(sleeveLength, 6);
		}
	});

	it('from button to button, on the centre line', () => {
		for (const neckDownFront of [0, 30, 80]) {
			const { sewn, front } = made('course-dress', bodyOf('heron'), { neckDownFront });
			const buttons = front.layers.flatMap((layer) => layer.buttons);
			const [top, bust, foot] = ['front.C2', 'front.T', 'front.W1'].map((name) => point(sewn, name).y) as [
				Mm,
				Mm,
				Mm
			];
			const levels = buttonLevels(top, bust, foot);
			expect(buttons.map(({ x }) => x).every((x) => Math.abs(x) < 1e-9)).toBe(true);
			expect(buttons.map(({ y }) => y - (buttons[0]?.y ?? 0))).toEqual(
				levels.map((level) => expect.closeTo(level - (levels[0] ?? 0), 1) as number)
			);
		}
	});

	it('and the zip and the slit of the straight skirt', () => {
		const { back } = made('straight-skirt', bodyOf('heron'), { zipLength: 180, slitLength: 120 });
		const drawn = (kind: string): number => {
			const [from, to] =
				back.layers.flatMap(({ lines }) => lines).find((line) => line.kind === kind)?.places ?? [];
			return from && to ? distance(from, to) : 0;
		};
		expect(drawn('zip')).toBeCloseTo(180, 1);
		expect(drawn('slit')).toBeCloseTo(120, 1);
	});
});

describe('a garment as it is worn has the widths of its pattern, by the model', () => {
	it('at the hem of what fits close: a quarter of the round, laid round the section', () => {
		for (const { body } of DEMO_BODIES) {
			const { sewn, front, back } = made('straight-skirt', body);
			const quarter = (lengthOf(sewn, 'front.hem') + lengthOf(sewn, 'back.hem')) / 2;
			expect(hemHalf(front)).toBeCloseTo(halfWidth(hanging(quarter, (body.measurements.hip ?? 0) / 4)), 4);
			expect(hemHalf(back)).toBeCloseTo(hemHalf(front), 6);
		}
	});
	it('at the waist, darts sewn shut', () => {
		const { sewn, front } = made('straight-skirt');
		const { measurements } = bodyOf('heron');
		const quarter = lengthOf(sewn, 'waistband.leftHalf') / 2;
		const band = front.layers.at(-1)?.cloth ?? [];
		expect(quarter).toBeGreaterThan((measurements.waist ?? 0) / 4);
		expect(Math.max(...band.map(({ x }) => x))).toBeCloseTo(halfWidth(quarter), 1);
	});
	it('at a gathered waist: the body’s own', () => {
		for (const { body } of DEMO_BODIES) {
			const { front, sewn } = made('course-dress', body);
			const waist = halfWidth((body.measurements.waist ?? 0) / 4);
			const seam = front.layers.flatMap(({ lines }) => lines).filter((line) => line.kind === 'seam');
			expect(seam.some(({ places }) => Math.abs(Math.max(...places.map(({ x }) => x)) - waist) < 1e-6)).toBe(
				true
			);
			expect(lengthOf(sewn, 'front.waist')).toBeGreaterThan((body.measurements.waist ?? 0) / 4);
		}
	});
	it('at the underarms of a very full bust: hardly beyond the shoulders, for the rest stands forward', () => {
		const { measurements, ...rest } = bodyOf('heron');
		const full = {
			bust: mm(1300),
			waist: mm(1040),
			hip: mm(1300),
			frontLength: mm(470),
			bustHeight: mm(330)
		};
		const { sewn, back } = made('body-block', { ...rest, measurements: { ...measurements, ...full } });
		const above = cloth(back).filter(({ y }) => y <= point(sewn, 'back.U').y + 1);
		expect(Math.max(...above.map(({ x }) => x))).toBeLessThan((1.2 * (measurements.shoulderWidth ?? 0)) / 2);
		expect(point(sewn, 'back.U').x).toBeGreaterThan((1.5 * (measurements.shoulderWidth ?? 0)) / 2);
	});
	it('at the hem of a skirt that falls in folds: the wider the circle the wider, and the more folds', () => {
		const skirts = [0.25, 0.5, 0.75, 1].map((fullness) =>
			made('circle-skirt', bodyOf('heron'), { fullness })
		);
		const [hems, folds] = [
			skirts.map(({ front }) => hemHalf(front)),
			skirts.map(({ front }) => count(front, 'fold'))
		];
		expect(hems).toEqual([...hems].sort((a, b) => a - b));
		expect(folds).toEqual([...folds].sort((a, b) => a - b));
		expect(new Set(folds).size).toBe(4);
		for (const [i, { sewn }] of skirts.entries())
			expect(hems[i]).toBeCloseTo(halfWidth(hanging(lengthOf(sewn, 'front.hem'), 1020 / 4)), 4);
	});
});

describe('each choice shows', () => {
	const CHOICES: readonly (readonly [
		string,
		string,
		readonly number[],
		(worn: { front: WornView; back: WornView; worn: Worn }) => number
	])[] = [
		['course-dress', 'skirtLength', [400, 640, 900], ({ back }) => back.length],
		['course-dress', 'flare', [0, 50, 150, 250], ({ front }) => hemHalf(front)],
		['course-dress', 'neckDownFront', [0, 30, 60, 100], ({ front }) => -front.length],
		['course-dress', 'waistIn', [40, 10, -30, -60], ({ worn }) => worn.gathered ?? 0],
		['course-dress', 'waistIn', [40, 10, -30], ({ front }) => count(front, 'gather')],
		[
			'course-dress',
			'shoulderIn',
			[50, 20, 0],
			({ back }) => Math.max(...cloth(back).flatMap(({ x, y }) => (y < 80 ? [x] : [])))
		],
		['course-dress', 'blousing', [0, 20, 50], ({ back }) => back.length],
		['sleeved-bodice', 'capChange', [10, 0, -20], ({ front }) => front.bounds.right],
		[
			'sleeved-bodice',
			'wristWidth',
			[200, 240, 300],
			({ front }) => distance(...(front.layers[0]?.lines[1]?.places as [never, never]))
		],
		['straight-skirt', 'waistbandWidth', [20, 30, 60], ({ back }) => back.length],
		['body-block', 'hipEase', [40, 60, 120], ({ back }) => back.bounds.right]
	];
	it.each(CHOICES)('%s: %s', (id, key, values, seen) => {
		const found = values.map((value) => seen(made(id, bodyOf('heron'), { [key]: value })));
		for (let i = 1; i < found.length; i++)
			expect(found[i], `${key} ${String(values[i])}`).toBeGreaterThan(found[i - 1] ?? 0);
	});
});

describe('every garment on every body', () => {
	const pairs = garments().flatMap((garment) =>
		DEMO_BODIES.map(({ body }) => [garment.id, body.name, garment, body] as const)
	);
	const workOf = (garment: Garment, body: Body): Worn | undefined => {
		const work = sewnFor(garment, body);
		return work.kind === 'refused'
			? undefined
			: wornOf(garment, body, work.sewn, { allowances: {}, edges: {} });
	};
	it.each(pairs)(
		'%s for %s: two views, each alike on both sides, of so many places as are soon drawn',
		(_id, _name, garment, body) => {
			const worn = workOf(garment, body);
			if (!worn) {
				expect(sewnFor(garment, body).kind).toBe('refused');
				return;
			}
			expect(worn.views.map(({ side }) => side)).toEqual(['front', 'back']);
			for (const { layers, bounds } of worn.views) {
				const places = layers.flatMap((each) => [
					...each.cloth,
					...each.lines.flatMap((line) => line.places)
				]);
				expect(places.every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y))).toBe(true);
				expect(places.length).toBeLessThan(2500);
				expect(bounds.left).toBeCloseTo(-bounds.right, 6);
				expect(bounds.bottom - bounds.top).toBeGreaterThan(mm(300));
			}
		}
	);
	it('says nothing of a garment whose file does not', () => {
		const garment = { ...garmentOf('body-block'), worn: [] };
		expect(workOf(garment, bodyOf('heron'))).toBeUndefined();
	});
});

it('puts a button at the bust, and the others 70 to 90 mm from each other', () => {
	const levels = buttonLevels(mm(100), mm(265), mm(475));
	expect(levels[0]).toBe(115);
	expect(levels.at(-1)).toBe(435);
	expect(levels).toContain(265);
	const apart = levels.slice(1).map((level, i) => level - (levels[i] ?? 0));
	expect(apart.every((each) => each >= 70 && each <= 90)).toBe(true);
	expect(buttonLevels(mm(100), mm(90), mm(140))).toEqual([115]);
});
