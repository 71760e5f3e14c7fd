import { probesSchema } from '#practice/probe.ts';
import { message } from '#shared/speech/message.ts';
import { whole } from './saved.ts';
import { savedKey } from './shelf.ts';

/** When parts were finished, and what had stayed of them a week later. */
export const PROBES = whole(savedKey('probes'), message('keeping', 'probes'), probesSchema);

/** The learner's own day, as 2026-11-25. */
export const today = (): string => {
	const now = new Date();
	const two = (part: number): string => String(part).padStart(2, '0');
	return `${String(now.getFullYear())}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
};
