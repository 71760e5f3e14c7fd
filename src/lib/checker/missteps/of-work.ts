import { readPlacement } from '#shared/placement.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { stepNamed } from '#drafting/method.ts';
import { stepLeansOn } from '#drafting/steps/kinds.ts';
import type { Judged, LearnersWork } from '../work.ts';
import { diagnose } from './diagnose.ts';
import { NO_DIAGNOSIS, type Diagnosis } from './misstep.ts';
import { diagnosisWords } from './words.ts';

/**
 * What probably went wrong at a step of a learner's work: from the learner's own earlier marks where it leans on
 * those, weighed together with the computed ones, else from these alone. No guess where the step is not wrong.
 */
export const misstepIn = (work: LearnersWork, found: Judged, name: string): Diagnosis => {
	const { method, body, truth, entries } = work;
	const placed = readPlacement(entries[name]?.placement).data;
	if (!truth || !placed || found.verdict(name).answer !== 'wrong') return NO_DIAGNOSIS;
	const leans = stepLeansOn(stepNamed(method, name)).some((need) => found.moved.has(need));
	const own = leans ? diagnose(method, name, body, found.before(name), placed, truth) : NO_DIAGNOSIS;
	return own.kind === 'none' ? diagnose(method, name, body, truth, placed) : own;
};

/** The same in the learner's words; nothing where there is no guess. */
export const likelyWords = (work: LearnersWork, found: Judged, name: string, speech: Speech): string =>
	diagnosisWords(misstepIn(work, found, name), speech);
