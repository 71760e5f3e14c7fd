import path from 'node:path';
import { BadInput } from '#shared/bad-input.ts';
import { message } from '#shared/speech/message.ts';
import { DATA, readSettings, type StorePlace } from '#server/settings.ts';
import { PROJECT } from './build-folders.ts';

/** Where classes are kept when nobody says: beside the program, so that `npm start` needs no settings. */
const USUAL_FOLDER = path.join(PROJECT, 'data');

/** Where the classes are kept, after the settings. Throws BadInput where they are turned off. */
export const storePlace = (): StorePlace => {
	const { place } = readSettings({ [DATA]: USUAL_FOLDER, ...process.env });
	if (!place) throw new BadInput('', message('server', 'noStore'));
	return place;
};
