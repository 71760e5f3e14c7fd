import { BadInput, ruleWords } from '#shared/bad-input.ts';
import { refusedLine, workTable } from './batch.ts';
import type { Command } from './exit-code.ts';
import { openLongFile } from './input-file.ts';
import { readOne } from './one-body.ts';
import { bodiesInput, FOR_BODIES, onlyOf, parsedWords, type Asked } from './options.ts';
import { writeOut } from './output.ts';
import { subjectOf } from './find-subject.ts';
import { lessonCourse } from './lesson-course.ts';

const OPTIONS = { ...FOR_BODIES, json: { type: 'boolean' } } as const;

/**
 * `square-across draft METHOD` and `square-across pattern GARMENT`: work a subject out for one body (`--body FILE`) or
 * for a table of them (`--bodies FILE`), as tables for reading or as JSON.
 */
const workCommand =
	(asked: Asked & { readonly command: 'draft' | 'pattern' }): Command =>
	async (words, speech) => {
		const { command, kind } = asked;
		const { values, positionals } = parsedWords(command, OPTIONS, words);
		if (values.help) {
			await writeOut(speech.words.command.usage({ of: command }));
			return;
		}
		const id = onlyOf(asked, positionals);
		const input = bodiesInput(command, values);
		const subject = await subjectOf(lessonCourse(speech.language), kind, id, command, speech);
		if (input.kind !== 'bodies') {
			const { maker, place } = await readOne(input, subject, speech);
			const work = subject.work(maker, place);
			await writeOut(values.json ? `${work.json()}\n` : work.table());
			return;
		}
		const file = await openLongFile(input.file, speech);
		await workTable(file, subject, speech, (body) => {
			try {
				return subject.work({ body, edges: {} }, file.place).json();
			} catch (problem) {
				if (!(problem instanceof BadInput)) throw problem;
				return refusedLine(body.name, ruleWords(problem, speech));
			}
		});
	};

const plainDraft = workCommand({ command: 'draft', kind: 'method' });

/** `square-across draft METHOD`; with `--how-sure` not the draft itself, but how far its points can move. */
export const draftCommand: Command = async (words, speech) => {
	if (!words.includes('--how-sure')) return plainDraft(words, speech);
	return (await import('./how-sure-command.ts')).howSureCommand(words, speech);
};

export const patternCommand = workCommand({ command: 'pattern', kind: 'garment' });
