import { z } from 'zod';
import { taken, type OpenChoice } from '../lti/arrivals.ts';
import { MOST } from '../gradebook/outbox.ts';
import { addressOf, type Goal } from '../lti/goal.ts';
import { CLAIM } from '../lti/message.ts';
import { publicKeys, signed } from '../lti/own-keys.ts';
import { taskSchema } from '../handing/task.ts';
import { newSecret } from '../people/ids.ts';
import { Refused } from '../refused.ts';
import type { AssignmentRow } from '../store/tables.ts';
import { useCase } from '../use-case.ts';
import type { World } from '../world.ts';

/** What a teacher of a learning platform links to, by LTI Deep Linking 2.0 (1EdTech). */

const DEEP_LINKING = 'https://purl.imsglobal.org/spec/lti-dl/claim';
const LONGEST = 4_000;

/** The keys by which platforms know what was signed here. */
export const ownKeys = useCase({
	who: 'anybody',
	input: z.strictObject({}),
	run: async (_, { world }) => ({ keys: await publicKeys(world) })
});

/** What the platform keeps of a link: where it leads, and what it hands back with every launch. */
const link = (goal: Goal, title: string, site: string) => ({
	type: 'ltiResourceLink',
	title,
	url: addressOf(goal, site),
	custom: { [goal.kind]: goal.id }
});

/** The same of something that a class was set, with its end and its column of marks. */
const linkOfAssignment = ({ id, name, task }: AssignmentRow, site: string, columns: boolean) => {
	const { closes } = taskSchema.parse(JSON.parse(task));
	return {
		...link({ kind: 'assignment', id }, name, site),
		...(columns ? { lineItem: { scoreMaximum: MOST, label: name, resourceId: id } } : {}),
		...(closes === null ? {} : { submission: { endDateTime: new Date(closes).toISOString() } })
	};
};

/** Those of what was chosen that are there, in the order in which they were shown. */
const linksOf = async (
	{ store: { db }, course }: World,
	{ class: inClass, columns }: OpenChoice,
	chosen: readonly string[],
	{ site, titles }: { readonly site: string; readonly titles: Readonly<Record<string, string>> }
) => {
	const assignments = await db
		.selectFrom('assignments')
		.selectAll()
		.where('class', '=', inClass)
		.orderBy('id')
		.execute();
	return [
		...assignments
			.filter(({ id }) => chosen.includes(`assignment.${id}`))
			.map((row) => linkOfAssignment(row, site, columns)),
		...course.lessons
			.filter(({ id }) => chosen.includes(`lesson.${id}`))
			.map(({ id, meta }) => link({ kind: 'lesson', id }, titles[id] ?? meta.title, site))
	];
};

/** Answers a platform that has asked for links: gives where the answer goes, and what is to be sent there, signed. */
export const sendChoice = useCase({
	who: 'anybody',
	input: z.strictObject({
		ticket: z.string().max(LONGEST),
		/** Each as `assignment.ID` or `lesson.ID`. */
		chosen: z.array(z.string().max(LONGEST)).max(LONGEST),
		site: z.url(),
		/** What lessons are called in the language of whoever chooses. */
		titles: z.record(z.string(), z.string())
	}),
	run: async (
		{ ticket, chosen, ...here },
		{ world }
	): Promise<{ readonly to: string; readonly answer: string; readonly origin: string }> => {
		const { choice, platform: from } = await taken(world, ticket);
		if (choice === null) throw new Refused('launchOver');
		const { store } = world;
		const platform = await store.db
			.selectFrom('platforms')
			.selectAll()
			.where('id', '=', from)
			.executeTakeFirst();
		if (!platform) throw new Refused('launchOver');
		const open = JSON.parse(choice) as OpenChoice;
		const links = await linksOf(world, open, chosen, here);
		const answer = await signed(world, {
			iss: platform.client,
			aud: platform.issuer,
			nonce: newSecret(),
			[`${CLAIM}/deployment_id`]: platform.deployment,
			[`${CLAIM}/message_type`]: 'LtiDeepLinkingResponse',
			[`${CLAIM}/version`]: '1.3.0',
			[`${DEEP_LINKING}/content_items`]: open.several ? links : links.slice(0, 1),
			...(open.data === undefined ? {} : { [`${DEEP_LINKING}/data`]: open.data })
		});
		return { to: open.back, answer, origin: new URL(platform.authorize).origin };
	}
});
