import { mm, type Mm } from '../../units.ts';
import type { Voice } from '../voice.ts';

/** What the figure of a measurement shows. */
export type TapeView = 'front' | 'back' | 'arm' | 'legs';
const SEEN: Readonly<Record<TapeView, string>> = {
	front: 'The stand is seen from the front',
	back: 'The stand is seen from the back',
	arm: 'The right arm is seen from its outer side',
	legs: 'The body below the waist is seen from the front'
};

/** What lessons embed beside the steps: figures, tapes, comparisons. */
export const lesson = (v: Voice) => {
	return {
		about: ({ part, minutes }: { part: string; minutes: number }) => `${part} · about ${minutes} minutes`,
		lessons: 'Lessons',
		toSheet: '↑ The sheet',
		notYetHere: 'This lesson is not written in this language yet. Here is its English text.',

		/** How far a step has come. */
		absent: 'not needed for this body',
		locked: 'later',
		open: 'to do',
		placed: 'not checked yet',
		right: 'right',
		wrong: 'not right yet',
		kept: 'kept as it is',
		lookAt: 'Look at this step',
		draftThis: 'Draft this step',
		actOn: ({ act, step }: { act: string; step: string }) => `${act}: ${step}`,

		girthsFor: ({ label, name }: { label: string; name: string }) => `${label}: ${name}`,
		/** How much more or less one girth is than the first. */
		against: ({ value, first }: { value: Mm; first: Mm }) =>
			`${value < first ? '−' : '+'}${v.length(mm(Math.abs(value - first)))}`,
		againstFirst:
			'A dark bar is the body, a light one the cloth. The last column is how much more or less each is than the first.',
		piecesNotLoaded: 'The pieces could not be loaded.',
		tryAgain: 'Try again',
		piecesOurFault: 'The pieces could not be worked. The fault is ours, not yours.',
		piecesWaiting: 'The pieces are being worked out.',
		pieceFile: ({ piece, name }: { piece: string; name: string }) => `${piece} for ${name}`,
		oneScale: 'All to one scale; a broken line lies on the fold.',
		layingFile: ({ name }: { name: string }) => `Pieces on the cloth for ${name}`,

		drawnFor: ({ name }: { name: string }) => `Drawn for ${name}.`,
		savePicture: 'Save as a picture',
		pictureFailed: ({ failure }: { failure: 'notLoaded' | 'tooLarge' | 'ourFault' }) =>
			({
				notLoaded: 'What makes pictures could not be loaded; try when you are connected',
				tooLarge: 'This browser could not make the picture',
				ourFault: 'The picture could not be made; the fault is ours'
			})[failure],

		tape: ({ title, what, seen }: { title: string; what: string; seen: TapeView }) =>
			`${title}: the tape goes ${what}. ${SEEN[seen]}.`,
		/** A measurement's title, in bold, and where its tape goes. */
		tapeGoes: ({ what }: { what: string }) => `, ${what}.`,
		seenFrom: ({ seen }: { seen: TapeView }) => `${SEEN[seen]}; its shape is invented.`,
		sideNeck: 'side neck point',
		nape: 'nape',
		armpit: 'armpit level',
		bustPoint: 'bust point',
		shoulderPoint: 'shoulder point',
		waist: 'waist',
		hip: 'hip',
		elbow: 'elbow',
		wrist: 'wrist bone',
		floor: 'floor',

		yourOwn: ({ title }: { title: string }) => `Your own ${title.toLowerCase()}`,
		inNamed: ({ title, name }: { title: string; name: string }) => `${title}, in ${name}`,
		ofNamed: ({ title, name }: { title: string; name: string }) => `${title} of ${name}`,
		fold: 'fold',
		whose: 'Whose measurements',
		keepIt: 'Keep it',
		writeFirst: 'Write the number first.',
		forgotten: ({ title, name }: { title: string; name: string }) =>
			`Forgotten: ${title.toLowerCase()}, in ${name}.`,
		keptIn: ({ length, name }: { length: Mm; name: string }) =>
			`Kept: ${v.length(length)}, in ${name}, on this device only.`,
		notKept: ({ length }: { length: Mm }) =>
			`${v.length(length)} holds until this page is closed: the browser does not keep it.`,
		example: ({ name, length }: { name: string; length: Mm }) =>
			`For the invented body ${name} it is ${v.length(length)}.`,
		youDraftFor: ({ name, invented }: { name: string; invented: boolean }) =>
			`You draft for ${name}${invented ? ', who is invented' : ''}.`,
		draftForMine: 'Draft for my measurements',
		draftFor: ({ name }: { name: string }) => `Draft for ${name}`,

		compared: 'Your draft in blue over the computed draft in ink.',
		computed: 'computed',
		yours: 'your own',
		forBody: ({ name }: { name: string }) => `for ${name}`,
		comparedFile: ({ method, name }: { method: string; name: string }) => `${method}, compared, for ${name}`
	};
};
