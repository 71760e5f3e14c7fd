import type { ComponentProps } from 'svelte';
import type Remarks from '../teaching/Remarks.svelte';
import type { Manner } from './assigned-judging.ts';
import type { Receipt } from './sender.svelte.ts';

/** What is told of an assignment to whoever does it, whatever is done for it. */
export interface Opened extends Manner {
	readonly id: string;
	readonly name: string;
	readonly until: number | null;
	readonly isHandedIn: boolean;
	readonly receipt: Receipt | undefined;
	/** What the teacher has said of it. */
	readonly remarks: ComponentProps<typeof Remarks>['remarks'];
	/** Undefined where a teacher looks at it. */
	readonly learner: string | undefined;
	/** Which of the learner's attempts is open, of all that they have begun. */
	readonly attempt: number;
	readonly attempts: readonly number[];
	/** How many there may be; null for as many as one likes. */
	readonly wholeAttempts: number | null;
	/** Whether it may be begun anew once something is handed in for this one. */
	readonly isAnotherLeft: boolean;
}
