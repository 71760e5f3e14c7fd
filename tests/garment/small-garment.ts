import type { Method } from '#drafting/method.ts';
import type { FindMethod } from '#drafting/read-method.ts';
import { mark, smallMethod } from '../drafting/small-method.ts';

/** Parsed YAML that a test may change. */
export type Written = Record<string | number, unknown>;

const line = (name: string, ...through: readonly string[]): Written => ({
	kind: 'straight',
	name,
	label: `the ${name}`,
	through,
	given: true
});

/** A quarter of a skirt of straight lines: a quarter of the bust wide, as long as the back, its hem wider by the flare. */
const SMALL: Method = smallMethod(
	[
		mark('L', 'O', 'down', 'backLength'),
		mark('V', 'O', 'across', 'bust / 4'),
		mark('K', 'L', 'across', 'bust / 4 + flare'),
		line('waist', 'O', 'V'),
		line('side', 'V', 'K'),
		line('hem', 'K', 'L'),
		line('centre', 'L', 'O')
	],
	{
		allowances: { flare: { label: 'the flare', default: '5 cm', range: ['0 cm', '20 cm'] } },
		refusals: [
			{
				name: 'tooNarrow',
				need: { value: 'bust - backLength', atLeast: '10 cm' },
				odds: ['bust', 'backLength'],
				because: 'so long a skirt is too narrow'
			}
		]
	}
);

/** Finds the small method, by the name "small". */
export const findSmall: FindMethod = (id) => (id === 'small' ? SMALL : undefined);

const piece = (key: string, notch: string, side: Written): Written => ({
	key,
	name: `The ${key}`,
	draft: 'skirt',
	notch,
	edges: [
		{ name: 'waist', kind: 'seam', lines: ['waist'] },
		{ name: 'side', kind: 'seam', lines: ['side'], ...side },
		{ name: 'hem', kind: 'hem', lines: ['hem'] },
		{ name: 'centre', kind: 'fold', lines: ['centre'] }
	],
	grain: ['O', 'L'],
	cut: [{ in: 'fabric', count: 1 }]
});

/** A garment of that method: a front and a back skirt on the fold, sewn at the side. */
export const SMALL_GARMENT: Readonly<Written> = {
	id: 'small-skirt',
	name: 'A small skirt',
	about: 'Of straight lines alone.',
	uses: { skirt: 'small' },
	pieces: [piece('front', 'single', { allowance: '1.5 * seamAllowance' }), piece('back', 'double', {})],
	seams: [
		{ name: 'side', label: 'The side', first: ['front.side'], second: ['back.side'], within: '1 mm' },
		{
			name: 'hems',
			label: 'The hems, equally long',
			first: ['front.hem'],
			second: ['back.hem'],
			within: '0.5 mm',
			notches: []
		}
	],
	numbers: [
		{
			name: 'round',
			label: 'The hem all round',
			kind: 'length',
			formula: '4 * length(skirt.hem)',
			atMost: '130 cm',
			because: 'more is too wide to walk in'
		}
	],
	order: ['Sew the sides.'],
	cautions: ['tools']
};
