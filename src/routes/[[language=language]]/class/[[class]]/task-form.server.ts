import type { Settable } from './assigned.server.ts';

/** What the forms of assignments send, made into what use cases take: those say what is wrong with it. */

type Form = Readonly<Record<string, string>>;

/** A number that may be left out. */
const number = (typed: string | undefined): number | null =>
	typed === undefined || typed.trim() === '' ? null : Number(typed.replace(',', '.'));
const hundredths = (typed: string | undefined): number => (number(typed) ?? 0) / 100;

/** The steps of one lesson from one to another, as they were named; a name of no step is left for the use case to refuse. */
const run = (form: Form, lessons: readonly Settable[]): readonly string[] | null => {
	const [from = '', to = ''] = [form['from']?.trim(), form['to']?.trim()];
	if (from === '' && to === '') return null;
	const [only, ...others] = lessons;
	const steps = only?.steps ?? [];
	const [first, last] = [steps.indexOf(from), to === '' ? steps.length - 1 : steps.indexOf(to)];
	return others.length > 0 || first < 0 || last < first ? [from, to] : steps.slice(first, last + 1);
};

/** The names of what is ticked of one kind: `draft.back-block` of `draft`. */
const ticked = (form: Form, kind: string): readonly string[] =>
	Object.keys(form).flatMap((name) => (name.startsWith(`${kind}.`) ? [name.slice(kind.length + 1)] : []));

/** What a teacher sets, under its name: some lessons, all in which a garment is drafted, or exercises. */
export const readTask = (
	form: Form,
	lessons: readonly Settable[]
): { readonly name: unknown; readonly task: unknown } => {
	const { garment = '' } = form;
	const isPractice = form['what'] === 'practice';
	const chosen = lessons.filter(({ id, garments }) =>
		garment === '' ? `lesson.${id}` in form : garments.includes(garment)
	);
	const { body: kind, demo: id, times } = form;
	return {
		name: form['name'],
		task: {
			lessons: isPractice ? [] : chosen.map((lesson) => lesson.id),
			steps: isPractice ? null : run(form, chosen),
			practice: isPractice
				? { methods: ticked(form, 'draft'), kinds: ticked(form, 'kind'), count: number(form['count']) }
				: null,
			body: isPractice ? { kind: 'each' } : kind === 'one' ? { kind, id } : { kind },
			wholeAttempts: number(times),
			policy: {
				followThrough: form['followThrough'],
				attempts: number(form['attempts']),
				wrongCost: hundredths(form['wrongCost']),
				hintCost: hundredths(form['hintCost']),
				level: form['level']
			},
			mode: form['mode'],
			hints: 'hints' in form,
			opens: number(form['opens']),
			closes: number(form['closes'])
		}
	};
};

/** The own body that a learner agrees to hand in. */
export const readConsent = ({ own = '' }: Form, assignment: string | undefined): unknown => {
	try {
		return { assignment, own: JSON.parse(own) as unknown };
	} catch {
		return { assignment, own };
	}
};
