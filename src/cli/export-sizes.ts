import { BadInput } from '#shared/bad-input.ts';
import { bodyOfSize, readSize } from '#shared/sizes/size.ts';
import { message } from '#shared/speech/message.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { checkCount, madeNest, nestedFile } from '#exports/files/nested-file.ts';
import type { SizedBody } from '#garment/nested.ts';
import type { ExportOptions, SizesInput } from './export-options.ts';
import { readInputFile } from './input-file.ts';
import { lessonCourse } from './lesson-course.ts';
import { checkComplete } from './refusals.ts';
import type { Request, Subject } from './subject.ts';
import { writeWhole } from './written-file.ts';

/** `--sizes 38,40,42`: a garment in several standard sizes on one sheet, with an own body among them where `--body` names one. Throws BadInput. */
export const exportSizes = async (
	{ text, body: name }: SizesInput,
	subject: Subject,
	{ to }: ExportOptions,
	request: Request,
	speech: Speech
): Promise<void> => {
	const garment = lessonCourse(speech.language).garment(subject.id);
	if (!garment) throw new BadInput('export', message('command', 'hasNoPieces', { id: subject.id }));
	const named = text.split(',');
	checkCount(named.length + (name === undefined ? 0 : 1));
	const sizes = named.map((each): SizedBody => {
		const size = readSize(each.trim(), '--sizes');
		return { name: size.name, body: bodyOfSize(size, speech.words.sizes.bodyName(size)) };
	});
	const file = name === undefined ? undefined : await readInputFile(name, speech);
	const own = file && subject.read(file);
	if (file && own) checkComplete(garment, own.body, file.place);
	const all = own ? [...sizes, { name: own.body.name, body: own.body }] : sizes;
	const choices = { allowances: own?.body.allowances ?? {}, edges: own?.edges ?? {} };
	const bySize = all.toSorted((a, b) => (a.body.measurements.bust ?? 0) - (b.body.measurements.bust ?? 0));
	await writeWhole(to, await nestedFile(madeNest(garment, bySize, choices, speech), { ...request, speech }));
};
