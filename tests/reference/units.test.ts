import { describe, expect, it } from 'vitest';
import { parseLength } from '#shared/reading.ts';
import { MM_PER, printLength } from '#shared/units.ts';
import { PUBLISHED } from './published.ts';

// shared/reference/README.md names the sources: the yard and pound agreement of 1959, and CSS Values and Units.
describe('units', () => {
	const { units } = PUBLISHED;

	it('an inch is 25.4 mm, an eighth of it 3.175, a yard 914.4', () => {
		expect(MM_PER.in / MM_PER.cm).toBe(units.inch_cm);
		expect(parseLength('1/8', 'in')).toBeCloseTo(units.eighth_inch_cm * 10, 12);
		expect(parseLength('36', 'in')).toBeCloseTo(units.yard_cm * 10, 9);
		expect(printLength(parseLength('91.44', 'cm'), 'in')).toBe('36″');
	});

	it('one user unit of an SVG without millimetres is a 96th of an inch', () => {
		expect(MM_PER.in / units.css_px_per_inch).toBeCloseTo(units.svg_user_unit_mm, 12);
	});
});
