import { createReadStream, createWriteStream } from 'node:fs';
import { open } from 'node:fs/promises';
import { once } from 'node:events';
import { BadInput } from '#shared/bad-input.ts';
import { message } from '#shared/speech/message.ts';
import { readDatabaseUrl } from '#server/settings.ts';
import { backUp, moveStore, restore, type Contents } from '#server/store/copy.ts';
import { connect, openStore, placeWords, type Store } from '#server/store/store.ts';
import type { Command } from './exit-code.ts';
import { reading, unreadable } from './input-file.ts';
import { onlyOne, parsedWords } from './options.ts';
import { writeOut } from './output.ts';
import { storePlace } from './store-place.ts';
import { wholeOrNone } from './written-file.ts';

const HELP = { help: { type: 'boolean', short: 'h' } } as const;
/** What people handed in is for its owner's eyes. */
const OWNER_ONLY = 0o600;

/** The one file that a command is about. Throws BadInput. */
const onlyFile = (command: 'backup' | 'restore', [file, ...more]: readonly string[]): string => {
	// What is whole or not at all cannot go through a pipe.
	if (file === undefined || file === '-' || more.length > 0)
		throw new BadInput(command, message('server', 'giveFile', { command }));
	return file;
};

/** Works with a store, and closes it whatever happens. */
const within = async <T>(store: Store, work: (store: Store) => Promise<T>): Promise<T> => {
	try {
		return await work(store);
	} finally {
		await store.close();
	}
};

/** Writes a backup, whole or not at all. Throws BadInput, naming the file. */
const backUpTo = (store: Store, to: string): Promise<Contents> =>
	wholeOrNone(to, async (place) => {
		const file = createWriteStream(place, { mode: OWNER_ONLY, flush: true });
		try {
			await once(file, 'open');
			const contents = await backUp(store, async (line) => {
				if (!file.write(`${line}\n`)) await once(file, 'drain');
			});
			file.end();
			await once(file, 'close');
			return contents;
		} catch (problem) {
			file.destroy();
			throw problem;
		}
	});

/** `square-across backup FILE`: everything of the classes, as it stands at one moment; the server may run on. */
export const backupCommand: Command = async (words, { words: say }) => {
	const { values, positionals } = parsedWords('backup', HELP, words);
	if (values.help) return void (await writeOut(say.command.usage({ of: 'store' })));
	const to = onlyFile('backup', positionals);
	const { counts } = await within(await openStore(storePlace()), (store) => backUpTo(store, to));
	await writeOut(`${say.server.backedUp({ to, counts })}\n`);
};

const readable = (file: string): Promise<void> => reading(file, async () => (await open(file)).close());

/** The lines of a file, one after the other. Throws BadInput where it can be opened and not be read, as a folder can. */
async function* linesIn(file: string): AsyncGenerator<string> {
	let rest = '';
	try {
		for await (const piece of createReadStream(file, 'utf8') as AsyncIterable<string>) {
			const [first = '', ...more] = piece.split('\n');
			const lines = [rest + first, ...more];
			rest = lines.pop() ?? '';
			for (const line of lines) yield line.replace(/\r$/, '');
		}
	} catch (problem) {
		throw unreadable(file, problem);
	}
	if (rest !== '') yield rest;
}

/** `square-across restore FILE`: puts a backup back into an empty store, all or nothing. */
export const restoreCommand: Command = async (words, { words: say }) => {
	const { values, positionals } = parsedWords('restore', HELP, words);
	if (values.help) return void (await writeOut(say.command.usage({ of: 'store' })));
	const file = onlyFile('restore', positionals);
	await readable(file);
	const place = storePlace();
	const { counts } = await within(connect(place), (store) => restore(store, linesIn(file)));
	await writeOut(`${say.server.restored({ to: placeWords(place), counts })}\n`);
};

/** `square-across move --to postgres://...`: copies the classes into an empty database, and compares what stands there. */
export const moveCommand: Command = async (words, { words: say }) => {
	const { values, positionals } = parsedWords(
		'move',
		{ ...HELP, to: { type: 'string', multiple: true } },
		words
	);
	if (values.help) return void (await writeOut(say.command.usage({ of: 'store' })));
	const url = onlyOne('move', values.to, '--to');
	if (url === undefined || positionals.length > 0)
		throw new BadInput('move', message('server', 'giveDatabase'));
	const [from, to] = [storePlace(), readDatabaseUrl(url, '--to')];
	const { counts } = await within(await openStore(from), async (source) =>
		within(await openStore(to), (target) => moveStore(source, target))
	);
	await writeOut(`${say.server.moved({ from: placeWords(from), to: placeWords(to), counts })}\n`);
};
