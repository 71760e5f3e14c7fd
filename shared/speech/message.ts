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

/** Where a sentence takes words, it may be handed another message, which is said first. */
type OrMessage<V> = V extends readonly string[]
	? readonly (string | Message)[]
	: string extends V
		? V | Message
		: V;
type Unsaid<V> = V extends readonly unknown[]
	? OrMessage<V>
	: V extends object
		? { [K in keyof V]: OrMessage<V[K]> }
		: V;
type ValuesOf<Say> = Say extends (...values: infer V) => string ? { [I in keyof V]: Unsaid<V[I]> } : [];

/** A message of the catalogue; its values are those that its sentence takes. */
export const message = <A extends keyof Words, K extends keyof Words[A] & string>(
	area: A,
	key: K,
	...values: ValuesOf<Words[A][K]> extends infer V extends readonly unknown[] ? V : never
): Message => ({ area, key, values });

/** Whether a value is a message rather than plain data. */
export const isMessage = (value: unknown): value is Message =>
	typeof value === 'object' && value !== null && 'area' in value && 'key' in value && 'values' in value;
