import { fileURLToPath } from 'node:url';
import { handBack, type Spot } from '../reference/back-block.ts';
import { HERON } from '../reference/front-block-bodies.ts';
import { handFront } from '../reference/front-block.ts';
import type { CliRun } from './run-cli.ts';
import { commandHere } from './run-here.ts';

/** A demo body's file, by its id. */
export const bodyFile = (id: string): string =>
	fileURLToPath(new URL(`../../shared/bodies/${id}.json`, import.meta.url));

export type Places = Readonly<Record<string, unknown>>;

/** To a tenth of a millimetre, as a ruler is read. */
const inMm = (points: Readonly<Record<string, Spot>>): Readonly<Record<string, Spot>> =>
	Object.fromEntries(
		Object.entries(points)
			.filter(([name]) => name !== 'O')
			.map(([name, [x, y]]) => [name, [Math.round(x * 100) / 10, Math.round(y * 100) / 10]])
	);

/** Heron's points as they are worked by hand, in millimetres. */
export const BACK = inMm(handBack(HERON).points);
export const FRONT = inMm(handFront(HERON).points);

/** One step of a printed report. */
export interface PrintedStep {
	readonly step: string;
	readonly verdict: string;
	readonly offBy: number | null;
	readonly followThrough: boolean;
	readonly note: string;
	readonly alternatives: readonly string[];
	readonly mark: number;
}
/** A printed report. */
export interface PrintedReport {
	readonly learner?: string | number;
	readonly steps: readonly PrintedStep[];
	readonly total: {
		readonly mark: number;
		readonly outOf: number;
		readonly mistakes: number;
		readonly consequences: number;
	};
}
/** A line of a batch: a report, or why there is none. */
export type PrintedLine = PrintedReport | { readonly learner: string | number; readonly refused: string };

/** The step of this name in a report. */
export const stepOf = ({ steps }: PrintedReport, name: string): PrintedStep => {
	const step = steps.find((each) => each.step === name);
	if (!step) throw new Error(`there is no step ${name}`);
	return step;
};

/** Runs `square-across check` inside this process. */
export const checkHere = (...words: readonly string[]): Promise<CliRun> => commandHere('check', ...words);
