import { command } from './command.ts';
import { reading } from './reading.ts';

/** What only the command line says. */
export const shell = { command, reading };
