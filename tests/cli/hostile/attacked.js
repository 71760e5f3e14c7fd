// Runs command lines one after the other and says how each ended. In a process of its own, so that one which hangs or crashes
// can be ended from outside without ending the tests.
import { readFileSync } from 'node:fs';
import { Readable } from 'node:stream';
import { register } from 'tsx/esm/api';

register({ tsconfig: false });
const { main } = await import('../../../src/cli/main.ts');
const { exitCodeOf } = await import('../../../src/cli/exit-code.ts');
const { subjectOf } = await import('../../../src/cli/find-subject.ts');
const { readInputFile } = await import('../../../src/cli/input-file.ts');
const { course } = await import('../../../src/lib/course/course.ts');
const { speechFor } = await import('../../support/speech.ts');

const english = speechFor('en');
const BACK = 'lessons/40-back-levels/method.yaml';
const known = { [BACK]: readFileSync(new URL(`../../../${BACK}`, import.meta.url), 'utf8') };

/**
 * Works the method or garment `hostile`, of a file that stands among the lessons, as the commands do with all lessons.
 *
 * @param {Record<string, string>} planted @param {['method' | 'garment', string]} words
 */
const worked = (planted, [kind, body]) =>
	exitCodeOf(english, async () => {
		const command = kind === 'garment' ? 'pattern' : 'draft';
		const subject = await subjectOf(
			course({ ...known, ...planted }, 'en'),
			kind,
			'hostile',
			command,
			english
		);
		const file = await readInputFile(body, english);
		process.stdout.write(subject.work(subject.read(file), file.place).table());
	});

let said = { out: '', err: '' };
/** @param {'out' | 'err'} kind */
const hearing =
	(kind) =>
	/** @param {unknown} text @param {(() => void) | undefined} done */
	(text, done) => {
		said[kind] += String(text);
		done?.();
		return true;
	};
process.stdout.write = /** @type {typeof process.stdout.write} */ (hearing('out'));
process.stderr.write = /** @type {typeof process.stderr.write} */ (hearing('err'));

process.on('message', async ({ words, input, planted }) => {
	said = { out: '', err: '' };
	const typed = Readable.from(input === '' ? [] : [Buffer.from(input)]);
	Object.defineProperty(process, 'stdin', { configurable: true, get: () => typed });
	let code = null;
	let thrown = '';
	try {
		code = await (planted ? worked(planted, words) : main(words));
	} catch (problem) {
		thrown = problem instanceof Error ? (problem.stack ?? problem.message) : String(problem);
	}
	process.send?.({ code, thrown: thrown.slice(0, 2000), ...said });
});
process.send?.('ready');
