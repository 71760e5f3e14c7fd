import type { Course } from '#course/course.ts';
import type { Cost } from './people/passphrases.ts';
import type { Store } from './store/store.ts';

/** What every use case works with: handed in, so that a test has its own store and its own time. */
export interface World {
	readonly store: Store;
	/** Milliseconds since 1970. The server's own: no clock from outside is trusted. */
	readonly now: () => number;
	/** How hard passphrases are hashed. */
	readonly cost: Cost;
	/** What can be set, and the methods by which it is judged. */
	readonly course: Course;
	/** A hash of the program that judges: what another one said is known by it. */
	readonly engine: string;
}

/** Somebody who is signed in. */
export interface Caller {
	readonly id: string;
	readonly name: string;
	readonly role: 'teacher' | 'learner';
	/** A learner's one class; null for a teacher. */
	readonly class: string | null;
	/** The session that they are signed in by. */
	readonly session: string;
}

/** Where a request comes from and who makes it, as far as is known. */
export interface Asked {
	readonly caller: Caller | undefined;
	/** The address of the network: what is guessed from there is limited. */
	readonly address: string;
}
