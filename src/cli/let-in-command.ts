import { BadInput, cut } from '#shared/bad-input.ts';
import { message } from '#shared/speech/message.ts';
import { returnPath } from '#server/people/invitations.ts';
import { openStore } from '#server/store/store.ts';
import type { Command } from './exit-code.ts';
import { parsedWords } from './options.ts';
import { writeOut } from './output.ts';
import { storePlace } from './store-place.ts';

/** `square-across let-in NAME`: a link, good once, by which a teacher who lost the passphrase chooses another; the server may run on. */
export const letInCommand: Command = async (words, { words: say }) => {
	const { values, positionals } = parsedWords('let-in', { help: { type: 'boolean', short: 'h' } }, words);
	if (values.help) return void (await writeOut(say.command.usage({ of: 'store' })));
	const name = positionals.join(' ');
	if (name === '') throw new BadInput('let-in', message('server', 'giveTeacher'));
	const store = await openStore(storePlace());
	try {
		const path = await returnPath({ store, now: Date.now }, name);
		if (path === undefined)
			throw new BadInput('let-in', message('server', 'noSuchTeacher', { seen: cut(name) }));
		await writeOut(`${say.server.letIn({ address: (process.env['ORIGIN'] ?? '') + path })}\n`);
	} finally {
		await store.close();
	}
};
