import {
	checkAllowance,
	checkChosen,
	type Allowance,
	type AllowanceValues,
	type LengthAllowance
} from '#shared/allowances.ts';
import { BadInput } from '#shared/bad-input.ts';
import { unknownHere } from '#shared/reading.ts';
import { z } from '#shared/shape.ts';
import { mm, type Mm } from '#shared/units.ts';
import type { Garment } from '#garment/garment.ts';
import { mergedByName } from './merge.ts';
import { reasonOf, type Kind, type Slot } from './saved.ts';
import { VERSION } from './schemas.ts';
import { message, type Message } from '#shared/speech/message.ts';
import { savedKey } from './shelf.ts';

/** What a maker chose for a garment and a body, lengths in millimetres; only what differs from the usual. */
export interface SavedChoices {
	/** Allowances by key; a named value by its share. */
	readonly allowances: AllowanceValues;
	/** Seam allowances of single edges, by names such as `front.side`. */
	readonly edges: Readonly<Record<string, Mm>>;
	/** The whole breadth of the cloth. */
	readonly cloth?: Mm | undefined;
}

/** Nothing chosen: everything is as usual. */
export const AS_USUAL: SavedChoices = { allowances: {}, edges: {} };

/** What of a garment has to be known to read a maker's choices back. */
export type ChosenFor = Pick<Garment, 'id' | 'name' | 'allowances' | 'pieces'>;

/** The allowance of a single edge: its range is the widest of those of cutting, a deep hem. Common practice, no source. */
export const EDGE_ALLOWANCE: LengthAllowance = {
	key: 'edge',
	default: mm(10),
	range: [mm(0), mm(100)]
};

/** The breadth of cloth, from a narrow handloom to the widest sheeting. Common practice, no source. */
export const CLOTH_WIDTH: LengthAllowance = {
	key: 'cloth',
	default: mm(1400),
	range: [mm(600), mm(3200)]
};

/** Every edge of a garment that may have an allowance of its own: a fold has none. */
const edgeNames = ({ pieces }: ChosenFor): readonly string[] =>
	pieces.flatMap(({ key, edges }) =>
		edges.filter(({ kind }) => kind !== 'fold').map(({ name }) => `${key}.${name}`)
	);

/** Each choice is read by itself, so that one that cannot be read takes no other with it. */
const savedSchema = z.object({
	version: z._default(z.literal(VERSION), VERSION),
	allowances: z._default(z.record(z.string(), z.unknown()), {}),
	edges: z._default(z.record(z.string(), z.unknown()), {}),
	cloth: z.optional(z.unknown())
});

/** A choice that cannot be used: why, and as it was saved. */
interface Bad {
	readonly key: string;
	readonly reason: Message;
	readonly json: unknown;
}

const number = z.number();

/** The chosen values that can be used, as `check` gives them, and what is wrong with the others. */
const readAll = <Value extends number>(
	json: Readonly<Record<string, unknown>>,
	check: (key: string, value: number) => Value
): { readonly good: Record<string, Value>; readonly bad: readonly Bad[] } => {
	const good: Record<string, Value> = {};
	const bad: Bad[] = [];
	for (const [key, value] of Object.entries(json)) {
		try {
			good[key] = check(key, number.parse(value));
		} catch (error) {
			bad.push({ key, reason: reasonOf(error, value), json: value });
		}
	}
	return { good, bad };
};

const asJson = (bad: readonly Bad[]): Readonly<Record<string, unknown>> =>
	Object.fromEntries(bad.map(({ key, json }) => [key, json]));

/** Choices for one garment; those that it does not know, or that lie outside their ranges, are damaged. */
const choices = (garment: ChosenFor): Kind<SavedChoices> => {
	const known = new Map(garment.allowances.map((each) => [each.key, each]));
	const edges = edgeNames(garment);
	const allowanceOf = (key: string): Allowance => {
		const found = known.get(key);
		if (!found) throw new BadInput(key, unknownHere('allowance', key, known.keys()));
		return found;
	};
	const edgeOf = (key: string): LengthAllowance => {
		if (!edges.includes(key)) throw new BadInput(key, unknownHere('edge', key, edges));
		return EDGE_ALLOWANCE;
	};
	return {
		read: (json) => {
			const saved = savedSchema.parse(json);
			const allowances = readAll(saved.allowances, (key, value) => checkChosen(allowanceOf(key), value));
			const own = readAll(saved.edges, (key, value) => checkAllowance(edgeOf(key), mm(value), ''));
			const cloth = readAll(saved.cloth === undefined ? {} : { cloth: saved.cloth }, (_, value) =>
				checkAllowance(CLOTH_WIDTH, mm(value), '')
			);
			const bad = [...allowances.bad, ...own.bad, ...cloth.bad];
			const [first] = bad;
			const rest = {
				version: VERSION,
				allowances: asJson(allowances.bad),
				edges: asJson(own.bad),
				...asJson(cloth.bad)
			};
			return {
				value: { allowances: allowances.good, edges: own.good, ...cloth.good },
				damage: first && { parts: bad.map(({ key }) => key), reason: first.reason, rest }
			};
		},
		write: (value) => ({ version: VERSION, ...value }),
		merge: (base, ours, theirs) => {
			const one = ({ cloth }: Partial<SavedChoices>): Record<string, Mm> => (cloth ? { cloth } : {});
			return {
				allowances: mergedByName(base?.allowances ?? {}, ours.allowances, theirs.allowances),
				edges: mergedByName(base?.edges ?? {}, ours.edges, theirs.edges),
				...mergedByName(one(base ?? {}), one(ours), one(theirs))
			};
		}
	};
};

/** Where a maker's choices for a garment are kept, for one body. */
export const choicesSlot = (
	garment: ChosenFor,
	body: { readonly id: string; readonly name: string }
): Slot<SavedChoices> => ({
	key: savedKey('choices', garment.id, body.id),
	what: message('keeping', 'choicesFor', { garment: garment.name, body: body.name }),
	kind: choices(garment)
});
