import type { StepKind } from '#shared/method.ts';
import { mm, type Mm } from '#shared/units.ts';
import type { StepOf } from '#drafting/steps/step-rules.ts';
import type { Misstep } from '../misstep.ts';
import type { Stand } from '../stand.ts';

/** The plausible wrong places for one kind of step. */
export type KindMissteps<K extends StepKind> = (step: StepOf<K>, stand: Stand) => readonly Misstep[];

/** The opposite of a length. */
export const backward = (length: Mm): Mm => mm(-length);
