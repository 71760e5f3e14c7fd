// Lets Node itself read the sources in a process of tests: `node --import ./tests/support/native/register.js`.
import { register } from 'node:module';

register('./load.js', import.meta.url);
