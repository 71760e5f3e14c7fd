import type { Body } from '#shared/body.ts';
import { SAME_PLACE } from '#shared/tolerances.ts';
import { mm, type Mm } from '#shared/units.ts';
import { scopeOf } from '#drafting/evaluate.ts';
import { lengthOf } from '#drafting/formula/value.ts';
import { boundsOf, pathStart } from '#geometry/path.ts';
import { at, distance } from '#geometry/point.ts';
import type { PieceEdge } from '../edges.ts';
import type { Garment, TierRule } from '../garment.ts';
import type { Choices, Pattern } from '../pattern.ts';
import { buttonLevels } from '../button-levels.ts';
import { clothLines, hemHeight } from './folds.ts';
import { formOf, seenOn, type Form, type Seen } from './form.ts';
import {
	lengthsAlong,
	panelOf,
	placeOn,
	placesOn,
	sidePlace,
	type Made,
	type Panel,
	type Places
} from './panel.ts';
import type { Worn, WornLayer, WornLine, WornLineKind, WornView } from './worn.ts';
import { seenSleeve, sleeveLength } from './sleeve.ts';

type Side = 'front' | 'back';

const mirrored = (places: Places): Places => places.map(({ x, y }) => at(-x, y));
const turned = (places: Places): Places => [...places].reverse();

/** Whether a line lies on the centre line, where the other half goes on. */
const isOnCentre = ({ path }: PieceEdge): boolean =>
	path.every(({ from, to }) => Math.abs(from.x) <= SAME_PLACE && Math.abs(to.x) <= SAME_PLACE);

/** A tier of a garment for a body: how it is seen from both sides. */
interface Tier {
	readonly rule: TierRule;
	readonly form: Form;
	readonly front: Seen;
	readonly back: Seen;
}

/** Where an edge is seen, running as its outline does. */
const seenEdge = (edge: PieceEdge, seen: Seen, isMain: boolean): Places => {
	const { panel } = seen;
	const own = placesOn(edge.path);
	const shares = (): readonly number[] => {
		const lengths = lengthsAlong(own);
		return lengths.map((each) => each / (lengths.at(-1) || 1));
	};
	if (isMain)
		for (const [index, level] of panel.levels.entries()) {
			const i = level.across.findIndex(({ name }) => name === edge.name);
			const run = level.across[i];
			if (!run) continue;
			const before = level.across.slice(0, i).reduce((sum, { length }) => sum + length, 0);
			const isTurned = distance(pathStart(run.path), pathStart(edge.path)) > SAME_PLACE;
			const isHem = index === panel.levels.length - 1;
			return shares().map((share) => {
				const out = (before + (isTurned ? 1 - share : share) * edge.length) / level.width;
				const { x, y } = seen.level(index, out);
				return at(x, y + (isHem ? hemHeight(seen.form, out) : 0));
			});
		}
	return own.map((place) =>
		seen.put((isMain ? sidePlace(panel, place) : undefined) ?? placeOn(panel, place))
	);
};

/** The edges of an outline from after its centre line on. */
const fromCentre = (edges: readonly PieceEdge[]): readonly PieceEdge[] => {
	const first = edges.findIndex((edge, i) => isOnCentre(edges.at(i - 1) ?? edge) && !isOnCentre(edge));
	return first < 0 ? edges : [...edges.slice(first), ...edges.slice(0, first)];
};

/** How an edge is drawn: one that is sewn to another piece of the same view is a seam within it. */
const lineKind = (
	piece: string,
	edge: PieceEdge,
	garment: Garment,
	within: readonly string[]
): WornLineKind => {
	const holds = (refs: readonly { piece: string; edge: string }[]): boolean =>
		refs.some((ref) => ref.piece === piece && ref.edge === edge.name);
	const isIn = (refs: readonly { piece: string }[]): boolean =>
		refs.some((ref) => ref.piece !== piece && within.includes(ref.piece));
	const sewn = garment.seams.some(
		({ first, second, compared }) =>
			!compared && ((holds(first) && isIn(second)) || (holds(second) && isIn(first)))
	);
	return sewn ? 'seam' : 'outline';
};

/** A piece on its panel: whole where its centre is on a fold or sewn, else the two halves that lap, the wearer's right one last. */
const pieceLayers = (
	key: string,
	seen: Seen,
	made: Made,
	kindOf: (edge: PieceEdge) => WornLineKind
): readonly [under: WornLayer[], over: WornLayer[]] => {
	const edges = fromCentre(made.edges[key] ?? []);
	const isMain = key === seen.panel.main.key;
	const centre = edges.filter(isOnCentre);
	const drawn = edges
		.filter((edge) => !isOnCentre(edge))
		.map((edge) => ({ edge, places: seenEdge(edge, seen, isMain) }));
	const half = drawn.flatMap(({ places }) => places);
	const lines = drawn
		.filter(({ edge }) => edge.kind !== 'dart')
		.map(({ edge, places }): WornLine => ({ kind: kindOf(edge), places }));
	const other = lines.map(({ kind, places }) => ({ kind, places: mirrored(places) }));
	const layer = (cloth: Places, on: readonly WornLine[]): WornLayer => ({
		side: 'outside',
		cloth,
		lines: on,
		buttons: []
	});
	if (centre.length === 0) return [[layer(half, lines)], [layer(mirrored(half), other)]];
	const middle = centre
		.filter(({ kind }) => kind !== 'fold')
		.map((edge): WornLine => ({ kind: 'seam', places: seenEdge(edge, seen, false) }));
	return [[layer([...half, ...mirrored(turned(half))], [...lines, ...other, ...middle])], []];
};

/** The places of a draft's points on the centre line. */
const onCentre = ({ panel, put }: Seen, names: readonly string[]): Places =>
	names.flatMap((name) => {
		const point = panel.draft.points[name];
		return point ? [put(placeOn(panel, at(0, point.y)))] : [];
	});

/** What lies on a panel beside its edges: darts, the zip, the slit, gathers and folds. */
const detailLayer = (seen: Seen): WornLayer => {
	const { panel } = seen;
	const both = (line: WornLine): readonly WornLine[] => [line, { ...line, places: mirrored(line.places) }];
	const darts = panel.dartLines.flatMap((line) =>
		both({ kind: 'dart', places: line.map((place) => seen.put(placeOn(panel, place))) })
	);
	const centre = (kind: 'zip' | 'slit'): readonly WornLine[] => {
		const places = onCentre(seen, panel.rule[kind] ?? []);
		return places.length > 1 ? [{ kind, places }] : [];
	};
	const rule = panel.main.buttons;
	const [top, foot, bust] = rule ? [...rule.on, rule.at].map((name) => panel.draft.points[name]?.y) : [];
	const levels =
		top !== undefined && bust !== undefined && foot !== undefined ? buttonLevels(top, bust, foot) : [];
	return {
		side: 'outside',
		cloth: [],
		lines: [...darts, ...clothLines(seen).flatMap(both), ...centre('zip'), ...centre('slit')],
		buttons: levels.map((y) => seen.put(placeOn(panel, at(0, y))))
	};
};

/** A band above the first level, as deep as it is when finished. */
const bandLayer = (seen: Seen, depth: Mm): WornLayer => {
	const shares = Array.from({ length: 21 }, (_, i) => i / 10 - 1);
	const foot = shares.map((share) => seen.level(0, share));
	const head = foot.map(({ x, y }) => at(x, y - depth));
	const [left, right] = [0, -1].map((i) => [head.at(i), foot.at(i)].flatMap((place) => place ?? []));
	const line = (places: Places = []): WornLine => ({ kind: 'outline', places });
	return {
		side: 'outside',
		cloth: [...head, ...turned(foot)],
		lines: [line(head), line(left), line(right), { kind: 'seam', places: foot }],
		buttons: []
	};
};

/** What one sees of the inside through the neck: down to the back's neck edge. */
const insideLayer = ({ rule: { neck }, front, back }: Tier, made: Made): readonly WornLayer[] => {
	const [near, far] = (neck ?? []).map(({ piece, edge }) =>
		made.edges[piece]?.find(({ name }) => name === edge)
	);
	if (!near || !far) return [];
	const fromMiddle = (places: Places): Places =>
		Math.abs(places[0]?.x ?? 0) <= Math.abs(places.at(-1)?.x ?? 0) ? places : turned(places);
	const [a, b] = [fromMiddle(seenEdge(near, front, false)), fromMiddle(seenEdge(far, back, false))];
	const whole = (places: Places): Places => [...mirrored(turned(places)), ...places];
	return [
		{
			side: 'inside',
			cloth: [...whole(a), ...turned(whole(b))],
			lines: [{ kind: 'outline', places: whole(b) }],
			buttons: []
		}
	];
};

const tiersOf = (garment: Garment, body: Body, made: Made): readonly Tier[] => {
	let above: Tier | undefined;
	return garment.worn.flatMap((rule) => {
		const [front, back] = [panelOf(rule.front, garment, made), panelOf(rule.back, garment, made)];
		if (!front || !back) return [];
		const girths = rule.girths.map((key) => body.measurements[key] ?? 0);
		const hangs = above || rule.band ? undefined : body.measurements.shoulderWidth;
		const isGathered = above?.form.levels.at(-1)?.gathered ?? false;
		const form = formOf([front, back], girths, isGathered, hangs && hangs / 2);
		const from = (side: Side, panel: Panel): Seen =>
			seenOn(panel, form, above ? above[side].foot : rule.band ? 'waist' : 'shoulder');
		above = { rule, form, front: from('front', front), back: from('back', back) };
		return [above];
	});
};

/** All the layers of a view, from the lowest to the uppermost. */
const layersOf = (
	side: Side,
	tiers: readonly Tier[],
	garment: Garment,
	made: Made,
	band: (rule: TierRule) => Mm | undefined
): readonly WornLayer[] => {
	const within = tiers.flatMap(({ rule }) => [
		...rule[side].pieces,
		...(rule.sleeve ? [rule.sleeve.piece] : [])
	]);
	return [...tiers].reverse().flatMap((tier) => {
		const seen = tier[side];
		const halves = tier.rule[side].pieces.map((key) =>
			pieceLayers(key, seen, made, (edge) => lineKind(key, edge, garment, within))
		);
		const depth = band(tier.rule);
		return [
			...seenSleeve(tier.rule, seen, made, garment),
			...(side === 'front' ? insideLayer(tier, made) : []),
			...halves.flatMap(([under]) => under),
			...halves.flatMap(([, over]) => over),
			detailLayer(seen),
			...(depth === undefined ? [] : [bandLayer(seen, depth)])
		];
	});
};

/**
 * A garment as it is worn, front and back, from the numbers of its pattern; undefined where its file does not say how it is worn.
 *
 * The model. Each tier of the garment goes round an elliptical section of the body. At each of its levels the cloth's own quarter round
 * (front and back in the mean, darts sewn shut) is laid round a quarter of such a section, and each place is seen where it then lies from
 * straight ahead (section.ts); the side seam lies at the very side, and of underarms much wider than the shoulders the rest stands forward. Gathers draw the cloth in to the body, and let go of it away from
 * their seam; cloth that is looser than a body's ease falls in folds, and only a part of its looseness is seen (`hanging`). Lengths down
 * the body are the pattern's own, down the centre and along the side: a skirt hangs from its waist, and where a side runs out, its hem
 * rises. What lies above the first level, neck and shoulders, keeps its own heights.
 */
export const wornOf = (garment: Garment, body: Body, made: Made, choices: Choices): Worn | undefined => {
	const tiers = tiersOf(garment, body, made);
	const [first, last] = [tiers[0], tiers.at(-1)];
	const hem = last?.form.levels.at(-1);
	if (!first || !last || !hem) return undefined;
	const scope = scopeOf(garment, body, { points: {}, lines: {} }, choices.allowances);
	const band = ({ band: depth }: TierRule): Mm | undefined => depth && lengthOf(depth, scope);
	/** Where the centre of a side begins: at the top of a band, or else of what is above the first level. */
	const upperEdge = (side: Side): number => {
		const { rule, [side]: seen } = first;
		const depth = band(rule);
		if (depth !== undefined) return seen.level(0, 0).y - depth;
		const ends = rule[side].pieces.flatMap((key) =>
			(made.edges[key] ?? []).map(({ path }) => pathStart(path))
		);
		return Math.min(...ends.flatMap(({ x, y }) => (Math.abs(x) <= SAME_PLACE ? [y] : [])));
	};
	const views = (['front', 'back'] as const).map((side): WornView => {
		const layers = layersOf(side, tiers, garment, made, band);
		const bounds = boundsOf(
			[],
			layers.flatMap(({ cloth }) => cloth)
		);
		return { side, layers, bounds, length: mm(last[side].foot[0] - upperEdge(side)) };
	});
	const gathered = tiers.flatMap(({ form }) => form.levels.filter((level) => level.gathered))[0];
	const sleeve = tiers.flatMap(({ rule }) => (rule.sleeve ? [rule.sleeve] : []))[0];
	const middle = sleeve && made.edges[sleeve.piece] && sleeveLength(garment, sleeve, made);
	return {
		views,
		hem: mm(4 * hem.own),
		sleeve: middle,
		buttons: views[0]?.layers.reduce((sum, { buttons }) => sum + buttons.length, 0) ?? 0,
		gathered: gathered && gathered.own / gathered.seen
	};
};

/** A pattern as it is worn by the body that it was made for. */
export const wornPattern = (
	garment: Garment,
	body: Body,
	{ drafts, pieces }: Pick<Pattern, 'drafts' | 'pieces'>,
	choices: Choices
): Worn | undefined =>
	wornOf(
		garment,
		body,
		{ drafts, edges: Object.fromEntries(pieces.map(({ key, edges }) => [key, edges])) },
		choices
	);
