import type { Allowance } from '#shared/allowances.ts';
import { readBody, type Body } from '#shared/body.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { tellFormer } from './former-names.ts';
import type { InputFile } from './input-file.ts';
import { readJson } from './read-json.ts';

/** A body as its own file holds it; `known` are the allowances that it may choose. Throws BadInput. */
export const readBodyFile = (file: InputFile, known: readonly Allowance[], speech: Speech): Body => {
	const input = readJson(file);
	tellFormer(input, file.place, speech);
	return readBody(input, `${file.place}: `, file.name, known);
};
