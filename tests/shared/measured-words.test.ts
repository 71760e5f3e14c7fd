import { describe, expect, it } from 'vitest';
import { english, speechFor } from '../support/speech.ts';
import { measuredWords } from '#shared/measured-words.ts';
import { mm } from '#shared/units.ts';

describe('a measurement that no tape took', () => {
	it('is said to be estimated or worked out, in both languages; any other stands bare', () => {
		const measurements = { bustHeight: mm(265), backLength: mm(425), bust: mm(960) };
		const body = { measurements, supposed: { bustHeight: 'estimated', backLength: 'workedOut' } } as const;
		expect(measuredWords('bustHeight', body, english)).toBe('26.5 cm, estimated');
		expect(measuredWords('backLength', body, english)).toBe('42.5 cm, worked out');
		expect(measuredWords('bust', body, english)).toBe('96 cm');
		expect(measuredWords('bustHeight', body, speechFor('es'))).toBe('26,5 cm, estimada');
		expect(measuredWords('bust', { measurements }, english)).toBe('96 cm');
	});
});
