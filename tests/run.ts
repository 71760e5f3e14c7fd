/**
 * `npm test`: every check, two side by side, stopping at the first that fails. `npm test -- unit e2e` runs the
 * stages named; `npm test -- changed` runs what the changes since the last commit touch, and
 * `npm test -- changed main` those since main. The last line is "N passed, N failed", counted from the test runners' own reports.
 */
import { rmSync } from 'node:fs';
import { mkdtemp, readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { changedFiles } from './support/changed.ts';
import { CHOSEN, ensureChromium } from './support/chromium.ts';
import { endAll, runScript, type Outcome } from './support/command.ts';
import { complaintAbout, playwrightCounts, vitestCounts, type Counts } from './support/counts.ts';
import { ensurePdfReaders } from './support/pdf-readers.ts';
import { ensurePostgres } from './support/postgres.ts';

interface Stage {
	/** The stage's name, which is also the script of package.json that it runs. */
	readonly name: string;
	readonly says: string;
	/** Arguments for the script. */
	readonly words?: readonly string[];
	/** Stages that follow each other with the same group run side by side. */
	readonly group: string;
	/** Makes the machine ready, and gives variables for the script. */
	readonly prepare?: () => Record<string, string>;
	/** For test runners: how to ask for a JSON report, and how to read it. */
	readonly report?: {
		readonly words: readonly string[];
		readonly variable?: string;
		readonly read: (report: unknown) => Counts;
	};
}

interface Result extends Outcome {
	readonly counts: Counts | null;
}

const NONE_IS_FINE = '--passWithNoTests';

/** As many as the smallest machine has cores. */
const SIDE_BY_SIDE = 2;

// The longest of its group first: the others go by, one after the other, beside it.
const STAGES: readonly Stage[] = [
	{ name: 'sync', says: "SvelteKit's own types", group: 'sync' },
	// Not beside Vitest: when that starts, SvelteKit takes types away for a moment and writes them anew. It keeps two cores busy alone.
	{ name: 'types', says: 'types of all code and components', group: 'types' },
	{
		name: 'unit',
		says: 'unit, lessons, reference checks, architecture',
		group: 'without a browser',
		prepare: () => {
			ensurePdfReaders();
			ensurePostgres();
			return {};
		},
		report: { words: ['--reporter=default', '--reporter=json'], read: vitestCounts }
	},
	{ name: 'lint', says: 'ESLint', group: 'without a browser' },
	{ name: 'tidy', says: 'Prettier', group: 'without a browser', words: ['.'] },
	{ name: 'layers', says: 'who may import whom', group: 'without a browser' },
	{ name: 'unused', says: 'files, exports and packages that nothing uses', group: 'without a browser' },
	{ name: 'build', says: 'the app as it is served', group: 'without a browser' },
	{
		name: 'e2e',
		says: 'the built app in a real browser',
		group: 'with a browser',
		prepare: () => {
			ensurePdfReaders();
			return { [CHOSEN]: ensureChromium() };
		},
		report: {
			words: ['--reporter=list,json'],
			variable: 'PLAYWRIGHT_JSON_OUTPUT_FILE',
			read: playwrightCounts
		}
	}
];

/** What the changes since a commit touch: types, their own files' rules, and the tests that lead to them. No browser. */
const changedStages = (since: string): readonly Stage[] => {
	const files = changedFiles(since);
	const code = files.filter((file) => /\.([jt]s|mjs|svelte)$/.test(file));
	return STAGES.flatMap((stage): readonly Stage[] => {
		if (stage.name === 'sync' || stage.name === 'types') return [stage];
		if (stage.name === 'lint') return code.length > 0 ? [{ ...stage, words: code }] : [];
		if (stage.name === 'tidy') return files.length > 0 ? [{ ...stage, words: files }] : [];
		return stage.name === 'unit' ? [{ ...stage, words: ['--changed', since, NONE_IS_FINE] }] : [];
	});
};

/** The stages asked for, in their own order; all when none is named. */
const chosenStages = (names: readonly string[]): readonly Stage[] => {
	if (names[0] === 'changed') return changedStages(names[1] ?? 'HEAD');
	const unknown = names.filter((name) => !STAGES.some((stage) => stage.name === name));
	if (unknown.length > 0) {
		const known = STAGES.map((stage) => stage.name).join(', ');
		throw new Error(`No stage is called ${unknown.map((name) => `"${name}"`).join(', ')}. Stages: ${known}.`);
	}
	// The types that SvelteKit writes are read by nearly all the others, so they are always made anew.
	return names.length === 0 ? STAGES : STAGES.filter(({ name }) => name === 'sync' || names.includes(name));
};

/** What the runner's report says; null when it left none, or one that cannot be read. */
const readReport = async (file: string, read: (report: unknown) => Counts): Promise<Counts | null> => {
	try {
		return read(JSON.parse(await readFile(file, 'utf8')));
	} catch {
		return null;
	}
};

/** Runs a test runner and counts what it did: good means that every test ran and passed. */
const runTests = async (
	stage: Stage,
	report: NonNullable<Stage['report']>,
	env: Record<string, string>,
	folder: string
): Promise<Result> => {
	const file = path.join(folder, `${stage.name}.json`);
	const asked = [...(stage.words ?? []), ...report.words];
	const words = report.variable ? asked : [...asked, `--outputFile.json=${file}`];
	const outcome = await runScript(
		stage.name,
		words,
		report.variable ? { ...env, [report.variable]: file } : env
	);
	const counts = await readReport(file, report.read);
	// Where only what a change touches is tested, that may be nothing.
	const none = stage.words?.includes(NONE_IS_FINE) && outcome.ok && !counts?.passed;
	if (none) return { ...outcome, counts };
	const complaint = counts === null ? 'the runner left no readable report' : complaintAbout(counts);
	const output = complaint === null ? outcome.output : `${outcome.output}\n${stage.name}: ${complaint}\n`;
	return { ...outcome, ok: outcome.ok && complaint === null, output, counts };
};

const runStage = async (stage: Stage, folder: string): Promise<Result> => {
	let env: Record<string, string> | undefined;
	try {
		env = stage.prepare?.();
	} catch (problem) {
		const output = problem instanceof Error ? problem.message : String(problem);
		return { ok: false, output, seconds: 0, counts: null };
	}
	if (stage.report) return runTests(stage, stage.report, env ?? {}, folder);
	return { ...(await runScript(stage.name, stage.words, env)), counts: null };
};

const say = (stage: Stage, { ok, seconds, counts }: Result): void => {
	const tests = counts ? ` (tests: ${String(counts.passed + counts.failed)})` : '';
	const mark = ok ? 'ok  ' : 'FAIL';
	console.log(`${mark} ${stage.name.padEnd(7)} ${seconds.toFixed(1).padStart(6)} s   ${stage.says}${tests}`);
};

/** Runs the stages of one group, at most two at a time; gives up on the rest when one fails. */
const runGroup = async (
	group: readonly Stage[],
	folder: string,
	results: Map<Stage, Result>
): Promise<boolean> => {
	const waiting = [...group];
	const failed = (): boolean => group.some((stage) => results.get(stage)?.ok === false);
	const work = async (): Promise<void> => {
		for (let stage = waiting.shift(); stage && !failed(); stage = waiting.shift()) {
			const result = await runStage(stage, folder);
			// The one beside a failing stage is ended, and says nothing of its own.
			if (failed()) return;
			results.set(stage, result);
			say(stage, result);
			if (!result.ok) {
				endAll();
				console.log(
					`\n${result.output.trimEnd()}\n\nStopped at ${stage.name}: run it alone with \`npm test -- ${stage.name}\`.`
				);
			}
		}
	};
	await Promise.all(Array.from({ length: SIDE_BY_SIDE }, work));
	return !failed();
};

/** Tests by the runners' own count; a stage that failed without one failing test counts as one failure. */
const closingLine = (results: ReadonlyMap<Stage, Result>): string => {
	let passed = 0;
	let failed = 0;
	for (const { ok, counts } of results.values()) {
		passed += counts?.passed ?? 0;
		failed += Math.max(counts?.failed ?? 0, ok ? 0 : 1);
	}
	return `${String(passed)} passed, ${String(failed)} failed`;
};

const runAll = async (stages: readonly Stage[]): Promise<boolean> => {
	const folder = await mkdtemp(path.join(tmpdir(), 'square-across-tests-'));
	const results = new Map<Stage, Result>();
	process.once('exit', () => {
		rmSync(folder, { recursive: true, force: true });
	});
	let ok = true;
	for (const group of new Set(stages.map((stage) => stage.group))) {
		const members = stages.filter((stage) => stage.group === group);
		ok = await runGroup(members, folder, results);
		if (!ok) break;
	}
	console.log(`\n${closingLine(results)}`);
	return ok;
};

for (const signal of ['SIGINT', 'SIGTERM'] as const) {
	process.once(signal, () => {
		endAll();
		process.exit(130);
	});
}

try {
	process.exitCode = (await runAll(chosenStages(process.argv.slice(2)))) ? 0 : 1;
} catch (problem) {
	console.error(problem instanceof Error ? problem.message : problem);
	process.exitCode = 2;
}
