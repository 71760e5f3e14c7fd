import type { Mm } from '../../units.ts';
import type { Voice } from '../voice.ts';

/** Two points between which a tape is laid. */
interface Between {
	readonly from: string;
	readonly to: string;
}

/** What one reading was, and what the others say it should be. */
interface Misread extends Between {
	readonly read: Mm;
	readonly told: Mm;
}

/** Checking a paper draft by tape. */
export const tape = (v: Voice) => {
	const pair = ({ from, to }: Between): string => `${from}–${to}`;
	const told = ({ read, told: right, ...of }: Misread): string =>
		`${pair(of)} (you read ${v.length(read)}, the others say ${v.length(right)})`;
	return {
		pair,
		about: ({ takings, points, least }: { takings: number; points: number; least: number }) =>
			`Lay the paper flat and measure straight from mark to mark. ${v.number(takings)} distances find all ${v.number(points)} points: ` +
			`${v.number(least)} would be the fewest, and the others show a misreading and on which side a point lies. You may stop anywhere: what is found by then is told.`,
		cannot: 'This draft cannot be measured by tape: its points lie too near one another, or too far apart.',
		tooNear: ({ points }: { points: readonly string[] }) =>
			`Too near another point for a tape, and so left out: ${v.list(points)}.`,
		with: 'Measured with',
		tapes: { rule: 'a rule or a steel tape', tape: 'a tape of the sewing room' },
		aboutTape: ({ error }: { error: Mm }) =>
			`One reading is taken to be right within about ${v.small(error) ?? ''}, two times in three. A cloth tape stretches: hold yours against a rule first.`,
		side: ({ top, below, point }: { top: string; below: string; point: string }) =>
			`Turn the paper so that ${top} is above ${below}. ${point} lies`,
		sides: { right: 'to the right', left: 'to the left' },
		mirrored:
			'Yours is the mirror image of the computed draft: good for the other half of the body. It is compared turned over.',
		twice:
			'A distance may be measured twice, with a semicolon between the readings. Their mean counts, and two that agree are believed.',
		order: 'Distances in order',
		field: ({ from, to, number }: Between & { number: number }) =>
			`${v.number(number)}: from ${from} to ${to}, in ${v.unit}`,
		fieldAgain: ({ from, to, number }: Between & { number: number }) =>
			`${v.number(number)}: from ${from} to ${to} once more, in ${v.unit}`,
		picture: 'The draft with the distances; the one at hand is drawn strongly',
		progress: ({ read, takings, found, points }: Record<'read' | 'takings' | 'found' | 'points', number>) =>
			`${v.number(read)} of ${v.number(takings)} distances read; ${v.number(found)} of ${v.number(points)} points found.`,
		begin: ({ from }: { from: string }) =>
			`Nothing is found yet: begin with the distances at ${from}, in order.`,
		misses: ({ by }: { by: Mm }) => `The readings agree within ${v.small(by) ?? 'a hair'}.`,
		worse: ({ by }: { by: Mm }) =>
			`The readings miss one another by ${v.small(by) ?? 'a hair'}, more than such a tape should. Each point’s own error is taken to be as much greater. Is the paper flat, and the tape straight?`,
		misread: ({ of: [only, ...others] }: { of: readonly Misread[] }) => {
			if (!only) return '';
			return others.length === 0
				? `One reading does not agree with the others: ${told(only)}. Measure it again; until then it does not count.`
				: `One of these readings does not agree with the others: ${v.list([only, ...others].map(told))}. Measure them again; until then they do not count.`;
		},
		perhaps: ({ of, points }: { of: readonly Misread[]; points: readonly string[] }) =>
			`${points.length === 0 ? 'Some points lie' : `${v.list(points)} ${points.length === 1 ? 'lies' : 'lie'}`} far out. If that is not so on your paper, ${of.length === 1 ? 'this was misread' : 'one of these was misread'}: ${v.list(of.map(told))}. Measure it once more: two readings that agree are believed.`,
		apart: ({ by }: { by: Mm }) =>
			`the readings differ by ${v.length(by)}, more than such a tape explains: measure it once more`,
		again: 'measure it again',
		clear: 'Clear all readings',
		reallyClear: 'Really clear them?',
		keepsHere: 'What you type is kept in this browser.'
	};
};
