import { BadInput } from '#shared/bad-input.ts';
import type { Body } from '#shared/body.ts';
import { unknownName } from '#shared/reading.ts';
import { message } from '#shared/speech/message.ts';
import type { Speech } from '#shared/speech/speech.ts';
import type { Course } from '#course/course.ts';
import type { Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { DRAFT_FORMATS, draftFile, isDraftFormat } from '#exports/files/draft-file.ts';
import { draftJson, NOTHING_MADE, type MadeOf } from '#exports/table/draft-json.ts';
import { isTracedOff, ofDraft } from '#garment/of-draft.ts';
import { NO_CHOICES } from '#garment/sewn.ts';
import { draftOrRefuse } from './draft-or-refuse.ts';
import { draftTable } from './draft-output.ts';
import { readBodyFile } from './body-file.ts';
import type { Subject } from './subject.ts';
import { withCures } from './wear.ts';

/** What the first garment made of a draft shows of it, with what would put right the checks that fail. */
const madeOf = (course: Course, method: Method, draft: Draft, body: Body): MadeOf => {
	for (const id of course.garmentIds) {
		const garment = course.garment(id);
		if (!garment || !isTracedOff(garment, method)) continue;
		const { seams, wear } = ofDraft(garment, draft, body);
		return { seams, wear: withCures(wear, garment, body, NO_CHOICES) };
	}
	return NOTHING_MADE;
};

const methodSubject = (method: Method, course: Course, speech: Speech): Subject => ({
	id: method.id,
	measurements: method.measurements,
	allowances: method.allowances,
	formats: DRAFT_FORMATS,
	pieces: [],
	read: (file) => ({
		body: readBodyFile(file, method.allowances, speech),
		edges: {}
	}),
	work: ({ body }, place) => {
		const draft = draftOrRefuse(method, body, place, speech);
		const made = () => madeOf(course, method, draft, body);
		return {
			json: () => draftJson(draft, body.name, speech.inUnit(body.unit), made()),
			table: () => draftTable(method, draft, body.name, speech, made().wear),
			file: async ({ format, ...rest }) => {
				if (!isDraftFormat(format)) throw new Error(`a draft is no ${format}`);
				return draftFile(method, draft, body, { ...rest, format, made, speech: speech.inUnit(body.unit) });
			}
		};
	}
});

/** What a command may be about. */
export type SubjectKind = 'method' | 'garment' | 'garmentOrMethod';

/** The method of this id. Throws BadInput at `command`: it names the nearest, or the command that takes a garment. */
export const methodOf = (course: Course, id: string, command: string): Method => {
	const { methodIds } = course;
	const method = course.method(id);
	if (method) return method;
	throw new BadInput(
		command,
		course.garmentIds.includes(id)
			? message('command', 'isGarment', { id })
			: unknownName('method', id, methodIds, methodIds)
	);
};

/** The garment or the method of this id in a course. Throws BadInput at `command` where there is none. */
export const subjectOf = async (
	course: Course,
	kind: SubjectKind,
	id: string,
	command: string,
	speech: Speech
): Promise<Subject> => {
	const { garmentIds, methodIds } = course;
	if (kind !== 'method' && garmentIds.includes(id)) {
		// It alone loads what finds where outlines cross, which takes longer than a draft does.
		const { garmentSubject } = await import('./garment-subject.ts');
		const garment = course.garment(id);
		if (garment) return garmentSubject(garment, speech);
	}
	if (kind === 'garment') {
		if (methodIds.includes(id)) throw new BadInput(command, message('command', 'isMethod', { id }));
		throw new BadInput(command, unknownName('garment', id, garmentIds, garmentIds));
	}
	if (kind === 'method' || methodIds.includes(id))
		return methodSubject(methodOf(course, id, command), course, speech);
	const ids = [...new Set([...garmentIds, ...methodIds])];
	throw new BadInput(command, unknownName(kind, id, ids, ids));
};
