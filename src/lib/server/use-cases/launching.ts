import type { Transaction } from 'kysely';
import { z } from 'zod';
import { fetchJson, PlatformKeys } from '../lti/keys.ts';
import { readMessage, type Launch } from '../lti/message.ts';
import { hashOf, newCode, newId, newSecret } from '../people/ids.ts';
import { hashPassphrase } from '../people/passphrases.ts';
import { newSession } from '../people/sessions.ts';
import { name as nameShape } from '../people/shapes.ts';
import { Refused } from '../refused.ts';
import { isTaken } from '../store/store.ts';
import type { PlatformRow, Tables } from '../store/tables.ts';
import { useCase } from '../use-case.ts';
import type { World } from '../world.ts';

/** How long somebody may be on their way from a platform, in milliseconds. */
const ON_THE_WAY = 10 * 60_000;
const LONGEST = 4_000;
const LONGEST_NAME = 60;

const keys = new PlatformKeys(fetchJson);
const optional = z.string().max(LONGEST).optional();

/** The platform that a request comes from. Throws Refused where it is none that is known, or might be several. */
const platformOf = async (
	{ store: { db } }: World,
	asked: { readonly iss: string; readonly client_id?: string; readonly lti_deployment_id?: string }
): Promise<PlatformRow> => {
	let query = db.selectFrom('platforms').selectAll().where('issuer', '=', asked.iss);
	if (asked.client_id !== undefined) query = query.where('client', '=', asked.client_id);
	if (asked.lti_deployment_id !== undefined) query = query.where('deployment', '=', asked.lti_deployment_id);
	const [found, ...more] = await query.execute();
	if (!found || more.length > 0) throw new Refused('noPlatform');
	return found;
};

/**
 * Somebody sets out from a platform: gives the address at which the platform says who it is, and the secret that comes back with
 * its answer. Both hints go back as they came.
 */
export const beginLaunch = useCase({
	who: 'anybody',
	input: z.object({
		iss: z.string().max(LONGEST),
		login_hint: z.string().max(LONGEST),
		lti_message_hint: optional,
		client_id: optional,
		lti_deployment_id: optional,
		/** Where the platform is to send its answer. */
		answer: z.url()
	}),
	run: async (asked, { world }): Promise<{ readonly to: string }> => {
		const platform = await platformOf(world, asked);
		const { db } = world.store;
		const [state, nonce] = [newSecret(), newSecret()];
		await db.deleteFrom('arrivals').where('until', '<=', world.now()).execute();
		const row = {
			platform: platform.id,
			nonce: hashOf(nonce),
			person: null,
			until: world.now() + ON_THE_WAY
		};
		await db
			.insertInto('arrivals')
			.values({ id: hashOf(state), ...row })
			.execute();
		const to = new URL(platform.authorize);
		const question = {
			scope: 'openid',
			response_type: 'id_token',
			response_mode: 'form_post',
			prompt: 'none',
			client_id: platform.client,
			redirect_uri: asked.answer,
			state,
			nonce,
			login_hint: asked.login_hint,
			lti_message_hint: asked.lti_message_hint
		};
		for (const [key, value] of Object.entries(question))
			if (value !== undefined) to.searchParams.set(key, value);
		return { to: to.href };
	}
});

/** Takes what was kept of somebody's way, so that it is good once. */
const taken = async ({ store: { db }, now }: World, secret: string) => {
	const found = await db
		.deleteFrom('arrivals')
		.where('id', '=', hashOf(secret))
		.returningAll()
		.executeTakeFirst();
	if (!found || found.until <= now()) throw new Refused('launchOver');
	return found;
};

/** The class of a course of a platform, which is begun, closed to others, with the first who come from it. */
const classOf = async (
	whole: Transaction<Tables>,
	platform: PlatformRow,
	{ context }: Launch,
	at: number
): Promise<string> => {
	const key = hashOf(`${platform.id} course ${context?.id ?? ''}`);
	const known = await whole.selectFrom('courses').select('class').where('id', '=', key).executeTakeFirst();
	if (known) return known.class;
	const own = newId(at);
	const title = nameShape.safeParse((context?.title ?? platform.issuer).slice(0, LONGEST_NAME));
	const row = { id: own, name: title.data ?? platform.client.slice(0, LONGEST_NAME), code: newCode() };
	await whole
		.insertInto('classes')
		.values({ ...row, open_until: at, since: at })
		.execute();
	await whole.insertInto('courses').values({ id: key, class: own }).execute();
	return own;
};

/** Whoever comes, who is made with the first time: a learner of one class, or a teacher, who teaches it. */
const personOf = async (world: World, platform: PlatformRow, launch: Launch): Promise<string> => {
	// Nobody knows it: whoever came from a platform comes back by it.
	const passphrase = await hashPassphrase(newSecret(), world.cost);
	const at = world.now();
	return world.store.db.transaction().execute(async (whole) => {
		const inClass = await classOf(whole, platform, launch, at);
		const place = launch.isTeacher ? 'teacher' : inClass;
		const key = hashOf(`${platform.id} person ${launch.subject} ${place}`);
		const known = await whole.selectFrom('comers').select('person').where('id', '=', key).executeTakeFirst();
		const person = known?.person ?? newId(at);
		if (!known) {
			const shown = nameShape.safeParse((launch.name ?? '').slice(0, LONGEST_NAME));
			const row = {
				role: launch.isTeacher ? 'teacher' : 'learner',
				name: shown.data ?? `#${key.slice(0, 4)}`,
				// No name that is typed is this one: people of one name may come from a platform.
				known_as: `\t${key}`,
				class: launch.isTeacher ? null : inClass
			} as const;
			await whole
				.insertInto('people')
				.values({ id: person, ...row, passphrase, since: at })
				.execute();
			await whole.insertInto('comers').values({ id: key, person }).execute();
		}
		if (launch.isTeacher)
			await whole
				.insertInto('teaching')
				.values({ id: newId(at), class: inClass, teacher: person })
				.onConflict((conflict) => conflict.columns(['class', 'teacher']).doNothing())
				.execute();
		return person;
	});
};

/**
 * Somebody arrives with what their platform has signed. They are signed in; where their browser keeps no secret of a page in a frame,
 * they are given a ticket for a page of its own, good once.
 */
export const launch = useCase({
	who: 'anybody',
	input: z.object({
		state: z.string().max(LONGEST),
		id_token: z.string().max(LONGEST * 5),
		inFrame: z.boolean()
	}),
	run: async (typed, { world }): Promise<{ readonly secret: string; readonly origin: string }> => {
		const way = await taken(world, typed.state);
		const platform = await world.store.db
			.selectFrom('platforms')
			.selectAll()
			.where('id', '=', way.platform)
			.executeTakeFirst();
		if (!platform || way.nonce === null) throw new Refused('launchOver');
		const message = await readMessage(typed.id_token, platform, keys, world.now());
		if (hashOf(message.nonce) !== way.nonce) throw new Refused('notFromPlatform');
		const made = (): Promise<string> => personOf(world, platform, message);
		// Two who come at once, the first of a course: one begins its class, and the other finds it the next time.
		const person = await made().catch((problem: unknown) => {
			if (isTaken(problem)) return made();
			throw problem;
		});
		// The platform's own pages: they may show ours in a frame.
		const { origin } = new URL(platform.authorize);
		if (!typed.inFrame) return { secret: await newSession(world, person), origin };
		const secret = newSecret();
		await world.store.db
			.insertInto('arrivals')
			.values({
				id: hashOf(secret),
				platform: platform.id,
				nonce: null,
				person,
				until: world.now() + ON_THE_WAY
			})
			.execute();
		return { secret, origin };
	}
});

/** Whoever was given a ticket in a frame comes in by it, in a page of its own. */
export const openLaunch = useCase({
	who: 'anybody',
	input: z.strictObject({ ticket: z.string().max(LONGEST) }),
	run: async (typed, { world }): Promise<{ readonly secret: string }> => {
		const { person } = await taken(world, typed.ticket);
		if (person === null) throw new Refused('launchOver');
		return { secret: await newSession(world, person) };
	}
});
