import { mm, type Mm, type Unit } from '#shared/units.ts';
import type { Formula } from '#drafting/formula/formula.ts';
import { FRACTIONS, fractionOf, fractionWeight, isSameShare } from './fractions.ts';
import { slip, type Misstep, type Slip } from './misstep.ts';
import { metAllowances, metMeasurements } from './met.ts';
import { LOWERED, PRIORS } from './priors.ts';
import { takenOf } from './taken.ts';
import type { Term } from './terms.ts';
import { isTheSame, type TypedTerm } from './typed-sum.ts';
import { wrongDistances, type Working } from './wrong-distances.ts';

/** One thing that is wrong with what was typed. */
export type Part = Pick<Misstep, 'note' | 'prior'> & { readonly slip: Slip };

/** A term as it may have been meant, and what is wrong with it. */
interface Version {
	readonly terms: readonly Term[];
	readonly parts: readonly Part[];
}

/** A rule's term, its place among the rule's terms, and all that it may have become. */
interface Meant {
	readonly term: Term;
	readonly versions: readonly Version[];
}

const keyOf = ({ leaf }: Term): string => {
	if ('key' in leaf) return leaf.key;
	if (leaf.kind === 'distance') return `${leaf.from}-${leaf.to}`;
	return leaf.kind === 'length' ? leaf.line : leaf.kind;
};

/** A length that the learner has at hand: whatever was measured of the body, and the numbers that were chosen. */
interface Known {
	readonly leaf: Extract<Formula, { kind: 'measurement' | 'allowance' }>;
	readonly base: Mm;
	/** The number that an allowance usually has, where this body has one of its own. */
	readonly usual?: true;
}

const knownLengths = ({ body, method, scope }: Working): readonly Known[] => [
	...metMeasurements(method).flatMap((key) => {
		const base = body.measurements[key];
		return base === undefined ? [] : [{ leaf: { kind: 'measurement', key } as const, base }];
	}),
	...metAllowances(method).flatMap((allowance): readonly Known[] => {
		const [leaf, own] = [{ kind: 'allowance', key: allowance.key } as const, scope.allowance(allowance.key)];
		const usual: Known = { leaf, base: mm(allowance.default), usual: true };
		return [{ leaf, base: own }, ...(own === allowance.default ? [] : [usual])];
	})
];

/** Another length in a term's place, by the note that the same mistake has where a generator made it. */
const insteadOf = (term: Term, { leaf, usual }: Known, { method }: Working): Part => {
	const right = takenOf(term.leaf, method);
	if (usual)
		return {
			note: `allowance:usual:${leaf.key}`,
			prior: PRIORS.anyLength * LOWERED.seldom,
			slip: slip('usual', { what: right })
		};
	return {
		note: `${leaf.kind === term.leaf.kind ? leaf.kind : 'instead'}:${leaf.key}-for-${keyOf(term)}`,
		prior: PRIORS.anyLength,
		slip: slip('instead', { wrong: takenOf(leaf, method), right })
	};
};

const shareInstead = (term: Term, share: number, { method }: Working): Part => {
	const [wrong, right] = [fractionOf(share), fractionOf(term.share)];
	return {
		note: `fraction:${wrong.name}-for-${right.name}`,
		prior: PRIORS.fraction * fractionWeight(wrong, right),
		slip: slip('fraction', { wrong: wrong.name, right: right.name, of: [takenOf(term.leaf, method)] })
	};
};

/** The wrong sign: taken off where the rule adds it, or added where the rule takes it off; of the only term, the opposite way. */
const signPart = (term: Term, single: boolean, { method }: Working): Part =>
	single
		? { note: 'direction:opposite', prior: PRIORS.opposite, slip: slip('opposite') }
		: {
				note: `${term.leaf.kind === 'allowance' ? 'allowance:subtracted' : 'sign'}:${keyOf(term)}`,
				prior: PRIORS.allowanceSubtracted,
				slip: slip(term.share < 0 ? 'added' : 'takenOff', { what: takenOf(term.leaf, method) })
			};

const alone = ({ leaf, share }: Term): Formula =>
	share === 1 ? leaf : { kind: 'operation', sign: '*', left: leaf, right: { kind: 'number', value: share } };

/** What a generator says of a result, said of the one length that it is taken from; of a share of it nobody could tell. */
const ofTerm = (said: Slip, term: Term, { method }: Working): Slip | undefined => {
	const [{ what }] = said.values as readonly [{ readonly what?: { readonly kind: string } }];
	if (what?.kind !== 'distance') return said;
	return term.share === 1 ? { ...said, values: [{ what: takenOf(term.leaf, method) }] } : undefined;
};

/** All that the rule's generators make of one term by itself. What they make of the whole sum is compared elsewhere. */
const generated = (term: Term, i: number, working: Working): readonly Version[] => {
	const suffix = i > 0 ? `:${keyOf(term)}` : '';
	return wrongDistances(alone(term), working).flatMap(({ terms, note, prior, slip }) => {
		const said = ofTerm(slip(), term, working);
		if (!said || terms.length === 0) return [];
		return [
			{ terms, parts: [{ note: note.startsWith('fraction:') ? note + suffix : note, prior, slip: said }] }
		];
	});
};

const versionsOf = (
	term: Term,
	i: number,
	single: boolean,
	known: readonly Known[],
	working: Working
): Meant => {
	const others = known.filter(({ leaf, usual = false }) => (leaf.key === keyOf(term)) === usual);
	const shares = FRACTIONS.map(({ share }) => Math.sign(term.share) * share).filter(
		(share) => !isSameShare(share, term.share)
	);
	return {
		term,
		versions: [
			{ terms: [term], parts: [] },
			...generated(term, i, working),
			{ terms: [{ ...term, share: -term.share }], parts: [signPart(term, single, working)] },
			...others.flatMap((each): Version[] => {
				const put = { ...term, ...each };
				const instead = insteadOf(term, each, working);
				return [
					{ terms: [put], parts: [instead] },
					...shares.map((share) => ({
						terms: [{ ...put, share }],
						parts: [shareInstead(term, share, working), instead]
					}))
				];
			})
		]
	};
};

/** What the rule does not have, or has once: another length added, or taken off. */
const addedParts = (
	typed: TypedTerm,
	rule: readonly Term[],
	known: readonly Known[],
	w: Working,
	unit: Unit
) =>
	known.flatMap(({ leaf, base, usual }): readonly Part[] => {
		if (usual) return [];
		const share = [1, -1].find((each) => isTheSame(typed, [{ leaf, base, share: each }], unit));
		if (share === undefined) return [];
		const what = takenOf(leaf, w.method);
		const twice = rule.find((term) => keyOf(term) === leaf.key);
		if (twice)
			return [
				{
					note: `allowance:twice:${leaf.key}`,
					prior: PRIORS.allowanceTwice,
					slip: slip('twice', { what, how: share < 0 ? 'takenOff' : 'added' })
				}
			];
		return [
			{
				note:
					leaf.kind === 'allowance'
						? `allowance:extra${share < 0 ? '-off' : ''}:${leaf.key}`
						: `added:${leaf.key}`,
				prior: PRIORS.added,
				slip: slip(share < 0 ? 'takenOffToo' : 'addedToo', { what })
			}
		];
	});

const leftOut = ({ term }: Meant, { method }: Working): Part => ({
	note: term.leaf.kind === 'allowance' ? `allowance:left-out:${keyOf(term)}` : 'term:left-out',
	prior: term.leaf.kind === 'allowance' ? PRIORS.allowanceLeftOut : PRIORS.anyLength,
	slip: slip('leftOut', { what: takenOf(term.leaf, method) })
});

/** Three slips in one sum are as many as anybody can be told of. */
const MOST_PARTS = 3;

/**
 * All that may be wrong with a typed sum: its terms, each held against a term of the rule as it is or as it may have been
 * meant, or against a length that the rule has not; the rule's terms that are then left are left out.
 */
export const readings = (
	typed: readonly TypedTerm[],
	rule: readonly Term[],
	working: Working,
	unit: Unit
): readonly (readonly Part[])[] => {
	const known = knownLengths(working);
	const meant = rule.map((term, i) => versionsOf(term, i, rule.length === 1, known, working));
	const added = typed.map((term) => addedParts(term, rule, known, working, unit));
	const fits = typed.map((term) =>
		meant.map(({ versions }) => versions.filter(({ terms }) => isTheSame(term, terms, unit)))
	);
	const from = (i: number, left: readonly number[]): readonly (readonly Part[])[] => {
		if (i === typed.length)
			return [left.flatMap((each) => (meant[each] ? [leftOut(meant[each], working)] : []))];
		const matched = left.flatMap((each) => {
			const versions = fits[i]?.[each] ?? [];
			const rest =
				versions.length > 0
					? from(
							i + 1,
							left.filter((other) => other !== each)
						)
					: [];
			return versions.flatMap(({ parts }) => rest.map((more) => [...parts, ...more]));
		});
		const extra = (added[i] ?? []).flatMap((part) => from(i + 1, left).map((more) => [part, ...more]));
		return [...matched, ...extra].filter((parts) => parts.length <= MOST_PARTS);
	};
	return from(
		0,
		rule.map((_, i) => i)
	).filter((parts) => parts.length > 0);
};
