import { execFileSync } from 'node:child_process';

const git = (...words: readonly string[]): readonly string[] =>
	execFileSync('git', words, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'inherit'] })
		.split('\n')
		.filter(Boolean);

/**
 * The files that differ from a commit, those that git does not know yet among them, and none that are gone.
 *
 * @throws Error where there is no such commit, or no repository
 */
export const changedFiles = (since: string): readonly string[] => [
	...git('diff', '--name-only', '--relative', '--diff-filter=d', since, '--'),
	...git('ls-files', '--others', '--exclude-standard')
];
