import type { MeasurementKey } from '../../measurements.ts';
import type { Mm } from '../../units.ts';
import type { Voice } from '../voice.ts';
import { capital, the } from './grammar.ts';
import { measurementNoun } from './nouns.ts';

/** What is said of the invented bodies, by their ids. */
const BODIES: Readonly<Record<string, string>> = {
	heron:
		'An invented body: nobody was measured. An even figure, used wherever a lesson shows worked numbers.',
	wren: 'An invented body: nobody was measured. Petite, with a short back and a small bust.',
	plover: 'An invented body: nobody was measured. A full hip under a narrow waist.',
	lark: 'An invented body: nobody was measured. Tall and long in the back, written in inches as a tape shows them.',
	gannet: 'An invented body: nobody was measured. A broad back and straight sides.',
	eider:
		'An invented body: nobody was measured. A full bust, a full waist and sloping shoulders, with allowances of its own.',
	siskin:
		'An invented body: nobody was measured. Small-busted and upright, with front and back of one length, so the block has no dart.'
};

/** So many measurements are named; of more only their number is said, since the fields show them. */
const FEW = 3;

/** The page of measurements. */
export const measurements = (v: Voice) => ({
	heading: 'Measurements',
	about:
		'Draft for one of the invented bodies of the class at Alder Row, or from your own tape. What you enter stays in this browser: nothing is sent anywhere.',
	draftFor: 'Draft for',
	yourOwn: 'your own',
	invented: 'invented',
	/** What is said of an invented body: in English its own file says it. */
	demoBody: ({ id }: { id: string }) => BODIES[id] ?? '',
	addOwn: 'Add your own',
	allTaken: 'All are taken: begin to draft',
	notTaken: 'not taken',
	name: 'Name',
	more: 'More measurements: none is needed',
	noneNeeded:
		'Every draft gets by with the ten above. Each of these makes something surer, a check of the finished draft or a number that you choose; leave empty whatever was not taken.',
	howToTake: 'How to take it',
	howToTakeThis: ({ title }: { title: string }) => `How to take it: ${title}`,
	allowances: 'Allowances: your own numbers',
	usual: 'An empty field means the usual number, which stands in grey.',
	range: ({ range }: { range: readonly [Mm, Mm] }) => {
		const { least, most } = v.range(range);
		return `from ${least} to ${most}`;
	},
	save: 'Save as a file',
	remove: 'Remove…',
	reallyRemove: 'Yes, remove these measurements',
	keep: 'Keep them',
	ready: 'Can be drafted',
	wanted: ({ keys }: { keys: readonly MeasurementKey[] }) =>
		keys.length > FEW
			? `${v.number(keys.length)} still to measure`
			: `Still wanted: ${v.list(keys.map((key) => the(measurementNoun(key))))}`,
	/** Stands in the way of a draft, where the field asks the rest. */
	lookAt: ({ of }: { of: MeasurementKey }) => `Look at ${the(measurementNoun(of))} once more`,
	cannotDraw: 'with these numbers one of its lines cannot be drawn',
	open: 'Open a file of measurements',
	opened: ({ name }: { name: string }) => `${name} is opened and chosen.`,
	notOpened: ({ file, clause }: { file: string; clause: string }) => `${file} was not opened: ${clause}.`,
	notSaved: 'it is not a file of measurements as this page saves them',
	/** A reason why a body cannot be drafted, as a sentence. */
	because: ({ reason }: { reason: string }) => capital(reason)
});
