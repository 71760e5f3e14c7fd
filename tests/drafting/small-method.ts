import { english } from '../support/speech.ts';
import { readBody, type Body } from '#shared/body.ts';
import { evaluate, reasonWords, warningWords, type Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { readMethod } from '#drafting/read-method.ts';

/** A step as a method file would hold it. */
export type WrittenStep = Readonly<Record<string, unknown>>;

/** A method of a few steps after the corner O, with what else the file may hold. */
export const smallMethod = (steps: readonly WrittenStep[], more: WrittenStep = {}): Method =>
	readMethod(
		{
			id: 'small',
			name: 'A small method',
			steps: [{ kind: 'corner', name: 'O', label: 'the corner' }, ...steps],
			...more
		},
		'small.yaml'
	);

/** A point straight from another: most small methods need a few. */
export const mark = (name: string, from: string, go: string, by: string): WrittenStep => ({
	kind: 'mark',
	name,
	label: `point ${name}`,
	from,
	go,
	by
});

/** Numbers that are all different and easy to halve: in centimetres. */
export const FIGURE = {
	bust: 96,
	waist: 72,
	hip: 104,
	neck: 36,
	shoulderWidth: 38,
	backLength: 42,
	waistToHip: 20,
	frontLength: 45,
	bustHeight: 27,
	bustSpan: 18
};
/** An ease of 4 and shoulders that drop by 3 and 4: quarters of them are whole numbers of millimetres. */
const CHOSEN = { bustEase: 4, hipEase: 4, shoulderDropBack: 3, shoulderDropFront: 4 };
export const BODY: Body = readBody({ name: 'Sandpiper', ...FIGURE, allowances: CHOSEN });

/** The draft of a body that can be drafted. */
export const draftOf = (method: Method, body: Body = BODY): Draft => {
	const evaluation = evaluate(method, body);
	if (evaluation.kind === 'drafted') return evaluation.draft;
	throw new Error(evaluation.refusals.map((each) => reasonWords(each, english)).join('; '));
};

/** What a drafter is told of a draft, in English and centimetres. */
export const warned = (draft: Draft): readonly string[] =>
	draft.warnings.map((each) => warningWords(each, english));
