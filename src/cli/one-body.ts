import { bodyOfSize, readSize } from '#shared/sizes/size.ts';
import type { Speech } from '#shared/speech/speech.ts';
import type { Maker } from './edge-allowances.ts';
import { readInputFile } from './input-file.ts';
import type { BodiesInput } from './options.ts';
import type { Subject } from './subject.ts';

/** One body that was asked for, by its file or as a standard size, and what begins every error about it. Throws BadInput. */
export const readOne = async (
	input: Exclude<BodiesInput, { readonly kind: 'bodies' }>,
	subject: Subject,
	speech: Speech
): Promise<{ readonly maker: Maker; readonly place: string }> => {
	if (input.kind === 'size') {
		const size = readSize(input.text, '--size');
		const name = speech.words.sizes.bodyName(size);
		return { maker: { body: bodyOfSize(size, name), edges: {} }, place: name };
	}
	const file = await readInputFile(input.file, speech);
	return { maker: subject.read(file), place: file.place };
};
