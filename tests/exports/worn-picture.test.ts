import { describe, expect, it } from 'vitest';
import { wornPicture } from '#exports/pdf/worn-picture.ts';
import { wornPattern } from '#garment/worn/view.ts';
import { bodyOf, garments, madeFor } from '../garment/garment-files.ts';

const PLACE = { left: 120, top: 60, width: 78, height: 90 };

describe('the picture of a worn garment on a first page', () => {
	it.each(garments().map((garment) => [garment.id, garment] as const))(
		'%s lies within its place, and is as large as fits',
		(_, garment) => {
			const body = bodyOf('heron');
			const worn = wornPattern(garment, body, madeFor(garment, body), { allowances: {}, edges: {} });
			if (!worn) throw new Error(`${garment.id} does not say how it is worn`);
			const written = wornPicture(worn, PLACE).map(String);
			const places = written.flatMap((each) => {
				const [, x = '', y = ''] = /^(\S+) (\S+) [ml]$/.exec(each) ?? [];
				return x === '' ? [] : [{ x: Number(x), y: Number(y) }];
			});
			const [xs, ys] = [places.map(({ x }) => x), places.map(({ y }) => y)];
			const [width, height] = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
			expect(Math.min(...xs)).toBeGreaterThanOrEqual(PLACE.left - 0.01);
			expect(Math.max(...xs)).toBeLessThanOrEqual(PLACE.left + PLACE.width + 0.01);
			expect(Math.min(...ys)).toBeGreaterThanOrEqual(PLACE.top - 0.01);
			expect(Math.max(...ys)).toBeLessThanOrEqual(PLACE.top + PLACE.height + 0.01);
			expect(Math.max(width / PLACE.width, height / PLACE.height)).toBeCloseTo(1, 3);
			expect(written.filter((each) => each === 'f').length, 'filled').toBeGreaterThanOrEqual(2);
		}
	);
});
