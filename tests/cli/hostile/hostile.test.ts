import { mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { BACK, bodyFile, type PrintedReport } from '../check-here.ts';
import { COMMAND, runProcess, type CliRun } from '../run-cli.ts';
import { newFolder } from '../run-here.ts';
import { Attacked, faultsOfRefusal, faultsOfRows, type Ending } from './attack.ts';
import {
	deep,
	HEADING,
	heronWith,
	hostileBodies,
	hostileEdges,
	hostileTables,
	ROW,
	tablesWithBadRows,
	type Hostile
} from './bodies.ts';
import { hostileGarments, hostileMethods, namelessFiles, placedSlips, yamlSlips } from './method-files.ts';
import { hostileWords } from './options.ts';
import { hostileAnswers, hostileLines, hostilePlacements, hostilePolicies } from './work.ts';

const folder = newFolder();
const attacked = new Attacked();
const heron = bodyFile('heron');
afterAll(() => {
	attacked.end();
	folder.remove();
});

/** Writes what is hostile into a file, and gives its name. */
const fileOf = (content: string | Buffer, ending: string): string => {
	const file = folder.write(`hostile.${ending}`, '');
	writeFileSync(file, content);
	return file;
};
const names = (all: Hostile): readonly string[] => Object.keys(all);

describe.each(['draft', 'pattern', 'check'])('a hostile body, to %s', (command) => {
	const bodies = hostileBodies();
	// The other commands read a body by the same code: they are tried with a part of the list.
	const some = names(bodies).filter((_, i) => command === 'draft' || i % 6 === 0);
	it.each(some)('is refused in one line: %s', async (name) => {
		const file = fileOf(bodies[name] ?? '', 'json');
		const subject = command === 'pattern' ? 'course-dress' : 'back-block';
		const more = command === 'check' ? ['--placements', folder.write('p.json', JSON.stringify(BACK))] : [];
		expect(faultsOfRefusal(await attacked.run([command, subject, '--body', file, ...more]))).toBe('');
	});
});

describe('hostile allowances of edges', () => {
	const edges = hostileEdges();
	it.each(names(edges))('are refused in one line: %s', async (name) => {
		const file = fileOf(edges[name] ?? '', 'json');
		expect(faultsOfRefusal(await attacked.run(['pattern', 'course-dress', '--body', file]))).toBe('');
	});
});

describe('a hostile table', () => {
	const [tables, rows] = [hostileTables(), tablesWithBadRows()];
	it.each(names(tables))('is refused in one line: %s', async (name) => {
		const file = fileOf(tables[name] ?? '', 'csv');
		expect(faultsOfRefusal(await attacked.run(['draft', 'back-block', '--bodies', file]))).toBe('');
	});
	it.each(names(rows))('has a line for each row, with a bad one among them: %s', async (name) => {
		const file = fileOf(rows[name] ?? '', 'csv');
		expect(faultsOfRows(await attacked.run(['draft', 'back-block', '--bodies', file]), 3)).toBe('');
	});
});

describe('hostile work', () => {
	const checking = ['check', 'back-block', '--body', heron];
	const placements = hostilePlacements();
	it.each(names(placements))('is refused in one line: %s', async (name) => {
		const file = fileOf(placements[name] ?? '', 'json');
		expect(faultsOfRefusal(await attacked.run([...checking, '--placements', file]))).toBe('');
	});
	it.each(names(hostilePolicies))('a policy is refused in one line: %s', async (name) => {
		const file = fileOf(hostilePolicies[name] ?? '', 'json');
		const work = folder.write('p.json', JSON.stringify(BACK));
		expect(faultsOfRefusal(await attacked.run([...checking, '--placements', work, '--policy', file]))).toBe(
			''
		);
	});
	it.each(Object.keys(hostileAnswers))('an answer spoils no other: %s', async (name) => {
		const answer = hostileAnswers[name] ?? '';
		// A distance cannot be laid off for a line: that is a slip of the file.
		const places = answer.startsWith('{"typed"') ? ['W'] : ['W', 'armhole', 'armholeLevel'];
		const bad = places.map((step) => `"${step}":${answer},`).join('');
		const { W: _, ...others } = BACK;
		const work = fileOf(
			JSON.stringify(others).replace('{', () => `{${bad}`),
			'json'
		);
		const { code, err, thrown, out } = await attacked.run([...checking, '--json', '--placements', work]);
		expect({ code, err, thrown }).toEqual({ code: 0, err: '', thrown: '' });
		const { steps } = JSON.parse(out) as PrintedReport;
		const right = steps.filter(({ verdict }) => verdict === 'right').map(({ step }) => step);
		expect(right).toEqual(expect.arrayContaining(Object.keys(others)));
		expect(out).not.toContain('our-fault');
	});
	it('a step that this body lacks is told to be passed over', async () => {
		const plain = folder.write('plain.json', heronWith({ frontLength: 42.5 }));
		const words = ['check', 'front-block', '--body', plain, '--placements'];
		const work = folder.write('p.json', '{"W":[0,425],"D":[0,1]}');
		const { out } = await attacked.run([...words, work]);
		expect(out).toContain('D: not asked for with this body, and passed over');
		const asJson = await attacked.run([...words, work, '--json']);
		expect(JSON.parse(asJson.out)).toMatchObject({ passedOver: ['D'] });
	});
	it('one line of a batch spoils no other', async () => {
		const good = JSON.stringify({ learner: 'Ash', placements: BACK });
		const lines = hostileLines.flatMap((line) => [line, good]);
		const ending = await attacked.run([...checking, '--stdin'], lines.join('\n'));
		expect(faultsOfRows(ending, lines.length)).toBe('');
		const right = ending.out.split('\n').filter((_, i) => i % 2 === 1);
		expect(right.map((line) => (JSON.parse(line) as { total?: { mark: number } }).total?.mark)).toEqual(
			hostileLines.map(() => 20)
		);
	});
	it.each(hostileLines.map((line, i) => [i + 1, line.slice(0, 60), line] as const))(
		'line %i of a batch gets one line: %s',
		async (_, _start, line) => {
			expect(faultsOfRows(await attacked.run([...checking, '--stdin'], line), 1)).toBe('');
		}
	);
});

describe('a name that would write on the terminal', () => {
	const name = 'Ash\u001b[31m\u0000\u202e\nElm';
	const file = folder.write('named.json', heronWith({ name }));
	it.each([
		['draft', 'back-block', '--body', file],
		['pattern', 'course-dress', '--body', file],
		['check', 'back-block', '--body', file, '--placements', folder.write('none.json', '{}')]
	])('stands on one line, and bare: %s', async (...words) => {
		const { code, out } = await attacked.run(words);
		expect(code).toBe(0);
		expect(out).toMatch(/Ash \[31m Elm/);
		expect(out).not.toMatch(/[^\P{Cc}\n]|\u202e/u);
	});
});

describe('hostile words', () => {
	const lines = hostileWords(heron, folder);
	it.each(lines.map((words) => [words.join(' ').slice(0, 90), words] as const))(
		'are refused in one line: %s',
		async (_, words) => {
			expect(faultsOfRefusal(await attacked.run(words))).toBe('');
		}
	);
	it('a loop of links, and a file that only links to itself', async () => {
		const dir = mkdtempSync(path.join(tmpdir(), 'square-across-'));
		try {
			const [one, two] = [path.join(dir, 'one'), path.join(dir, 'two')];
			symlinkSync(one, two);
			symlinkSync(two, one);
			for (const words of [
				['draft', 'back-block', '--body', one],
				['draft', 'back-block', '--bodies', one],
				['export', 'back-block', '--body', heron, '--to', path.join(one, 'a.svg')]
			])
				expect(faultsOfRefusal(await attacked.run(words))).toBe('');
		} finally {
			rmSync(dir, { recursive: true, force: true });
		}
	});
});

describe('a hostile file among the lessons', () => {
	it.each(names(yamlSlips))('a method that is not YAML, or nothing like a method: %s', async (name) => {
		const content = yamlSlips[name] ?? '';
		for (const [kind, file] of [
			['method', 'method.yaml'],
			['garment', 'garment.yaml']
		] as const) {
			const ending = await attacked.work(kind, heron, file, content);
			expect(faultsOfRefusal(ending)).toBe('');
			expect(ending.err).toContain(`99-hostile/${file}`);
		}
	});
	it.each(names(namelessFiles))('a file that names nothing: %s', async (name) => {
		const ending = await attacked.work('method', heron, 'method.yaml', namelessFiles[name] ?? '');
		expect(faultsOfRefusal(ending)).toBe('');
	});
	it.each(Object.entries(placedSlips))('the line and the column are named: %s', async (name, at) => {
		const ending = await attacked.work('method', heron, 'method.yaml', yamlSlips[name] ?? '');
		expect(ending.err).toContain(`99-hostile/method.yaml:${at}: `);
	});
	it.each(names(hostileMethods))('a method that cannot be drafted: %s', async (name) => {
		const ending = await attacked.work('method', heron, 'method.yaml', hostileMethods[name] ?? '');
		expect(faultsOfRefusal(ending)).toBe('');
	});
	it.each(names(hostileGarments))('a garment that cannot be made: %s', async (name) => {
		const ending = await attacked.work('garment', heron, 'garment.yaml', hostileGarments[name] ?? '');
		expect(faultsOfRefusal(ending)).toBe('');
	});
});

describe('a process of its own', () => {
	const run = (words: string): ReturnType<typeof runProcess> => runProcess('bash', ['-c', words]);
	const command = `"${process.execPath}" "${COMMAND}"`;
	const whole = (ending: CliRun): Ending => ({
		...ending,
		thrown: /\n +at /.test(ending.err) ? ending.err : ''
	});

	it('ends with exit code 2 and one line, not with a stack trace', async () => {
		const file = fileOf(`{"bust":${deep(20_000)}}`, 'json');
		expect(faultsOfRefusal(whole(await run(`${command} draft back-block --body "${file}"`)))).toBe('');
	});

	it('a full disk is one line, leaves nothing half-written, and a good file of that name as it was', async () => {
		const to = mkdtempSync(path.join(tmpdir(), 'square-across-'));
		try {
			writeFileSync(path.join(to, 'back.svg'), 'kept');
			// No file of this shell grows beyond 1 kB.
			const exporting = `${command} export back-block --body "${heron}" --to`;
			const ending = await run(`ulimit -f 1; ${exporting} "${to}/back.svg"`);
			expect(faultsOfRefusal(whole(ending))).toBe('');
			expect(readdirSync(to)).toEqual(['back.svg']);
			expect(readFileSync(path.join(to, 'back.svg'), 'utf8')).toBe('kept');
		} finally {
			rmSync(to, { recursive: true, force: true });
		}
	});

	it('a batch onto a full disk tells each file that it could not write, and leaves none in half', async () => {
		const to = mkdtempSync(path.join(tmpdir(), 'square-across-'));
		try {
			const table = folder.write('full.csv', `${HEADING}\n${ROW}\n${ROW}\n`);
			const { code, out, err } = await run(
				`ulimit -f 4; ${command} export back-block --bodies "${table}" --to "${to}" --as pdf`
			);
			expect({ code, out, files: readdirSync(to) }).toEqual({ code: 2, out: '', files: [] });
			const lines = err.trimEnd().split('\n');
			expect(lines).toHaveLength(3);
			expect(lines.filter((line) => line.length > 400 || line.includes(' at '))).toEqual([]);
		} finally {
			rmSync(to, { recursive: true, force: true });
		}
	});

	it.each(['draft back-block --json', 'draft --help'])(
		'what cannot be written to a full standard output is one line: %s',
		async (words) => {
			const body = words.includes('--help') ? '' : `--body "${heron}"`;
			const ending = await run(`${command} ${words} ${body} > /dev/full`);
			expect(faultsOfRefusal(whole(ending))).toBe('');
		}
	);
});
