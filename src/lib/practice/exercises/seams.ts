import type { Draft } from '#drafting/evaluate.ts';
import { stepNamed, type Method } from '#drafting/method.ts';
import { stepAnswer, stepPasses } from '#drafting/steps/kinds.ts';
import type { EdgeRef, Garment, SeamRule } from '#garment/garment.ts';
import type { LineName } from '#shared/speech/en/practice.ts';
import { mm } from '#shared/units.ts';
import type { Practised, Seam, SeamPair } from './exercise.ts';

/** The lines of one side of a seam as a method knows them, its own or by the short name of a draft that it uses; undefined where they are another's. */
const linesFor = (
	method: Method,
	{ pieces, uses }: Garment,
	side: readonly EdgeRef[],
	own: boolean
): readonly string[] | undefined => {
	const rules = side.map(({ piece }) => pieces.find(({ key }) => key === piece));
	const alias = Object.keys(method.uses).find(
		(each) => method.uses[each]?.id === uses[rules[0]?.draft ?? '']?.id
	);
	const of = own ? method : method.uses[alias ?? ''];
	if (!of || rules.some((rule) => uses[rule?.draft ?? '']?.id !== of.id)) return undefined;
	const lines = side.flatMap(({ edge }, i) => rules[i]?.edges.find(({ name }) => name === edge)?.lines ?? []);
	return own ? lines : lines.map((line) => `${alias ?? ''}.${line}`);
};

/**
 * A seam as a pair, where it joins own lines to borrowed ones and the last own line is straight, so that its end can be
 * moved along it without bending anything.
 */
const pairOf = (
	method: Method,
	garment: Garment,
	{ name, label, first, second }: SeamRule
): SeamPair | undefined => {
	const own = linesFor(method, garment, second, true);
	const borrowed = linesFor(method, garment, first, false);
	const last = method.steps.find((step) => step.name === own?.at(-1));
	const isStraight = last !== undefined && stepAnswer(last).put !== 'handles' && stepPasses(last).length > 0;
	return own && borrowed && isStraight ? { name, label, own, borrowed } : undefined;
};

/** A method with the seams of some garments that can be trued in it. */
export const practised = (method: Method, garments: readonly Garment[]): Practised => ({
	...method,
	seams: garments.flatMap((garment) => garment.seams.flatMap((seam) => pairOf(method, garment, seam) ?? []))
});

/** The points of the last own line that this body's draft has: the last of them can be moved along it. */
export const lastOf = (method: Method, draft: Draft, { own }: SeamPair): readonly string[] =>
	stepPasses(stepNamed(method, own.findLast((line) => line in draft.lines) ?? ''));

/** What a line is called, and the draft that it is of where that is another one. */
const lineName = (method: Method, line: string): LineName => {
	const [alias = '', own] = line.split('.');
	const used = own === undefined ? undefined : method.uses[alias];
	const { label: noun } = stepNamed(used ?? method, own ?? line);
	return used ? { noun, of: used.called } : { noun };
};

/** A seam of the draft as it is drawn, in those of its lines that this body has: with a dart a side seam has other pieces than without. */
export const drawnSeam = (method: Method, draft: Draft, lines: readonly string[]): Seam => {
	const parts = lines.flatMap((line) => {
		const [alias = '', own] = line.split('.');
		const drawn = own === undefined ? draft.lines[line] : draft.uses[alias]?.lines[own];
		return drawn ? [{ ...lineName(method, line), path: drawn.path, length: drawn.length }] : [];
	});
	return { parts, length: mm(parts.reduce((sum, { length }) => sum + length, 0)) };
};

/** What a seam's lines are called. */
export const linesOf = ({ parts }: Seam): readonly LineName[] =>
	parts.map(({ noun, of }) => (of ? { noun, of } : { noun }));
