import { fork, type ChildProcess } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** How a command line ended that was made to go wrong. */
export interface Ending {
	/** The exit code; null where it never came to one. */
	readonly code: number | null;
	readonly out: string;
	readonly err: string;
	/** What was thrown past the command line: a stack trace on the screen of whoever ran it. */
	readonly thrown: string;
}

const ATTACKED = fileURLToPath(new URL('attacked.js', import.meta.url));
/** Longer than this and a command hangs, in milliseconds; the slowest takes under a second alone. */
const HANGS_AFTER = 30_000;
/** The most that one line of an error may hold. */
const LINE = 400;

/** A process that runs command lines, and is started anew after one that it did not survive. */
export class Attacked {
	#child: ChildProcess | undefined;

	async #living(): Promise<ChildProcess> {
		if (this.#child) return this.#child;
		const child = fork(ATTACKED, { execArgv: [], silent: true });
		this.#child = child;
		await new Promise((resolve) => child.once('message', resolve));
		return child;
	}

	/** Runs one command line, with `input` on standard input. */
	run(words: readonly string[], input = ''): Promise<Ending> {
		return this.#ask({ words, input });
	}

	/** Works the method or garment `hostile` for a body; its file stands among the lessons as `name`, beside the back block's. */
	work(kind: 'method' | 'garment', body: string, name: string, content: string | Buffer): Promise<Ending> {
		const planted = { [`lessons/99-hostile/${name}`]: content.toString('utf8') };
		return this.#ask({ words: [kind, body], input: '', planted });
	}

	async #ask(request: object): Promise<Ending> {
		const child = await this.#living();
		return new Promise((resolve) => {
			const finish = (ending: Partial<Ending>): void => {
				clearTimeout(limit);
				child.removeAllListeners();
				resolve({ code: null, out: '', err: '', thrown: '', ...ending });
			};
			const gone = (thrown: string): void => {
				this.end();
				finish({ thrown });
			};
			const limit = setTimeout(() => gone(`it hangs: ended after ${HANGS_AFTER / 1000} s`), HANGS_AFTER);
			child.once('message', (ending) => finish(ending as Ending));
			child.once('exit', (code, signal) => gone(`the process ended: ${code ?? signal}`));
			child.send(request);
		});
	}

	end(): void {
		this.#child?.kill('SIGKILL');
		this.#child = undefined;
	}
}

/** What is wrong with how a command line refused; empty where it did so in one short line, with exit code 2 and no output. */
export const faultsOfRefusal = ({ code, out, err, thrown }: Ending): string =>
	[
		...(thrown ? [`thrown: ${thrown.split('\n').slice(0, 3).join(' | ')}`] : []),
		...(code === 2 || thrown ? [] : [`exit code ${String(code)}`]),
		...(out === '' ? [] : [`${out.length} characters on standard output`]),
		...(thrown || /^[^\n]+\n$/.test(err) ? [] : [`not one line: ${JSON.stringify(err.slice(0, 300))}`]),
		...(err.length <= LINE ? [] : [`a line of ${err.length} characters: ${err.slice(0, 120)}`]),
		...(/\p{Cc}/u.test(err.trimEnd()) ? ['control characters on the screen'] : [])
	].join('\n');

/** The same for a table or a batch, which goes on after what it refuses: no line of refusal is long, and none is missing. */
export const faultsOfRows = ({ code, out, err, thrown }: Ending, rows: number): string => {
	const lines = out.split('\n').slice(0, -1);
	const long = lines.filter((line) => line.includes('"refused"') && line.length > LINE + 100);
	return [
		...(thrown ? [`thrown: ${thrown.split('\n').slice(0, 3).join(' | ')}`] : []),
		...(code === 0 || thrown ? [] : [`exit code ${String(code)}: ${err.slice(0, 200)}`]),
		...(lines.length === rows || thrown ? [] : [`${lines.length} lines for ${rows}`]),
		...long.map((line) => `a line of ${line.length} characters: ${line.slice(0, 120)}`),
		...(err.length <= LINE ? [] : [`${err.length} characters on standard error: ${err.slice(0, 120)}`])
	].join('\n');
};
