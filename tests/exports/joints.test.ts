import { describe, expect, it } from 'vitest';
import { mm } from '#shared/units.ts';
import { chordMeets } from '#geometry/chord.ts';
import { boundsOf } from '#geometry/path.ts';
import { frameOf } from '#exports/drawing/line-words.ts';
import { drawingBounds, wordsBounds } from '#exports/drawing/drawing.ts';
import { patternSheet } from '#exports/files/pattern-file.ts';
import { jointLines, planPages } from '#exports/sheets/page-plan.ts';
import { toileOf } from '#garment/toile.ts';
import { bodyOf, garmentOf, madeFor } from '../garment/garment-files.ts';
import { english, speechFor } from '../support/speech.ts';

const GARMENTS = [
	['the body block as a toile', toileOf(garmentOf('body-block'), english)],
	['the course dress', garmentOf('course-dress')],
	['the straight skirt', garmentOf('straight-skirt')],
	['the sleeved bodice', garmentOf('sleeved-bodice')]
] as const;

describe.each(GARMENTS)('the pages of %s', (_, garment) => {
	it.each(['heron', 'wren'])('for %s: what is told of a piece lies on one page', (name) => {
		const pattern = madeFor(garment, bodyOf(name));
		for (const speech of [english, speechFor('es')])
			for (const paper of ['a4', 'letter']) {
				const sheet = patternSheet(garment, pattern, { pieces: [], paper, scale: 'full', speech });
				const joints = jointLines(planPages(sheet.drawings, sheet.paper));
				expect(joints.length).toBeGreaterThan(2);
				const across = sheet.drawings.flatMap(({ words }) =>
					words.filter((each) =>
						joints.some(([{ from, to }]) =>
							chordMeets(from, to, each.middle ? boundsOf([frameOf(each)]) : wordsBounds(each))
						)
					)
				);
				// What stands at a mark has nowhere else to go where a joint lies along a narrow strip.
				expect(across.filter(({ size }) => size > 3.2).map(({ text }) => text)).toEqual([]);
				expect(across.length, across.map(({ text }) => text).join('; ')).toBeLessThanOrEqual(3);
			}
	});

	it('leaves a sheet without joints as it is', () => {
		const pattern = madeFor(garment, bodyOf('heron'));
		const ask = { pieces: [], scale: 'full', speech: english } as const;
		const { drawings, paper } = patternSheet(garment, pattern, { ...ask, paper: 'roll-90' });
		expect(jointLines(planPages(drawings, paper))).toEqual([]);
		for (const each of drawings) expect(drawingBounds(each).left).toBeGreaterThan(mm(-1));
	});
});
