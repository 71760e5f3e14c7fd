import { dequal } from 'dequal/lite';
import { BadInput } from '#shared/bad-input.ts';
import { BLOCK_ALLOWANCES, checkChosen, type Allowance, type LengthAllowance } from '#shared/allowances.ts';
import { readAllowance, readLengthAllowance, type Body } from '#shared/body.ts';
import { notTaken, type MeasurementKey } from '#shared/measurements.ts';
import { printNumber, type Mm } from '#shared/units.ts';
import type { Refusal } from '#drafting/evaluate.ts';
import type { Change } from '#garment/cure.ts';
import type { Garment } from '#garment/garment.ts';
import { makePattern, type Pattern } from '#garment/pattern.ts';
import type { Piece } from '#garment/piece.ts';
import type { Learner } from '#ui/keeping/learner.svelte.ts';
import { freeName } from '#ui/keeping/names.ts';
import { withTyped } from '#ui/keeping/in-unit.ts';
import {
	AS_USUAL,
	choicesSlot,
	CLOTH_WIDTH,
	EDGE_ALLOWANCE,
	type SavedChoices
} from '#ui/keeping/choices.ts';
import type { Slot } from '#ui/keeping/saved.ts';
import { writtenDown } from './written-down.ts';

/** How the pattern stands: made, or why there is none. */
export type Standing =
	| { readonly kind: 'made'; readonly pattern: Pattern }
	| { readonly kind: 'missing'; readonly missing: readonly MeasurementKey[] }
	| { readonly kind: 'refused'; readonly refusals: readonly Refusal[] }
	/** A fault of ours: the last pattern that could be made, where there was one. */
	| { readonly kind: 'our-fault'; readonly told: string; readonly last: Pattern | undefined };

/** What is chosen by a name of its own. */
type Part = 'allowances' | 'edges';

/**
 * A garment made for the learner's chosen body: the choices, kept in the browser for each body, and the pattern that follows
 * from them and the measurements at once.
 */
export class Making {
	readonly garment: Garment;
	readonly learner: Learner;
	choices: SavedChoices = $state.raw(AS_USUAL);
	/** What was chosen before, the latest last, each with the name of what was changed then. */
	#before: readonly { readonly what: string; readonly choices: SavedChoices }[] = $state.raw([]);
	/** Whether a change can be taken back. */
	readonly undoable: boolean = $derived.by(() => this.#before.length > 0);
	/** The last pattern of the chosen body; not state, since only what follows a fault looks at it. */
	#last: { readonly body: string; readonly pattern: Pattern } | undefined;

	readonly id: string = $derived.by(() => this.learner.current.id);
	readonly body: Body = $derived.by(() => this.learner.current.body);
	readonly own: boolean = $derived.by(() => this.learner.current.own);
	readonly #slot: Slot<SavedChoices> = $derived.by(() =>
		choicesSlot(this.garment, { id: this.id, name: this.body.name })
	);
	readonly standing: Standing = $derived.by(() => this.#stand());
	/** The pattern that is shown: of the last numbers that could be worked. */
	readonly pattern: Pattern | undefined = $derived.by(() => {
		const { standing } = this;
		if (standing.kind === 'made') return standing.pattern;
		return standing.kind === 'our-fault' ? standing.last : undefined;
	});

	constructor(garment: Garment, learner: Learner) {
		this.garment = garment;
		this.learner = learner;
	}

	/** The pattern of the garment cut otherwise, as its toile is, for the same body and choices; none where the garment itself has none. */
	cutAs(garment: Garment): Pattern | undefined {
		if (this.standing.kind !== 'made') return undefined;
		const work = makePattern(garment, this.body, this.choices);
		return work.kind === 'made' ? work.pattern : undefined;
	}

	/** Reads back what was chosen for this body. */
	load(): void {
		this.choices = this.learner.take(this.#slot) ?? AS_USUAL;
		this.#before = [];
	}

	/** Takes the last change back: all that a slider was moved is one. */
	undo(): void {
		const last = this.#before.at(-1);
		if (!last) return;
		this.#before = this.#before.slice(0, -1);
		this.choices = this.learner.settle(this.#slot, last.choices);
	}

	/** Takes up what another tab has chosen. */
	takeUp(key: string | null): void {
		if (key === this.#slot.key) this.load();
	}

	/** What an allowance is without a choice made here: the body's own, else the usual. */
	usual({ key, default: usual }: Allowance): number {
		return this.body.allowances[key] ?? usual;
	}

	/** Keeps an allowance as typed, or forgets it where nothing is. Throws BadInput. */
	typeAllowance(key: string, text: string): void {
		const read = (): number => readAllowance(key, text, this.learner.unit, this.garment.allowances);
		this.choose('allowances', key, text === '' ? undefined : read());
	}

	/** Keeps an edge's own seam allowance (`front.side`) as typed. Throws BadInput. */
	typeEdge(name: string, text: string): void {
		this.choose('edges', name, text === '' ? undefined : this.#read(EDGE_ALLOWANCE, text));
	}

	/** Keeps the width of the cloth as typed. Throws BadInput. */
	typeCloth(text: string): void {
		this.chooseCloth(this.#read(CLOTH_WIDTH, text));
	}

	/** Keeps the width of the cloth. */
	chooseCloth(cloth: Mm): void {
		this.#keep('cloth', { ...this.choices, cloth });
	}

	/** Keeps a chosen value, or goes back to the usual one. Throws BadInput where it is none that may be chosen. */
	choose(part: Part, key: string, value: number | undefined): void {
		const { [key]: _, ...others } = this.choices[part];
		const known =
			part === 'edges' ? EDGE_ALLOWANCE : this.garment.allowances.find((each) => each.key === key);
		if (!known) throw new Error(`${this.garment.id} has no allowance "${key}"`);
		const chosen = value === undefined ? others : { ...others, [key]: checkChosen(known, value) };
		this.#keep(`${part} ${key}`, { ...this.choices, [part]: chosen });
	}

	/**
	 * Makes a cure's changes for this body: in its own file where it is the learner's own and the allowance is one of the block's, so that
	 * every draft follows it; else among what was chosen for this garment.
	 */
	change(changes: readonly Change[]): void {
		const file = this.learner.own.find(({ id }) => id === this.id)?.file;
		const inFile = changes.filter(({ allowance }) =>
			BLOCK_ALLOWANCES.some(({ key }) => key === allowance.key)
		);
		const allowances = Object.fromEntries(changes.map(({ allowance, to }) => [allowance.key, to]));
		if (!file || inFile.length < changes.length) {
			this.#keep(`cure ${this.#before.length}`, {
				...this.choices,
				allowances: { ...this.choices.allowances, ...allowances }
			});
			return;
		}
		this.reset('allowances', (key) => key in allowances);
		const written = { ...file.allowances };
		for (const { allowance, to } of inFile)
			written[allowance.key] = `${printNumber(to, file.unit)} ${file.unit}`;
		this.learner.saveBody(this.id, { ...file, allowances: written });
	}

	/** Goes back to the usual numbers: for some allowances, for the edges of a piece, or whatever `forgets` says. */
	reset(part: Part, forgets: (key: string) => boolean): void {
		const kept = Object.entries(this.choices[part]).filter(([key]) => !forgets(key));
		this.#keep(`reset ${this.#before.length}`, { ...this.choices, [part]: Object.fromEntries(kept) });
	}

	/** Keeps one of the own body's measurements as typed. Throws BadInput. */
	measure(key: MeasurementKey, text: string): void {
		const file = this.learner.own.find(({ id }) => id === this.id)?.file;
		if (file) this.learner.saveBody(this.id, withTyped(file, key, text, this.learner.unit));
	}

	/** Makes an own copy of the chosen body under a name, with the choices made for it, and drafts for that. */
	copyBody(wanted: string): void {
		const { body, choices, learner } = this;
		const name = this.#freeName(wanted);
		const id = learner.newBody(name);
		learner.saveBody(id, writtenDown(body, name, learner.unit));
		learner.settle(choicesSlot(this.garment, { id, name }), choices);
		learner.change({ body: id });
	}

	/** Makes an own body with nothing measured yet, and drafts for that. */
	newBody(): void {
		this.learner.change({ body: this.learner.newBody(this.#freeName(this.learner.unnamed())) });
	}

	#freeName(wanted: string): string {
		return freeName(
			wanted,
			this.learner.bodies.map(({ body }) => body.name)
		);
	}

	#read(allowance: LengthAllowance, text: string): Mm {
		return readLengthAllowance(allowance, text, this.learner.unit);
	}

	#keep(what: string, choices: SavedChoices): void {
		if (this.#before.at(-1)?.what !== what) this.#before = [...this.#before, { what, choices: this.choices }];
		this.choices = this.learner.settle(this.#slot, choices);
	}

	#stand(): Standing {
		const { body, choices, garment, id } = this;
		const missing = notTaken(garment.measurements, body);
		if (missing.length > 0) return { kind: 'missing', missing };
		try {
			const work = makePattern(garment, body, choices);
			if (work.kind === 'refused') return work;
			const pattern = { ...work.pattern, pieces: work.pattern.pieces.map((piece) => this.#asBefore(piece)) };
			this.#last = { body: id, pattern };
			return { kind: 'made', pattern };
		} catch (error) {
			if (error instanceof BadInput) throw error;
			const last = this.#last?.body === id ? this.#last.pattern : undefined;
			return { kind: 'our-fault', told: error instanceof Error ? error.message : String(error), last };
		}
	}

	/** A piece that nothing has changed of is the one that is on the screen, so that it is not drawn again. */
	#asBefore(piece: Piece): Piece {
		const before = this.#last?.pattern.pieces.find(({ key }) => key === piece.key);
		return before && dequal(before, piece) ? before : piece;
	}
}
