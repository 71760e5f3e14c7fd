/**
 * What the browser loads describes the shapes of data with zod's small dialect, which is 16 kB lighter there than
 * the whole; what only the command line or the server loads may use `zod`. The small one comes without sentences:
 * ours are made in shared/reading.ts, in every language.
 */
export { z } from 'zod/mini';
