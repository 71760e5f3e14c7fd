import { describe, expect, it } from 'vitest';
import { mm } from '#shared/units.ts';
import { speechFor } from '../support/speech.ts';

describe('small lengths of a picture', () => {
	const said = (unit: 'cm' | 'in', language: 'en' | 'es' = 'en') => {
		const { photograph } = speechFor(language, unit).words;
		return [
			photograph.curve({ greatest: mm(3.2), longer: mm(-1.6), deeper: mm(0.8) }),
			photograph.pieceRow({ off: mm(12.7), error: mm(0.4) }),
			photograph.ends({ start: mm(0), end: mm(2) })
		];
	};

	it('are in tenths of a millimetre for whoever measures in centimetres', () => {
		expect(said('cm')).toEqual([
			'At most 3.2 mm from the computed line; 1.6 mm shorter; 0.8 mm deeper.',
			'12.7 mm off, ± 0.4 mm',
			'Its ends lie 0.0 mm and 2.0 mm from theirs.'
		]);
	});

	it('are in the finest parts of an inch for whoever measures in inches', () => {
		expect(said('in')).toEqual([
			'At most 1/8″ from the computed line; 1/16″ shorter; 1/32″ deeper.',
			'1/2″ off, ± 1/64″',
			'Its ends lie 0″ and 5/64″ from theirs.'
		]);
		expect(said('in', 'es')[1]).toBe('a 1/2″, ± 1/64″');
	});
});
