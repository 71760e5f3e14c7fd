import type { Catalogue, Words } from './catalogue.ts';
import { isMessage, type Message } from './message.ts';
import { voiceOf, type Voice } from './voice.ts';
import type { Unit } from '../units.ts';

/** One language in one unit: whatever a reader sees is said by it. */
export interface Speech extends Voice {
	/** Every sentence, by area. Asking for an area that is not loaded yet is a fault of ours. */
	readonly words: Words;
	/** Says what was handed on as data, and the messages among its values. */
	tell(message: Message): string;
	inUnit(unit: Unit): Speech;
}

type Say = string | ((...values: readonly unknown[]) => string);

/** The speech of a catalogue in a unit. Areas are made when they are first asked for. */
export const speechOf = (catalogue: Catalogue, unit: Unit): Speech => {
	const voice = voiceOf(catalogue.language, unit);
	const made = new Map<string, unknown>();
	const area = (name: string): unknown => {
		if (!made.has(name)) {
			const factory = catalogue.areas[name as keyof Words];
			if (!factory) throw new Error(`the words of "${name}" are not loaded`);
			made.set(name, factory(voice));
		}
		return made.get(name);
	};
	const words = new Proxy({}, { get: (_, name) => area(String(name)) }) as Words;
	const tell = ({ area: name, key, values }: Message): string => {
		const say = (area(name) as Readonly<Record<string, Say>>)[key];
		if (say === undefined) throw new Error(`there is no sentence "${name}.${key}"`);
		return typeof say === 'string' ? say : say(...values.map(said));
	};
	const told = (value: unknown): unknown => (isMessage(value) ? tell(value) : value);
	const item = (value: unknown): unknown => (Array.isArray(value) ? value.map(told) : told(value));
	/** A sentence's values, with the messages among them already said. */
	const said = (value: unknown): unknown =>
		typeof value === 'object' && value !== null && !Array.isArray(value)
			? Object.fromEntries(Object.entries(value).map(([key, each]) => [key, item(each)]))
			: item(value);
	return {
		...voice,
		words,
		tell,
		inUnit: (other) => speechOf(catalogue, other)
	};
};
