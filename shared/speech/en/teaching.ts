import { momentIn } from '../day.ts';
import type { Misdone } from '../misdone.ts';
import type { Voice } from '../voice.ts';
import type { NamedStep } from './desk.ts';
import { the, The } from './grammar.ts';

/** A step at which something went wrong, and what was done. */
interface AtStep {
	readonly step: NamedStep;
	readonly did: readonly Misdone[];
}
/** How many it was of how many who put anything down. */
interface Many {
	readonly count: number;
	readonly of: number;
}

/** Who said something, and when; no name for a teacher who has gone. */
interface Said {
	readonly by: string | null;
	readonly at: number;
}

/** What a teacher is told of a class, and tells it. */
export const teaching = (v: Voice) => {
	const at = ({ point, label }: NamedStep): string =>
		`At ${point === undefined ? '' : `${point}, `}${the(label)},`;
	const title = ({ point, label }: NamedStep): string =>
		point === undefined ? The(label) : `${point}, ${the(label)}`;
	const done = (did: readonly Misdone[]): string => {
		const rules = did.flatMap(({ rule }) => rule ?? []);
		return `${did.map((each) => each.did).join(' and ')}${rules.length === 1 ? `; ${rules.join()}` : ''}.`;
	};
	const when = (at: number): string => momentIn(v.language, at);
	const signed = ({ by, at }: Said): string => `${by ?? 'a teacher who has left'}, ${when(at)}`;
	return {
		missteps: 'What the class has not understood yet',
		missed: ({ step, did, count, of }: AtStep & Many) => `${at(step)} ${count} of ${of} ${done(did)}`,
		missedPerhaps: ({ step, did, count, of }: AtStep & Many) =>
			`${at(step)} ${count} of ${of} probably ${done(did)}`,
		missedOtherwise: ({ step, count, of }: Pick<AtStep, 'step'> & Many) =>
			`${at(step)} ${count} of ${of} ${v.plural(count, { one: 'was', other: 'were' })} wrong in a way that no rule explains.`,
		noMissteps: 'Nothing that was put down was wrong.',
		who: 'Who',
		forBoard: 'For the board',
		board: ({ step, did }: AtStep) => `${title(step)}: some of us ${done(did)}`,
		boardPerhaps: ({ step, did }: AtStep) => `${title(step)}: perhaps some of us ${done(did)}`,
		boardOtherwise: ({ step }: Pick<AtStep, 'step'>) => `${title(step)}: let us draft it together once more.`,
		draftOf: ({ name }: { name: string }) => `${name}’s draft`,
		noBody: 'Nothing was handed in that could be drawn.',
		theirs: 'the learner’s marks',
		replay: 'Mark by mark',
		markBack: 'One mark back',
		markOn: 'One mark on',
		nothingYet: 'Nothing is put down yet.',
		markAt: ({
			number,
			of,
			step,
			at: time,
			checked,
			wrong,
			help
		}: {
			number: number;
			of: number;
			step: NamedStep;
			at: number;
			checked: boolean;
			wrong: boolean;
			help: number;
		}) =>
			`${number} of ${of}: ${title(step)}, ${checked ? `checked, ${wrong ? 'wrong' : 'not wrong'}` : 'not checked'}` +
			`${help > 0 ? `, ${v.plural(help, { one: '1 rung of help', other: `${help} rungs of help` })}` : ''}. ${when(time)}`,
		against: 'Against the computed one',
		chooseStep: 'Choose a step in the table to give it another mark, or to write beside it.',
		judged: ({ mark, tries, help }: { mark: number; tries: number; help: number }) =>
			`The checker gives ${v.number(mark)}: ${v.plural(tries, { one: '1 wrong try', other: `${tries} wrong tries` })}, ` +
			`${v.plural(help, { one: '1 rung of help', other: `${help} rungs of help` })}.`,
		given: ({ mark, reason, back, ...said }: Said & { mark: number; reason: string; back: number | null }) =>
			`Marked ${v.number(mark)} by ${signed(said)}: ${reason}${back === null ? '' : ` (Taken back ${when(back)}.)`}`,
		takeBack: 'Take it back',
		wrote: ({ text, ...said }: Said & { text: string }) => `${text} (${signed(said)})`,
		removeComment: 'Take it away',
		write: 'Write to the learner beside this',
		send: 'Write it',
		newMark: 'Another mark, from 0 to 1',
		reason: 'Why (the learner sees it)',
		give: 'Give this mark',
		fromTeacher: ({ count }: { count: number }) =>
			v.plural(count, {
				one: 'Words from your teacher, at 1 place',
				other: `Words from your teacher, at ${count} places`
			}),
		outOf: 'Out of',
		wrongTries: 'Wrong tries',
		lateHeading: 'Late',
		asTable: 'Marks for a spreadsheet (CSV)',
		asTableComma: 'with decimal commas and semicolons',
		print: 'Print',
		rawLog: 'All that was handed in, as a file',
		now: 'Who is where',
		live: 'as it happens',
		asking: 'asked anew every few seconds',
		lost: ({ at: time }: { at: number }) =>
			`The connection is lost. This is from ${when(time)}; it is tried again by itself.`,
		signedOut: 'You are no longer signed in.',
		notBegun: 'not begun',
		justNow: 'just now',
		minutesAgo: ({ minutes }: { minutes: number }) =>
			v.plural(minutes, { one: '1 minute ago', other: `${minutes} minutes ago` }),
		handed: ({ count }: { count: number }) => v.plural(count, { one: '1 mark', other: `${count} marks` }),
		lookAgain: 'Mark what came in since',
		toBoard: 'Show it on the board',
		boardOf: ({ name }: { name: string }) => `${name}: the board`,
		stepOf: ({ number, of }: { number: number; of: number }) => `${number} of ${of}`,
		back: 'Back',
		on: 'On',
		answers: 'Where the class put it',
		firstBody: 'The body on the left',
		secondBody: 'The body on the right',
		remarking: 'Mark it anew',
		outdated: ({ count }: { count: number }) =>
			v.plural(count, {
				one: 'The work of 1 learner was marked by an earlier version of the checker.',
				other: `The work of ${count} learners was marked by an earlier version of the checker.`
			}),
		seeRemarking: 'See what marking it anew would change',
		allCurrent: 'All marks are those that the checker would give today.',
		remarkingAbout: ({ count }: { count: number }) =>
			`All that ${v.plural(count, { one: '1 learner', other: `${count} learners` })} handed in is replayed, as it was set. ` +
			'Marks that a teacher gave stay. Nothing is changed before you say so.',
		noChange: 'No mark would change.',
		before: 'Before',
		after: 'After',
		where: 'Where',
		stepChange: ({ step, before, after }: { step: string; before: number; after: number }) =>
			`${step}: ${v.number(before)}, then ${v.number(after)}`,
		remark: 'Mark it anew as shown',
		others: ({ count }: { count: number }) => v.plural(count, { one: 'One more', other: `${count} more` })
	};
};
