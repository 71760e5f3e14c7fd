import { desk } from './desk.ts';
import { input } from './input.ts';
import { lesson } from './lesson.ts';
import { nouns } from './nouns.ts';
import { site } from './site.ts';
import { verdicts } from './verdicts.ts';

/** What a lesson says from the start. */
export const first = { nouns, input, verdicts, site, desk, lesson };
