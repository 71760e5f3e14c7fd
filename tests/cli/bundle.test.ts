import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { PROJECT, withTreeCopy } from '../architecture/tree-copy.ts';
import { runProcess, type CliRun } from './run-cli.ts';

const HERON = path.join(PROJECT, 'shared/bodies/heron.json');
const TITLE = 'The back block for Heron, in cm from the corner';

const draft = (folder: string): Promise<CliRun> =>
	runProcess(process.execPath, [
		path.join(folder, 'src/cli/square-across.js'),
		...['draft', 'back-block', '--body', HERON]
	]);

const bundles = (folder: string): readonly string[] =>
	readdirSync(path.join(folder, 'build')).filter((name) => name.startsWith('cli-'));

describe('the bundle of the command line', () => {
	it('is made at first, used while the sources are the same, and made anew when one has changed', () =>
		withTreeCopy(
			{},
			async (folder) => {
				expect((await draft(folder)).out).toContain(TITLE);
				const [first] = bundles(folder);
				expect(first).toBeDefined();
				expect((await draft(folder)).out).toContain(TITLE);
				expect(bundles(folder)).toEqual([first]);

				const sentences = path.join(folder, 'shared/speech/en/command.ts');
				const text = readFileSync(sentences, 'utf8');
				expect(text).toContain('from the corner');
				writeFileSync(sentences, text.replaceAll('from the corner', 'from the CORNER'));
				expect((await draft(folder)).out).toContain('from the CORNER');
				expect(bundles(folder)).toHaveLength(2);

				// One that was cut short, or is gone, is made again.
				for (const name of bundles(folder)) rmSync(path.join(folder, 'build', name), { recursive: true });
				expect((await draft(folder)).out).toContain('from the CORNER');
			},
			['package-lock.json']
		));

	it('is done without where it cannot be written', () =>
		withTreeCopy(
			{ build: 'a file where the folder would be\n' },
			async (folder) => {
				const run = await draft(folder);
				expect(run.err).toBe('');
				expect(run.out).toContain(TITLE);
				expect(existsSync(path.join(folder, 'build', 'cli.json'))).toBe(false);
			},
			['package-lock.json']
		));
});
