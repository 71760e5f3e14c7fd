import { createLocalJWKSet, jwtVerify, type JSONWebKeySet } from 'jose';
import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest';
import { callerOf } from '#server/people/sessions.ts';
import { USE_CASES } from '#server/use-cases/all.ts';
import { arrive, claim, LEARNER, newPlatform, SITE, TEACHER, type Platform } from './platform.ts';
import { newSchool, told, type School } from './school.ts';
import { onBoth } from './stores.ts';

const DEEP_LINKING = 'https://purl.imsglobal.org/spec/lti-dl/claim';
const LESSON = '40-back-levels';

type Claims = Readonly<Record<string, unknown>>;

/** What a platform says that asks for links (1EdTech, LTI Deep Linking 2.0, section 4.4). */
const asking = (settings: Claims = {}, claims: Claims = {}): Claims => ({
	sub: 'the teacher',
	[claim('message_type')]: 'LtiDeepLinkingRequest',
	[claim('roles')]: [TEACHER],
	[claim('resource_link')]: undefined,
	[claim('target_link_uri')]: undefined,
	[`${DEEP_LINKING}/deep_linking_settings`]: {
		deep_link_return_url: 'https://platform.example/links?course=1',
		accept_types: ['ltiResourceLink', 'link'],
		accept_presentation_document_targets: ['iframe', 'window'],
		accept_multiple: true,
		data: 'opaque <&> data',
		...settings
	},
	...claims
});

onBoth('links of a learning platform', (newStorePlace) => {
	let school: School;
	let platform: Platform;
	let set: { readonly class: string; readonly first: string; readonly second: string };
	beforeAll(async () => {
		school = await newSchool(await newStorePlace());
		platform = await newPlatform();
		await platform.enter(school, await school.teacher('Ms Alder'));
		const { secret } = await comes({ sub: 'the teacher', [claim('roles')]: [TEACHER] });
		const [own] = await school.ask(USE_CASES.ownClasses, secret, {});
		const inClass = own?.id ?? '';
		const closes = school.world.now() + 1_000_000;
		const first = await school.newAssignment(secret, inClass, { closes });
		school.later(1);
		set = { class: inClass, first, second: await school.newAssignment(secret, inClass) };
	});
	afterAll(async () => {
		platform.close();
		await school.close();
	});
	beforeEach(() => school.later(1));

	const comes = async (claims: Claims): Promise<{ readonly secret: string; readonly to: string }> => {
		const found = await arrive(school, platform, claims);
		if (found.kind !== 'in') throw new Error(found.kind);
		return found;
	};
	const chooses = async (claims: Claims, how: Claims = {}) => {
		const found = await arrive(school, platform, claims, how);
		if (found.kind !== 'choose') throw new Error(found.kind);
		return found;
	};
	const sends = (ticket: string, chosen: readonly string[]) =>
		school.ask(USE_CASES.sendChoice, undefined, {
			ticket,
			chosen,
			site: SITE,
			titles: { [LESSON]: 'Niveles de la espalda' }
		});
	/** What the platform reads of an answer, by the keys that the site hands out. */
	const readBack = async (answer: string): Promise<Claims> => {
		const keys = await school.ask(USE_CASES.ownKeys, undefined, {});
		const { payload, protectedHeader } = await jwtVerify(answer, createLocalJWKSet(keys as JSONWebKeySet), {
			issuer: 'square-across',
			audience: platform.issuer,
			algorithms: ['RS256'],
			requiredClaims: ['iat', 'exp', 'nonce'],
			currentDate: new Date(school.world.now())
		});
		expect(protectedHeader.kid).toMatch(/^[\da-f]{32}$/);
		return payload;
	};

	it('are chosen by a teacher, and go back signed with the deployment and the data as they came', async () => {
		const { ticket, assignments, several } = await chooses(asking(), { inFrame: true, kept: undefined });
		expect(several).toBe(true);
		expect(assignments.map(({ id }) => id)).toEqual([set.first, set.second]);
		const { to, answer, origin } = await sends(ticket, [`lesson.${LESSON}`, `assignment.${set.first}`]);
		expect([to, origin]).toEqual(['https://platform.example/links?course=1', platform.issuer]);
		const found = await readBack(answer);
		expect(found).toMatchObject({
			[claim('deployment_id')]: 'room-1',
			[claim('message_type')]: 'LtiDeepLinkingResponse',
			[claim('version')]: '1.3.0',
			[`${DEEP_LINKING}/data`]: 'opaque <&> data'
		});
		expect(found[`${DEEP_LINKING}/content_items`]).toEqual([
			{
				type: 'ltiResourceLink',
				title: 'The back',
				url: `${SITE}/class/${set.first}`,
				custom: { assignment: set.first },
				lineItem: { scoreMaximum: 100, label: 'The back', resourceId: set.first },
				submission: { endDateTime: expect.stringMatching(/^2026-11-28T00:16:/) as string }
			},
			{
				type: 'ltiResourceLink',
				title: 'Niveles de la espalda',
				url: `${SITE}/lessons/${LESSON}`,
				custom: { lesson: LESSON }
			}
		]);
		expect(await told(sends(ticket, []))).toBe('launchOver');
	});

	it('are as many as the platform takes, and bring columns of marks and data only where it wants them', async () => {
		const settings = { accept_multiple: false, accept_lineitem: false, data: undefined };
		const { ticket } = await chooses(asking(settings));
		const { answer } = await sends(ticket, [`assignment.${set.first}`, `assignment.${set.second}`]);
		const found = await readBack(answer);
		expect(found[`${DEEP_LINKING}/content_items`]).toMatchObject([{ url: `${SITE}/class/${set.first}` }]);
		expect(JSON.stringify(found)).not.toMatch(/lineItem|claim\/data/);
	});

	it('lead to nothing of another class, nor to what there is not', async () => {
		const teacher = await school.teacher('Mr Birch');
		const other = await school.newClass(teacher, 'Birch');
		const foreign = await school.newAssignment(teacher, other.class);
		const { ticket } = await chooses(asking());
		const { answer } = await sends(ticket, [`assignment.${foreign}`, 'lesson.none', foreign]);
		expect((await readBack(answer))[`${DEEP_LINKING}/content_items`]).toEqual([]);
	});

	it.each([
		['no role', { [claim('roles')]: [] }, {}, 'notForRole'],
		['a learner’s role', { [claim('roles')]: [LEARNER] }, {}, 'notForRole'],
		['another deployment', { [claim('deployment_id')]: 'room-2' }, {}, 'notFromPlatform'],
		[
			'nothing said of the links',
			{ [`${DEEP_LINKING}/deep_linking_settings`]: undefined },
			{},
			'notFromPlatform'
		],
		['no address for the answer', {}, { deep_link_return_url: undefined }, 'notFromPlatform'],
		['an answer without https', {}, { deep_link_return_url: 'http://platform.example/' }, 'notFromPlatform'],
		['no wish for links', {}, { accept_types: ['file'] }, 'noLinks']
	])('are not chosen with %s', async (_, claims, settings, answer) => {
		expect(await told(arrive(school, platform, asking(settings, claims)))).toBe(answer);
	});

	it('are not sent by the ticket of somebody who came for something else, nor open anything themselves', async () => {
		const found = await arrive(school, platform, {}, { inFrame: true, kept: undefined });
		if (found.kind !== 'apart') throw new Error(found.kind);
		expect(await told(sends(found.ticket, []))).toBe('launchOver');
		const { ticket } = await chooses(asking());
		expect(await told(school.ask(USE_CASES.openLaunch, undefined, { ticket }))).toBe('launchOver');
	});

	/** What a link opens: the claims of its launch, and the path for a learner and for a teacher; undefined for their own page. */
	const OPENS: readonly (readonly [string, () => Claims, string | undefined, string | undefined])[] = [
		['what was chosen', () => ({ [claim('custom')]: { assignment: set.first } }), '/class/:first', ':first'],
		[
			'an address of an assignment',
			() => ({ [claim('target_link_uri')]: `${SITE}/class/${set.first}` }),
			'/class/:first',
			':first'
		],
		[
			'such an address in Spanish',
			() => ({ [claim('target_link_uri')]: `${SITE}/es/class/${set.first}` }),
			'/class/:first',
			':first'
		],
		['a lesson that was chosen', () => ({ [claim('custom')]: { lesson: LESSON } }), `/lessons/${LESSON}`, ''],
		[
			'a lesson’s address',
			() => ({ [claim('target_link_uri')]: `${SITE}/lessons/${LESSON}` }),
			`/lessons/${LESSON}`,
			''
		],
		[
			'an address of another site',
			() => ({ [claim('target_link_uri')]: `https://elsewhere.example/class/${set.first}` }),
			undefined,
			undefined
		],
		[
			'an address that hides another site',
			() => ({ [claim('target_link_uri')]: `${SITE}//elsewhere.example/class/${set.first}` }),
			undefined,
			undefined
		],
		[
			'an address of the site that no link may open',
			() => ({ [claim('target_link_uri')]: `${SITE}/lti/open` }),
			undefined,
			undefined
		],
		[
			'a lesson that there is not',
			() => ({ [claim('custom')]: { lesson: '../class' } }),
			undefined,
			undefined
		],
		[
			'an assignment that there is not',
			() => ({ [claim('custom')]: { assignment: 'none' } }),
			undefined,
			undefined
		],
		['what is no text', () => ({ [claim('custom')]: { assignment: 7 } }), undefined, undefined]
	];
	it.each(OPENS)('open %s', async (_, claims, learner, teacher) => {
		const path = (wanted: string): string => wanted.replace(':first', set.first);
		expect((await comes(claims())).to).toBe(path(learner ?? '/class'));
		const asTeacher = await comes({ sub: 'the teacher', [claim('roles')]: [TEACHER], ...claims() });
		const own = `/class/${set.class}`;
		const expected = { '': learner, ':first': `${own}?assignment=${set.first}` }[teacher ?? ' '] ?? own;
		expect(asTeacher.to).toBe(expected);
	});

	it('open nothing of another course', async () => {
		const other = { [claim('context')]: { id: 'course-9' }, [claim('custom')]: { assignment: set.first } };
		const { secret, to } = await comes({ sub: 'somebody else', ...other });
		expect(to).toBe('/class');
		expect((await callerOf(school.world, secret))?.class).not.toBe(set.class);
	});

	it('open it in a page of its own as well', async () => {
		const claims = { [claim('custom')]: { assignment: set.first } };
		const found = await arrive(school, platform, claims, { inFrame: true, kept: undefined });
		if (found.kind !== 'apart') throw new Error(found.kind);
		const { to } = await school.ask(USE_CASES.openLaunch, undefined, { ticket: found.ticket });
		expect(to).toBe(`/class/${set.first}`);
	});

	it('are signed by one key for a while, and then by another; both are handed out meanwhile', async () => {
		const named = async () => (await school.ask(USE_CASES.ownKeys, undefined, {})).keys.map(({ kid }) => kid);
		const [first] = await named();
		expect(JSON.stringify(await school.ask(USE_CASES.ownKeys, undefined, {}))).not.toMatch(/"(d|p|q)"/);
		school.later(90 * 24 * 60 * 60_000);
		const both = await named();
		expect(both).toEqual([expect.any(String), first]);
		school.later(3 * 24 * 60 * 60_000);
		expect(await named()).toEqual([both[0]]);
	});
});
