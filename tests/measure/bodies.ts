/**
 * `npm run measure:bodies`: what is asked about the measurements of the survey's 600 sampled bodies as they are, and with
 * one slip put into each of their numbers in turn, as a table by the kind of slip. Every second body was looked at while
 * the checks were made (`-- tried`); the others were held back, and are what is shown. `-- all` takes every measurement that the survey has
 * something of, not only the ten that a draft needs. The sampled bodies are a part of the survey whose means and covariances
 * the checks know: 300 of 2,208 women, 300 of 1,774 men.
 */
import { injected, KINDS, surveyBodies, tallied } from './body-slips.ts';
import { NEEDED_KEYS } from '#shared/measurements.ts';
import { SURVEYED_KEYS } from '#shared/plausible/stand-ins.ts';

const held = !process.argv.includes('tried');
const keys = process.argv.includes('all') ? SURVEYED_KEYS : NEEDED_KEYS;
// Of all that there are, two fields swapped are so many that a part of every kind does.
const every = process.argv.includes('all') ? 9 : 3;
const bodies = surveyBodies().filter((_, i) => (i % 2 === 1) === held);

const share = (part: number, of: number): string => `${((100 * part) / of).toFixed(1)} %`.padStart(8);

const { falseAlarms, byKind } = tallied(bodies, keys, KINDS, injected, every);
console.log(
	`${String(bodies.length)} bodies ${held ? 'that were held back' : 'that were tried with'}, ${String(keys.length)} measurements each`
);
console.log(
	`asked about in vain: ${String(falseAlarms)} bodies, ${share(falseAlarms, bodies.length).trim()} (goal: at most 4 %)`
);
console.log('\nslip                    tried   unseen  asked    field    among two');
for (const [kind, { tried, unseen, asked, field, offered }] of byKind) {
	const seen = tried - unseen;
	console.log(
		kind.padEnd(22),
		String(tried).padStart(6),
		share(unseen, tried),
		share(asked, seen),
		share(field, seen),
		share(offered, field)
	);
}
console.log('\nunseen: within 3 conditional standard deviations, where no method could tell it from a body.');
console.log(
	'asked, field: of those beyond; goal: the field right in 90 %. among two: of those, the true slip offered; goal 95 %.'
);
