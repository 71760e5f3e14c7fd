/** `npm run fuzz [SHARE]`: a million inputs of all kinds, or a share of them such as 0.1; each is read or refused within the bound. */
import { fuzzed } from './fuzz.ts';
import { INPUTS } from './inputs.ts';

/** Milliseconds of the processor for any one input. */
const BOUND_MS = 100;
const [share = '1', seed = '1'] = process.argv.slice(2);

for (const input of INPUTS) {
	const count = Math.round(input.ofAMillion * Number(share));
	const { name, refused, faults, slowest, slow } = fuzzed(input, count, Number(seed), BOUND_MS);
	console.log(
		`${name}: ${count} read, ${refused} refused, ${faults.length} faults, slowest ${slowest.toFixed(0)} ms`
	);
	for (const line of [...faults, ...slow]) console.log(`  ${line}`);
	if (faults.length + slow.length > 0) process.exitCode = 1;
}
