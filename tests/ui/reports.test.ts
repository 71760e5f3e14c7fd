import { describe, expect, it } from 'vitest';
import { readBody, type Body } from '#shared/body.ts';
import type { Method } from '#drafting/method.ts';
import { reportsOf, type Making } from '#ui/pages/measurements/reports.ts';
import { english } from '../support/speech.ts';
import { BODY, FIGURE, mark, smallMethod } from '../drafting/small-method.ts';

const hipDown = mark('A', 'O', 'down', 'waistToHip');
/** Refused where the hip lies less than 10 cm below the corner, and where it lies below the waist. */
const refusing = (name: string): Method =>
	smallMethod([mark('W', 'O', 'down', 'backLength'), hipDown], {
		name,
		refusals: [
			{
				name: 'hipTooHigh',
				need: { down: ['O', 'A'], atLeast: '10 cm' },
				odds: ['waistToHip', 'backLength'],
				because: 'the hip is too high'
			},
			{
				name: 'backTooShort',
				need: { down: ['A', 'W'], atLeast: '15 cm' },
				odds: ['waistToHip', 'backLength'],
				because: 'the back is too short'
			}
		]
	});
const alone = (method: Method): Making => ({ name: method.name, methods: [method] });
const SECOND = smallMethod([mark('A', 'O', 'across', 'shoulderWidth')], { name: 'The second' });
const METHODS = [refusing('The first'), SECOND, refusing('The third')].map(alone);
const figure = (changed: Readonly<Record<string, unknown>>): Body => readBody({ ...FIGURE, ...changed });

describe('what can be drafted', () => {
	it('is one list', () => {
		expect(reportsOf(METHODS, BODY, english)).toEqual([
			{ says: 'Can be drafted', state: 'ready', of: ['The first', 'The second', 'The third'] }
		]);
	});

	it('where two measurements disagree, that is said once, of every draft that they hold up', () => {
		expect(reportsOf(METHODS, figure({ waistToHip: 8 }), english)).toEqual([
			{
				says: 'Waist to hip and the back length disagree: the hip is too high (here it is 8 cm); measure both again',
				state: 'refused',
				of: ['The first', 'The third']
			},
			{ says: 'Can be drafted', state: 'ready', of: ['The second'] }
		]);
	});

	it('a measurement that hardly anybody has is pointed at, before what it disagrees with', () => {
		expect(reportsOf(METHODS, figure({ waistToHip: 5.5 }), english)[0]).toEqual({
			says: 'Look at waist to hip once more',
			state: 'refused',
			of: ['The first', 'The third']
		});
	});

	it('more than three that are still to be measured are counted', () => {
		const method = smallMethod(
			(['bust', 'waist', 'hip', 'neck'] as const).map((key, i) => mark(`P${String(i)}`, 'O', 'down', key)),
			{ name: 'The fourth' }
		);
		const says = (reports: ReturnType<typeof reportsOf>): string | undefined => reports[0]?.says;
		expect(says(reportsOf([alone(method)], readBody({}), english))).toBe('4 still to measure');
		expect(says(reportsOf([alone(method)], readBody({ bust: 96 }), english))).toMatch(
			/^Still wanted: the waist, /
		);
	});

	it('a garment wants what all its drafts want; a draft of it that can be made is told as well', () => {
		const skirt = { name: 'The skirt', methods: [refusing('The front'), SECOND] };
		const { shoulderWidth: _, ...rest } = FIGURE;
		expect(reportsOf([skirt], readBody(rest), english)).toEqual([
			{ says: 'Still wanted: the shoulder width', state: 'wanting', of: ['The skirt'] },
			{ says: 'Can be drafted', state: 'ready', of: ['The front'] }
		]);
		expect(reportsOf([skirt], BODY, english)).toEqual([
			{ says: 'Can be drafted', state: 'ready', of: ['The skirt'] }
		]);
		expect(reportsOf([{ ...skirt, name: 'The front' }], readBody(rest), english)).toHaveLength(1);
	});

	it('a draft held up for two reasons stands under each', () => {
		const reports = reportsOf(METHODS, figure({ waistToHip: 8, backLength: 20 }), english);
		expect(reports.map(({ of }) => of)).toEqual([
			['The first', 'The third'],
			['The first', 'The third'],
			['The second']
		]);
	});

	it('what is still wanted comes before any disagreement, and is said once of drafts that want the same', () => {
		const { shoulderWidth: _, ...rest } = FIGURE;
		expect(reportsOf(METHODS, readBody(rest), english)).toMatchObject([
			{ says: 'Can be drafted', of: ['The first', 'The third'] },
			{ says: 'Still wanted: the shoulder width', state: 'wanting', of: ['The second'] }
		]);
		const bare = reportsOf(METHODS, readBody({ waistToHip: 8 }), english);
		expect(bare.map(({ of }) => of)).toEqual([['The first', 'The third'], ['The second']]);
	});
});
