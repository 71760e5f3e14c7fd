import type { Words } from './catalogue.ts';

/**
 * A sentence before it is said: which one, and its values as data. What the engine finds is handed on as this, so
 * that it can be kept, counted and said in any language and unit.
 */
export interface Message {
	readonly area: string;
	readonly key: string;
	readonly values: readonly unknown[];
}

type ValuesOf<Say> = Say extends (...values: infer V) => string ? V : [];

/** A message of the catalogue; its values are those that its sentence takes. */
export const message = <A extends keyof Words, K extends keyof Words[A] & string>(
	area: A,
	key: K,
	...values: ValuesOf<Words[A][K]>
): Message => ({ area, key, values });
