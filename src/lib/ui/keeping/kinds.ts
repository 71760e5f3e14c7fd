import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { entrySchema, type Entries, type Entry } from '#shared/entry.ts';
import { readPlacement } from '#shared/placement.ts';
import { message, type Message } from '#shared/speech/message.ts';
import { mergedByName } from './merge.ts';
import { reasonOf, type Damage, type Kind, type Slot } from './saved.ts';
import {
	ownBodiesSchema,
	ownBodySchema,
	settingsSchema,
	VERSION,
	workSchema,
	type OwnBody,
	type Settings
} from './schemas.ts';
import { savedKey } from './shelf.ts';

/** A part of a record that cannot be used. */
interface Bad {
	readonly name: string | Message;
	readonly reason: Message;
	readonly json: unknown;
}

const damageOf = (bad: readonly Bad[], rest: unknown): Damage | undefined => {
	const [first] = bad;
	return first && { parts: bad.map(({ name }) => name), reason: first.reason, rest };
};

const settings: Kind<Settings> = {
	read: (json) => ({ value: settingsSchema.parse(json), damage: undefined }),
	write: (value) => value,
	merge: (base, ours, theirs) =>
		settingsSchema.parse(mergedByName<unknown>(base ?? settingsSchema.parse({}), ours, theirs))
};

/** An id that no demo body and no other own body has: two bodies of one id could not be told apart. */
const freeId = (wanted: string, others: readonly OwnBody[]): string => {
	const taken = new Set([...DEMO_BODIES, ...others].map(({ id }) => id));
	const own = DEMO_BODIES.some(({ id }) => id === wanted) ? `own-${wanted}` : wanted;
	let id = own;
	for (let n = 2; taken.has(id); n++) id = `${own}-${n}`;
	return id;
};

const bodyName = (json: unknown, index: number): string | Message => {
	const { name } = (json as { file?: { name?: unknown } } | null)?.file ?? {};
	return typeof name === 'string' && name !== ''
		? name
		: message('keeping', 'bodyNumber', { number: index + 1 });
};

const byId = (bodies: readonly OwnBody[]): Readonly<Record<string, OwnBody>> =>
	Object.fromEntries(bodies.map((body) => [body.id, body]));

const bodies: Kind<readonly OwnBody[]> = {
	read: (json) => {
		const value: OwnBody[] = [];
		const bad: Bad[] = [];
		for (const [i, each] of ownBodiesSchema.parse(json).bodies.entries()) {
			const { data, error } = ownBodySchema.safeParse(each);
			if (data) value.push({ ...data, id: freeId(data.id, value) });
			else bad.push({ name: bodyName(each, i), reason: reasonOf(error, each), json: each });
		}
		return {
			value,
			damage: damageOf(bad, { version: VERSION, bodies: bad.map((each) => each.json) })
		};
	},
	write: (value) => ({ version: VERSION, bodies: value }),
	merge: (base, ours, theirs) => Object.values(mergedByName(byId(base ?? []), byId(ours), byId(theirs)))
};

/** A step as it may be saved: a placement that could not be read back stays out, and what the step has cost stays in. */
const keepable = ({ placement, ...rest }: Entry): Entry => {
	const { data } = readPlacement(placement);
	const bare = placement && !data ? { ...rest, checked: false, kept: false, shown: false } : rest;
	return { ...(data && { placement: data }), ...(entrySchema.safeParse(bare).data ?? entrySchema.parse({})) };
};

/** A step that two tabs have both worked on: the placement of this one, and what both of them cost. */
const settled = (base: Entry | undefined, ours: Entry, theirs: Entry): Entry => ({
	...ours,
	tries: theirs.tries + ours.tries - (base?.tries ?? 0),
	help: Math.max(ours.help, theirs.help)
});

/** The steps of one method's draft; `spoken` says a step's name to the learner. */
const work = (
	method: string,
	body: string | undefined,
	spoken: (step: string) => string | Message
): Kind<Entries> => ({
	read: (json) => {
		const whole = workSchema.parse(json);
		const value: Record<string, Entry> = {};
		const bad: Record<string, Bad> = {};
		for (const [step, each] of Object.entries(whole.steps)) {
			const { data, error } = entrySchema.safeParse(each);
			if (data) value[step] = data;
			else bad[step] = { name: spoken(step), reason: reasonOf(error, each), json: each };
		}
		const steps = Object.fromEntries(Object.entries(bad).map(([step, each]) => [step, each.json]));
		return { value, damage: damageOf(Object.values(bad), { ...whole, steps }) };
	},
	write: (entries) => ({
		version: VERSION,
		method,
		body,
		steps: Object.fromEntries(Object.entries(entries).map(([step, entry]) => [step, keepable(entry)]))
	}),
	merge: (base, ours, theirs) => mergedByName(base ?? {}, ours, theirs, settled)
});

export const SETTINGS: Slot<Settings> = {
	key: savedKey('settings'),
	what: message('keeping', 'settings'),
	kind: settings
};

export const BODIES: Slot<readonly OwnBody[]> = {
	key: savedKey('bodies'),
	what: message('keeping', 'bodies'),
	kind: bodies
};

/** Where the draft of one method is kept, for one body or (where it needs no measurement) for all. */
export const workSlot = (
	method: { readonly id: string; readonly name: string },
	body: { readonly id: string; readonly name: string } | undefined,
	spoken: (step: string) => string | Message
): Slot<Entries> => ({
	key: savedKey('work', method.id, ...(body ? [body.id] : [])),
	what: message('keeping', 'draftOf', { method: method.name, body: body?.name }),
	kind: work(method.id, body?.id, spoken)
});
