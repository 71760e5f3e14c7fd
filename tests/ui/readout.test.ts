import { describe, expect, it } from 'vitest';
import { at, type SheetPoint } from '#geometry/point.ts';
import { fromOrigin } from '#ui/desk/readout.ts';
import { english, speechFor } from '../support/speech.ts';
import { chances } from '../reference/random-bodies.ts';

const O = at(10, 20);
/** What is said of the direction, without the distance. */
const way = (to: SheetPoint): string => fromOrigin('O', O, to, english).replace(/^[\d.]+ cm from O, /, '');

describe('the way from one place to another', () => {
	it.each([
		[at(10, 242), 'straight down'],
		[at(10, 5), 'straight up'],
		[at(72, 20), 'straight across'],
		[at(-5, 20), 'straight in'],
		[at(10.04, 120), 'straight down'],
		[at(10, 20), 'at O'],
		[at(10.04, 19.96), 'at O'],
		[at(40, 60), '36.9° off straight down'],
		[at(50, 50), '36.9° off straight across'],
		[at(-30, -10), '36.9° off straight in'],
		[at(-20, -20), '36.9° off straight up'],
		[at(30, 40), '45° off straight down'],
		[at(0, 10), '45° off straight up']
	])('from (10, 20) to %j: %s', (to, words) => {
		expect(way(to)).toBe(words);
	});

	it('a slant too small to be said is not said', () => {
		expect(way(at(10.06, 620))).toBe('straight down');
		expect(way(at(-990, 19.9))).toBe('straight in');
		expect(way(at(11.06, 620))).toBe('0.1° off straight down');
	});
});

describe('the readout', () => {
	it('says how far and which way from the point that the step starts from', () => {
		expect(fromOrigin('O', at(0, 0), at(0, 222), english)).toBe('22.2 cm from O, straight down');
		expect(fromOrigin('O', at(0, 0), at(0, 222.25), speechFor('en', 'in'))).toBe(
			'8 3/4″ from O, straight down'
		);
		expect(fromOrigin('K', O, at(40, 60), english)).toBe('5 cm from K, 36.9° off straight down');
		expect(fromOrigin('K', O, O, english)).toBe('at K');
	});

	it('says where a place lies on the sheet', () => {
		expect(english.words.desk.onSheet(at(71.7, 0))).toBe('7.17 cm across, 0 cm down');
		expect(speechFor('en', 'in').words.desk.onSheet(at(-12.7, 25.4))).toBe('-1/2″ across, 1″ down');
		expect(english.words.desk.onSheet(at(-0.001, -0))).toBe('0 cm across, 0 cm down');
	});

	it('is a whole sentence wherever the pointer is', () => {
		const chance = chances(31);
		for (let i = 0; i < 500; i++) {
			const [from, to] = [at(chance() * 300, chance() * 300), at(chance() * 300, chance() * 300)];
			for (const unit of ['cm', 'in'] as const)
				expect(fromOrigin('A', from, to, speechFor('en', unit))).toMatch(
					/^(at A|[\d ./]+(″| cm) from A, ((0\.[1-9]|[1-9]\d?(\.\d)?)° off )?straight (up|down|across|in))$/
				);
		}
	});
});
