import { ruleWords, BadInput } from '#shared/bad-input.ts';
import { z } from '#shared/shape.ts';
import { message } from '#shared/speech/message.ts';
import type { Speech } from '#shared/speech/speech.ts';
import type { Plan, Taking } from '#tape/plan.ts';
import { readingsIn, readTaking, type Read } from '#tape/read-taking.ts';
import type { Tape } from '#tape/tapes.ts';
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

	/** What was typed for a distance, reading by reading, with its unit where that is no longer the learner's: the second is there where it was measured again. */
	texts(taking: Taking): readonly string[] {
		const kept = this.#kept.read[keyOf(taking)];
		if (!kept) return [];
		const other = kept.unit === this.learner.unit ? '' : ` ${kept.unit}`;
		return readingsIn(kept.text).map((each) => (/[\d/]$/.test(each) ? each + other : each));
	}

	/** Keeps what was typed as one of a distance's readings; the first may hold both, with a semicolon between. */
	type(taking: Taking, text: string, which: 0 | 1 = 0): void {
		const { [keyOf(taking)]: _, ...read } = this.#kept.read;
		const [first = '', second = ''] = this.texts(taking);
		const both = which === 0 ? [text, ...(text.includes(';') ? [] : [second])] : [first, text];
		const written = readingsIn(both.join(';')).join('; ').slice(0, MOST_WRITTEN);
		this.#keep({
			read: written === '' ? read : { ...read, [keyOf(taking)]: { text: written, unit: this.learner.unit } }
		});
	}

	clear(): void {
		this.#keep({ read: {} });
	}

	/** What a distance was read as; undefined where it was not, or cannot be read. */
	read(taking: Taking): Read | undefined {
		const read = this.#read(taking);
		return read instanceof BadInput ? undefined : read;
	}

	/** Why what was typed cannot be read. */
	problem(taking: Taking, speech: Speech): string {
		const read = this.#read(taking);
		return read instanceof BadInput ? speech.words.input.sentence({ clause: ruleWords(read, speech) }) : '';
	}

	/** All that the plan asks for, as far as it was read. */
	all({ takings }: Plan): readonly (Read | undefined)[] {
		return takings.map((taking) => this.read(taking));
	}

	#read(taking: Taking): Read | BadInput | undefined {
		const kept = this.#kept.read[keyOf(taking)];
		const written = readingsIn(kept?.text ?? '');
		if (!kept || written.length === 0) return undefined;
		try {
			return readTaking(written, kept.unit, `${taking.from}–${taking.to}`, this.tape);
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
