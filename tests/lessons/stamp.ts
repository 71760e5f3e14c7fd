/**
 * `npm run lessons:stamp -- lessons/40-back-levels/es.md ...`: says that a person has read these translations beside
 * the English as it stands now. One that is built otherwise than the English is not stamped, and the exit code is 1.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { staleProblems, stamped, structureProblems } from './translation.ts';

const stamp = (file: string): boolean => {
	const source = readFileSync(path.join(path.dirname(file), 'en.md'), 'utf8');
	const translation = readFileSync(file, 'utf8');
	const problems = structureProblems(source, translation);
	for (const each of problems) console.error(`${file}: ${each}`);
	if (problems.length > 0) return false;
	for (const each of staleProblems(source, translation)) console.log(`${file}: stamped; before, ${each}`);
	writeFileSync(file, stamped(source, translation));
	return true;
};

const files = process.argv.slice(2);
if (files.length === 0) console.error('Name the translations that were read: lessons/40-back-levels/es.md');
if (files.length === 0 || !files.map(stamp).every(Boolean)) process.exitCode = 1;
