import { command } from './command.ts';
import { page } from './page.ts';
import { reading } from './reading.ts';
import { server } from './server.ts';

/** What only the command line and the server say. */
export const shell = { command, page, reading, server };
