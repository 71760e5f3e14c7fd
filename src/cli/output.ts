import { BadInput, onOneLine } from '#shared/bad-input.ts';
import { message } from '#shared/speech/message.ts';
import { systemCode } from './input-file.ts';

const isClosedPipe = (problem: Error): boolean => 'code' in problem && problem.code === 'EPIPE';

const ignore = (): void => undefined;

/** Lets `square-across ... | head` end quietly: whoever reads may stop reading. Call it once, before writing. */
export const allowClosedPipes = (): void => {
	// What else goes wrong with a write is told to whoever wrote.
	for (const stream of [process.stdout, process.stderr])
		if (!stream.listeners('error').includes(ignore)) stream.on('error', ignore);
};

/** Writes to standard output and waits until it is taken. False where nobody reads any more. Throws BadInput where the system does not let it. */
export const writeOut = (text: string): Promise<boolean> =>
	new Promise((resolve, reject) => {
		process.stdout.write(text, (problem) => {
			const code = problem && !isClosedPipe(problem) ? systemCode(problem) : undefined;
			if (code === undefined) resolve(!problem);
			else reject(new BadInput('', message('command', 'cannotPrint', { code })));
		});
	});

/** Writes one line to standard error. */
export const complain = (line: string): void => {
	process.stderr.write(`${onOneLine(line)}\n`);
};
