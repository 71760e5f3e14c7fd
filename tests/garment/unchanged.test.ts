import { describe, expect, it } from 'vitest';
import { mm } from '#shared/units.ts';
import { NO_CHOICES, type Choices } from '#garment/sewn.ts';
import { bodyOf, garmentOf, madeFor } from './garment-files.ts';

const dress = garmentOf('course-dress');
const heron = bodyOf('heron');
const withLength = (skirtLength: number): Choices => ({
	allowances: { skirtLength: mm(skirtLength) },
	edges: {}
});

describe('what a change does not touch', () => {
	it('is not worked again: a longer skirt leaves the bodice and its cutting lines the very same', () => {
		const [before, after] = [600, 700].map((length) => madeFor(dress, heron, withLength(length)));
		const same = (after?.pieces ?? []).filter(
			({ key, cutting }) => before?.pieces.find((each) => each.key === key)?.cutting === cutting
		);
		expect(same.map(({ key }) => key)).toEqual(expect.arrayContaining(['front', 'back', 'casing']));
		expect(same.map(({ key }) => key)).not.toContain('skirt');
		expect(after?.drafts['skirt']).not.toBe(before?.drafts['skirt']);
	});

	it('is worked again where it does: the same pattern comes out as if nothing had been made before', () => {
		const [first, , again] = [600, 700, 600].map((length) => madeFor(dress, heron, withLength(length)));
		expect(again).toEqual(first);
		const wider = madeFor(dress, { ...heron, measurements: { ...heron.measurements, bust: mm(1000) } });
		const usual = madeFor(dress, heron, NO_CHOICES);
		expect(wider.pieces.map(({ outline }) => outline)).not.toEqual(
			usual.pieces.map(({ outline }) => outline)
		);
	});

	it('an own seam allowance moves the cutting line and not the draft', () => {
		const usual = madeFor(dress, heron);
		const key = usual.pieces[0]?.key ?? '';
		const edge = usual.pieces[0]?.edges.find(({ kind }) => kind === 'seam')?.name ?? '';
		const own = madeFor(dress, heron, { allowances: {}, edges: { [`${key}.${edge}`]: mm(40) } });
		expect(own.drafts).toEqual(usual.drafts);
		expect(own.pieces[0]?.cutting).not.toEqual(usual.pieces[0]?.cutting);
		expect(own.pieces[1]?.cutting).toBe(usual.pieces[1]?.cutting);
	});
});
