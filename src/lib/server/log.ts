import type { Log } from './settings.ts';

/**
 * What the server writes of itself: one line of JSON to standard error for each thing that happened. No name, no measurement and no
 * address of anybody stands in it: a request is told by its route, a fault by its kind and where it arose, not by what it says.
 */
export type LogLine =
	| {
			readonly event: 'request';
			readonly method: string;
			/** The route, a file of the site, or none. */
			readonly route: string;
			readonly status: number;
			readonly milliseconds: number;
	  }
	| {
			readonly event: 'fault';
			/** Shown to whoever met the fault too, so that they can tell it. */
			readonly number: string;
			readonly route: string;
			readonly kind: string;
			readonly at: readonly string[];
	  }
	| { readonly event: 'start' | 'stopping' | 'stopped' };

const isFault = (line: LogLine): boolean =>
	line.event === 'fault' || (line.event === 'request' && line.status >= 500);

/** Writes a line, where so much is to be written. */
export const writeLog = (log: Log, line: LogLine): void => {
	if (log === 'none' || (log === 'faults' && !isFault(line))) return;
	process.stderr.write(`${JSON.stringify({ time: new Date().toISOString(), ...line })}\n`);
};

/** The most lines of a stack that are written. */
const DEEPEST = 8;

/** What is written of something that was thrown: its kind, its code and where, since what it says may hold what somebody typed. */
export const faultOf = (problem: unknown): { readonly kind: string; readonly at: readonly string[] } => {
	if (!(problem instanceof Error)) return { kind: typeof problem, at: [] };
	const { code } = problem as { readonly code?: unknown };
	return {
		kind: [problem.name, ...(typeof code === 'string' ? [code] : [])].join(' '),
		at: (problem.stack ?? '')
			.split('\n')
			.map((each) => each.trim())
			.filter((each) => /^at .*:\d+:\d+\)?$/.test(each))
			.slice(0, DEEPEST)
	};
};
