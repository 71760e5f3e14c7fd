import { z } from 'zod';

/** What a test runner says it did. */
export interface Counts {
	readonly passed: number;
	/** Failing tests, and files that could not even be read as tests. */
	readonly failed: number;
	/** Tests that were left out, of whatever kind. */
	readonly skipped: number;
}

const count = z.number().int().nonnegative();

const vitestReport = z.object({
	numPassedTests: count,
	numFailedTests: count,
	numPendingTests: count,
	numTodoTests: count,
	testResults: z.array(z.object({ status: z.string(), assertionResults: z.array(z.unknown()) }))
});

/** Reads vitest's JSON report. @throws ZodError when it is not one */
export const vitestCounts = (report: unknown): Counts => {
	const read = vitestReport.parse(report);
	// A file that fails while it loads holds no tests in the report, and must still count.
	const unread = read.testResults.filter(
		({ status, assertionResults }) => status === 'failed' && assertionResults.length === 0
	);
	return {
		passed: read.numPassedTests,
		failed: read.numFailedTests + unread.length,
		skipped: read.numPendingTests + read.numTodoTests
	};
};

const playwrightReport = z.object({
	stats: z.object({ expected: count, unexpected: count, flaky: count, skipped: count }),
	errors: z.array(z.unknown())
});

/** Reads Playwright's JSON report. @throws ZodError when it is not one */
export const playwrightCounts = (report: unknown): Counts => {
	const { stats, errors } = playwrightReport.parse(report);
	return {
		passed: stats.expected,
		// A test that passed only at a second try did fail; an error outside any test is a failure too.
		failed: stats.unexpected + stats.flaky + errors.length,
		skipped: stats.skipped
	};
};

/** Why these counts cannot stand for a good run, or null when they can. */
export const complaintAbout = ({ passed, failed, skipped }: Counts): string | null => {
	if (failed > 0) return `${String(failed)} failed`;
	if (skipped > 0) return `${String(skipped)} skipped: a test that does not run proves nothing`;
	if (passed === 0) return 'no test was executed';
	return null;
};
