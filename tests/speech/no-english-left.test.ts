import { describe, expect, it } from 'vitest';
import { wordsInCode, wordsLeft, type Left } from './english-in-code.ts';

/** Words that may stand in code: a file's, or only those that match. */
interface Exception {
	readonly file: RegExp;
	readonly words: RegExp;
	readonly because: string;
}

const EXCEPTIONS: readonly Exception[] = [
	{ file: /./, words: /^Square Across$/, because: 'the name of the program, the same in every language' },
	{ file: /birds\.ts$/, words: /./, because: 'names of invented bodies, the same in every language' },
	{ file: /square-across\.js$/, words: /./, because: 'said where no catalogue can be read yet' },
	{ file: /formula\/parse\.ts$/, words: /^(Identifier|Literal)$/, because: 'kinds of a parsed formula' },
	{ file: /dxf\.ts$/, words: /^(UNITS: METRIC|Units: millimetres\.)/, because: 'read by other programs' },
	{ file: /pattern-pdf\.ts$/, words: /^Ink$/, because: 'the name of a part of a PDF, which nobody sees' },
	{
		file: /(Sheet|Points|Loupe)\.svelte$/,
		words: /^(Enter|Escape)$/,
		because: 'names of keys, as a browser tells them'
	},
	{
		file: /(Dock|Sheet)\.svelte$/,
		words: /^(\(prefers-reduced-motion: reduce\)|form input)$/,
		because: 'read by the browser'
	},
	{ file: /lesson-of\.ts$/, words: /^lesson of a step$/, because: 'the key of a context' },
	{ file: /\.svelte$/, words: /^-[a-z]+$/, because: 'the end of an id' },
	{ file: /\.svelte$/, words: /^cm$/, because: 'the sign of a unit, the same in every language' },
	{
		file: /course\.ts$/,
		words: /^front matter$/,
		because: 'the place of an error in a file, the same in every language'
	},
	{ file: /server\/store\//, words: /^[a-z]|^PRAGMA/, because: 'said to a database' },
	{
		words: /^[a-z?/][\w/?-]*$/,
		file: /pages\/class\/((handing|teaching|practising)\/)?\w+\.svelte$/,
		because: 'what a form sends and where, and how a browser fills it in'
	},
	{
		file: /\+server\.ts$|hooks\.server\.ts$/,
		words: /no-store$|^attachment; |^text\/(html|csv); |^default-src /,
		because: 'headers of HTTP'
	},
	{
		file: /(answering|page-policies)\.ts$/,
		words: /^(4\d\d |text\/|default-src )/,
		because: 'the first line and the headers of HTTP'
	},
	{
		file: /lti\/document\.server\.ts$/,
		words: /^(:root|Square Across|text\/html|default-src|form-action)/,
		because: 'how a page is set, and headers of HTTP'
	},
	{ file: /gradebook\/score\.ts$/, words: /^(Completed|Pending)$/, because: 'said to a learning platform' },
	{
		file: /server\/(use-cases|people|handing)\//,
		words: /^(([a-z]+\.)?[a-z]+ as [a-z]+|is not)$/,
		because: 'said to a database'
	},
	{ file: /page-language\.ts$/, words: /; SameSite=Lax$/, because: 'a header of HTTP' }
];

const excepted = ({ file, text }: Left): boolean =>
	EXCEPTIONS.some((each) => each.file.test(file) && each.words.test(text));

describe('the finder of words in code', () => {
	const texts = (file: string, code: string): readonly string[] =>
		wordsInCode(file, code).map(({ text }) => text);

	it('sees sentences and labels, in strings, templates, and what calls are given', () => {
		const code = `const a = 'two words'; const b = { key: \`\${a} is too long\` }; say(['Check'], a ? 'the end.' : '');`;
		expect(texts('a.ts', code)).toEqual(['two words', '… is too long', 'Check', 'the end.']);
	});

	it('passes over keys, ids, types, imports and faults of ours', () => {
		const code = `import a from 'two words'; type T = 'two words'; const b = { 'two words': a['two words'] as 'two words' };
			throw new Error('two words'); console.warn('two words'); const id = 'back-block';`;
		expect(texts('a.ts', code)).toEqual([]);
	});

	it('sees what a component shows: text, what is read aloud, what it hands on', () => {
		const code = `<script lang="ts">let { a } = $props(); const b = 'two words';</script>
			<p class="two words">right {a ? 'Go on' : b}</p><img alt="hill" /><A heading="Your marks" /><style>p { margin: 0 }</style>`;
		expect(texts('A.svelte', code)).toEqual(['right', 'Go on', 'hill', 'Your marks', 'two words']);
	});

	it('says where', () => {
		expect(wordsInCode('a.ts', "\n\nconst a = 'two words';")).toEqual([
			{ file: 'a.ts', line: 3, text: 'two words' }
		]);
	});
});

/** How many words are not in a catalogue yet. It only goes down, and then this line goes. */
const NOT_YET = 0;

describe('no words are left in code, where no other language can say them', () => {
	it('but for those that are excepted', () => {
		const left = wordsLeft().filter((each) => !excepted(each));
		const shown = left.map(({ file, line, text }) => `${file}:${line}: ${text}`).join('\n');
		expect(left.length, shown).toBeLessThanOrEqual(NOT_YET);
	});
});
