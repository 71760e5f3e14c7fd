import { describe, expect, it } from 'vitest';
import { english, speechFor } from '../support/speech.ts';
import { mm, radians } from '#shared/units.ts';
import { at } from '#geometry/point.ts';
import type { Method } from '#drafting/method.ts';
import { stepNamed } from '#drafting/method.ts';
import { stepAnswer } from '#drafting/steps/kinds.ts';
import { heldTo, meantBy, spokenTurn, turnedBy, wayOf, type Way } from '#ui/desk/way.ts';
import { mark, smallMethod, draftOf } from '../drafting/small-method.ts';
import { expectPlace } from '../geometry/close.ts';

/** A (80, 0) and C (0, 60); A turns about O onto C, moves down, or goes on across; C goes on round O. */
const METHOD: Method = smallMethod([
	mark('A', 'O', 'across', 'waist / 9'),
	mark('C', 'O', 'down', 'neck / 6'),
	{ kind: 'turn', name: 'D', label: 'turned', move: 'A', about: 'O', onto: 'C' },
	{
		kind: 'turn',
		name: 'D1',
		label: 'turned about itself',
		move: 'O',
		about: 'O',
		onto: 'C',
		when: 'waist - hip'
	},
	{ kind: 'spread', name: 'E', label: 'moved', move: 'A', go: 'down', by: 'neck / 36' },
	{
		kind: 'until',
		name: 'F',
		label: 'until',
		from: 'C',
		about: 'O',
		go: 'across',
		within: ['0 cm', '9 cm'],
		rule: 'thirds',
		through: [
			{ point: 'A', heading: 'chord' },
			{ point: 'F', heading: 'chord' }
		],
		length: 'neck / 36 * 5'
	}
]);
const DRAFT = draftOf(METHOD);
const wayFor = (name: string): Way => {
	const way = wayOf(stepAnswer(stepNamed(METHOD, name)), DRAFT);
	if (!way) throw new Error(`${name} has no way`);
	return way;
};

describe('the way of a step', () => {
	it('there is none for a point that may be put anywhere, and none for a turn about its own place', () => {
		expect(wayOf(stepAnswer(stepNamed(METHOD, 'A')), DRAFT)).toBeUndefined();
		expect(wayOf(stepAnswer(stepNamed(METHOD, 'D1')), DRAFT)).toBeUndefined();
		expect(wayOf(stepAnswer(stepNamed(METHOD, 'D')), { points: {}, lines: {} })).toBeUndefined();
	});

	it('of a turn lies round its pin', () => {
		const way = wayFor('D');
		expect([way.begin, way.about]).toEqual([
			{ x: 80, y: 0 },
			{ x: 0, y: 0 }
		]);
		expectPlace(way.placeAt(mm(40 * Math.PI)), 0, 80);
		expectPlace(way.placeAt(mm(-40 * Math.PI)), 0, -80);
		// Whatever its distance from the pin, only the direction of a place counts.
		expect(way.gone(way.begin, at(3, 3))).toBeCloseTo(20 * Math.PI, 9);
		expect(way.gone(at(0, 7), at(-9, 0))).toBeCloseTo(40 * Math.PI, 9);
	});

	it('of a spread, and of a point that goes straight on, is straight', () => {
		const way = wayFor('E');
		expect([way.begin, way.about]).toEqual([{ x: 80, y: 0 }, undefined]);
		expect(way.gone(way.begin, at(97, 12))).toBe(12);
		expectPlace(way.placeAt(mm(-5)), 80, -5);
	});

	it('of a point that goes on round a centre lies round that', () => {
		expectPlace(wayFor('F').placeAt(mm(-30 * Math.PI)), 60, 0);
	});
});

describe('a place held to a way', () => {
	it('lies on the way, at whole steps of the finest length', () => {
		expectPlace(heldTo(wayFor('E'), at(97, 12.34), mm(0.1)), 80, 12.3);
		const held = heldTo(wayFor('D'), at(50, 50), mm(0.1));
		expect(Math.hypot(held.x, held.y)).toBeCloseTo(80, 9);
		// An eighth of the round is 62.83 mm: 62.8 is the nearest tenth.
		expect(Math.atan2(held.y, held.x) * 80).toBeCloseTo(62.8, 9);
	});
});

describe('an arrow key', () => {
	const [round, down] = [wayFor('D'), wayFor('E')];
	it.each([
		['above the pin, right goes right', at(0, -80), 1, 0, 1],
		['below the pin, right goes right', at(0, 80), 1, 0, -1],
		['beside the pin, up goes up', at(80, 0), 0, -1, -1],
		['on its other side, up goes up', at(-80, 0), 0, -1, 1],
		['beside the pin, right can only mean clockwise', at(80, 0), 1, 0, 1],
		['and left the other way', at(80, 0), -1, 0, -1]
	])('%s', (_, place, right, below, sign) => {
		expect(meantBy(round, place, right, below)).toBe(sign);
	});

	it('on a straight way goes as it is seen to go', () => {
		expect(meantBy(down, at(80, 0), 0, 1)).toBe(1);
		expect(meantBy(down, at(80, 0), 0, -1)).toBe(-1);
	});
});

describe('words', () => {
	const { turned } = english.words.desk;

	it('say how far something is turned, and which way', () => {
		const way = wayFor('D');
		expect(turned({ angle: spokenTurn(turnedBy(way, at(1, 1)) ?? radians(0)) })).toBe(
			'turned 45.0° clockwise'
		);
		expect(turned({ angle: spokenTurn(turnedBy(way, at(1, -1)) ?? radians(0)) })).toBe(
			'turned 45.0° anticlockwise'
		);
		expect(turned({ angle: spokenTurn(radians(0.0005)) })).toBe('not turned');
		expect(turnedBy(wayFor('E'), at(80, 9))).toBeUndefined();
	});

	it('say how wide a slash is open, in the learner’s unit', () => {
		const angle = radians(0);
		expect(turned({ angle, open: { width: mm(50), at: 'F' } })).toBe('open 5 cm at F · not turned');
		expect(speechFor('en', 'in').words.desk.turned({ angle, open: { width: mm(25.4), at: 'F' } })).toBe(
			'open 1″ at F · not turned'
		);
	});
});
