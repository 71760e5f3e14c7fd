import type { Catalogue, Words } from './catalogue.ts';
import type { Message } from './message.ts';
import { voiceOf, type Voice } from './voice.ts';
import type { Unit } from '../units.ts';

/** One language in one unit: whatever a reader sees is said by it. */
export interface Speech extends Voice {
	/** Every sentence, by area. Asking for an area that is not loaded yet is a fault of ours. */
	readonly words: Words;
	/** Says what was handed on as data. */
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
	return {
		...voice,
		words,
		tell: ({ area: name, key, values }) => {
			const say = (area(name) as Readonly<Record<string, Say>>)[key];
			if (say === undefined) throw new Error(`there is no sentence "${name}.${key}"`);
			return typeof say === 'string' ? say : say(...values);
		},
		inUnit: (other) => speechOf(catalogue, other)
	};
};
