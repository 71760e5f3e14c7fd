import { mm, type Mm } from '#shared/units.ts';
import { movedBy, type Motion } from '#geometry/motion.ts';
import type { SheetPoint } from '#geometry/point.ts';
import { aligned, undone } from '#photograph/aligned.ts';
import type { PicturePoint } from '#photograph/picture.ts';
import type { Rectified } from '#photograph/rectify.ts';
import { CROSSED, errorOf, TAPPED } from '#photograph/sureness.ts';
import { toPicture, toSheet } from '#photograph/view.ts';

/** A place that is to be tapped: its name, and where it should lie. */
export interface Wanted {
	readonly name: string;
	readonly right: SheetPoint;
}

/** A place in the picture that was tapped, and how near. */
interface Tap {
	readonly at: PicturePoint;
	/** Whether the crossing of two lines was taken. */
	readonly crossing: boolean;
}

/** A place that was tapped, as it lies on the draft. */
export interface Lies {
	readonly name: string;
	readonly at: SheetPoint;
	/** The radius that holds 95 of 100. */
	readonly error: Mm;
	readonly right: SheetPoint;
}

/** Earlier places count for more: what was drawn from them is moved with them. */
const LESS_EACH = 0.93;

/** What was tapped in a picture, and how it lies on the draft. */
export class Taps {
	/** By names, in the order of the draft. */
	taps: Readonly<Record<string, Tap>> = $state.raw({});
	readonly #wanted: () => readonly Wanted[];
	readonly #read: () => Rectified | undefined;

	constructor(wanted: () => readonly Wanted[], read: () => Rectified | undefined) {
		this.#wanted = wanted;
		this.#read = read;
	}

	#tapped = $derived.by(() => {
		const read = this.#read();
		if (!read) return [];
		return this.#wanted().flatMap((wanted, i) => {
			const tap = this.taps[wanted.name];
			return tap ? [{ ...wanted, found: toSheet(read.view, tap.at), tap, weight: LESS_EACH ** i }] : [];
		});
	});
	/** How what was tapped must be moved to lie on the draft; undefined for fewer than two. */
	readonly laid = $derived(aligned(this.#tapped));
	/** From the draft to the sheet in the picture. */
	readonly back: Motion | undefined = $derived(this.laid && undone(this.laid.motion));
	readonly #errors = $derived.by(() => {
		const read = this.#read();
		if (!read) return [];
		return this.#tapped.map(({ tap }) => errorOf(read, tap.at, tap.crossing ? CROSSED : TAPPED));
	});
	/** How far all of them together may lie from where they are laid: as sure as the mean of them. */
	readonly together: Mm = $derived(mm(Math.hypot(...this.#errors) / Math.max(1, this.#errors.length)));
	/** What was tapped, as it lies on the draft: nothing before there are two. */
	readonly lying: readonly Lies[] = $derived.by(() => {
		const { laid } = this;
		if (!laid) return [];
		return this.#tapped.map(({ name, found, right }, i) => ({
			name,
			right,
			at: movedBy(laid.motion, found),
			error: mm(Math.hypot(this.#errors[i] ?? 0, this.together))
		}));
	});

	/** Puts a place down, or moves it. */
	put(name: string, at: PicturePoint, crossing = false): void {
		this.taps = { ...this.taps, [name]: { at, crossing } };
	}

	/** Takes a place away again. */
	take(name: string): void {
		const { [name]: _, ...others } = this.taps;
		this.taps = others;
	}

	/** Forgets all of them, for another picture. */
	clear(): void {
		this.taps = {};
	}

	/** Where a place of the draft should be seen; undefined before it is known how the draft lies. */
	seen(place: SheetPoint): PicturePoint | undefined {
		const read = this.#read();
		return read && this.back ? toPicture(read.view, movedBy(this.back, place)) : undefined;
	}
}
