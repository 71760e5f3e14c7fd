import { BadInput } from '#shared/bad-input.ts';
import { didYouMean } from '#shared/nearest-name.ts';
import { methodFileId, methodLibrary } from '#drafting/library.ts';
import type { Garment } from '#garment/garment.ts';
import { readGarment } from '#garment/read-garment.ts';
import { lessonFiles } from './lesson-files.ts';

/**
 * Reads the garment of this id from the lessons, with the methods of its drafts; a garment file names itself as a method
 * file does. Throws BadInput at `command` where there is none: it names the nearest, or the command that wants a method.
 */
export const garmentOf = async (id: string, command: string): Promise<Garment> => {
	const [garments, methods] = await Promise.all([lessonFiles('garment.yaml'), lessonFiles('method.yaml')]);
	const file = garments.find((each) => methodFileId(each) === id);
	if (file) return readGarment(file.content, file.place, methodLibrary(methods));
	if (methods.some((each) => methodFileId(each) === id))
		throw new BadInput(
			command,
			`"${id}" is a method, not a garment; it is drafted by: square-across draft ${id}`
		);
	const ids = garments.map(methodFileId);
	const known = `the garments are ${ids.join(', ')}`;
	throw new BadInput(command, `there is no garment "${id}"${didYouMean(id, ids)}; ${known}`);
};
