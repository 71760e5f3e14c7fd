import { classroom } from './classroom.ts';
import { handing } from './handing.ts';
import { platform } from './platform.ts';
import { practising } from './practising.ts';
import { teaching } from './teaching.ts';

/** What is said on the pages of a school's classes alone. */
export const school = { classroom, handing, platform, practising, teaching };
