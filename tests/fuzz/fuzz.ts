import { BadInput, shown } from '#shared/bad-input.ts';
import { chanceOf } from '#practice/chance.ts';
import type { FuzzedInput } from './inputs.ts';

/** What one kind of input did. */
export interface Fuzzed {
	readonly name: string;
	readonly count: number;
	readonly refused: number;
	/** Inputs that made anything but a refusal, the first few: with their numbers, by which they can be drawn again. */
	readonly faults: readonly string[];
	/** Milliseconds of the processor that the slowest took. */
	readonly slowest: number;
	/** Inputs over the bound, the first few. */
	readonly slow: readonly string[];
}

/** Faults and slow inputs that are shown. */
const SHOWN = 5;

const cpu = (work: () => void): number => {
	const start = process.cpuUsage();
	work();
	const { user, system } = process.cpuUsage(start);
	return (user + system) / 1000;
};

/**
 * Draws so many inputs of a kind by a seed and reads each. One that seems to take long is read again, twice, since the
 * first time may pay for machine code or for tidying memory that others left.
 */
export const fuzzed = (
	{ name, draw, read }: FuzzedInput,
	count: number,
	seed: number,
	bound: number
): Fuzzed => {
	const [faults, slow]: [string[], string[]] = [[], []];
	let [refused, slowest] = [0, 0];
	for (let i = 0; i < count; i++) {
		const input = draw(chanceOf(seed, name, i)) as never;
		const tried = (): void => {
			try {
				read(input);
			} catch (error) {
				if (error instanceof BadInput) refused += 1;
				else if (faults.length < SHOWN) faults.push(`${i}: ${String(error)}; ${shown(input)}`);
			}
		};
		const start = performance.now();
		tried();
		if (performance.now() - start < bound / 4) continue;
		const before = refused;
		const took = Math.min(cpu(tried), cpu(tried));
		refused = before;
		slowest = Math.max(slowest, took);
		if (took > bound && slow.length < SHOWN)
			slow.push(`${i}: ${took.toFixed(0)} ms; ${JSON.stringify(input).slice(0, 600)}`);
	}
	return { name, count, refused, faults, slowest, slow };
};
