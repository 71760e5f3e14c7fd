import { ruleWords, BadInput } from '#shared/bad-input.ts';
import { readLength } from '#shared/reading.ts';
import { z } from '#shared/shape.ts';
import { message } from '#shared/speech/message.ts';
import type { Speech } from '#shared/speech/speech.ts';
import type { Mm } from '#shared/units.ts';
import type { Plan, Taking } from '#tape/plan.ts';
import type { Tape } from '#tape/by-tape.ts';
import type { Learner } from '#ui/keeping/learner.svelte.ts';
import { whole } from '#ui/keeping/saved.ts';
import { savedKey } from '#ui/keeping/shelf.ts';

const MOST_WRITTEN = 40;
const keptSchema = z.object({
	tape: z._default(z.enum(['rule', 'tape']), 'tape'),
	side: z._default(z.enum(['right', 'left']), 'right'),
	/** What was typed, as it was written, and in which unit, by the two points. */
	read: z._default(
		z.record(
			z.string(),
			z.object({ text: z.string().check(z.maxLength(MOST_WRITTEN)), unit: z.enum(['mm', 'cm', 'in']) })
		),
		{}
	)
});
type Kept = z.infer<typeof keptSchema>;

/** Nothing on a sheet is longer. */
const keyOf = ({ from, to }: Taking): string => `${from} ${to}`;

/** What a learner's tape read of one draft for one body: kept in this browser as it was written. */
export class Readings {
	#kept: Kept = $state.raw({ tape: 'tape', side: 'right', read: {} });
	readonly #key: string;

	constructor(
		readonly learner: Learner,
		method: { readonly id: string; readonly name: string },
		body: string
	) {
		this.#key = savedKey('tape', method.id, body);
		const slot = whole(this.#key, message('keeping', 'taped', { draft: method.name }), keptSchema);
		this.#kept = learner.take(slot) ?? this.#kept;
	}

	get tape(): Tape {
		return this.#kept.tape;
	}
	set tape(tape: Tape) {
		this.#keep({ tape });
	}

	/** On which side of the sheet the draft lies; it is the mirror image on the left. */
	get side(): Kept['side'] {
		return this.#kept.side;
	}
	set side(side: Kept['side']) {
		this.#keep({ side });
	}

	/** What was typed for a distance. */
	text(taking: Taking): string {
		return this.#kept.read[keyOf(taking)]?.text ?? '';
	}

	type(taking: Taking, text: string): void {
		const { [keyOf(taking)]: _, ...read } = this.#kept.read;
		const written = text.trim().slice(0, MOST_WRITTEN);
		this.#keep({
			read: written === '' ? read : { ...read, [keyOf(taking)]: { text: written, unit: this.learner.unit } }
		});
	}

	clear(): void {
		this.#keep({ read: {} });
	}

	/** What a distance was read as; undefined where it was not, or cannot be read. */
	length(taking: Taking): Mm | undefined {
		const read = this.#read(taking);
		return read instanceof BadInput ? undefined : read;
	}

	/** Why what was typed cannot be read. */
	problem(taking: Taking, speech: Speech): string {
		const read = this.#read(taking);
		return read instanceof BadInput ? speech.words.input.sentence({ clause: ruleWords(read, speech) }) : '';
	}

	/** All that the plan asks for, as far as it was read. */
	lengths({ takings }: Plan): readonly (Mm | undefined)[] {
		return takings.map((taking) => this.length(taking));
	}

	#read(taking: Taking): Mm | BadInput | undefined {
		const kept = this.#kept.read[keyOf(taking)];
		if (!kept) return undefined;
		const place = `${taking.from}–${taking.to}`;
		try {
			const length = readLength(kept.text, kept.unit, place);
			return length > 0 ? length : new BadInput(place, message('input', 'notNumber', { seen: kept.text }));
		} catch (error) {
			if (error instanceof BadInput) return error;
			throw error;
		}
	}

	#keep(change: Partial<Kept>): void {
		this.#kept = { ...this.#kept, ...change };
		this.learner.keep(this.#key, this.#kept);
	}
}
