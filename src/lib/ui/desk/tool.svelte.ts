import type { Placement } from '#shared/placement.ts';
import type { HandleOff } from '#shared/speech/en/verdicts.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { SAME_PLACE } from '#shared/tolerances.ts';
import { mm, type Mm } from '#shared/units.ts';
import { pathOfPlacement, pointOfPlace } from '#checker/placed.ts';
import { placementOfPath, placeOfPoint } from '#checker/placed.ts';
import type { Drafted } from '#drafting/evaluate.ts';
import { stepAnswer, stepStart } from '#drafting/steps/kinds.ts';
import type { Answer, Step } from '#drafting/steps/step-rules.ts';
import { pathEnd, pathStart, polyline, type Path } from '#geometry/path.ts';
import { between, distance, type SheetPoint } from '#geometry/point.ts';
import { cubic, type CubicSegment } from '#geometry/segment.ts';
import { fromOrigin } from './readout.ts';
import { spokenTurn, turnedBy, wayOf, type Way } from './way.ts';
import type { Work } from './work.svelte.ts';

/**
 * The one drawing tool: whatever the step, a learner moves *targets*. A point step has one; a level
 * has its far end; a straight line its two ends; a curve two handles for each of its pieces. Pointer,
 * arrow keys and typing all move the chosen target, so that each is worth the same.
 */
export interface Target {
	readonly id: string;
	/** How it is called on screen and in speech. */
	readonly name: string;
	/** The named point from which its distance is told. */
	readonly origin: string | undefined;
	/** It settles on a named point that lies near. */
	readonly settles: boolean;
}

type Says = Speech['words']['desk'];
type Places = Readonly<Record<string, SheetPoint>>;

/** What the tool needs to know of one kind of step. */
interface ToolKind {
	readonly targets: readonly Target[];
	/** Where the targets stand before anything was placed. */
	readonly begin: Places;
	places(placement: Placement): Places;
	/** The placement, once every target has a place. */
	placement(places: Places): Placement | undefined;
	/** The way that the target keeps to, where it may not be put anywhere. */
	readonly way?: Way | undefined;
}

const oneTarget = (id: string, name: string, origin: string | undefined): Target => ({
	id,
	name,
	origin,
	settles: false
});

const pointTool = (step: Step): ToolKind => ({
	targets: [oneTarget('point', step.name, stepStart(step))],
	begin: {},
	places: (placement): Places => (placement.kind === 'point' ? { point: pointOfPlace(placement.at) } : {}),
	placement: ({ point }) => point && { kind: 'point', at: placeOfPoint(point) }
});

/** A point that goes its own way stands where it begins until it is moved. */
const wayTool = (step: Step, way: Way): ToolKind => ({
	...pointTool(step),
	begin: { point: way.begin },
	way
});

const levelTool = (from: string, drafted: Drafted, says: Says): ToolKind => ({
	targets: [oneTarget('end', says.endOfLevel, from)],
	begin: {},
	places: (placement): Places =>
		placement.kind === 'line' ? { end: pathEnd(pathOfPlacement(placement)) } : {},
	placement: ({ end }) => {
		const start = drafted.points[from];
		return start && end && placementOfPath(polyline(start, end));
	}
});

const straightTool = (says: Says): ToolKind => ({
	targets: [
		{ id: 'first', name: says.firstEnd, origin: undefined, settles: true },
		{ id: 'last', name: says.lastEnd, origin: undefined, settles: true }
	],
	begin: {},
	places: (placement): Places => {
		if (placement.kind !== 'line') return {};
		const path = pathOfPlacement(placement);
		return { first: pathStart(path), last: pathEnd(path) };
	},
	placement: ({ first, last }) => first && last && placementOfPath(polyline(first, last))
});

/** Before they are moved the handles lie on the straight way between their ends, a third along. */
const curveTool = (
	{ through }: Extract<Answer, { put: 'handles' }>,
	drafted: Drafted,
	says: Says
): ToolKind => {
	const nodes = through.flatMap(({ point }) => {
		const at = drafted.points[point];
		return at ? [{ name: point, at }] : [];
	});
	const pieces = nodes.slice(1).flatMap((end, i) => {
		const start = nodes[i];
		return start ? [{ start, end, ids: [`${i}:leaving`, `${i}:arriving`] as const }] : [];
	});
	return {
		targets: pieces.flatMap(({ start, end, ids }) => [
			oneTarget(ids[0], says.handleOut({ point: start.name }), start.name),
			oneTarget(ids[1], says.handleInto({ point: end.name }), end.name)
		]),
		begin: Object.fromEntries(
			pieces.flatMap(({ start, end, ids }) => [
				[ids[0], between(start.at, end.at, 1 / 3)],
				[ids[1], between(start.at, end.at, 2 / 3)]
			])
		),
		places: (placement): Places => {
			if (placement.kind !== 'line') return {};
			const cubics = pathOfPlacement(placement).filter(
				(segment): segment is CubicSegment => segment.kind === 'cubic'
			);
			return Object.fromEntries(
				cubics.flatMap(({ leaving, arriving }, i) => [
					[`${i}:leaving`, leaving],
					[`${i}:arriving`, arriving]
				])
			);
		},
		placement: (places) => {
			const [first, ...rest] = pieces.flatMap(({ start, end, ids }) => {
				const [leaving, arriving] = [places[ids[0]], places[ids[1]]];
				return leaving && arriving ? [cubic(start.at, leaving, arriving, end.at)] : [];
			});
			return first && placementOfPath([first, ...rest]);
		}
	};
};

const NOTHING: ToolKind = { targets: [], begin: {}, places: () => ({}), placement: () => undefined };

const toolFor = (step: Step, drafted: Drafted, says: Says): ToolKind => {
	const answer = stepAnswer(step);
	if (answer.put === 'level') return levelTool(answer.from, drafted, says);
	if (answer.put === 'ends') return straightTool(says);
	if (answer.put === 'handles') return curveTool(answer, drafted, says);
	const way = wayOf(answer, drafted);
	return way ? wayTool(step, way) : pointTool(step);
};

/** The tool at work on the chosen step. */
export class Tool {
	readonly work: Work;
	readonly speech: Speech;
	stepName: string = $state('');
	#chosen = $state(0);
	/** Ends chosen so far for a line that still wants its other end. */
	#pending: Places = $state.raw({});
	/** What a screen reader is told: the step taken up, or where a mark was put. */
	spoken: string = $state('');
	/** What the lesson asks for at each of its steps, in its own first words. */
	readonly tasks: Record<string, string> = $state({});
	/** Takes the keyboard's focus to the sheet that the tool is used on, while there is one. */
	focus: (() => void) | undefined;
	/** How things stand with the target at a place, told by whatever draws how it moves. */
	tell: ((place: SheetPoint) => string) | undefined = $state.raw();
	/** How a curve is off, told by whatever draws what it is set into: the handle that lies furthest from its place, and where it strays. */
	curve:
		| {
				worst(): HandleOff | undefined;
				strays(): readonly { readonly from: SheetPoint; readonly to: SheetPoint }[];
		  }
		| undefined = $state.raw();
	/** Where a target is being dragged, before it is let go. */
	#dragged: Places = $state.raw({});

	readonly step: Step = $derived.by(() => this.work.step(this.stepName));
	/** What the step asks a learner to put down. */
	readonly answer: Answer = $derived(stepAnswer(this.step));
	/** A step that starts from what is not drafted yet has nothing to take hold of. */
	readonly #kind: ToolKind = $derived.by(() =>
		['locked', 'absent'].includes(this.work.state(this.stepName)) || !this.work.draft
			? NOTHING
			: toolFor(this.step, this.work.own, this.speech.words.desk)
	);
	readonly targets: readonly Target[] = $derived(this.#kind.targets);
	readonly places: Places = $derived.by(() => {
		const { placement } = this.work.entry(this.stepName);
		const placed = placement ? this.#kind.places(placement) : this.#pending;
		return { ...this.#kind.begin, ...placed, ...this.#dragged };
	});
	/** The way that the chosen target keeps to, where it has one: round a pin, or straight on. */
	readonly way: Way | undefined = $derived(this.#kind.way);
	readonly target: Target | undefined = $derived(this.targets[this.#chosen] ?? this.targets[0]);
	/** The line as it stands while its handles are being moved. */
	readonly line: Path | undefined = $derived.by(() => {
		const placement = this.#kind.placement(this.places);
		return placement?.kind === 'line' ? pathOfPlacement(placement) : undefined;
	});

	constructor(work: Work, stepName: string, speech: Speech) {
		this.work = work;
		this.speech = speech;
		this.stepName = stepName;
	}

	/** Takes up another step. */
	take(stepName: string): void {
		this.stepName = stepName;
		this.spoken = this.speech.words.desk.now(this.work.named(stepName));
		this.#chosen = 0;
		this.#pending = {};
		this.#dragged = {};
	}

	/** Chooses the target that keys, typing and taps move. */
	choose(id: string): void {
		this.#chosen = Math.max(
			0,
			this.targets.findIndex((target) => target.id === id)
		);
	}

	/** The named point from which the chosen target is measured. */
	originPlace(target: Target | undefined = this.target): SheetPoint | undefined {
		return target?.origin ? this.work.own.points[target.origin] : undefined;
	}

	/** Where a target stands, or where a move of it begins: at its origin. */
	placeOf(target: Target): SheetPoint | undefined {
		return this.places[target.id];
	}

	/** Where a target stands before it is moved, where it stands anywhere. */
	beginOf(id: string): SheetPoint | undefined {
		return this.#kind.begin[id];
	}

	/** Whether the step turns a part of the draft about a pin, one way or the other. */
	get turns(): boolean {
		return this.answer.put === 'way' && this.answer.turns !== undefined;
	}

	/** Whether the step's marks stay where they are: it is right, or was kept, and was not opened to be changed. */
	get fixed(): boolean {
		return this.work.isDrafted(this.stepName);
	}

	/** Shows a target where it is being dragged; nothing is placed until it is put there. */
	drag(id: string, place: SheetPoint | undefined): void {
		if (this.fixed) return;
		this.#dragged = place ? { [id]: place } : {};
	}

	/** Whether the next tap begins the line anew: one that was found wrong is ruled again from its first end. */
	get beginsAnew(): boolean {
		return !this.fixed && this.answer.put === 'ends' && this.work.entry(this.stepName).checked;
	}

	/** Whether a line or a curve lies drawn that is right: where what is right goes on by itself, nobody has to have it checked. */
	get drawn(): boolean {
		const { work, stepName, answer } = this;
		const { goesOn } = work.learner.settings;
		const isRight = work.state(stepName) === 'placed' && work.verdict(stepName).answer === 'right';
		return goesOn && (answer.put === 'ends' || answer.put === 'handles') && isRight;
	}

	/** A tap on the paper: the chosen target is put there. */
	tap(place: SheetPoint): void {
		if (this.beginsAnew) this.cancel();
		if (!this.target) return;
		this.put(this.target.id, place);
		// Of a curve the next handle that still stands where it began is to be put.
		const { places, targets } = this;
		const ids = targets.map(({ id }) => id);
		const next = [...ids.slice(this.#chosen), ...ids].find((id) => {
			const [stands, begins] = [places[id], this.beginOf(id)];
			return stands && begins && distance(stands, begins) <= SAME_PLACE;
		});
		if (this.answer.put === 'handles' && next !== undefined) this.choose(next);
	}

	/** Puts a target somewhere; typed entries are kept with the placement as written. */
	put(id: string, place: SheetPoint, typed?: Extract<Placement, { kind: 'point' }>['typed']): void {
		this.spoken = this.#said(id, place);
		this.putAll({ [id]: place }, typed);
	}

	/** Puts targets somewhere, all at once. */
	putAll(put: Places, typed?: Extract<Placement, { kind: 'point' }>['typed']): void {
		if (this.fixed) return;
		this.#dragged = {};
		const places = { ...this.places, ...put };
		const placement = this.#kind.placement(places);
		if (placement) {
			this.work.place(
				this.stepName,
				placement.kind === 'point' && typed ? { ...placement, typed } : placement
			);
			this.#pending = {};
		} else {
			this.#pending = { ...this.#pending, ...put };
		}
		this.#advance(places);
	}

	/** How things stand with the chosen target at a place on its way: "open 2.3 cm at F · turned 4.6° anticlockwise". */
	told(place: SheetPoint): string {
		const angle = this.turns && this.way ? turnedBy(this.way, place) : undefined;
		const { turned } = this.speech.words.desk;
		return this.tell?.(place) ?? (angle === undefined ? '' : turned({ angle: spokenTurn(angle) }));
	}

	/** Where a place lies: from where the target is measured, or else on the sheet. */
	where(place: SheetPoint, target: Target | undefined = this.target): string {
		const from = this.originPlace(target);
		return target?.origin && from
			? fromOrigin(target.origin, from, place, this.speech)
			: this.speech.words.desk.onSheet(place);
	}

	/** Where a target was put, as it is said. */
	#said(id: string, place: SheetPoint): string {
		const target = this.targets.find((each) => each.id === id);
		const [says, name, told] = [this.speech.words.desk, target?.name ?? '', this.told(place)];
		return told
			? says.moving({ target: name, told, place })
			: says.placed({ target: name, where: this.where(place, target) });
	}

	/** Moves a target on along its way, from where it stands. */
	goOn(by: Mm): void {
		const { way, target, places } = this;
		const stands = target && places[target.id];
		if (way && stands) this.put(target.id, way.placeAt(mm(way.gone(way.begin, stands) + by)));
	}

	/** Puts everything of this step away: the one way out of a half-made placement. */
	cancel(): void {
		if (this.fixed) return;
		this.#pending = {};
		this.#dragged = {};
		this.#chosen = 0;
		this.work.clear(this.stepName);
	}

	/** After one end of a line, the other is next. */
	#advance(places: Places): void {
		const next = this.targets.findIndex(({ id }) => places[id] === undefined);
		if (next >= 0) this.#chosen = next;
	}
}
