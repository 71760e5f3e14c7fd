import type { Speech } from '#shared/speech/speech.ts';
import type { Verdict } from '#shared/verdict.ts';
import { csv, type Row } from './csv.ts';

/** One step that was set, under the heading that it has in the table. */
interface SetStep {
	readonly method: string;
	readonly step: string;
	readonly heading: string;
}

/** What one learner handed in, as far as it counts. */
interface MarkedLearner {
	readonly name: string;
	readonly received: number;
	readonly seen:
		| {
				readonly late: number;
				readonly total: { readonly mark: number; readonly outOf: number };
				readonly steps: readonly {
					readonly method: string;
					readonly step: string;
					readonly verdict: Verdict;
					readonly mark: number;
					readonly tries: number;
				}[];
				readonly overrides: readonly {
					readonly method: string;
					readonly step: string;
					readonly mark: number;
					readonly back: number | null;
				}[];
		  }
		| undefined;
}

/**
 * The marks of a class as a table for a spreadsheet: a row for each learner, by name, a column for each step. What is to be
 * measured again has words in place of a mark, which sums pass over.
 *
 * @param decimal how numbers are written: with a comma, cells are parted by semicolons, as spreadsheets expect it there
 */
export const marksCsv = (
	learners: readonly MarkedLearner[],
	steps: readonly SetStep[],
	{ words: { teaching, handing, measured } }: Speech,
	decimal: 'point' | 'comma'
): string => {
	const number = (value: number): string =>
		decimal === 'comma' ? String(value).replace('.', ',') : String(value);
	const row = ({ name, received, seen }: MarkedLearner): Row => {
		const markOf = ({ method, step }: SetStep): string => {
			const isIt = (each: { readonly method: string; readonly step: string }): boolean =>
				each.method === method && each.step === step;
			const given = seen?.overrides.findLast((each) => each.back === null && isIt(each));
			const own = seen?.steps.find(isIt);
			if (!given && own?.verdict.answer === 'cannot-tell') return measured.toMeasure;
			const found = given ?? own;
			return found ? number(found.mark) : '';
		};
		const tries = seen?.steps.reduce((sum, each) => sum + each.tries, 0);
		return [
			name,
			...[seen?.total.mark, seen?.total.outOf].map((value) => (value === undefined ? '' : number(value))),
			tries === undefined ? '' : number(tries),
			...[number(received), number(seen?.late ?? 0)],
			...steps.map(markOf)
		];
	};
	const { learner, markHeading, receipts } = handing;
	const headings = [
		learner,
		markHeading,
		teaching.outOf,
		teaching.wrongTries,
		receipts,
		teaching.lateHeading
	];
	return csv([[...headings, ...steps.map(({ heading }) => heading)], ...learners.map(row)], {
		...{ bom: true, quoted_string: true },
		delimiter: decimal === 'comma' ? ';' : ','
	});
};
