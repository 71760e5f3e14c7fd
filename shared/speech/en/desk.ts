import type { Noun } from '../noun.ts';
import type { Voice } from '../voice.ts';
import type { Compass } from '../../method.ts';
import type { Mm, Radians, Unit } from '../../units.ts';
import { capital, the, The } from './grammar.ts';
import { markNoun, type Mark } from './verdicts.ts';
import { smallIn } from './slight.ts';

/** A step as it is named: a point has a name beside what it is called. */
export interface NamedStep {
	readonly point?: string | undefined;
	readonly label: Noun;
}

/** A direction on the sheet: one of the four square ways, and how far off it. */
export interface Slant {
	readonly straight: 'down' | 'up' | 'across' | 'in';
	readonly off: Radians;
}

/** A place on the sheet, counted from the corner. */
export interface Place {
	readonly x: Mm;
	readonly y: Mm;
}

/** How a part is turned, and how wide it opens; each where there is such a thing. */
export interface Turned {
	readonly angle: Radians;
	readonly open?: { readonly width: Mm; readonly at: string } | undefined;
}

/** What a learner is asked to put down. */
export type Put = 'place' | 'way' | 'level' | 'ends' | 'handles';

/** A handle while it is moved. */
export interface HandleTold {
	readonly share: number;
	readonly to: 'corner' | 'chord';
	readonly length: Mm;
	readonly off: Radians | undefined;
}

/** The sheet, its tool, the dock and typed entry. */
export const desk = (v: Voice) => {
	const unitName = (unit: Unit): string => (unit === 'in' ? 'inches' : unit);
	const small = (length: Mm): string => smallIn(v, length);
	const onSheet = ({ x, y }: Place): string => `${v.length(x)} across, ${v.length(y)} down`;
	const turned = ({ angle, open }: Turned): string => {
		const size = v.fixed(Math.abs((angle * 180) / Math.PI), 1);
		const turn = angle === 0 ? 'not turned' : `turned ${size}° ${angle > 0 ? 'clockwise' : 'anticlockwise'}`;
		return open ? `open ${v.length(open.width)} at ${open.at} · ${turn}` : turn;
	};
	const inSpeech = ({ point, label }: NamedStep): string =>
		point === undefined ? the(label) : `${point}, ${the(label)}`;
	return {
		unitName,
		inSpeech,
		titled: ({ point, label }: NamedStep) => (point === undefined ? '' : `${point}: `) + The(label),

		/** A step in a row of a table. */
		row: ({ point, label }: NamedStep) => (point === undefined ? The(label) : `${point}, ${the(label)}`),

		yourSheet: 'Your sheet',
		startsFrom: ({ steps }: { steps: readonly Noun[] }) =>
			`This step starts from ${v.list(steps.map(the))}, not drafted yet.`,
		draftEarlier: 'Draft the earlier steps for me',
		notNeeded: ({ name }: { name: string }) => `This step is not needed for ${name}.`,
		nextLesson: ({ title }: { title: string }) => `Next lesson: ${title}`,
		nextStep: ({ label }: { label: Noun }) => `Next: ${the(label)}`,
		check: 'Check',
		change: 'Change it',

		allRight: 'all steps of this lesson are right',
		nothingHere: 'nothing to draft here for this body',
		yourTurn: ({ left }: { left: number }) => `your turn · ${left} left`,
		sheet: 'Sheet',
		undo: 'Undo',
		undoKeys: 'Undo (Ctrl Z)',
		redo: 'Redo',
		redoKeys: 'Redo (Ctrl Shift Z)',
		zoomOut: 'Zoom out',
		zoomOutKeys: 'Zoom out (−)',
		zoomIn: 'Zoom in',
		zoomInKeys: 'Zoom in (+)',
		step: 'Closer',
		showStep: 'Look closer at this step',
		all: 'Whole',
		showAll: 'Show the whole draft',
		showAllKeys: 'Show the whole draft (0)',
		options: 'Points and options of the sheet',
		points: 'Points and distances',
		goesOn: 'What is right goes on by itself',
		grid: 'Grid',
		gridAbout: 'Grid that marks settle on',

		sheetFor: ({ label, target, turns }: { label: Noun; target: string; turns: boolean }) =>
			`Sheet for ${the(label)}. Arrow keys ${turns ? 'turn the panel' : `move ${target}`}, Enter checks.`,
		sheetLocked: ({ label }: { label: Noun }) =>
			`Sheet for ${the(label)}. Its earlier steps are not drafted yet.`,
		draftingSheet: 'drafting sheet',
		needsScript: 'The sheet needs JavaScript. The text and the figures can be read without it.',
		now: (step: NamedStep) => `Now ${inSpeech(step)}.`,
		/** What a mark is called that the tool moves. */
		endOfLevel: 'the end of the level',
		firstEnd: 'the first end',
		lastEnd: 'the last end',
		handleOut: ({ point }: { point: string }) => `the handle out of ${point}`,
		handleInto: ({ point }: { point: string }) => `the handle into ${point}`,
		out: ({ point }: { point: string }) => `out of ${point}`,
		into: ({ point }: { point: string }) => `into ${point}`,
		handles: 'Handle to move',

		at: ({ point }: { point: string }) => `at ${point}`,
		from: ({ far, point, way: { straight, off } }: { far: Mm; point: string; way: Slant }) => {
			const angle = v.degrees(off);
			return `${v.length(far)} from ${point}, ${angle === v.degrees(0 as Radians) ? '' : `${angle} off `}straight ${straight}`;
		},
		onSheet,
		turned,
		curveLong: ({ length, wanted }: { length: Mm; wanted: Mm }) =>
			`the curve is ${v.length(length)} long; it must be ${v.length(wanted)}`,
		moved: ({ by }: { by: Mm }) => `moved ${v.length(by)}`,
		live: ({ told }: { told: string }) => capital(told),
		placed: ({ target, where }: { target: string; where: string }) => `${target}: ${where}`,
		moving: ({ target, told, place }: { target: string; told: string; place: Place }) =>
			`${target}: ${told}; ${onSheet(place)}`,

		/** An entry as a drafter says it. */
		sayIt: ({ put }: { put: Put }): string =>
			put === 'ends' ? 'The two ends of the line' : 'Where it goes, as you would say it',
		suchAs: ({ put }: { put: Put }): string =>
			({
				place: 'from B down 12/2+1',
				way: '12 across, 7 down',
				level: '12/2+1',
				ends: 'B to D',
				handles: 'in 3 then up 2'
			})[put],
		/** Words of an entry; those that mean the same are parted by a stroke. */
		fromWords: 'from',
		toWords: 'to',
		thenWords: 'then',
		wayWords: {
			down: 'down|below',
			up: 'up|above',
			across: 'across|outwards|outward|out',
			in: 'inwards|inward|in'
		},
		saidDistance: ({ from, go, sum }: { from: string; go: Compass; sum: string }) =>
			`from ${from} ${go} ${sum}`,
		saidPlace: ({ across, down }: { across: string; down: string }) =>
			[across && `across ${across}`, down && `down ${down}`].filter(Boolean).join(', '),
		comesTo: ({ value }: { value: Mm }) => `= ${v.length(value)}`,
		unusable: ({ rule }: { rule: string }) =>
			`${capital(rule)}${rule.endsWith('?') ? '' : '.'} Nothing is counted.`,
		tooFarOff: 'that lies further off than the sheet goes',
		noSuchPoint: ({ name }: { name: string }) => `no point ${name} stands on the sheet yet`,
		sayStart: 'say from which point, such as “from B”',
		sayWay: 'say which way it goes: down, up, across or in',
		sayEnds: 'name the two points that it runs between, such as “B to D”',

		nudge: 'Nudge',
		nudgeIn: 'Nudge in',
		nudgeUp: 'Nudge up',
		nudgeDown: 'Nudge down',
		nudgeOut: 'Nudge out',
		turnBack: 'Turn anticlockwise',
		turnOn: 'Turn clockwise',

		/** A handle as it is moved: its share of the way that it goes, the curve's length, and how square it leaves or reaches its point. */
		handleTold: ({ share, to, length, off }: HandleTold) =>
			[
				`${v.fixed(share, 2)} ${to === 'corner' ? 'to the corner' : 'of the straight way'}`,
				`${v.length(length)} long`,
				...(off === undefined ? [] : [`${v.degrees(off)} off square`])
			].join(' · '),

		told: 'What is said of this step',
		help: 'Help',
		askWhere: 'Where do I look?',
		askRule: 'What is the rule?',
		askNumber: 'Show me the number',

		draftedForYou: 'It was drafted for you.',
		fromOwn: ({ marks }: { marks: readonly Mark[] }) =>
			`It is right from your own ${v.list(marks.map((mark) => markNoun(mark).name))}: one slip is one mistake.`,
		/** About how far a step goes, for whoever asks where to look. */
		about: ({ far, from }: { far: Mm; from: string | undefined }) =>
			from === undefined
				? `It is about ${v.length(far)} long.`
				: `It lies about ${v.length(far)} from ${from}.`,
		movedAlong: ({ steps }: { steps: readonly Noun[] }) =>
			v.plural(steps.length, {
				one: `${capital(v.list(steps.map(the)))} moved along and stays right.`,
				other: `${capital(v.list(steps.map(the)))} moved along and stay right.`
			}),
		goOn: 'Go on with it as it is',
		allowedPoint: ({ within }: { within: Mm }) => `Anything within ${small(within)} counts as right.`,
		allowedCurve: ({ within, length }: { within: Mm; length: Mm }) =>
			`The curve may stray ${small(within)} and be ${small(length)} longer or shorter.`,
		allowedEnds: ({ within }: { within: Mm }) => `Its ends may lie ${small(within)} off.`,

		missing: 'Some measurements are missing',
		needs: ({ measurements, name }: { measurements: readonly Noun[]; name: string }) =>
			`This draft needs ${v.list(measurements.map(the))} of ${name}.`,
		/** A link to the measurements, and what follows it. */
		enter: ({ count }: { count: number }): readonly [string, string] => [
			v.plural(count, { one: 'Enter it', other: 'Enter them' }),
			', or draft for one of the invented bodies.'
		],
		cannotYet: ({ name }: { name: string }) => `${name} cannot be drafted yet`,
		refused: ({ because }: { because: string }) => `${capital(because)}.`,
		lookAtMeasurements: 'Look at the measurements',
		notMeasured: 'not measured'
	};
};
