import { afterEach, expect, it, vi } from 'vitest';
import { faultOf, writeLog, type LogLine } from '#server/log.ts';

const request = (status: number): LogLine => ({
	event: 'request',
	method: 'GET',
	route: '/',
	status,
	milliseconds: 1
});

afterEach(() => vi.restoreAllMocks());

it.each([
	['none', []],
	['faults', [500]],
	['requests', [200, 404, 500]]
] as const)('writes of requests, where it writes %s, those with a status of %s', (log, written) => {
	const lines: number[] = [];
	vi.spyOn(process.stderr, 'write').mockImplementation((text) => {
		lines.push((JSON.parse(String(text)) as { readonly status: number }).status);
		return true;
	});
	for (const status of [200, 404, 500]) writeLog(log, request(status));
	expect(lines).toEqual(written);
});

it('tells of a fault its kind and its place, and nothing of what it says', () => {
	const problem = Object.assign(new TypeError('duplicate key: (Ada Heron, 96.5)\nDetail: Ada'), {
		code: '23505',
		detail: 'Ada'
	});
	const told = faultOf(problem);
	expect(told.kind).toBe('TypeError 23505');
	expect(told.at.length).toBeGreaterThan(0);
	expect(JSON.stringify(told)).not.toMatch(/Ada|96/);
	expect(faultOf('Ada')).toEqual({ kind: 'string', at: [] });
});
