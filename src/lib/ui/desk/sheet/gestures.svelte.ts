import { SAME_PLACE } from '#shared/tolerances.ts';
import { mm, px, type Mm } from '#shared/units.ts';
import { distance, type SheetPoint } from '#geometry/point.ts';
import { SNAPS, snapped } from '#ui/drawing/grid.ts';
import type { Target, Tool } from '../tool.svelte.ts';
import { heldTo } from '../way.ts';
import { panned, toScreen, toSheet, zoomed, type ScreenPoint, type SheetView } from '#ui/drawing/view.ts';

/** What the fingers or the mouse are doing. Every way out goes through `end`. */
type Doing =
	| { readonly kind: 'nothing' }
	| { readonly kind: 'pressing'; readonly start: ScreenPoint }
	| { readonly kind: 'panning'; readonly last: ScreenPoint }
	| {
			readonly kind: 'grasping';
			readonly target: Target;
			readonly start: ScreenPoint;
			readonly chosen: boolean;
	  }
	| {
			readonly kind: 'dragging';
			readonly target: Target;
			readonly start: ScreenPoint;
			readonly hold: ScreenPoint;
	  }
	/** What keeps to its way is moved by as much as the finger goes along it, wherever it was taken hold of. */
	| {
			readonly kind: 'guiding';
			readonly target: Target;
			readonly stood: SheetPoint;
			readonly grip: SheetPoint;
	  }
	| { readonly kind: 'pinching'; readonly apart: number; readonly middle: ScreenPoint };

/** Movement in pixels below which a press is a tap and not a drag. */
const TAP_SLACK = 6;
/** The same for what keeps to its way: a dart may be closed by a few pixels, and a tap on its panel means nothing. */
const WAY_SLACK = 2;
/** How near a press must be to a target to take hold of it: half the 44 px that a finger wants, less for a mouse. */
const GRASP = { touch: 24, mouse: 14 } as const;
/** A finger hides what it touches, so what it drags stays this far above it. */
const FINGER_LIFT = 44;
/** How near a named point must be for a line's end to settle on it. */
const SETTLE = 30;

const far = (a: ScreenPoint, b: ScreenPoint, slack: number): boolean =>
	Math.hypot(a.left - b.left, a.top - b.top) > slack;

/** Turns presses, drags, pinches and taps on the sheet into moves of the tool and of the view. */
export class Gestures {
	readonly tool: Tool;
	view: SheetView = $state.raw({ left: mm(0), top: mm(0), scale: 1 });
	readonly snap: () => Mm;
	/** Where a mouse hovers, snapped; undefined for fingers and outside the sheet. */
	hover: SheetPoint | undefined = $state.raw();
	#doing: Doing = { kind: 'nothing' };
	#pressed = new Map<number, ScreenPoint>();

	constructor(tool: Tool, snap: () => Mm) {
		this.tool = tool;
		this.snap = snap;
	}

	/** `onPanel`: pressed on the part of the draft that the step moves, which is taken hold of anywhere. */
	down(id: number, at: ScreenPoint, touch: boolean, onPanel = false): void {
		this.#pressed.set(id, at);
		// A third finger changes nothing: two are enough to pinch with, and none of them is a tap.
		if (this.#pressed.size > 2) return;
		if (this.#pressed.size === 2) {
			this.tool.drag('', undefined);
			this.#doing = { kind: 'pinching', ...this.#spread() };
			return;
		}
		const near = this.#targetAt(at, touch ? GRASP.touch : GRASP.mouse);
		const target = onPanel ? this.tool.target : near;
		const chosen = target?.id === this.tool.target?.id;
		if (target) this.tool.choose(target.id);
		this.#doing = target ? { kind: 'grasping', target, start: at, chosen } : { kind: 'pressing', start: at };
	}

	move(id: number, at: ScreenPoint, touch: boolean): void {
		if (!this.#pressed.has(id)) {
			this.hover = touch || this.tool.way ? undefined : this.#settled(at);
			return;
		}
		this.#pressed.set(id, at);
		this.#begin(at);
		const doing = this.#doing;
		if (doing.kind === 'pinching') this.#pinch(doing);
		if (doing.kind === 'dragging') this.#drag(doing, at, touch);
		if (doing.kind === 'guiding') this.#guide(doing, at);
		if (doing.kind === 'panning') {
			this.view = panned(this.view, at.left - doing.last.left, at.top - doing.last.top);
			this.#doing = { kind: 'panning', last: at };
		}
	}

	/** A press that has moved too far for a tap becomes a drag from where it began: a quick one may be a single move. */
	#begin(at: ScreenPoint): void {
		const doing = this.#doing;
		if (doing.kind !== 'grasping' && doing.kind !== 'pressing') return;
		const slack = doing.kind === 'grasping' && this.tool.way ? WAY_SLACK : TAP_SLACK;
		if (!far(doing.start, at, slack)) return;
		// What is told and crossed on the sheet is what moves, and not where the mouse was before.
		this.hover = undefined;
		if (doing.kind === 'grasping') this.#doing = this.#ruling(doing) ?? this.#taken(doing);
		else this.#doing = this.#ruling(doing) ?? { kind: 'panning', last: doing.start };
	}

	/**
	 * A drag from a named point rules a line from there, where the step asks for one that is not ruled yet, or that was
	 * found wrong. An end that stands beside every named point is not ruled from but moved.
	 */
	#ruling({ start, ...held }: Extract<Doing, { kind: 'pressing' | 'grasping' }>): Doing | undefined {
		const { tool } = this;
		const near = this.#pointNear(toSheet(this.view, start));
		const end = held.kind === 'grasping' ? tool.places[held.target.id] : near;
		const from = near && end && distance(near, end) <= SAME_PLACE ? near : undefined;
		const isRuled = !tool.beginsAnew && tool.targets.every(({ id }) => tool.places[id]);
		if (tool.answer.put !== 'ends' || tool.fixed || isRuled || !from) return undefined;
		tool.cancel();
		tool.tap(from);
		const { target } = tool;
		return target && { kind: 'dragging', target, start, hold: { left: px(0), top: px(0) } };
	}

	/** The named point that a line's end settles on from a place, where one lies so near. */
	#pointNear(place: SheetPoint): SheetPoint | undefined {
		const near = Object.values(this.tool.work.inked.points)
			.map((point) => ({ point, away: distance(point, place) * this.view.scale }))
			.sort((a, b) => a.away - b.away)[0];
		return near && near.away <= SETTLE ? near.point : undefined;
	}

	up(id: number, at: ScreenPoint): void {
		// Pressed down elsewhere and let go over the sheet: none of our doing.
		if (!this.#pressed.has(id)) return;
		const doing = this.#doing;
		const held = doing.kind === 'dragging' || doing.kind === 'guiding' ? doing.target.id : undefined;
		const dragged = held === undefined ? undefined : this.tool.places[held];
		if (held !== undefined && dragged) this.tool.put(held, dragged);
		// A tap on a mark that was not chosen yet only chooses it, and one on a panel moves nothing; any other tap places.
		const onMark = doing.kind === 'grasping' && (doing.chosen || this.tool.beginsAnew) && !this.tool.way;
		if (doing.kind === 'pressing' || onMark) this.tool.tap(this.#settled(at));
		this.end(id);
	}

	/** The one way out: a lift, a cancel, a lost pointer. */
	end(id: number): void {
		this.#pressed.delete(id);
		this.tool.drag('', undefined);
		this.#doing = { kind: 'nothing' };
	}

	leave(): void {
		this.hover = undefined;
	}

	zoom(factor: number, about: ScreenPoint): void {
		this.view = zoomed(this.view, factor, about);
	}

	/** A place on the screen as a place of the sheet: on the grid, or on a named point where the target settles on those. */
	#settled(at: ScreenPoint, target = this.tool.target): SheetPoint {
		const place = toSheet(this.view, at);
		if (this.tool.way) return heldTo(this.tool.way, place, this.#fine);
		return (target?.settles ? this.#pointNear(place) : undefined) ?? snapped(place, this.snap());
	}

	/** The finest step of the learner's ruler. */
	get #fine(): Mm {
		return SNAPS[this.tool.work.learner.unit][0] ?? mm(1);
	}

	#guide({ target, stood, grip }: Extract<Doing, { kind: 'guiding' }>, at: ScreenPoint): void {
		const { way } = this.tool;
		if (!way) return;
		const gone = way.gone(way.begin, stood) + way.gone(grip, toSheet(this.view, at));
		this.tool.drag(target.id, heldTo(way, way.placeAt(mm(gone)), this.#fine));
	}

	/** A mark that is taken hold of stays where it is under the finger or the mouse. */
	#taken({ target, start }: Extract<Doing, { kind: 'grasping' }>): Doing {
		const place = this.tool.places[target.id];
		if (place && this.tool.way)
			return { kind: 'guiding', target, stood: place, grip: toSheet(this.view, start) };
		const seen = place ? toScreen(this.view, place) : start;
		return {
			kind: 'dragging',
			target,
			start,
			hold: { left: px(seen.left - start.left), top: px(seen.top - start.top) }
		};
	}

	/** A finger lifts the mark above itself by and by, as far as it has moved, so that nothing jumps. */
	#drag(
		{ target, start, hold }: Extract<Doing, { kind: 'dragging' }>,
		at: ScreenPoint,
		touch: boolean
	): void {
		const lift = touch ? Math.min(FINGER_LIFT, Math.hypot(at.left - start.left, at.top - start.top)) : 0;
		const held = { left: px(at.left + hold.left), top: px(at.top + hold.top - lift) };
		this.tool.drag(target.id, this.#settled(held, target));
	}

	#targetAt(at: ScreenPoint, reach: number): Target | undefined {
		const near = this.tool.targets
			.flatMap((target) => {
				const place = this.tool.places[target.id];
				if (!place) return [];
				const seen = toScreen(this.view, place);
				return [{ target, away: Math.hypot(seen.left - at.left, seen.top - at.top) }];
			})
			.filter(({ away }) => away <= reach);
		return near.sort((a, b) => a.away - b.away)[0]?.target;
	}

	#spread(): { apart: number; middle: ScreenPoint } {
		const [a, b] = [...this.#pressed.values()];
		if (!a || !b) return { apart: 1, middle: { left: px(0), top: px(0) } };
		return {
			apart: Math.hypot(a.left - b.left, a.top - b.top),
			middle: { left: px((a.left + b.left) / 2), top: px((a.top + b.top) / 2) }
		};
	}

	#pinch({ apart, middle }: Extract<Doing, { kind: 'pinching' }>): void {
		const now = this.#spread();
		const moved = panned(this.view, now.middle.left - middle.left, now.middle.top - middle.top);
		this.view = zoomed(moved, now.apart / Math.max(1, apart), now.middle);
		this.#doing = { kind: 'pinching', ...now };
	}
}
