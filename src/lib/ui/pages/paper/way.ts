import type { Body } from '#shared/body.ts';
import type { Placement } from '#shared/placement.ts';
import type { Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { broughtIn } from '#ui/keeping/brought-in.ts';

/** What was measured of a paper draft, by the names of its steps: each with its own error. */
export type Measured = Readonly<Record<string, Placement>>;

/** What a way of measuring is given, and what it gives. */
export interface WayProps {
	readonly method: Method;
	readonly body: Body;
	/** The body by which what was typed is kept. */
	readonly bodyId: string;
	readonly draft: Draft;
	/** Hands on what is measured so far, whenever that changes; nothing where nothing is. */
	readonly onmeasured: (measured: Measured) => void;
}

/** The ways in which a paper draft is measured, each brought in when it is chosen. */
export const WAYS = {
	tape: () => broughtIn(() => import('./tape/ByTape.svelte')),
	photograph: () => broughtIn(() => import('./photograph/ByPhotograph.svelte'))
} as const;
export type Way = keyof typeof WAYS;
