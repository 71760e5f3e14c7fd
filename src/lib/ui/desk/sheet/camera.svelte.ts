import { mm, px, type Mm } from '#shared/units.ts';
import { boundsOf, type Bounds } from '#geometry/path.ts';
import { stepNeeds } from '#drafting/steps/kinds.ts';
import { movedIn } from '#drafting/moved.ts';
import type { ScreenSize, SheetView } from '#ui/drawing/view.ts';
import type { Tool } from '../tool.svelte.ts';
import type { Gestures } from './gestures.svelte.ts';
import { toBeSeen } from './right-place.ts';
import { areSeen, steadied, viewOf, wholeOf } from './steady.ts';

/** How long the view glides, in milliseconds. */
const GLIDE = 220;
/** A step that comes to fewer pixels than this is small: fingers and handles would hide it. */
const SMALL = 100;
/** How wide a margin a step's surroundings are given, as a share of them: so wide that it tells nothing. */
const MARGIN = 0.25;

/**
 * What part of the sheet is seen: the whole draft, steadily; nearer only where the learner asks for it, and wider
 * only where a mark would not be seen.
 */
export class Camera {
	readonly tool: Tool;
	readonly gestures: Gestures;
	size: ScreenSize = $state.raw({ width: px(0), height: px(0) });
	/** Whether the learner wants to see the surroundings of each step. */
	closer = $state(false);
	/** The view that was last chosen here, and not by hand. */
	#chosen: SheetView | undefined;
	#frame = 0;

	/** The points that the step starts from, and all that it moves. */
	readonly needed: readonly string[] = $derived.by(() => [
		...stepNeeds(this.tool.step),
		...movedIn(this.tool.work.method, this.tool.step)
	]);
	readonly #whole = $derived.by(() => this.tool.work.draft && wholeOf(this.tool.work.draft));
	/** What may be shown where nothing else has to be; what is seen from nearest is. */
	readonly shown: readonly Bounds[] = $derived.by(() => {
		const [whole, near] = [this.#whole, this.closer && this.#surroundings()];
		return [near, whole].flatMap((bounds) => bounds || []);
	});

	/** What the step is about: its line, or its point and those that it starts from; none where neither is drafted. */
	readonly about: Bounds | undefined = $derived.by(() => {
		const { draft } = this.tool.work;
		const { stepName } = this.tool;
		const names = draft?.lines[stepName] ? [stepName] : [...this.needed, stepName];
		const places = names.flatMap((name) => draft?.points[name] ?? []);
		const lines = names.flatMap((name) => {
			const line = draft?.lines[name];
			return line ? [line.path] : [];
		});
		return places.length + lines.length === 0 ? undefined : boundsOf(lines, places);
	});
	/** Whether the step is seen so small in the whole draft that a hand would want it nearer. */
	readonly isSmall: boolean = $derived.by(() => {
		const near = this.about;
		if (this.closer || !near || !this.#whole || this.size.width === 0) return false;
		const { scale } = viewOf(this.#whole, this.size);
		return scale * Math.max(near.right - near.left, near.bottom - near.top) < SMALL;
	});
	/** Whether the whole draft is seen as it is shown from the start: not from nearer, nor as a hand has moved it. */
	readonly isWhole: boolean = $derived.by(() => {
		const { view } = this.gestures;
		return !this.closer && (this.#chosen === undefined || view === this.#chosen);
	});

	/** `still`: whether the learner wants nothing to glide. */
	constructor(
		tool: Tool,
		gestures: Gestures,
		readonly still: () => boolean
	) {
		this.tool = tool;
		this.gestures = gestures;
	}

	#surroundings(): Bounds | undefined {
		if (!this.about) return undefined;
		const { left, top, right, bottom } = this.about;
		const room = (from: Mm, to: Mm): Mm => mm(Math.max(30, (to - from) * MARGIN));
		const [x, y] = [room(left, right), room(top, bottom)];
		return { left: mm(left - x), top: mm(top - y), right: mm(right + x), bottom: mm(bottom + y) };
	}

	/** Shows the draft, or the step's surroundings, and all marks: with one that lies far away the whole may be seen from nearer. */
	home(): void {
		const { shown, size } = this;
		if (size.width === 0) return;
		const views = shown.map((bounds) => steadied(bounds, size, toBeSeen(this.tool)));
		const [nearest] = views.toSorted((a, b) => b.scale - a.scale);
		if (nearest) this.#glide(nearest);
	}

	/** Another step was taken up: what the learner chose by hand stays where it shows what the step starts from. */
	atStep(): void {
		const { points } = this.tool.work.own;
		const starts = this.needed.flatMap((name) => points[name] ?? []);
		const byHand = this.#chosen !== undefined && this.gestures.view !== this.#chosen;
		if (!byHand || this.closer || !areSeen(starts, this.gestures.view, this.size)) this.home();
	}

	/** Brings into view what must be seen of the step; moves nothing where all of it is. */
	keep(): void {
		if (!areSeen(toBeSeen(this.tool), this.gestures.view, this.size)) this.home();
	}

	zoom(factor: number): void {
		this.stop();
		const { width, height } = this.size;
		this.gestures.zoom(factor, { left: px(width / 2), top: px(height / 2) });
	}

	/** Ends a glide: a hand has taken hold. */
	stop(): void {
		cancelAnimationFrame(this.#frame);
	}

	#glide(to: SheetView): void {
		const [from, begin] = [this.gestures.view, performance.now()];
		const isFirst = this.#chosen === undefined;
		const show = (view: SheetView): void => {
			this.#chosen = view;
			this.gestures.view = view;
		};
		this.stop();
		if (isFirst || this.still()) {
			show(to);
			return;
		}
		const step = (now: number): void => {
			const gone = Math.min(1, (now - begin) / GLIDE);
			if (gone === 1) {
				show(to);
				return;
			}
			const share = gone * gone * (3 - 2 * gone);
			const between = (a: number, b: number): number => a + (b - a) * share;
			show({
				left: mm(between(from.left, to.left)),
				top: mm(between(from.top, to.top)),
				scale: between(from.scale, to.scale)
			});
			this.#frame = requestAnimationFrame(step);
		};
		this.#frame = requestAnimationFrame(step);
	}
}
