import { expect, it } from 'vitest';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { mm } from '#shared/units.ts';
import { selfCrossings } from '#geometry/kernel/crossings.ts';
import { toileOf } from '#garment/toile.ts';
import { english } from '../support/speech.ts';
import { garmentOf, madeFor } from './garment-files.ts';

it.each(['body-block', 'sleeved-bodice'])(
	'%s as a toile: 2.5 cm everywhere but at a fold, for every body, and no cutting line crosses itself',
	(id) => {
		const toile = toileOf(garmentOf(id), english);
		for (const { body } of DEMO_BODIES)
			for (const { key, edges, cutting } of madeFor(toile, body).pieces) {
				for (const { name, kind, allowance } of edges)
					expect(allowance, `${body.name}: ${key}.${name}`).toBe(kind === 'fold' ? 0 : mm(25));
				expect(selfCrossings(cutting.outline), `${body.name}: ${key}`).toEqual([]);
			}
	}
);
