import { marksCsv } from '#exports/table/marks-csv.ts';
import { EXERCISES } from '#shared/hand-in-limits.ts';
import { USE_CASES } from '#server/use-cases/all.ts';
import { asked, speechAt } from '../../../../classes.server.ts';
import { namedIn } from '../../[[class]]/teaching.server.ts';
import { courseAt } from '../../../../course.server.ts';
import type { RequestHandler } from './$types';

/** The marks of an assignment as a table; `?decimal=comma` where spreadsheets expect that. */
export const GET: RequestHandler = async (event) => {
	const { url, params } = event;
	const { name, lessons, learners, exercises } = await asked(USE_CASES.readAssignment, event, params);
	const speech = await speechAt(url);
	const several = new Set(lessons.map(({ method }) => method)).size > 1;
	const steps = lessons.flatMap(({ method: id, steps: names }) => {
		const method = courseAt(url).method(id);
		return names.flatMap((step) => {
			const title = method && speech.words.desk.row(namedIn(method, step));
			return method && title !== undefined
				? [{ method: id, step, heading: several ? `${method.name}: ${title}` : title }]
				: [];
		});
	});
	const numbers = Array.from({ length: exercises }, (_, i) => i + 1);
	const columns = numbers.map((number) => ({
		...{ method: EXERCISES, step: String(number) },
		heading: speech.words.practising.exercise({ number })
	}));
	const decimal = url.searchParams.get('decimal') === 'comma' ? 'comma' : 'point';
	return new Response(marksCsv(learners, [...steps, ...columns], speech, decimal), {
		headers: {
			'content-type': 'text/csv; charset=utf-8',
			'content-disposition': `attachment; filename="square-across-marks.csv"; filename*=UTF-8''${encodeURIComponent(name)}.csv`,
			'cache-control': 'private, no-store'
		}
	});
};
