import { describe, expect, it } from 'vitest';
import { chosenWords, isChoice } from '#shared/allowances.ts';
import { readBody } from '#shared/body.ts';
import { explain } from '#drafting/explain.ts';
import { readMethod } from '#drafting/read-method.ts';
import { refusalOf } from '../support/refusal.ts';
import { english, speechFor } from '../support/speech.ts';
import { draftOf } from './small-method.ts';

const FULLNESS = {
	label: 'the share of the circle',
	choices: {
		quarter: { label: 'a quarter circle', share: '1/4' },
		threeQuarter: { label: 'three quarters of a circle', share: '3 / 4' },
		full: { label: 'a full circle', share: 1 }
	},
	default: 'threeQuarter'
};
const fileWith = (allowance: object = {}, by = 'waist / (2 * pi * fullness)'): object => ({
	id: 'round',
	name: 'Round',
	allowances: { fullness: { ...FULLNESS, ...allowance } },
	steps: [
		{ kind: 'corner', name: 'O', label: 'the centre' },
		{ kind: 'mark', name: 'A', label: 'the waist', from: 'O', go: 'down', by }
	]
});
const ROUND = readMethod(fileWith(), 'round.yaml');
const bodyWith = (fullness?: string | number) =>
	readBody(
		{ waist: 66, allowances: fullness === undefined ? {} : { fullness } },
		'a.json: ',
		'body',
		ROUND.allowances
	);
const down = (fullness?: string): number | undefined => draftOf(ROUND, bodyWith(fullness)).points['A']?.y;

describe('an allowance that is a choice among named values', () => {
	it('is a plain number in formulas, by its name or else the usual one', () => {
		expect(down('full')).toBeCloseTo(660 / (2 * Math.PI), 9);
		expect(down('quarter')).toBeCloseTo(660 / (Math.PI / 2), 9);
		expect(down()).toBe(down('threeQuarter'));
	});

	it('is known by its names alone, in either language', () => {
		expect(refusalOf(() => bodyWith('qarter'))).toBe(
			'a.json: allowances.fullness: there is no value "qarter" (did you mean "quarter"?); the values are quarter, threeQuarter, full'
		);
		expect(refusalOf(() => bodyWith('qarter'), speechFor('es'))).toBe(
			'a.json: allowances.fullness: no hay ningún valor «qarter» (¿querías decir «quarter»?); los valores son quarter, threeQuarter, full'
		);
		expect(refusalOf(() => bodyWith(0.25))).toContain('there is no value "0.25"; the values are quarter');
	});

	it('is said by its name in a rule, and by its number in the sum', () => {
		const said = explain(ROUND, 'A', bodyWith('quarter'), draftOf(ROUND, bodyWith('quarter')), english);
		expect(said.rule).toContain('the waist ÷ (2 × π × the share of the circle)');
		expect(said.arithmetic).toBe('the waist ÷ (2 × π × 0.25) = 42.02 cm');
	});

	it('is called by its labels, in the words of a language', () => {
		const words = {
			place: 'round.es.yaml',
			content: {
				allowances: { fullness: 'la parte del círculo' },
				choices: { fullness: { quarter: 'un cuarto de círculo' } }
			}
		};
		const spanish = readMethod(fileWith(), 'round.yaml', undefined, { language: 'es', words });
		for (const [{ allowances }, speech, said] of [
			[ROUND, english, ['a quarter circle', 'a full circle']],
			[spanish, speechFor('es'), ['un cuarto de círculo', 'a full circle']]
		] as const) {
			const choice = allowances.find(isChoice);
			expect(choice && [0.25, 1].map((share) => chosenWords(choice, share, speech))).toEqual(said);
		}
	});

	it.each([
		[
			fileWith({ default: 'half' }),
			'round.yaml: allowances.fullness: there is no value "half"; the values are quarter, threeQuarter, full'
		],
		[
			fileWith({ choices: { full: { label: 'x', share: 'bust / 4' } } }),
			'round.yaml: allowances.fullness.choices.full: position 1 of "bust / 4": this must be a plain share such as 1 / 2'
		],
		[
			fileWith({}, 'waist + fullness'),
			'round.yaml: step A: by: position 1 of "waist + fullness": a plain number cannot be added to a length or taken from it; name an allowance instead'
		]
	])('%# a method file that does not make sense', (file, complaint) => {
		expect(refusalOf(() => readMethod(file, 'round.yaml'))).toBe(complaint);
	});
});
