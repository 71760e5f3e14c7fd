import { describe, expect, it } from 'vitest';
import { readBody, type Body } from '#shared/body.ts';
import { makePattern } from '#garment/pattern.ts';
import { garments } from '../garment/garment-files.ts';
import { worn } from '../measure/worn.ts';
import { HERON } from './front-block-bodies.ts';
import { tangles } from './dress-pattern.ts';

/** Bodies that sit badly in ready-made clothes, in centimetres; nobody was measured for any of them. */
const ODD = {
	'Robin, with a full bust': {
		...HERON,
		bust: 112,
		waist: 84,
		frontLength: 50,
		bustHeight: 29,
		bustSpan: 22
	},
	'Osprey, with a low bust': { ...HERON, bustHeight: 33, frontLength: 46.5 },
	'Dipper, with a small bust': {
		...HERON,
		...{ bust: 82, waist: 68, hip: 92, frontLength: 42.5, bustHeight: 24, bustSpan: 17 }
	},
	'Curlew, with a rounded back': { ...HERON, backLength: 45, frontLength: 42, bustHeight: 28 },
	'Fulmar, with a very rounded back': { ...HERON, backLength: 47, frontLength: 40, bustHeight: 27 },
	'Raven, a man': {
		...{ bust: 104, waist: 90, hip: 102, neck: 41, shoulderWidth: 45, backLength: 46, frontLength: 44.5 },
		...{ waistToHip: 22, bustHeight: 26, bustSpan: 22 }
	},
	'Bittern, a man with a round belly': {
		...{ bust: 116, waist: 120, hip: 114, neck: 45, shoulderWidth: 47, backLength: 48, frontLength: 49 },
		...{ waistToHip: 22, bustHeight: 27, bustSpan: 24 }
	},
	'Tit, a child of six': {
		...{ bust: 60, waist: 55, hip: 64, neck: 28, shoulderWidth: 27, backLength: 27.5, frontLength: 27.5 },
		...{ waistToHip: 13, bustHeight: 15, bustSpan: 12 }
	},
	'Linnet, a child of ten': {
		...{ bust: 70, waist: 62, hip: 75, neck: 31, shoulderWidth: 31.5, backLength: 33, frontLength: 33.5 },
		...{ waistToHip: 15.5, bustHeight: 18, bustSpan: 14 }
	},
	'Albatross, very large': {
		...{ bust: 150, waist: 142, hip: 156, neck: 46, shoulderWidth: 45, backLength: 46, frontLength: 52 },
		...{ waistToHip: 23, bustHeight: 34, bustSpan: 28 }
	},
	'Goose, with child': {
		...HERON,
		...{ bust: 106, waist: 112, hip: 112, frontLength: 50, bustHeight: 29, bustSpan: 22 }
	}
} as const;

/** What no allowance puts right, by garment and body. */
const LEFT: Readonly<Record<string, readonly string[]>> = {
	// A front that is 7 cm shorter: its underarm comes up by half of the armhole at most.
	'body-block, Fulmar': ['sides']
};

describe.each(garments().map((garment) => [garment.id, garment] as const))('%s', (id, garment) => {
	it.each(Object.entries(ODD))(
		'%s: is drafted, crosses nowhere, and can be worn once cures are taken up',
		(name, figure) => {
			const body: Body = readBody({ ...figure });
			const made = makePattern(garment, body);
			if (made.kind === 'refused') throw new Error('it is refused');
			expect(tangles(made.pattern)).toEqual([]);
			const cured = worn(garment, body);
			const left = cured?.after.wear.flatMap(({ name: check, state }) => (state === 'fails' ? [check] : []));
			expect(left).toEqual(LEFT[`${id}, ${name.replace(/,.*/, '')}`] ?? []);
			expect(cured?.broken).toEqual([]);
		}
	);
});
