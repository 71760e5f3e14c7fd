import { MEASUREMENT_KEYS } from '#shared/measurements.ts';
import { MM_PER, mm, type Mm } from '#shared/units.ts';
import { pathEnd, pathStart } from '#geometry/path.ts';
import { distance } from '#geometry/point.ts';
import type { Formula } from '#drafting/formula/formula.ts';
import { scopeOf, type Drafted } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { stepRuler } from '#drafting/steps/kinds.ts';
import { FRACTIONS, RARE_FRACTIONS, fractionOf, fractionWeight, isSameShare } from './fractions.ts';
import type { Taken } from '#shared/speech/en/missteps.ts';
import { isNear, kinship } from './kinship.ts';
import { slip, type Part } from './misstep.ts';
import { otherLines, otherRulers, termsIn } from './other-lengths.ts';
import { metAllowances, metMeasurements } from './met.ts';
import { LOWERED, PRIORS, SAME_DRAFT, TAPE_SLIPS } from './priors.ts';
import { rewritten } from './rewritten.ts';
import type { Stand } from './stand.ts';
import { lineOf, takenAllowance, takenOf } from './taken.ts';
import { sumOf, termsOf } from './terms.ts';
import { wholePart } from './whole-part.ts';
import { put, type Rule, type Wide } from './wide-rule.ts';
import { workedWrongly } from './worked-wrongly.ts';

/**
 * Wrong ways of working a length that are rare one by one, and many together. They are not taught, and no exercise is made of
 * them: they explain a place that nothing commoner does, and keep the commoner ones from being certain where they should not be.
 */

/** Any share of any term: also of a distance, of another line, of what is no sum. */
const anyShare: Wide = (rule, { method }) =>
	rule.terms.flatMap((term, i) => {
		const right = fractionOf(term.share);
		// What the rule takes whole is lowered already.
		const isLowered = term.leaf.kind !== 'measurement' && !isSameShare(right.share, 1);
		const lowered = isLowered ? LOWERED.unlikelyFraction : 1;
		// Twice an allowance is told as that.
		const isTwice = (share: number): boolean => term.leaf.kind === 'allowance' && share > 1;
		return [...FRACTIONS, ...RARE_FRACTIONS]
			.filter(({ share }) => !isSameShare(share, right.share) && !isTwice(share))
			.map((wrong) => ({
				note: `fraction:${wrong.name}-for-${right.name}${i > 0 && 'key' in term.leaf ? `:${term.leaf.key}` : ''}`,
				prior: PRIORS.fraction * lowered * fractionWeight(wrong, right),
				value: put(rule, term, { share: Math.sign(term.share) * wrong.share }),
				slip: () =>
					slip('fraction', { wrong: wrong.name, right: right.name, of: [takenOf(term.leaf, method)] }),
				term: i
			}));
	});

/** A share of all that the rule comes to: what stands before the sum was meant for one term of it. */
const shareOfAll: Wide = ({ terms, whole }) =>
	terms.length < 2
		? []
		: [...FRACTIONS, ...RARE_FRACTIONS]
				.filter(({ name }) => name !== 'whole')
				.map(({ name, share }) => ({
					note: `sum:${name}`,
					prior: PRIORS.shareOfSum * (name === 'half' || name === 'twice' ? 1 : LOWERED.rareFraction),
					value: mm(whole * share),
					slip: () => slip('shareOfSum', { wrong: name })
				}));

/** A term that is no allowance left out, or with the other sign. */
const otherTerms: Wide = (rule, { method }) =>
	rule.terms.length < 2
		? []
		: rule.terms.flatMap((term, i): readonly Part<Mm>[] => {
				const { leaf, share } = term;
				if (leaf.kind === 'allowance') return [];
				const what = takenOf(leaf, method);
				return [
					{
						note: `term:left-out`,
						prior: PRIORS.termLeftOut,
						value: put(rule, term, { share: 0 }),
						slip: () =>
							what.kind === 'length' ? slip('wholePart', { how: 'leftOut' }) : slip('leftOut', { what }),
						term: i
					},
					{
						note: `term:other-sign`,
						prior: PRIORS.termLeftOut * LOWERED.seldom,
						value: put(rule, term, { share: -share }),
						slip: () => slip(share < 0 ? 'added' : 'takenOff', { what }),
						term: i
					}
				];
			});

const lengthAllowances = ({ method }: Stand): readonly string[] =>
	metAllowances(method).map(({ key }) => key);

/** Any other allowance in the place of one of the rule's. */
const otherAllowance: Wide = (rule, stand) =>
	rule.terms.flatMap((term, i) => {
		const { leaf } = term;
		if (leaf.kind !== 'allowance') return [];
		const { method, step, scope } = stand;
		return lengthAllowances(stand).flatMap((key): readonly Part<Mm>[] => {
			const value = put(rule, term, { base: scope.allowance(key) });
			const prior = key === leaf.key ? 0 : kinship(key, leaf.key, method, step);
			if (prior === 0 || !rule.counts(prior, value, i)) return [];
			const said = () =>
				slip('instead', { wrong: takenAllowance(method, key), right: takenAllowance(method, leaf.key) });
			return [{ note: `allowance:${key}-for-${leaf.key}`, prior, value, slip: said, term: i }];
		});
	});

/** An allowance that the rule does not have, added or taken off: all of it, or the share that the rule takes of its first term. */
const allowanceAdded: Wide = ({ terms, whole, counts }, stand) => {
	const named = terms.map(({ leaf }) => ('key' in leaf ? leaf.key : ''));
	const { method, step, scope } = stand;
	const shares = [...new Set([1, Math.abs(terms[0]?.share ?? 1)])];
	return lengthAllowances(stand)
		.filter((key) => !named.includes(key))
		.flatMap((key) => {
			const common = isNear(key, method, step) ? PRIORS.allowanceAdded : PRIORS.anyAllowanceAdded;
			return shares
				.flatMap((share) => [share, -share])
				.flatMap((signed): readonly Part<Mm>[] => {
					const [prior, value] = [
						common * (signed > 0 ? 1 : LOWERED.seldom),
						mm(whole + scope.allowance(key) * signed)
					];
					if (!counts(prior, value, terms.length)) return [];
					const said = () =>
						slip(signed > 0 ? 'addedToo' : 'takenOffToo', { what: takenAllowance(method, key) });
					const note = `allowance:${signed > 0 ? 'extra' : 'extra-off'}:${key}`;
					return [{ note, prior, value, slip: said, term: terms.length }];
				});
		});
};

/** Any other measurement of the body, in the rule's own share. */
const anyMeasurement: Wide = (rule, { body }) =>
	rule.terms.flatMap((term, i) => {
		const { leaf } = term;
		if (leaf.kind !== 'measurement') return [];
		return MEASUREMENT_KEYS.flatMap((key) => {
			const base = body.measurements[key];
			if (base === undefined || key === leaf.key) return [];
			return [
				{
					note: `measurement:${key}-for-${leaf.key}`,
					prior: PRIORS.anyMeasurement,
					value: put(rule, term, { base }),
					slip: () =>
						slip('instead', {
							wrong: { kind: 'measurement', key },
							right: { kind: 'measurement', key: leaf.key }
						}),
					term: i
				}
			];
		});
	});

/** Another measurement, or a usual share of one, and nothing besides: "half of the back length". */
const plainMeasurement: Wide = ({ counts }, { body, method }) =>
	metMeasurements(method).flatMap((key) => {
		const base = body.measurements[key];
		if (base === undefined) return [];
		return FRACTIONS.filter(({ share }) => counts(PRIORS.plainMeasurement, base * share)).map(
			({ name, share }) => ({
				note: `plain:${name}:${key}`,
				prior: PRIORS.plainMeasurement,
				value: mm(base * share),
				slip: () => slip('shareInstead', { wrong: name, of: { kind: 'measurement', key } })
			})
		);
	});

/** The tape read beside its mark, in the result or in a measurement. */
const tapeBeside: Wide = ({ terms, whole }, { method }) => {
	const slips = TAPE_SLIPS.flatMap((each) => [
		{ ...each, change: each.by, way: 'long' as const },
		{ ...each, change: mm(-each.by), way: 'short' as const }
	]);
	return slips.flatMap(({ size, prior, change, way }) => [
		{
			note: `tape:${size}`,
			prior,
			value: mm(whole + change),
			slip: () => slip('tapeBeside', { what: { kind: 'distance' }, size, way })
		},
		...terms.flatMap((term, i) =>
			term.leaf.kind === 'measurement'
				? [
						{
							note: `tape:${size}`,
							prior: prior * LOWERED.inMeasurement,
							value: mm(whole + change * term.share),
							slip: () => slip('tapeBeside', { what: takenOf(term.leaf, method), size, way }),
							term: i
						}
					]
				: []
		)
	]);
};

/** What is beyond whole centimetres, or whole inches, left out. */
const fractionDropped: Wide = ({ whole }, { body }) => {
	const unit: Mm = mm(body.unit === 'in' ? MM_PER.in : MM_PER.cm);
	return [
		{
			note: 'tape:fraction-dropped',
			prior: PRIORS.fractionDropped,
			value: mm(Math.trunc(whole / unit) * unit),
			slip: () => slip('fractionDropped')
		}
	];
};

/** The rule of another step in the place of this one's, or added to it, or taken off: of a step that stands near more often than of one far away. */
const otherRule: Wide = ({ whole, counts }, stand) =>
	otherRulers(stand).flatMap(({ name, length, away }) => {
		const found: Part<Mm>[] = [];
		const [instead, added] = [PRIORS.otherRule / (2 + away), PRIORS.ruleAdded / (2 + away)];
		if (counts(instead, length))
			found.push({
				...{ note: `rule:${name}-for-${stand.step.name}`, prior: instead, value: length },
				slip: () => slip('otherRule', { wrong: name })
			});
		for (const sign of [1, -1]) {
			const value = mm(whole + sign * length);
			if (counts(added, value))
				found.push({
					...{ note: `rule:${sign > 0 ? 'with' : 'without'}-${name}`, prior: added, value },
					slip: () => slip(sign > 0 ? 'withRule' : 'withoutRule', { of: name })
				});
		}
		return found;
	});

/** The drafts that one leans on, and those that these lean on, with what is drafted of them. */
const usedDrafts = (
	{ uses }: Method,
	drafted: Drafted
): readonly { readonly alias: string; readonly method: Method; readonly draft: Drafted }[] =>
	Object.entries(uses).flatMap(([alias, method]) => {
		const draft = drafted.uses?.[alias];
		return draft ? [{ alias, method, draft }, ...usedDrafts(method, draft)] : [];
	});

/** The rule that a draft which this one uses has for its step of the same name, or one that leans on this. */
const panelRule: Wide = (_, { method, step, body, drafted, scope }) => {
	const used = usedDrafts(method, drafted).flatMap(({ alias, method: other, draft }) => {
		const twin = other.steps.find(({ name }) => name === step.name);
		const ruler = twin && stepRuler(twin);
		const terms = ruler && termsIn(ruler.formula, scopeOf(other, body, draft));
		return terms ? [{ called: other.called, value: sumOf(terms), note: alias }] : [];
	});
	const leaning = method.twins.flatMap(({ id, called, rules }) =>
		rules.flatMap(({ step: name, formula }) => {
			const terms = name === step.name ? termsIn(formula, scope) : undefined;
			return terms ? [{ called, value: sumOf(terms), note: id }] : [];
		})
	);
	return [...used, ...leaning].map(({ called, value, note }) => ({
		...{ note: `panel:${note}`, prior: PRIORS.otherPanel, value },
		slip: () => slip('panel', { wrong: called, right: method.name })
	}));
};

/** The draft that a line is of: `back` of `back.side`, nothing for this one's own. */
const draftOf = (line: string): string => line.slice(0, Math.max(0, line.indexOf('.')));

/** Another line's length in the place of the rule's, and a curve measured straight from end to end. */
const otherLine: Wide = (rule, stand) =>
	rule.terms.flatMap((term, i) => {
		const { leaf } = term;
		if (leaf.kind !== 'length') return [];
		const { scope, method } = stand;
		const lines = otherLines(stand).filter(({ line }) => line !== leaf.line);
		const path = scope.line(leaf.line);
		return [
			{
				note: 'length:straight',
				prior: PRIORS.straightForCurved,
				value: put(rule, term, { base: distance(pathStart(path), pathEnd(path)) }),
				slip: () => slip('measuredStraight', { line: lineOf(method, leaf.line) }),
				term: i
			},
			...lines.map(({ line, length, share }) => ({
				note: `length:${line}`,
				prior: PRIORS.otherLine * share * (draftOf(line) === draftOf(leaf.line) ? SAME_DRAFT : 1),
				value: put(rule, term, { base: length }),
				slip: () =>
					slip('instead', {
						wrong: { kind: 'line', line: lineOf(method, line) },
						right: takenOf(leaf, method)
					}),
				term: i
			}))
		];
	});

/** A distance taken from another of the points on the sheet. */
const otherBeginning: Wide = (rule, { scope, earlier }) =>
	rule.terms.flatMap((term, i) => {
		const { leaf } = term;
		if (leaf.kind !== 'distance') return [];
		const end = scope.point(leaf.to);
		return earlier
			.filter(({ name }) => name !== leaf.from && name !== leaf.to)
			.map(({ name, place }) => ({
				note: `distance:from-${name}`,
				prior: PRIORS.distance / earlier.length,
				value: put(rule, term, { base: distance(place, end) }),
				slip: () =>
					slip('instead', {
						wrong: { kind: 'apart', from: name, to: leaf.to },
						right: { kind: 'apart', from: leaf.from, to: leaf.to }
					}),
				term: i
			}));
	});

/** As far as another of the points lies, or half of that; as long as a line that is drawn, or half of it. */
const asFarAs: Wide = ({ counts }, stand) => {
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
		FRACTIONS.flatMap(({ name, share }): readonly Part<Mm>[] => {
			const seldom = name === 'whole' || name === 'half' ? 1 : LOWERED.seldom;
			const [prior, value] = [((PRIORS.asFarAs / all.length) * seldom) / 2, mm(far * share)];
			if (share < 1 / 4 || !counts(prior, value)) return [];
			const said = () => slip('shareInstead', { wrong: name, of: taken() });
			return [{ note: `as-far:${name}`, prior, value, slip: said }];
		})
	);
};

/** A number of the rule forgotten, another of the named values, the other of two lengths, the rule of the other case. */
const otherFormula: Wide = ({ formula }, { scope, method }) =>
	rewritten(formula, method).flatMap(({ how, formula: other }) => {
		const terms = termsIn(other, scope);
		return terms
			? [
					{
						note: `formula:${how}`,
						prior: how === 'numberForgotten' ? PRIORS.numberForgotten : PRIORS.otherFormula,
						value: sumOf(terms),
						slip: () => slip('otherFormula', { how })
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
	otherFormula,
	workedWrongly
];

/** Every rare wrong way of working a length at a step. */
export const wideDistances = (
	formula: Formula,
	stand: Stand,
	counts: Rule['counts']
): readonly Part<Mm>[] => {
	const terms = termsOf(formula, stand.scope);
	const rule = { formula, terms, whole: sumOf(terms), counts };
	return KINDS.flatMap((kind) => kind(rule, stand));
};
