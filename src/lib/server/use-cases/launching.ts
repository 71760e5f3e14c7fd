import { z } from 'zod';
import { fetchJson, PlatformKeys } from '../lti/keys.ts';
import { keepColumn } from '../gradebook/columns.ts';
import { newTicket, taken, type OpenChoice } from '../lti/arrivals.ts';
import { personOf, type Comer } from '../lti/comers.ts';
import { foundGoal, goalOf, pathFor } from '../lti/goal.ts';
import { readMessage, type Choice, type Launch } from '../lti/message.ts';
import { hashOf, newSecret } from '../people/ids.ts';
import { newSession } from '../people/sessions.ts';
import { Refused } from '../refused.ts';
import { isTaken } from '../store/store.ts';
import type { ArrivalRow, PlatformRow } from '../store/tables.ts';
import { useCase } from '../use-case.ts';
import type { World } from '../world.ts';

const LONGEST = 4_000;

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
	// Several places at one platform, to which we are one client, are told apart by what it signs.
	if (!found || more.some(({ client }) => client !== found.client)) throw new Refused('noPlatform');
	return found;
};

/**
 * Somebody sets out from a platform: gives the address at which the platform says who it is, and the secret that comes back with
 * its answer, which their browser keeps too: nobody is to be brought in on the way of somebody else. Both hints go back as they came.
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
	run: async (asked, { world }): Promise<{ readonly to: string; readonly state: string }> => {
		const platform = await platformOf(world, asked);
		const nonce = newSecret();
		const state = await newTicket(world, { platform: platform.id, nonce: hashOf(nonce) });
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
		return { to: to.href, state };
	}
});

/** Whoever has come, once what their platform signed is known to be good. */
interface Arrived extends Comer {
	readonly message: Launch;
	readonly platform: PlatformRow;
}

const arrived = async (world: World, state: string, token: string): Promise<Arrived> => {
	const way = await taken(world, state);
	const ask = world.store.db.selectFrom('platforms').selectAll();
	const began = await ask.where('id', '=', way.platform).executeTakeFirst();
	if (!began || way.nonce === null) throw new Refused('launchOver');
	const message = await readMessage(token, began, keys, world.now());
	const platform = await ask
		.where('issuer', '=', began.issuer)
		.where('client', '=', began.client)
		.where('deployment', '=', message.deployment)
		.executeTakeFirst();
	if (!platform || hashOf(message.nonce) !== way.nonce) throw new Refused('notFromPlatform');
	const made = (): Promise<Comer> => personOf(world, platform, message);
	// Two who come at once, the first of a course: one begins its class, and the other finds it the next time.
	const comer = await made().catch((problem: unknown) => {
		if (isTaken(problem)) return made();
		throw problem;
	});
	return { ...comer, message, platform };
};

const onWay = ({ platform, person }: Arrived): Pick<ArrivalRow, 'platform' | 'person'> => ({
	platform: platform.id,
	person
});

/** What a teacher of a platform can link to. */
const choosing = async (world: World, found: Arrived, choice: Choice): Promise<Arriving> => {
	if (!found.message.isTeacher) throw new Refused('notForRole');
	if (!choice.links) throw new Refused('noLinks');
	const assignments = await world.store.db
		.selectFrom('assignments')
		.select(['id', 'name'])
		.where('class', '=', found.class)
		.orderBy('id')
		.execute();
	const open: OpenChoice = { ...choice, class: found.class };
	const ticket = await newTicket(world, { ...onWay(found), choice: JSON.stringify(open) });
	return { kind: 'choose', ticket, assignments, several: choice.several };
};

/** What comes of somebody's arrival. */
type Arriving =
	/** They are signed in, and go to a path of this site. */
	| { readonly kind: 'in'; readonly secret: string; readonly to: string }
	/** They go on in a page of its own, by a ticket. */
	| { readonly kind: 'apart'; readonly ticket: string }
	/** They choose what is to be linked to. */
	| {
			readonly kind: 'choose';
			readonly ticket: string;
			readonly several: boolean;
			readonly assignments: readonly { readonly id: string; readonly name: string }[];
	  };

/**
 * Somebody arrives with what their platform has signed. They are signed in; in a frame, where most browsers keep nothing, they are
 * given a ticket for a page of its own, good once. Whoever comes for links chooses them where they are: that needs nothing to be kept.
 * Throws Refused where the browser that arrives is not the one that set out. In a frame that keeps nothing it cannot tell: there only
 * the platform's own pages can show what is answered, and nothing happens before it is clicked.
 */
export const launch = useCase({
	who: 'anybody',
	input: z.object({
		state: z.string().max(LONGEST),
		id_token: z.string().max(LONGEST * 5),
		inFrame: z.boolean(),
		/** The state that the browser has kept. */
		kept: optional,
		/** Where this site stands. */
		site: z.url()
	}),
	run: async (typed, { world }): Promise<Arriving & { readonly origin: string }> => {
		if (typed.kept !== typed.state && !(typed.inFrame && typed.kept === undefined))
			throw new Refused('otherBrowser');
		const found = await arrived(world, typed.state, typed.id_token);
		// The platform's own pages: they may show ours in a frame.
		const { origin } = new URL(found.platform.authorize);
		const { wanted, isTeacher } = found.message;
		if (wanted.kind === 'choice') return { origin, ...(await choosing(world, found, wanted.choice)) };
		const role = isTeacher ? 'teacher' : 'learner';
		const goal = await foundGoal(world, goalOf(wanted, typed.site), found.class);
		if (goal?.kind === 'assignment') await keepColumn(world, { ...found, assignment: goal.id });
		const to = pathFor(goal, { role, class: found.class });
		if (!typed.inFrame) return { kind: 'in', secret: await newSession(world, found.person), to, origin };
		return { kind: 'apart', ticket: await newTicket(world, { ...onWay(found), to }), origin };
	}
});

const oneTicket = z.strictObject({ ticket: z.string().max(LONGEST) });

/** Whoever was given a ticket in a frame comes in by it, in a page of its own. */
export const openLaunch = useCase({
	who: 'anybody',
	input: oneTicket,
	run: async (typed, { world }): Promise<{ readonly secret: string; readonly to: string }> => {
		const { person, to } = await taken(world, typed.ticket);
		if (person === null || to === null) throw new Refused('launchOver');
		return { secret: await newSession(world, person), to };
	}
});
