import { describe, expect, it } from 'vitest';
import { readBody } from '#shared/body.ts';
import { BadInput } from '#shared/bad-input.ts';
import { pointMissteps } from '#checker/missteps/point-missteps.ts';
import { misstepWords } from '#checker/missteps/words.ts';
import { NotDrafted, type Drafted } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { at } from '#geometry/point.ts';
import { english } from '../../support/speech.ts';
import { BODY, draftOf, FIGURE, mark, smallMethod } from '../../drafting/small-method.ts';

const rounded = (value: number): number => Math.round(value * 100) / 100 + 0;

/** Where each note leads, in millimetres across and down. */
const places = (method: Method, step: string, body = BODY, drafted: Drafted = draftOf(method, body)) => {
	const found: Record<string, (readonly [number, number])[]> = {};
	for (const { note, place } of pointMissteps(method, step, body, drafted))
		(found[note] ??= []).push([rounded(place.x), rounded(place.y)]);
	return found;
};

const A = mark('A', 'O', 'down', 'shoulderWidth / 2 + armholeDrop');
const U = mark('U', 'A', 'across', 'bust / 4 + bustEase / 4');

/** Sandpiper: shoulder width 38, so that A lies 190 + 30 down; bust 96 and ease 4, so that U lies 240 + 10 across. */
describe('a mark: the distance', () => {
	const method = smallMethod([A, U]);
	const down = places(method, 'A');
	const across = places(method, 'U');

	it('another fraction of the measurement', () => {
		expect(down).toMatchObject({
			'fraction:whole-for-half': [[0, 410]],
			'fraction:third-for-half': [[0, 156.67]],
			'fraction:quarter-for-half': [[0, 125]],
			'fraction:sixth-for-half': [[0, 93.33]]
		});
		expect(down['fraction:half-for-half']).toBeUndefined();
	});

	it('another fraction of one term, or of both that have the same', () => {
		expect(across['fraction:half-for-quarter']).toEqual([
			[490, 220],
			[500, 220]
		]);
		expect(across['fraction:whole-for-quarter']).toEqual([
			[970, 220],
			[1000, 220]
		]);
	});

	it('another fraction of an allowance is named by the allowance', () => {
		expect(across['fraction:whole-for-quarter:bustEase']).toEqual([[280, 220]]);
		expect(across['fraction:half-for-quarter:bustEase']).toEqual([[260, 220]]);
		expect(down['fraction:half-for-whole:armholeDrop']).toEqual([[0, 205]]);
	});

	it('an allowance left out, added twice, taken off', () => {
		expect(down).toMatchObject({
			'allowance:left-out:armholeDrop': [[0, 190]],
			'allowance:twice:armholeDrop': [[0, 250]],
			'allowance:subtracted:armholeDrop': [[0, 160]]
		});
		expect(across).toMatchObject({
			'allowance:left-out:bustEase': [[240, 220]],
			'allowance:twice:bustEase': [[260, 220]],
			'allowance:subtracted:bustEase': [[230, 220]]
		});
	});

	it('a neighbouring measurement: half the bust span 18 and 3, a quarter of the waist 72 or the hip 104 and 1', () => {
		expect(down['measurement:bustSpan-for-shoulderWidth']).toEqual([[0, 120]]);
		expect(across['measurement:waist-for-bust']).toEqual([[190, 220]]);
		expect(across['measurement:hip-for-bust']).toEqual([[270, 220]]);
	});

	it('a girth with its own ease, or with the right one, where they differ', () => {
		const eased = readBody({ ...FIGURE, allowances: { waistEase: 4 } });
		expect(places(method, 'U', eased)['measurement:waist-for-bust']).toEqual([
			[200, 220],
			[190, 220]
		]);
	});

	it('inches for centimetres and the reverse, of the whole and of the measurement', () => {
		expect(down['unit:inches-for-centimetres']).toEqual([
			[0, 558.8],
			[0, 512.6]
		]);
		expect(down['unit:centimetres-for-inches']).toEqual([
			[0, rounded(220 / 2.54)],
			[0, rounded(190 / 2.54 + 30)]
		]);
	});

	it('the decimal point one place off, of the whole and of the measurement', () => {
		expect(down['decimal']).toEqual([
			[0, 2200],
			[0, 22],
			[0, 1930],
			[0, 49]
		]);
	});

	it('the tape 10 cm off: of the whole, and of the measurement of which a half is taken', () => {
		expect(down['tape:10cm']).toEqual([
			[0, 320],
			[0, 120],
			[0, 270],
			[0, 170]
		]);
	});

	it('two digits swapped: 38 read as 83, half of it and 3 is 44.5; 96 as 69, a quarter of it and 1 is 18.25; 25 as 52', () => {
		expect(down['digits:swapped']).toEqual([[0, 445]]);
		expect(across['digits:swapped']).toEqual([
			[520, 220],
			[182.5, 220]
		]);
	});

	it('a whole measurement has one slip of each kind, and not the same twice', () => {
		const whole = places(smallMethod([mark('W', 'O', 'down', 'backLength')]), 'W');
		expect(whole['unit:inches-for-centimetres']).toEqual([[0, 1066.8]]);
		expect(whole['digits:swapped']).toEqual([[0, 240]]);
		expect(whole['measurement:frontLength-for-backLength']).toEqual([[0, 450]]);
	});

	it('the two parts of a difference are halved together only: half of 45 - 42', () => {
		const found = places(smallMethod([mark('X', 'O', 'across', '(frontLength - backLength) / 2')]), 'X');
		expect(found['fraction:whole-for-half']).toEqual([[30, 0]]);
		expect(found['fraction:quarter-for-half']).toEqual([[7.5, 0]]);
		// Neither is taken for the other: nothing would be left.
		expect(Object.keys(found).filter((note) => note.startsWith('measurement:'))).toEqual([
			'measurement:bustHeight-for-frontLength',
			'measurement:bustHeight-for-backLength',
			'measurement:waistToHip-for-backLength'
		]);
	});

	it('a distance taken to another point', () => {
		const method = smallMethod([
			mark('N', 'O', 'across', 'neck / 6'),
			mark('K', 'O', 'across', 'shoulderWidth / 2'),
			mark('C', 'O', 'down', 'distance(O, N) + frontNeckDrop')
		]);
		expect(places(method, 'C')['distance:K-for-N']).toEqual([[0, 200]]);
	});

	it('a measurement that the body lacks is taken for no other', () => {
		const { waist: _, ...rest } = FIGURE;
		const found = places(method, 'U', readBody(rest));
		expect(found['measurement:waist-for-bust']).toBeUndefined();
		// A quarter of the hip with the bust's ease, and with its own.
		expect(found['measurement:hip-for-bust']).toEqual([
			[280, 220],
			[275, 220]
		]);
	});
});

describe('a mark: the start and the way', () => {
	const method = smallMethod([
		A,
		mark('W', 'O', 'down', 'backLength'),
		U,
		mark('J', 'W', 'across', 'hip / 4')
	]);

	it('from each point drafted before, and from none that comes after', () => {
		const found = places(method, 'U');
		expect(found['start:O-for-A']).toEqual([[250, 0]]);
		expect(found['start:W-for-A']).toEqual([[250, 420]]);
		expect(Object.keys(found).filter((note) => note.startsWith('start:'))).toHaveLength(2);
	});

	it('the place of a point that comes after', () => {
		expect(places(method, 'U')['point:J-for-U']).toEqual([[260, 420]]);
	});

	it('only from what is drafted', () => {
		const { points } = draftOf(method);
		const { W: _, J: __, ...some } = points;
		const found = Object.keys(places(method, 'U', BODY, { points: some, lines: {} }));
		expect(found.filter((note) => /^(start|point):/.test(note))).toEqual(['start:O-for-A']);
	});

	it('the opposite way, and the crossed one to both sides', () => {
		expect(places(method, 'U')).toMatchObject({
			'direction:opposite': [[-250, 220]],
			'direction:crossed': [
				[0, 470],
				[0, -30]
			]
		});
	});

	it.each([
		['down', [40, 0]],
		['up', [-40, 0]],
		['across', [0, 40]],
		['in', [0, -40]]
	] as const)('crossed for %s is first down for across and in for up', (go, first) => {
		const step = pointMissteps(smallMethod([mark('X', 'O', go, 'bustEase')]), 'X', BODY, {
			points: { O: at(0, 0) },
			lines: {}
		});
		const [one, other] = step.filter(({ note }) => note === 'direction:crossed');
		expect([one?.place.x, one?.place.y].map((each) => rounded(each ?? NaN))).toEqual(first);
		expect(one?.prior).toBeGreaterThan(other?.prior ?? NaN);
	});

	it('a drawn line that leaves the start another way is no slope to be measured along', () => {
		const sloped = (across: string, down: string) =>
			smallMethod([
				mark('B', 'O', 'across', across),
				mark('D', 'B', 'down', down),
				{ kind: 'straight', name: 'edge', label: 'the edge', through: ['O', 'D'] },
				mark('Z', 'O', 'down', 'bust / 4')
			]);
		// Six across and one down is another way; one across and six down is nearly the rule's.
		expect(places(sloped('neck', 'neck / 6'), 'Z')['slope']).toBeUndefined();
		expect(places(sloped('neck / 6', 'neck'), 'Z')['slope']).toHaveLength(1);
	});

	it('along a drawn slope: 250 along 3, 4, 5 is 150 and 200', () => {
		const sloped = smallMethod([
			mark('B', 'O', 'across', 'shoulderWidth * 3'),
			mark('D', 'B', 'down', 'shoulderWidth * 4'),
			{ kind: 'straight', name: 'edge', label: 'the edge', through: ['O', 'D'] },
			mark('Z', 'O', 'down', 'bust / 4 + bustEase / 4')
		]);
		expect(places(sloped, 'Z')['slope']).toEqual([[150, 200]]);
		const [slope] = pointMissteps(sloped, 'Z', BODY, draftOf(sloped)).filter(({ note }) => note === 'slope');
		expect(slope && misstepWords(slope, english)).toBe(
			'You measured along the edge; the rule goes straight down.'
		);
	});
});

describe('a meeting', () => {
	const method = smallMethod([
		A,
		mark('W', 'O', 'down', 'backLength'),
		mark('N', 'O', 'across', 'neck / 6'),
		mark('K', 'O', 'across', 'shoulderWidth / 2'),
		{ kind: 'meeting', name: 'Q', label: 'the armhole corner', down: 'K', across: 'A' }
	]);

	it('either line from a wrong point; points on one line count as one', () => {
		expect(places(method, 'Q')).toEqual({
			'start:O-for-K': [[0, 220]],
			'start:N-for-K': [[60, 220]],
			'start:O-for-A': [[190, 0]],
			'start:W-for-A': [[190, 420]],
			'direction:crossed': [[0, 0]]
		});
	});

	it('the two lines exchanged: as far across as A and as far down as K, which is the corner here', () => {
		const other = smallMethod([
			mark('A', 'O', 'down', 'shoulderWidth / 2'),
			mark('B', 'A', 'across', 'neck / 6'),
			mark('K', 'O', 'across', 'shoulderWidth / 2'),
			{ kind: 'meeting', name: 'Q', label: 'a corner', down: 'K', across: 'B' }
		]);
		expect(places(other, 'Q')['direction:crossed']).toEqual([[60, 0]]);
	});
});

describe('a division', () => {
	const method = smallMethod([
		mark('S', 'O', 'across', 'shoulderWidth / 2'),
		mark('Q', 'S', 'down', 'hip / 4'),
		mark('N', 'O', 'across', 'neck / 6'),
		{ kind: 'division', name: 'P', label: 'a third', from: 'S', to: 'Q', at: '1 / 3' }
	]);

	it('another share, from the other end, between other points: S (190, 0), Q (190, 260)', () => {
		expect(places(method, 'P')).toMatchObject({
			'fraction:half-for-third': [[190, 130]],
			'fraction:quarter-for-third': [[190, 65]],
			'direction:opposite': [[190, 173.33]],
			'start:O-for-S': [[63.33, 86.67]],
			'toward:O-for-Q': [[126.67, 0]]
		});
	});
});

describe('along a slope', () => {
	const slope = [
		mark('A', 'O', 'across', 'neck'),
		mark('B', 'O', 'across', 'shoulderWidth * 3'),
		mark('E', 'B', 'down', 'shoulderWidth * 4')
	];

	it('square instead, to the length and to the slope; from another point, toward another, away: 60 along 3, 4, 5', () => {
		const method = smallMethod([
			...slope,
			{ kind: 'along', name: 'D', label: 'D', on: { from: 'O', toward: 'E' }, by: 'dartBelow' }
		]);
		const found = places(method, 'D');
		expect(found).toMatchObject({
			'direction:opposite': [[-36, -48]],
			'allowance:left-out:dartBelow': [[0, 0]],
			'toward:A-for-E': [[60, 0]],
			'start:B-for-O': [[1140, 60]],
			// From E itself: back toward O.
			'start:E-for-O': [[1104, 1472]]
		});
		expect(found['slope']).toEqual([
			[0, 60],
			[45, 60],
			[60, 0],
			[60, 80]
		]);
	});

	it('along a drawn line from its other end', () => {
		const method = smallMethod([
			...slope,
			{ kind: 'straight', name: 'edge', label: 'the edge', through: ['O', 'B'] },
			{ kind: 'along', name: 'D', label: 'D', on: { line: 'edge', from: 'start' }, by: 'dartBelow' }
		]);
		expect(places(method, 'D')).toMatchObject({
			'direction:opposite': [[1080, 0]],
			'allowance:twice:dartBelow': [[120, 0]]
		});
	});
});

describe('a swing', () => {
	const method = smallMethod([
		mark('N', 'O', 'across', 'neck / 6'),
		{
			kind: 'swing',
			name: 'S',
			label: 'S',
			from: 'N',
			length: 'bust / 19.2',
			level: 'shoulderDropFront',
			side: 'outward'
		}
	]);

	it('straight across instead, the other side, another start, another level: 50 to the level 40 is 30 across from N at 60', () => {
		const found = places(method, 'S');
		expect(found).toMatchObject({
			slope: [
				[110, 40],
				[110, 0]
			],
			'direction:opposite': [[30, 40]],
			'start:O-for-N': [[30, 40]],
			'allowance:shoulderDropBack-for-shoulderDropFront': [[100, 30]]
		});
		// Without its level nothing is swung: that is straight across, and told so.
		expect(found['allowance:left-out:shoulderDropFront']).toBeUndefined();
	});
});

describe('what is asked for wrongly', () => {
	const method = smallMethod([
		A,
		U,
		{ kind: 'straight', name: 'edge', label: 'the edge', through: ['A', 'U'] }
	]);
	const empty = { points: {}, lines: {} };

	it('lines and the corner have no wrong places', () => {
		expect(pointMissteps(method, 'edge', BODY, draftOf(method))).toEqual([]);
		expect(pointMissteps(method, 'O', BODY, draftOf(method))).toEqual([]);
	});

	it('a start that is not drafted, a measurement that is missing, and a step that there is not are errors', () => {
		expect(() => pointMissteps(method, 'U', BODY, empty)).toThrow(NotDrafted);
		const { bust: _, ...rest } = FIGURE;
		expect(() => pointMissteps(method, 'U', readBody(rest), draftOf(method))).toThrow(BadInput);
		expect(() => pointMissteps(method, 'Z', BODY, empty)).toThrow('no step "Z"');
	});
});
