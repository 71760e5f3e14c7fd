import { describe, expect, it } from 'vitest';
import { english, speechFor } from '../support/speech.ts';
import { measuredWords } from '#shared/measured-words.ts';
import { mm } from '#shared/units.ts';

describe('a measurement that no tape took', () => {
	it('is said to be estimated or worked out, in both languages; any other stands bare', () => {
		const body = { supposed: { bustHeight: 'estimated', backLength: 'workedOut' } } as const;
		expect(measuredWords('bustHeight', mm(265), body, english)).toBe('26.5 cm, estimated');
		expect(measuredWords('backLength', mm(425), body, english)).toBe('42.5 cm, worked out');
		expect(measuredWords('bust', mm(960), body, english)).toBe('96 cm');
		expect(measuredWords('bustHeight', mm(265), body, speechFor('es'))).toBe('26,5 cm, estimada');
		expect(measuredWords('bust', mm(960), {}, english)).toBe('96 cm');
	});
});
