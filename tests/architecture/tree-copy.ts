import { cp, mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

/** The project's own folder. */
export const PROJECT = fileURLToPath(new URL('../../', import.meta.url));

/** What the import rules read; packages are linked, not copied. */
const COPIED = ['src', 'shared', 'lessons', 'package.json', '.dependency-cruiser.mjs'];

/**
 * Works on a copy of the tree, with some files added, and removes the copy whatever happens. The tree
 * itself is never written to, so nothing planted can be left behind in it.
 *
 * @param planted path in the tree -> its text
 * @param more what else is copied
 */
export const withTreeCopy = async <T>(
	planted: Readonly<Record<string, string>>,
	work: (folder: string) => Promise<T>,
	more: readonly string[] = []
): Promise<T> => {
	const folder = await mkdtemp(path.join(tmpdir(), 'square-across-copy-'));
	try {
		await Promise.all(
			[...COPIED, ...more].map((place) =>
				cp(path.join(PROJECT, place), path.join(folder, place), { recursive: true })
			)
		);
		await symlink(path.join(PROJECT, 'node_modules'), path.join(folder, 'node_modules'), 'junction');
		for (const [file, text] of Object.entries(planted)) {
			const whole = path.join(folder, file);
			await mkdir(path.dirname(whole), { recursive: true });
			await writeFile(whole, text);
		}
		return await work(folder);
	} finally {
		await rm(folder, { recursive: true, force: true });
	}
};
