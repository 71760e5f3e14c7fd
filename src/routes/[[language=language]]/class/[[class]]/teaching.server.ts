import type { Slip } from '#checker/missteps/misstep.ts';
import { slipsIn } from '#checker/missteps/in-language.ts';
import { stepNamed, type Method } from '#drafting/method.ts';
import { stepMakes } from '#drafting/steps/kinds.ts';
import type { NamedStep } from '#shared/speech/en/desk.ts';
import { COURSES, courseAt } from '../../../course.server.ts';

/** What a teacher is shown of a class, in the language of the page. */

/** A step as it is named there. */
export const namedIn = (method: Method, name: string): NamedStep => {
	const step = stepNamed(method, name);
	return { point: stepMakes(step) === 'point' ? name : undefined, label: step.label };
};

/** What was done wrong, with its steps, seams and slips in the language of the page. */
export const missedIn = <
	M extends { readonly method: string; readonly step: string; readonly slips: readonly Slip[] }
>(
	url: URL,
	missteps: readonly M[]
) =>
	missteps.flatMap(({ method, step, slips, ...more }) => {
		const [judged, shown] = [COURSES.en.method(method), courseAt(url).method(method)];
		if (!judged || !shown) return [];
		const isStep = shown.steps.some(({ name }) => name === step);
		const seams = isStep ? [] : courseAt(url).garments.flatMap((garment) => garment.seams);
		return [
			{
				...more,
				at: { method, step },
				/** Undefined for two seams, which have a name alone. */
				step: isStep ? namedIn(shown, step) : undefined,
				seam: seams.find(({ name }) => name === step)?.label ?? step,
				slips: slipsIn(slips, judged, shown)
			}
		];
	});

/** Which draft of a learner's work is looked at, in the language of the page: the one that is wanted, else the one worked on last. */
export const draftIn = (
	url: URL,
	{
		asked,
		events
	}: {
		readonly asked: readonly { readonly method: string; readonly steps: readonly string[] }[];
		readonly events: readonly { readonly done: { readonly method: string } }[];
	}
) => {
	const ids = [...new Set(asked.map(({ method }) => method))];
	const wanted = [url.searchParams.get('method'), events.at(-1)?.done.method];
	const chosen = wanted.find((id) => id !== null && id !== undefined && ids.includes(id)) ?? ids[0];
	const all = ids.flatMap((id) => courseAt(url).method(id) ?? []);
	const method = all.find(({ id }) => id === chosen);
	const hrefOf = (id: string): string => {
		const query = new URLSearchParams(url.searchParams);
		query.set('method', id);
		query.delete('step');
		return `${url.pathname}?${query.toString()}`;
	};
	return (
		method && {
			method,
			steps: asked.flatMap((each) => (each.method === method.id ? each.steps : [])),
			drafts: all.map(({ id, name }) => ({ id, name, href: hrefOf(id) }))
		}
	);
};

/** A mark as it was typed, with a comma or a point. */
export const readMark = ({ mark = '', ...form }: Readonly<Record<string, string>>): unknown => ({
	...form,
	mark: mark.trim() === '' ? undefined : Number(mark.replace(',', '.'))
});

/** The steps that were asked for as they are named in the language of the page: by method, then by step. */
export const namesIn = (
	url: URL,
	lessons: readonly { readonly method: string; readonly steps: readonly string[] }[]
): Readonly<Record<string, Readonly<Record<string, NamedStep>>>> => {
	const names: Record<string, Record<string, NamedStep>> = {};
	for (const { method: id, steps } of lessons) {
		const method = courseAt(url).method(id);
		for (const step of method ? steps : []) if (method) (names[id] ??= {})[step] = namedIn(method, step);
	}
	return names;
};
