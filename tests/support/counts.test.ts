import { describe, expect, it } from 'vitest';
import { complaintAbout, playwrightCounts, vitestCounts } from './counts.ts';

const vitest = {
	numPassedTests: 7,
	numFailedTests: 2,
	numPendingTests: 3,
	numTodoTests: 4,
	testResults: [
		{ status: 'passed', assertionResults: [{}] },
		{ status: 'failed', assertionResults: [{}] },
		{ status: 'failed', assertionResults: [] }
	]
};

describe('counts', () => {
	it('takes each number from the place where vitest puts it', () => {
		expect(vitestCounts(vitest)).toEqual({ passed: 7, failed: 3, skipped: 7 });
	});

	it('takes each number from the place where Playwright puts it', () => {
		const report = { stats: { expected: 5, unexpected: 2, flaky: 10, skipped: 3 }, errors: [{}] };
		expect(playwrightCounts(report)).toEqual({ passed: 5, failed: 13, skipped: 3 });
	});

	it('refuses a report that is not one, rather than count nothing', () => {
		expect(() => vitestCounts({})).toThrow();
		expect(() => playwrightCounts({ stats: {} })).toThrow();
	});

	it('is content only with tests that all ran and passed', () => {
		expect(complaintAbout({ passed: 4, failed: 0, skipped: 0 })).toBeNull();
		expect(complaintAbout({ passed: 4, failed: 1, skipped: 0 })).toContain('1 failed');
		expect(complaintAbout({ passed: 4, failed: 0, skipped: 2 })).toContain('2 skipped');
		expect(complaintAbout({ passed: 0, failed: 0, skipped: 0 })).toContain('no test');
	});
});
