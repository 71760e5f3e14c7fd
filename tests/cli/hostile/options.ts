import type { Folder } from '../run-here.ts';

type Words = readonly string[];

/** Words that name no command, no subject or no file; `file` is no folder. */
const namingNothing = (body: string, file: string): readonly Words[] => [
	['draw'],
	['__proto__'],
	['toString'],
	['\u001b[31mdraft'],
	['draft'],
	['draft', '__proto__', '--body', body],
	['draft', '../../etc', '--body', body],
	['draft', 'back-block'],
	['draft', 'back-block', '--body'],
	['draft', 'back-block', '--body', ''],
	['draft', 'back-block', '--body='],
	['draft', 'back-block', '--body', '/'],
	['draft', 'back-block', '--body', '/nowhere'],
	['draft', 'back-block', '--body', `${file}/below`],
	['draft', 'back-block', '--body', 'x'.repeat(5000)],
	['draft', 'back-block', '--body', `/${'x/'.repeat(5000)}`],
	['draft', 'back-block', '--body', 'a\u0000b'],
	['draft', 'back-block', '--body', 'a\nb'],
	['draft', 'back-block', '--body', '\u001b[31ma']
];

/** Options that there are not, or not so. */
const wrongOptions = (body: string): readonly Words[] => [
	['draft', 'back-block', '--body', body, '--body', body],
	['draft', 'back-block', '--body', body, '--bodies', body],
	['draft', 'back-block', '--body', body, '--jsn'],
	['draft', 'back-block', '--body', body, '--json=1'],
	['draft', 'back-block', '--body', body, '-x'],
	['draft', 'back-block', '--body', body, '--__proto__'],
	['draft', 'back-block', '--bodies', '/'],
	['draft', 'back-block', '--bodies', 'a\u0000b'],
	['pattern', 'back-block', '--body', body],
	['pattern', 'course-dress', '--bodies', 'x'.repeat(5000)],
	['check', 'back-block', '--body', body],
	['check', 'back-block', '--body', body, '--placements', '/'],
	['check', 'back-block', '--body', body, '--placements', 'a\u0000b'],
	['check', 'back-block', '--body', body, '--placements', body, '--stdin'],
	['check', 'back-block', '--body', body, '--policy', '/', '--stdin'],
	['check', 'back-block', '--body', body, '--policy', 'x'.repeat(5000), '--stdin'],
	['check', 'toString', '--stdin']
];

/** What is wrong with where an export goes, and with what it should hold. */
const wrongExports = (body: string, file: string): readonly Words[] => {
	const pdf = `${file}-never.pdf`;
	const exporting = (...more: Words): Words => ['export', 'course-dress', '--body', body, ...more];
	return [
		exporting(),
		exporting('--to', ''),
		exporting('--to', 'x'),
		exporting('--to', `${'x'.repeat(5000)}.svg`),
		exporting('--to', 'a\u0000b.svg'),
		exporting('--to', `${file}/below.svg`),
		exporting('--to', '/nowhere/at/all.svg'),
		exporting('--to', '/proc/never.svg'),
		exporting('--to', pdf, '--paper', '__proto__'),
		exporting('--to', pdf, '--scale', 'constructor'),
		exporting('--to', pdf, '--date', '-000001-01-01'),
		exporting('--to', pdf, '--pieces', ','.repeat(100_000)),
		exporting('--to', pdf, '--pieces', Array.from({ length: 50_000 }, (_, i) => `p${i}`).join(',')),
		exporting('--to', pdf, '--pieces', '__proto__'),
		exporting('--to', file, '--apart', '--as', 'svg')
	];
};

/** Where a marks sheet cannot go. */
const wrongMarks = (body: string, file: string): readonly Words[] => {
	const marked = (...more: Words): Words => ['check', 'back-block', '--body', body, ...more];
	return [
		marked('--placements', '/nowhere'),
		marked('--placements', file),
		marked('--stdin', '--marks', 'never.pdf'),
		marked('--stdin', '--placements', file, '--marks', 'never.pdf'),
		marked('--placements', file, '--placements', file),
		marked('--placements', ''),
		marked('--placements', file, '--policy', '/nowhere'),
		marked('--placements', file, '--marks', 'a', '--marks', 'b')
	];
};

/** What can be named and not be read, whoever asks; and names that are too long to be shown. */
const badRoots = (body: string): readonly Words[] => {
	const long = 'x'.repeat(100_000);
	return [
		['draft', 'back-block', '--body', '/proc/self/mem'],
		['draft', 'back-block', '--bodies', '/proc/self/mem'],
		['check', 'back-block', '--body', body, '--placements', '/proc/self/mem'],
		['pattern', 'course-dress', '--body', '/proc/self/mem'],
		[long],
		['draft', long, '--body', body],
		['draft', 'back-block', long, '--body', body],
		['draft', 'back-block', '--body', body, `--${long}`],
		['draft', 'back-block', '--body', long],
		['draft', 'back-block', '--body', long, '--bodies', long],
		['draft', 'back-block', '--body', long, '--body', long],
		['pattern', long, '--body', body],
		['check', long, '--stdin'],
		['export', long, '--body', body, '--to', 'never.pdf'],
		['draft', 'back-block', '--body', body, '--language', long],
		['draft', 'back-block', '--body', body, '--language'],
		['draft', 'back-block', '--body', body, '--language', '__proto__'],
		['export', 'course-dress', '--body', body, '--to', 'never.pdf', '--date', long],
		['export', 'course-dress', '--body', body, '--to', 'never.pdf', '--paper', long],
		['export', 'course-dress', '--body', body, '--to', 'never.pdf', '--pieces', long],
		['export', 'course-dress', '--body', body, '--to', 'never', '--as', long],
		['export', 'back-block', '--body', body, '--to', `/${'x/'.repeat(40)}never.svg`],
		['export', 'course-dress', '--body', body, '--to', 'never.pdf', '--apart']
	];
};

/** Lists of sizes and of reading errors that nobody means; the last of sizes is so long that to make them all took hours. */
const wrongLists = (body: string, file: string): readonly Words[] => {
	const nested = (sizes: string): Words => [
		'export',
		'course-dress',
		'--sizes',
		sizes,
		'--to',
		`${file}-never.pdf`
	];
	const sure = (...errors: readonly string[]): Words => [
		...['draft', 'back-block', '--body', body, '--how-sure'],
		...errors.flatMap((error) => ['--reading-error', error])
	];
	return [
		...['', ',', '40', '40,40', '40,', 'own,own', '__proto__,40', '36,38,40,42,44,46,48,50'].map(nested),
		nested(Array.from({ length: 50_000 }, () => '40').join(',')),
		...['', 'bust', 'bust=', '=6', 'bust=6=7', 'bust=-1', 'bust=1e400', 'bust=NaN', '__proto__=6'].map(
			(error) => sure(error)
		),
		sure('bust=6', 'bust=7'),
		sure('length=4', 'length=4')
	];
};

/** Command lines that are wrong in themselves; `body` is a good body's file. */
export const hostileWords = (body: string, folder: Folder): readonly Words[] => {
	const file = folder.write('a-file', 'x');
	return [
		...namingNothing(body, file),
		...wrongOptions(body),
		...wrongExports(body, file),
		['export', 'course-dress', '--bodies', body, '--to', file, '--as', 'svg'],
		...wrongMarks(body, file),
		...badRoots(body),
		...wrongLists(body, file),
		['serve', '--port', '-1'],
		['serve', '--port=-1'],
		['serve', '--port', '1.5'],
		['serve', '--port', ''],
		['serve', '--port', '9'.repeat(100_000)],
		['serve', '--prot', '4191'],
		['serve', 'x'.repeat(100_000)],
		['build', 'x'.repeat(100_000)],
		['serve', '--port', 'abc'],
		['serve', '--port', '99999'],
		['serve', '--port', '1e999']
	];
};
