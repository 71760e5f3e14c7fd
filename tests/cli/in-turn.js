// Several command lines in one process, for tests that need a process of its own but not one for each.
import { text } from 'node:stream/consumers';
import { loadMain } from '../../src/cli/bundle.js';

const main = await loadMain();

const codes = [];
for (const line of (await text(process.stdin)).split('\n')) codes.push(await main(JSON.parse(line)));
process.stdout.write([Intl.DateTimeFormat().resolvedOptions().timeZone, ...codes].join(' '));
