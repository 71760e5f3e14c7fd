import { BadInput, cut } from '#shared/bad-input.ts';
import { bodyErrors } from '#shared/body-errors.ts';
import { isMeasurementKey } from '#shared/measurements.ts';
import { READING_ERRORS, readReadingError, type ReadingErrors } from '#shared/reading-errors.ts';
import { message } from '#shared/speech/message.ts';
import type { Speech } from '#shared/speech/speech.ts';
import type { Mm } from '#shared/units.ts';
import type { Method } from '#drafting/method.ts';
import { howSure, type DraftSureness, type Sureness } from '#drafting/sureness/how-sure.ts';
import { surenessJson } from '#exports/table/sureness-json.ts';
import { readBodyFile } from './body-file.ts';
import { draftOrRefuse } from './draft-or-refuse.ts';
import type { Command } from './exit-code.ts';
import { methodOf } from './find-subject.ts';
import { readInputFile } from './input-file.ts';
import { lessonCourse } from './lesson-course.ts';
import { onlyOf, onlyOne, parsedWords } from './options.ts';
import { writeOut } from './output.ts';
import { table } from './table.ts';

const OPTIONS = {
	body: { type: 'string', multiple: true },
	'how-sure': { type: 'boolean' },
	'reading-error': { type: 'string', multiple: true },
	json: { type: 'boolean' },
	help: { type: 'boolean', short: 'h' }
} as const;
const PLACE = '--reading-error';

/** The errors that were said, each as KEY=MM. Throws BadInput. */
const readErrors = (said: readonly string[]): ReadingErrors => {
	const kinds: Record<string, Mm> = {};
	const single: Record<string, Mm> = {};
	for (const each of said) {
		const [key = '', value, ...more] = each.split('=');
		if (value === undefined || more.length > 0)
			throw new BadInput(PLACE, message('sureness', 'errorShape', { seen: cut(each) }));
		const known = Object.keys(READING_ERRORS);
		if (!known.includes(key) && !isMeasurementKey(key))
			throw new BadInput(PLACE, message('sureness', 'errorKey', { seen: cut(key), known }));
		const errors = known.includes(key) ? kinds : single;
		if (key in errors)
			throw new BadInput(
				'draft',
				message('command', 'givenTwice', { flag: `${PLACE} ${key}`, values: said })
			);
		errors[key] = readReadingError(value, 'mm', `${PLACE} ${key}`);
	}
	return { kinds, single };
};

/** A row of the table: what it is, how far it moves, by what most, and what else is to be said. */
const row = (name: string, sure: Sureness, speech: Speech): readonly string[] => {
	const [most] = sure.by;
	const { sureness, paper, nouns } = speech.words;
	return [
		name,
		speech.inUnit('mm').bare(sure.reach),
		most
			? `${paper.keyed({ key: most.key, noun: nouns.measurement(most.key) })} ${sureness.share(most)}`
			: '',
		[
			...(sure.there < 1 ? [sureness.there({ share: sure.there })] : []),
			...(sure.bends && sure.there === 1 ? [sureness.bends] : [])
		].join('; ')
	];
};

const surenessTable = (method: Method, sure: DraftSureness, body: string, speech: Speech): string => {
	const { sureness } = speech.words;
	const points = Object.entries(sure.points).map(([name, each]) => row(name, each, speech));
	const lines = Object.entries(sure.lines).map(([name, { length }]) => row(name, length, speech));
	return [
		`${sureness.title({ name: method.name, body })}\n`,
		table([sureness.headings, ...points]),
		table([sureness.lineHeadings, ...lines]),
		...(sure.drafted < 1 ? [`${sureness.notDrafted({ share: 1 - sure.drafted })}\n`] : [])
	].join('\n');
};

/** `square-across draft METHOD --body FILE --how-sure`: how far each point and line can move because of how the body was measured. */
export const howSureCommand: Command = async (words, speech) => {
	const { values, positionals } = parsedWords('draft', OPTIONS, words);
	if (values.help) {
		await writeOut(speech.words.command.usage({ of: 'draft' }));
		return;
	}
	const id = onlyOf({ command: 'draft', kind: 'method' }, positionals);
	const method = methodOf(lessonCourse(speech.language), id, 'draft');
	const errors = readErrors(values['reading-error'] ?? []);
	const name = onlyOne('draft', values.body, '--body');
	if (name === undefined) throw new BadInput('draft', message('command', 'giveOneBody'));
	const file = await readInputFile(name, speech);
	const body = readBodyFile(file, method.allowances, speech);
	const draft = draftOrRefuse(method, body, file.place, speech);
	const errorOf = bodyErrors(body, errors);
	const sure = howSure(method, body, draft, errorOf);
	await writeOut(
		values.json
			? `${surenessJson(method, body.name, sure, errorOf)}\n`
			: surenessTable(method, sure, body.name, speech)
	);
};
