/** `npm run typeface`: cuts the typeface down to the letters that literata.css names, after one of them or the typeface has changed. */
import { readFileSync, writeFileSync } from 'node:fs';
import subsetFont from 'subset-font';
import { coreLetters, FACES, shortFace, wholeFace } from './typeface.ts';

/** What is kept of how letters are set: their spacing by pairs, joined letters, and figures of one width for tables. */
const KEPT = ['kern', 'liga', 'tnum'];

for (const face of FACES) {
	const whole = readFileSync(wholeFace(face));
	const short = await subsetFont(whole, [...coreLetters()].join(''), {
		targetFormat: 'woff2',
		keepFeatures: KEPT
	});
	writeFileSync(shortFace(face), short);
	console.log(`${face}: ${whole.length} to ${short.length} bytes`);
}
