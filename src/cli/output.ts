const isClosedPipe = (problem: Error): boolean => 'code' in problem && problem.code === 'EPIPE';

/** Lets `square-across ... | head` end quietly: whoever reads may stop reading. Call it once, before writing. */
export const allowClosedPipes = (): void => {
	for (const stream of [process.stdout, process.stderr]) {
		stream.on('error', (problem: Error) => {
			if (!isClosedPipe(problem)) throw problem;
		});
	}
};

/** Writes to standard output and waits until it is taken. False where nobody reads any more. */
export const writeOut = (text: string): Promise<boolean> =>
	new Promise((resolve, reject) => {
		process.stdout.write(text, (problem) => {
			if (problem && !isClosedPipe(problem)) reject(problem);
			else resolve(!problem);
		});
	});

/** Line breaks and terminal codes in a file's own words must not break or colour the one line of an error. */
export const onOneLine = (text: string): string => text.replace(/[\p{Cc}\u2028\u2029]+/gu, ' ');

/** Writes one line to standard error. */
export const complain = (line: string): void => {
	process.stderr.write(`${onOneLine(line)}\n`);
};
