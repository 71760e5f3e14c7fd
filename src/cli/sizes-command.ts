import { BadInput, onOneLine } from '#shared/bad-input.ts';
import { nearestSize, type Near } from '#shared/sizes/size.ts';
import { SIZE_TABLES, sizeTable } from '#shared/sizes/tables.ts';
import { notTaken } from '#shared/measurements.ts';
import { message } from '#shared/speech/message.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { readBodyFile } from './body-file.ts';
import type { Command } from './exit-code.ts';
import { readInputFile } from './input-file.ts';
import { onlyOne, parsedWords } from './options.ts';
import { writeOut } from './output.ts';
import { cm, table } from './table.ts';

const OPTIONS = {
	body: { type: 'string', multiple: true },
	json: { type: 'boolean' },
	help: { type: 'boolean', short: 'h' }
} as const;

const DECIMALS = 1;

const nearTable = ({ size, errors, apart }: Near, speech: Speech): string => {
	const { sizes, paper, nouns } = speech.words;
	const rows = apart.map(({ key, own, size: of, errors: by, estimated }) => [
		paper.keyed({ key, noun: nouns.measurement(key) }),
		cm(own, speech),
		cm(of, speech),
		cm(own - of, speech),
		speech.fixed(by, DECIMALS),
		estimated ? sizes.estimatedWord : ''
	]);
	return [
		`${sizes.tableName(size)}: ${sizes.nearestIs({ name: size.name, errors })}\n${sizes.source(size)}\n`,
		table([sizes.apartHeadings, ...rows])
	].join('\n');
};

const nearJson = ({ size, errors, apart }: Near): object => ({
	table: size.table,
	size: size.name,
	errors,
	apart: Object.fromEntries(
		apart.map(({ key, own, size: of, errors: by, estimated }) => [
			key,
			{ own, size: of, errors: by, estimated }
		])
	)
});

/** `square-across sizes --body FILE`: which size of each table is nearest to a body, in units of measuring error, and where they differ. */
export const sizesCommand: Command = async (words, speech) => {
	const { values, positionals } = parsedWords('sizes', OPTIONS, words);
	if (values.help) {
		await writeOut(speech.words.command.usage({ of: 'sizes' }));
		return;
	}
	const [more] = positionals;
	if (more !== undefined)
		throw new BadInput('sizes', message('command', 'takesNothing', { command: 'sizes', seen: more }));
	const name = onlyOne('sizes', values.body, '--body');
	if (name === undefined) throw new BadInput('sizes', message('command', 'giveOneBody'));
	const file = await readInputFile(name, speech);
	const body = readBodyFile(file, [], speech);
	const near = SIZE_TABLES.flatMap((id) => nearestSize(id, body) ?? []);
	if (near.length === 0) {
		const keys = notTaken(sizeTable('women').columns, body);
		throw new BadInput(file.place, message('sizes', 'lacks', { keys }));
	}
	await writeOut(
		values.json
			? `${JSON.stringify({ body: onOneLine(body.name), unit: 'mm', nearest: near.map(nearJson) })}\n`
			: near.map((each) => nearTable(each, speech)).join('\n')
	);
};
