import en from 'zod/v4/locales/en.js';
import { z } from 'zod/mini';

/**
 * What the browser loads describes the shapes of data with zod's small dialect, which is 16 kB lighter there than
 * the whole; what only the command line or the server loads may use `zod`. The small one comes without sentences,
 * and the learner is told why something saved cannot be read: English ones (1 kB) are set here, for all.
 */
z.config(en());

export { z };
