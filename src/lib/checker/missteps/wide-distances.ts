import { BadInput } from '#shared/bad-input.ts';
import { isChoice } from '#shared/allowances.ts';
import { keptFor } from '#shared/kept.ts';
import { MEASUREMENT_KEYS } from '#shared/measurements.ts';
import { MM_PER, mm, type Mm } from '#shared/units.ts';
import { pathEnd, pathStart } from '#geometry/path.ts';
import { distance } from '#geometry/point.ts';
import type { Formula } from '#drafting/formula/formula.ts';
import type { Method } from '#drafting/method.ts';
import { lengthOf, type Scope } from '#drafting/formula/value.ts';
import { NotDrafted, scopeOf } from '#drafting/evaluate.ts';
import { stepLeansOn, stepRuler } from '#drafting/steps/kinds.ts';
import { FRACTIONS, RARE_FRACTIONS, fractionOf, fractionWeight, isSameShare } from './fractions.ts';
import type { Taken } from '#shared/speech/en/missteps.ts';
import { isNear, kinship } from './kinship.ts';
import { slip } from './misstep.ts';
import { LOWERED, PRIORS, TAPE_SLIPS, USED_LINE } from './priors.ts';
import { rewritten } from './rewritten.ts';
import type { Stand } from './stand.ts';
import { lineOf, takenAllowance, takenOf } from './taken.ts';
import { replaced, summandsOf, sumOf, termsOf, type Term } from './terms.ts';
import type { WrongDistance } from './wrong-distances.ts';

/**
 * Wrong ways of working a length that are rare one by one, and many together. They are not taught, and no exercise is made of
 * them: they explain a place that nothing commoner does, and keep the commoner ones from being certain where they should not be.
 */

/** The terms of a formula; none where it names what this body's draft does not have. */
const termsIn = (formula: Formula, scope: Scope): readonly Term[] | undefined => {
	try {
		return termsOf(formula, scope);
	} catch (error) {
		if (error instanceof NotDrafted || error instanceof BadInput) return undefined;
		throw error;
	}
};

/** One kind of them, for a rule's terms. */
type Wide = (terms: readonly Term[], stand: Stand, formula: Formula) => readonly WrongDistance[];

/** A length by itself, as the one term of a rule. */
const alone = (base: Mm, leaf: Formula = { kind: 'number', value: base }, share = 1): readonly Term[] => [
	{ leaf, base, share }
];

/** Any share of any term: also of a distance, of another line, of what is no sum. */
const anyShare: Wide = (terms, { method }) =>
	terms.flatMap((term, i) => {
		const right = fractionOf(term.share);
		const lowered = term.leaf.kind === 'measurement' ? 1 : LOWERED.unlikelyFraction;
		// Twice an allowance is told as that.
		const isTwice = (share: number): boolean => term.leaf.kind === 'allowance' && share > 1;
		return [...FRACTIONS, ...RARE_FRACTIONS]
			.filter(({ share }) => !isSameShare(share, right.share) && !isTwice(share))
			.map((wrong) => ({
				note: `fraction:${wrong.name}-for-${right.name}${i > 0 && 'key' in term.leaf ? `:${term.leaf.key}` : ''}`,
				prior: PRIORS.fraction * lowered * fractionWeight(wrong, right),
				terms: replaced(terms, i, { share: Math.sign(term.share) * wrong.share }),
				slip: slip('fraction', { wrong: wrong.name, right: right.name, of: [takenOf(term.leaf, method)] }),
				term: i
			}));
	});

/** A share of all that the rule comes to: what stands before the sum was meant for one term of it. */
const shareOfAll: Wide = (terms) =>
	terms.length < 2
		? []
		: [...FRACTIONS, ...RARE_FRACTIONS]
				.filter(({ name }) => name !== 'whole')
				.map(({ name, share }) => ({
					note: `sum:${name}`,
					prior: PRIORS.shareOfSum * (name === 'half' || name === 'twice' ? 1 : LOWERED.rareFraction),
					terms: terms.map((term) => ({ ...term, share: term.share * share })),
					slip: slip('shareOfSum', { wrong: name })
				}));

/** A term that is no allowance left out, or with the other sign. */
const otherTerms: Wide = (terms, { method }) =>
	terms.length < 2
		? []
		: terms.flatMap(({ leaf, share }, i): readonly WrongDistance[] => {
				if (leaf.kind === 'allowance') return [];
				const what = takenOf(leaf, method);
				return [
					{
						note: `term:left-out`,
						prior: PRIORS.termLeftOut,
						terms: terms.filter((_, k) => k !== i),
						slip: slip('leftOut', { what }),
						term: i
					},
					{
						note: `term:other-sign`,
						prior: PRIORS.termLeftOut * LOWERED.seldom,
						terms: replaced(terms, i, { share: -share }),
						slip: slip(share < 0 ? 'added' : 'takenOff', { what }),
						term: i
					}
				];
			});

/** What may be done to a part of a sum that is itself a sum, or a choice: left out, doubled, halved, or with the other sign. */
const PART_DONE = [
	{ how: 'leftOut', times: 0 },
	{ how: 'twice', times: 2 },
	{ how: 'half', times: 1 / 2 },
	{ how: 'otherSign', times: -1 }
] as const;

/** A part of the sum that is itself a sum left out or changed whole: what the darts take up, say. */
const wholePart: Wide = (terms, { scope }, formula) => {
	const [summands, whole] = [summandsOf(formula), sumOf(terms)];
	return summands.length < 2
		? []
		: summands.flatMap(([part, sign]) => {
				if (termsOf(part, scope).length < 2) return [];
				const value = sign * lengthOf(part, scope);
				return PART_DONE.map(({ how, times }) => ({
					note: `part:${how}`,
					prior: PRIORS.wholePart,
					terms: alone(mm(whole + (times - 1) * value)),
					slip: slip('wholePart', { how })
				}));
			});
};

const lengthAllowances = ({ method }: Stand): readonly string[] =>
	method.allowances.filter((each) => !isChoice(each)).map(({ key }) => key);

/** Any other allowance in the place of one of the rule's. */
const otherAllowance: Wide = (terms, stand) =>
	terms.flatMap(({ leaf }, i) => {
		if (leaf.kind !== 'allowance') return [];
		const { method, step, scope } = stand;
		return lengthAllowances(stand)
			.filter((key) => key !== leaf.key)
			.map((key) => ({
				note: `allowance:${key}-for-${leaf.key}`,
				prior: kinship(key, leaf.key, method, step),
				terms: replaced(terms, i, { leaf: { kind: 'allowance', key }, base: scope.allowance(key) }),
				get slip() {
					return slip('instead', {
						wrong: takenAllowance(method, key),
						right: takenAllowance(method, leaf.key)
					});
				},
				term: i
			}));
	});

/** An allowance that the rule does not have, added or taken off: all of it, or the share that the rule takes of its first term. */
const allowanceAdded: Wide = (terms, stand) => {
	const named = terms.map(({ leaf }) => ('key' in leaf ? leaf.key : ''));
	const { method, step, scope } = stand;
	const shares = [...new Set([1, Math.abs(terms[0]?.share ?? 1)])];
	return lengthAllowances(stand)
		.filter((key) => !named.includes(key))
		.flatMap((key) => {
			const prior = isNear(key, method, step) ? PRIORS.allowanceAdded : PRIORS.anyAllowanceAdded;
			const leaf: Formula = { kind: 'allowance', key };
			return shares.flatMap((share) =>
				[share, -share].map((signed) => ({
					note: `allowance:${signed > 0 ? 'extra' : 'extra-off'}:${key}`,
					prior: prior * (signed > 0 ? 1 : LOWERED.seldom),
					terms: [...terms, { leaf, base: scope.allowance(key), share: signed }],
					get slip() {
						return slip(signed > 0 ? 'addedToo' : 'takenOffToo', { what: takenAllowance(method, key) });
					},
					term: terms.length
				}))
			);
		});
};

/** Any other measurement of the body, in the rule's own share. */
const anyMeasurement: Wide = (terms, { body }) =>
	terms.flatMap(({ leaf }, i) => {
		if (leaf.kind !== 'measurement') return [];
		return MEASUREMENT_KEYS.flatMap((key) => {
			const base = body.measurements[key];
			if (base === undefined || key === leaf.key) return [];
			return [
				{
					note: `measurement:${key}-for-${leaf.key}`,
					prior: PRIORS.anyMeasurement,
					terms: replaced(terms, i, { leaf: { kind: 'measurement', key }, base }),
					slip: slip('instead', {
						wrong: { kind: 'measurement', key },
						right: { kind: 'measurement', key: leaf.key }
					}),
					term: i
				}
			];
		});
	});

/** Another measurement, or a usual share of one, and nothing besides: "half of the back length". */
const plainMeasurement: Wide = (_, { body }) =>
	MEASUREMENT_KEYS.flatMap((key) => {
		const base = body.measurements[key];
		if (base === undefined) return [];
		return FRACTIONS.map(({ name, share }) => ({
			note: `plain:${name}:${key}`,
			prior: PRIORS.plainMeasurement,
			terms: alone(base, { kind: 'measurement', key }, share),
			slip: slip('shareInstead', { wrong: name, of: { kind: 'measurement', key } })
		}));
	});

/** The tape read beside its mark, in the result or in a measurement. */
const tapeBeside: Wide = (terms, { method }) => {
	const whole = sumOf(terms);
	const slips = TAPE_SLIPS.flatMap((each) => [
		{ ...each, change: each.by, way: 'long' as const },
		{ ...each, change: mm(-each.by), way: 'short' as const }
	]);
	return slips.flatMap(({ size, prior, change, way }) => [
		{
			note: `tape:${size}`,
			prior,
			terms: alone(mm(whole + change)),
			slip: slip('tapeBeside', { what: { kind: 'distance' }, size, way })
		},
		...terms.flatMap((term, i) =>
			term.leaf.kind === 'measurement'
				? [
						{
							note: `tape:${size}`,
							prior: prior * LOWERED.inMeasurement,
							terms: replaced(terms, i, { base: mm(term.base + change) }),
							slip: slip('tapeBeside', { what: takenOf(term.leaf, method), size, way }),
							term: i
						}
					]
				: []
		)
	]);
};

/** What is beyond whole centimetres, or whole inches, left out. */
const fractionDropped: Wide = (terms, { body }) => {
	const unit: Mm = mm(body.unit === 'in' ? MM_PER.in : MM_PER.cm);
	const whole = sumOf(terms);
	return [
		{
			note: 'tape:fraction-dropped',
			prior: PRIORS.fractionDropped,
			terms: alone(mm(Math.trunc(whole / unit) * unit)),
			slip: slip('fractionDropped')
		}
	];
};

/** The lengths that other steps lay off, and how many steps away each is. */
export const otherRulers = ({ method, step, scope }: Stand) => {
	const here = method.steps.findIndex(({ name }) => name === step.name);
	return method.steps.flatMap((other, i) => {
		const ruler = i === here ? undefined : stepRuler(other);
		const terms = ruler && termsIn(ruler.formula, scope);
		return terms ? [{ name: other.name, terms, away: Math.abs(i - here) }] : [];
	});
};

/** The rule of another step in the place of this one's, or added to it, or taken off: of a step that stands near more often than of one far away. */
const otherRule: Wide = (terms, stand) =>
	otherRulers(stand).flatMap(({ name, terms: others, away }) => [
		{
			note: `rule:${name}-for-${stand.step.name}`,
			prior: PRIORS.otherRule / (2 + away),
			terms: others,
			slip: slip('otherRule', { wrong: name })
		},
		...[1, -1].map((sign) => ({
			note: `rule:${sign > 0 ? 'with' : 'without'}-${name}`,
			prior: PRIORS.ruleAdded / (2 + away),
			terms: [...terms, ...others.map((term) => ({ ...term, share: sign * term.share }))],
			slip: slip(sign > 0 ? 'withRule' : 'withoutRule', { of: name })
		}))
	]);

/** The rule that a draft which this one uses has for its step of the same name. */
const panelRule: Wide = (_, { method, step, body, drafted }) =>
	Object.entries(method.uses).flatMap(([alias, used]) => {
		const other = used.steps.find(({ name }) => name === step.name);
		const [ruler, draft] = [other && stepRuler(other), drafted.uses?.[alias]];
		if (!ruler || !draft) return [];
		return [
			{
				note: `panel:${alias}`,
				prior: PRIORS.otherPanel,
				terms: alone(lengthOf(ruler.formula, scopeOf(used, body, draft))),
				slip: slip('panel', { wrong: used.called, right: method.name })
			}
		];
	});

/** A drawn line by its name, how long it is, and how likely it is taken for another: a share of one. */
interface OtherLine {
	readonly line: string;
	readonly length: Mm;
	readonly share: number;
}

/** What the rules of a draft use: asked for in each diagnosis. */
const usedIn = keptFor((method: Method): ReadonlySet<string> => new Set(method.steps.flatMap(stepLeansOn)));

/** The lines that a length could be taken from by mistake: those drawn before, and those of the drafts that this one uses. */
export const otherLines = ({ method, step, drafted }: Stand): readonly OtherLine[] => {
	const used = usedIn(method);
	const before = method.steps.slice(
		0,
		method.steps.findIndex(({ name }) => name === step.name)
	);
	const own = before.flatMap(({ name: line }) => {
		const drawn = drafted.lines[line];
		return drawn ? [{ line, length: drawn.length }] : [];
	});
	const borrowed = Object.entries(drafted.uses ?? {}).flatMap(([alias, { lines }]) =>
		Object.entries(lines).map(([name, { length }]) => ({ line: `${alias}.${name}`, length }))
	);
	const weighed = [...own, ...borrowed].map((each) => ({
		...each,
		weight: used.has(each.line) ? USED_LINE : 1
	}));
	const whole = weighed.reduce((sum, { weight }) => sum + weight, 0);
	return weighed.map(({ weight, ...each }) => ({ ...each, share: weight / whole }));
};

/** Another line's length in the place of the rule's, and a curve measured straight from end to end. */
const otherLine: Wide = (terms, stand) =>
	terms.flatMap(({ leaf }, i) => {
		if (leaf.kind !== 'length') return [];
		const { scope, method } = stand;
		const lines = otherLines(stand).filter(({ line }) => line !== leaf.line);
		const path = scope.line(leaf.line);
		return [
			{
				note: 'length:straight',
				prior: PRIORS.straightForCurved,
				terms: replaced(terms, i, { base: distance(pathStart(path), pathEnd(path)) }),
				slip: slip('measuredStraight', { line: lineOf(method, leaf.line) }),
				term: i
			},
			...lines.map(({ line, length, share }) => ({
				note: `length:${line}`,
				prior: PRIORS.otherLine * share,
				terms: replaced(terms, i, { base: length }),
				slip: slip('instead', {
					wrong: { kind: 'line', line: lineOf(method, line) },
					right: takenOf(leaf, method)
				}),
				term: i
			}))
		];
	});

/** A distance taken from another of the points on the sheet. */
const otherBeginning: Wide = (terms, { scope, earlier }) =>
	terms.flatMap(({ leaf }, i) => {
		if (leaf.kind !== 'distance') return [];
		const end = scope.point(leaf.to);
		return earlier
			.filter(({ name }) => name !== leaf.from && name !== leaf.to)
			.map(({ name, place }) => ({
				note: `distance:from-${name}`,
				prior: PRIORS.distance / earlier.length,
				terms: replaced(terms, i, { base: distance(place, end) }),
				slip: slip('instead', {
					wrong: { kind: 'apart', from: name, to: leaf.to },
					right: { kind: 'apart', from: leaf.from, to: leaf.to }
				}),
				term: i
			}));
	});

/** As far as another of the points lies, or half of that; as long as a line that is drawn, or half of it. */
const asFarAs: Wide = (_, stand) => {
	const { step, scope, method, earlier } = stand;
	const from = stepRuler(step)?.from;
	const points = earlier
		.filter(({ name }) => name !== from)
		.map(({ name, place }) => ({
			taken: (): Taken => ({ kind: 'apart', from: from ?? '', to: name }),
			far: from === undefined ? mm(0) : distance(scope.point(from), place)
		}));
	const lines = otherLines(stand).map(({ line, length }) => ({
		taken: (): Taken => ({ kind: 'line', line: lineOf(method, line) }),
		far: length
	}));
	const all = [...points, ...lines].filter(({ far }) => far > 0);
	return all.flatMap(({ taken, far }) =>
		FRACTIONS.filter(({ share }) => share >= 1 / 4).map(({ name, share }) => ({
			note: `as-far:${name}`,
			prior: ((PRIORS.asFarAs / all.length) * (name === 'whole' || name === 'half' ? 1 : LOWERED.seldom)) / 2,
			terms: alone(mm(far * share)),
			get slip() {
				return slip('shareInstead', { wrong: name, of: taken() });
			}
		}))
	);
};

/** A number of the rule forgotten, another of the named values, the other of two lengths, the rule of the other case. */
const otherFormula: Wide = (_, { scope, method }, formula) =>
	rewritten(formula, method).flatMap(({ how, formula: other }) => {
		const terms = termsIn(other, scope);
		return terms
			? [
					{
						note: `formula:${how}`,
						prior: how === 'numberForgotten' ? PRIORS.numberForgotten : PRIORS.otherFormula,
						terms,
						slip: slip('otherFormula', { how })
					}
				]
			: [];
	});

const KINDS: readonly Wide[] = [
	anyShare,
	shareOfAll,
	otherTerms,
	wholePart,
	otherAllowance,
	allowanceAdded,
	anyMeasurement,
	plainMeasurement,
	tapeBeside,
	fractionDropped,
	otherRule,
	panelRule,
	otherLine,
	otherBeginning,
	asFarAs,
	otherFormula
];

/** Every rare wrong way of working a length at a step. */
export const wideDistances = (formula: Formula, stand: Stand): readonly WrongDistance[] => {
	const terms = termsOf(formula, stand.scope);
	return KINDS.flatMap((kind) => kind(terms, stand, formula));
};
