import { describe, expect, it } from 'vitest';
import { garments } from '../garment/garment-files.ts';
import {
	embeddable,
	foldersHolding,
	lessonFiles,
	lessonFolders,
	lessonMethods,
	type LessonFile
} from './lesson-files.ts';
import { problemsAcross, problemsIn, tooLong, type Known } from './lesson-rules.ts';
import { frontMatter } from './sections.ts';

const LESSONS = lessonFiles();
const KNOWN: Known = {
	components: embeddable(),
	methods: lessonMethods(),
	garments: new Map(garments().map((garment) => [garment.id, garment]))
};

describe('the lessons', () => {
	it('every folder holds one, and is numbered', () => {
		expect(LESSONS.map(({ id }) => id)).toEqual(lessonFolders());
		for (const { id } of LESSONS) expect(id).toMatch(/^\d\d-[a-z-]+$/);
		expect(LESSONS.length).toBeGreaterThanOrEqual(18);
	});

	it.each(LESSONS)('$id is sound', (lesson) => {
		expect(problemsIn(lesson, KNOWN)).toEqual([]);
	});

	it.each([...KNOWN.methods.values()])('the steps of $id are each asked for once, in order', (method) => {
		expect(problemsAcross(LESSONS, method)).toEqual([]);
	});

	it('the last of each part, and no other, has beside it what the part was good for', () => {
		const part = ({ text }: LessonFile): unknown => frontMatter(text)['part'];
		const last = LESSONS.filter((lesson, i) => part(lesson) !== LESSONS.slice(i + 1).map(part)[0]);
		expect(foldersHolding('part.yaml')).toEqual(last.map(({ id }) => id));
	});

	it('are short', () => {
		expect(tooLong(LESSONS)).toEqual([]);
	});
});

/** A sound lesson; each row below spoils one thing in it. */
const SOUND = `---
title: A planted lesson
part: Practice
method: first-marks
garment: course-dress
minutes: 2
summary: Stands here to be spoilt.
---

Words come first.

<Step name="A">

Go down. That is **A**.

</Step>

<Tape of="bust" />

<TryIt of="waist" />

<Figure upto="A" caption="One point." />

<Comparison />

<GarmentPieces />

<PieceFigure piece="front" caption="The front." />

<SewnSeam seam="side" />

<LayingFigure />
`;

const spoilt = (what: string | RegExp, put: string): readonly string[] => {
	const text = SOUND.replace(what, put);
	if (text === SOUND) throw new Error('nothing was spoilt');
	return problemsIn({ id: 'planted', text }, KNOWN);
};

describe('a planted bad lesson is seen', () => {
	it('the lesson is sound before it is spoilt', () => {
		expect(problemsIn({ id: 'planted', text: SOUND }, KNOWN)).toEqual([]);
	});

	it.each<[what: string | RegExp, put: string, problem: string]>([
		['---\ntitle', 'title', 'there is no front matter between two lines of ---'],
		[/title: .*\n/, '', 'front matter: title: Invalid input: expected string, received undefined'],
		[/minutes: 2/, 'minutes: two', 'front matter: minutes: Invalid input: expected number, received string'],
		[/part: .*\n/, 'part: Practice\ncolour: red\n', 'front matter: : Unrecognized key: "colour"'],
		['method: first-marks', 'method: first-mark', 'there is no method "first-mark"'],
		['method: first-marks\n', '', 'line 11: <Step> needs a method in the front matter'],
		['<Comparison />', '<Compare />', 'line 24: there is no component <Compare>'],
		['Words come', 'Words <b>come</b>', 'line 10: there is no component <b>'],
		['Words come first.', '<script>1</script>', 'line 10: there is no component <script>'],
		['<Step name="A">', '<Step name="Z">', 'line 12: first-marks has no step "Z"'],
		['<Step name="A">', '<Step name="O">', 'line 12: the corner is given and is no step to do'],
		['<Step name="A">', '<Step>', 'line 12: <Step> needs name'],
		['<Step name="A">', '<Step name="A" hard>', 'line 12: <Step> is written wrongly'],
		['upto="A"', 'upto="AA"', 'line 22: first-marks has no step "AA"'],
		[' caption="One point."', '', 'line 22: <Figure> needs caption'],
		['<Tape of="bust" />', '<Tape of="bust">', 'line 18: <Tape> is written wrongly'],
		['<Tape of="bust" />', '<Tape of="bust" wide="1" />', 'line 18: <Tape> knows no wide'],
		['of="waist"', 'of="waste"', 'line 20: there is no measurement "waste"'],
		['<Step name="A">\n', '<Step name="A">', 'line 12: a blank line must follow <Step>'],
		['\n\n</Step>', '\n</Step>', 'line 15: a blank line must stand before </Step>'],
		['</Step>\n', '\n', 'line 12: the step is not closed'],
		['</Step>', '</Step>\n\n</Step>', 'line 18: no step is open'],
		['</Step>', '<Step name="A">\n\n</Step>', 'line 16: the step of line 12 is not closed'],
		['**A**.', '**A**. </Step>', 'line 14: <Step> must have a line of its own'],
		['Go down.', 'Go {down}.', 'line 14: a brace would be read as code'],
		['garment: course-dress', 'garment: dress', 'there is no garment "dress"'],
		['garment: course-dress\n', '', 'line 25: <GarmentPieces> needs a garment in the front matter'],
		['garment: course-dress\n', '', 'line 31: <LayingFigure> needs a garment in the front matter'],
		['piece="front"', 'piece="frontt"', 'line 28: course-dress has no piece "frontt"'],
		['seam="side"', 'seam="sides"', 'line 30: course-dress has no seam "sides"'],
		[' caption="The front."', '', 'line 28: <PieceFigure> needs caption'],
		['<SewnSeam seam="side" />', '<SewnSeam />', 'line 30: <SewnSeam> needs seam'],
		['<LayingFigure />', '<LayingFigure width="140" />', 'line 32: <LayingFigure> knows no width']
	])('%j replaced by %j', (what, put, problem) => {
		expect(spoilt(what, put)).toContain(`planted: ${problem}`);
	});
});

describe('planted lessons of a method are seen together', () => {
	const method = KNOWN.methods.get('first-marks');
	if (!method) throw new Error('first-marks is gone');
	const own = LESSONS.filter(({ text }) => text.includes('method: first-marks'));
	const changed = (change: (text: string) => string) =>
		own.map(({ id, text }) => ({ id, text: change(text) }));

	it('a step that no lesson asks for, and one asked for twice', () => {
		const renamed = changed((text) => text.replace('<Step name="slope">', '<Step name="P">'));
		expect(problemsAcross(renamed, method)).toEqual([
			'first-marks: no lesson asks for slope',
			'first-marks: P is asked for twice'
		]);
	});

	it('steps out of order', () => {
		const swapped = changed((text) =>
			text
				.replace('<Step name="P">', '<Step name="x">')
				.replace('<Step name="slope">', '<Step name="P">')
				.replace('<Step name="x">', '<Step name="slope">')
		);
		expect(problemsAcross(swapped, method)).toEqual(['first-marks: slope is asked for before P']);
	});

	it('lessons that grow long', () => {
		const padded = (lines: number) => (text: string) => text + 'more\n'.repeat(lines);
		const texts = (lines: number) => LESSONS.map(({ id, text }) => ({ id, text: padded(lines)(text) }));
		expect(tooLong(texts(15))).toContain('fewer than half of the lessons are under 30 lines');
		expect(tooLong(texts(30))).toContain('fewer than nine in ten lessons are under 65 lines');
	});
});
