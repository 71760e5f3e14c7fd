import path from 'node:path';
import { BadInput, slipWords } from '#shared/bad-input.ts';
import { message } from '#shared/speech/message.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { firstTeacherPath } from '#server/people/invitations.ts';
import { DATA, NO_DATA, readSettings, type StorePlace } from '#server/settings.ts';
import { openStore } from '#server/store/store.ts';
import { PROJECT } from './build-folders.ts';
import { complain } from './output.ts';

/** Where classes are kept when nobody says: beside the program, so that `npm start` needs no settings. */
const USUAL_FOLDER = path.join(PROJECT, 'data');

/** Where the classes are kept, after the settings. Throws BadInput where they are turned off. */
export const storePlace = (): StorePlace => {
	const { place } = readSettings({ [DATA]: USUAL_FOLDER, ...process.env });
	if (!place) throw new BadInput('', message('server', 'noStore'));
	return place;
};

/**
 * Makes the classes ready for the app that is about to be served, and hands its place on to it. Where nobody said where they are and
 * they cannot be kept in the usual place, the site is served without them. Throws BadInput where a setting is wrong.
 *
 * @returns the path that makes the first teacher, where there is none yet
 */
export const prepareClasses = async (speech: Speech): Promise<string | undefined> => {
	const settings = { [DATA]: USUAL_FOLDER, ...process.env };
	const { place } = readSettings(settings);
	process.env[DATA] = settings[DATA];
	if (!place) return undefined;
	try {
		const store = await openStore(place);
		try {
			return await firstTeacherPath({ store, now: Date.now });
		} finally {
			await store.close();
		}
	} catch (problem) {
		if (!(problem instanceof BadInput) || settings[DATA] !== USUAL_FOLDER || place.kind === 'postgres')
			throw problem;
		process.env[DATA] = NO_DATA;
		complain(speech.words.server.withoutClasses({ because: slipWords(problem, speech) }));
		return undefined;
	}
};
