import { USE_CASES } from '#server/use-cases/all.ts';
import { answered } from '../../classes.server.ts';
import type { RequestHandler } from './$types';

/** The keys by which learning platforms know what was signed here. */
export const GET: RequestHandler = (event) => answered(USE_CASES.ownKeys, event, {});
