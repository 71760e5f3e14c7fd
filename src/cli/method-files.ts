import { BadInput } from '#shared/bad-input.ts';
import { didYouMean } from '#shared/nearest-name.ts';
import type { Method } from '#drafting/method.ts';
import { methodFileId, methodLibrary } from '#drafting/library.ts';
import { lessonFiles } from './lesson-files.ts';

/** Reads the method of this id from the lessons, with those that it uses. Throws BadInput at `command`, naming the nearest, where there is none. */
export const methodOf = async (id: string, command: string): Promise<Method> => {
	const files = await lessonFiles('method.yaml');
	const method = methodLibrary(files)(id);
	if (method) return method;
	const garments = (await lessonFiles('garment.yaml')).map(methodFileId);
	if (garments.includes(id))
		throw new BadInput(
			command,
			`"${id}" is a garment, not a method; its pieces are made by: square-across pattern ${id}`
		);
	const ids = files.map(methodFileId);
	const known = `the methods are ${ids.join(', ')}`;
	throw new BadInput(command, `there is no method "${id}"${didYouMean(id, ids)}; ${known}`);
};
