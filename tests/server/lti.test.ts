import { SignJWT } from 'jose';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { callerOf } from '#server/people/sessions.ts';
import { USE_CASES } from '#server/use-cases/all.ts';
import { claim, LEARNER, newPlatform, SITE, TEACHER, type Platform } from './platform.ts';
import { newSchool, told, type School } from './school.ts';
import { onBoth } from './stores.ts';

type Launched = Awaited<ReturnType<typeof USE_CASES.launch.run>>;
/** What came of it, where somebody was to be signed in. */
const came = (found: Launched): Extract<Launched, { readonly kind: 'in' }> => {
	if (found.kind !== 'in') throw new Error(found.kind);
	return found;
};

type Claims = Readonly<Record<string, unknown>>;

onBoth('people from a learning platform', (newStorePlace) => {
	let school: School;
	let platform: Platform;
	beforeAll(async () => {
		school = await newSchool(await newStorePlace());
		platform = await newPlatform();
		await platform.enter(school, await school.teacher('Ms Alder'));
	});
	afterAll(async () => {
		platform.close();
		await school.close();
	});
	beforeEach(() => school.later(1));

	/** Comes back by the browser that set out, unless it is said otherwise. */
	const launched = (state: string, id_token: string, other: Claims = {}) =>
		school.ask(USE_CASES.launch, undefined, {
			state,
			id_token,
			inFrame: false,
			kept: state,
			site: SITE,
			...other
		});

	const arrive = async (claims: Claims, header?: Parameters<Platform['sign']>[2]) => {
		const { state, nonce } = await platform.begin(school);
		const id_token = await platform.sign(school, { nonce, ...claims }, header);
		return came(await launched(state, id_token));
	};
	const whoArrives = async (claims: Claims) => callerOf(school.world, (await arrive(claims)).secret);

	it('are asked for with both hints as they came, and all that the specification asks', async () => {
		const { to } = await school.ask(USE_CASES.beginLaunch, undefined, {
			iss: platform.issuer,
			login_hint: 'h?nt/ä',
			lti_message_hint: 'm&n',
			client_id: 'square-across',
			lti_deployment_id: 'room-1',
			answer: 'https://site.example/lti/launch'
		});
		const question = Object.fromEntries(new URL(to).searchParams);
		expect(question).toEqual({
			scope: 'openid',
			response_type: 'id_token',
			response_mode: 'form_post',
			prompt: 'none',
			client_id: 'square-across',
			redirect_uri: 'https://site.example/lti/launch',
			login_hint: 'h?nt/ä',
			lti_message_hint: 'm&n',
			state: expect.stringMatching(/^[\w-]{43}$/) as string,
			nonce: expect.stringMatching(/^[\w-]{43}$/) as string
		});
	});

	it.each([
		['another issuer', { iss: 'https://elsewhere.example' }],
		['another client', { client_id: 'other' }],
		['another deployment', { lti_deployment_id: 'room-2' }]
	])('are not asked for from %s', async (_, other) => {
		const input = {
			iss: platform.issuer,
			login_hint: 'h',
			answer: 'https://site.example/lti/launch',
			...other
		};
		expect(await told(school.ask(USE_CASES.beginLaunch, undefined, input))).toBe('noPlatform');
	});

	/** The known bad payloads of the certification guide (1EdTech, LTI Advantage conformance certification guide 1.3), and what a signature must be. */
	const BAD: readonly (readonly [string, Claims, Parameters<Platform['sign']>[2]?])[] = [
		['no name of a key', {}, { kid: undefined }],
		['a key that there is not', {}, { kid: 'other' }],
		['another version', { [claim('version')]: '11.3' }],
		['no version', { [claim('version')]: undefined }],
		[
			'a message of an older kind',
			{ lti_version: 'LTI-1p0', [claim('version')]: undefined, [claim('message_type')]: undefined }
		],
		[
			'nothing of what must be there',
			Object.fromEntries(
				['version', 'message_type', 'roles', 'deployment_id', 'resource_link'].map((each) => [
					claim(each),
					undefined
				])
			)
		],
		['times that are none', { iat: 11111, exp: 22222 }],
		['no kind of message', { [claim('message_type')]: undefined }],
		['no roles', { [claim('roles')]: undefined }],
		['no deployment', { [claim('deployment_id')]: undefined }],
		['no link', { [claim('resource_link')]: {} }],
		['nobody', { sub: undefined }],
		['another issuer', { iss: 'https://elsewhere.example' }],
		['another audience', { aud: 'other' }],
		['another audience as well', { aud: ['square-across', 'other'] }],
		['another party', { azp: 'other' }],
		['another deployment', { [claim('deployment_id')]: 'room-2' }],
		['another word of this way', { nonce: 'other' }],
		['no word of this way', { nonce: undefined }]
	];
	it.each(BAD.map(([what, claims, header]) => ({ what, claims, header })))(
		'are refused with $what',
		async ({ claims, header }) => {
			expect(await told(arrive(claims, header))).toBe('notFromPlatform');
		}
	);

	it('are refused after a time, and before one', async () => {
		const now = school.world.now() / 1000;
		expect(await told(arrive({ exp: now - 61 }))).toBe('notFromPlatform');
		expect(await told(arrive({ iat: now - 700 }))).toBe('notFromPlatform');
		expect(await told(arrive({ iat: now + 61 }))).toBe('notFromPlatform');
		expect(await told(arrive({ iat: now + 30 }))).toBe('done');
	});

	it('are refused without a signature, and with one of a shared secret', async () => {
		const { state, nonce } = await platform.begin(school);
		const signed = await platform.sign(school, { nonce });
		const [, body = '', signature = ''] = signed.split('.');
		const head = (header: unknown) => Buffer.from(JSON.stringify(header)).toString('base64url');
		const launch = (id_token: string, of = state) => told(launched(of, id_token));
		expect(await launch(`${head({ alg: 'none', kid: 'key-1' })}.${body}.`)).toBe('notFromPlatform');
		const shared = await new SignJWT({ nonce })
			.setProtectedHeader({ alg: 'HS256', kid: 'key-1' })
			.sign(new Uint8Array(32));
		expect(await launch(shared, (await platform.begin(school)).state)).toBe('notFromPlatform');
		const broken = `${signed.split('.')[0] ?? ''}.${body}.${signature.replace(/^./, (first) => (first === 'A' ? 'B' : 'A'))}`;
		expect(await launch(broken, (await platform.begin(school)).state)).toBe('notFromPlatform');
	});

	it('come in once: by the same way again nobody does, nor by another', async () => {
		const { state, nonce } = await platform.begin(school);
		const id_token = await platform.sign(school, { nonce });
		const launch = (of: string) => told(launched(of, id_token));
		expect(await launch(state)).toBe('done');
		expect(await launch(state)).toBe('launchOver');
		expect(await launch((await platform.begin(school)).state)).toBe('notFromPlatform');
		expect(await launch('made up')).toBe('launchOver');
		const late = await platform.begin(school);
		school.later(10 * 60_000);
		expect(await launch(late.state)).toBe('launchOver');
	});

	/** The valid payloads of the guide: ten of a teacher, ten of a learner, alike but for the role. */
	const VALID: readonly (readonly [string, (role: string, short: string) => Claims])[] = [
		['one role', (role) => ({ [claim('roles')]: [role] })],
		[
			'several roles',
			(role) => ({
				[claim('roles')]: ['http://purl.imsglobal.org/vocab/lis/v2/institution/person#Staff', role]
			})
		],
		['a short role', (_, short) => ({ [claim('roles')]: [short] })],
		['an unknown role', (role) => ({ [claim('roles')]: ['http://elsewhere.example/role', role] })],
		['an e-mail address alone', (role) => ({ [claim('roles')]: [role], email: 'ada@example.org' })],
		[
			'names alone',
			(role) => ({ [claim('roles')]: [role], given_name: 'Ada', family_name: 'Heron', name: 'Ada Heron' })
		],
		['nothing personal', (role) => ({ [claim('roles')]: [role] })],
		['no course', (role) => ({ [claim('roles')]: [role], [claim('context')]: undefined })],
		[
			'a new link',
			(role) => ({ [claim('roles')]: [role], [claim('resource_link')]: { id: 'link-2', title: 'Sheet' } })
		],
		[
			'a clock that is a little off',
			(role) => ({ [claim('roles')]: [role], iat: Math.floor(school.world.now() / 1000) + 20 })
		]
	];
	describe.each([
		['teacher', TEACHER, 'Instructor'],
		['learner', LEARNER, 'Learner']
	] as const)('as a %s', (is, role, short) => {
		it.each(VALID)('come in with %s', async (_, claims) => {
			expect((await whoArrives({ sub: `${is} of it`, ...claims(role, short) }))?.role).toBe(is);
		});
	});

	it.each([
		['none', []],
		['one that nobody knows', ['http://elsewhere.example/role']],
		['one of the whole school', ['http://purl.imsglobal.org/vocab/lis/v2/institution/person#Instructor']],
		['one of the platform', ['http://purl.imsglobal.org/vocab/lis/v2/system/person#Administrator']]
	])('have the least rights with no role in the course: %s', async (_, roles) => {
		expect((await whoArrives({ [claim('roles')]: roles }))?.role).toBe('learner');
	});

	it('are the same person the next time, in one class for each course, which its teacher sees', async () => {
		const course = { [claim('context')]: { id: 'course-2', title: 'Birch Lane' } };
		const ada = await whoArrives({ sub: 'ada', name: 'Ada', ...course });
		const again = await whoArrives({ sub: 'ada', name: 'Ada', ...course });
		const namesake = await whoArrives({ sub: 'ada-2', name: 'Ada', email: 'ada@example.org', ...course });
		expect(again?.id).toBe(ada?.id);
		expect(namesake?.id).not.toBe(ada?.id);
		expect(namesake?.class).toBe(ada?.class);
		const { secret } = await arrive({ sub: 'birch', [claim('roles')]: [TEACHER], ...course });
		const [own, ...others] = await school.ask(USE_CASES.ownClasses, secret, {});
		expect(others).toEqual([]);
		expect([own?.name, own?.learners, own?.openUntil]).toEqual(['Birch Lane', 2, undefined]);
		// Nobody comes in by that name and a passphrase, and no e-mail address was kept.
		const people = JSON.stringify(await school.world.store.db.selectFrom('people').selectAll().execute());
		expect(people).not.toContain('ada@example.org');
	});

	it('come in together, the first of their course', async () => {
		const course = { [claim('context')]: { id: 'course-3' } };
		const found = await Promise.all(['a', 'b', 'c', 'd'].map((sub) => whoArrives({ sub, ...course })));
		expect(new Set(found.map((each) => each?.class)).size).toBe(1);
	});

	it('come in by a ticket from a frame, once', async () => {
		const { state, nonce } = await platform.begin(school);
		const id_token = await platform.sign(school, { nonce });
		const found = await launched(state, id_token, { inFrame: true, kept: undefined });
		if (found.kind !== 'apart') throw new Error(found.kind);
		const { ticket } = found;
		expect(await callerOf(school.world, ticket)).toBeUndefined();
		const opened = await school.ask(USE_CASES.openLaunch, undefined, { ticket });
		expect((await callerOf(school.world, opened.secret))?.role).toBe('learner');
		expect(await told(school.ask(USE_CASES.openLaunch, undefined, { ticket }))).toBe('launchOver');
		const before = await platform.begin(school);
		expect(await told(school.ask(USE_CASES.openLaunch, undefined, { ticket: before.state }))).toBe(
			'launchOver'
		);
	});

	it('come in from each of several places at one platform, whether or not it names the place when they set out', async () => {
		const teacher = await school.teacher('Mr Cedar');
		await platform.enter(school, teacher, { deployment: 'room-3' });
		const found = [];
		for (const place of ['room-1', 'room-3', 'room-4'])
			found.push(await told(arrive({ sub: 'of several', [claim('deployment_id')]: place })));
		expect(found).toEqual(['done', 'done', 'notFromPlatform']);
		const ask = { iss: platform.issuer, login_hint: 'h', answer: `${SITE}/lti/launch` };
		for (const [lti_deployment_id, answer] of [
			['room-3', 'done'],
			['room-4', 'noPlatform']
		] as const)
			expect(await told(school.ask(USE_CASES.beginLaunch, undefined, { ...ask, lti_deployment_id }))).toBe(
				answer
			);
	});

	it('come in by the browser that set out, and by no other', async () => {
		const { state, nonce } = await platform.begin(school);
		const id_token = await platform.sign(school, { nonce });
		const { state: another } = await platform.begin(school);
		// Where the browser keeps nothing, as in a frame of most, only the platform's own pages show what is answered.
		for (const [kept, inFrame] of [
			[undefined, false],
			[another, false],
			[another, true]
		] as const)
			expect(await told(launched(state, id_token, { kept, inFrame }))).toBe('otherBrowser');
		expect(await told(launched(state, id_token))).toBe('done');
	});

	it('come in under a new key, which is asked for once; a name that is none is asked for once too', async () => {
		await arrive({});
		const before = platform.asked();
		await platform.changeKey();
		expect(await told(arrive({}))).toBe('done');
		expect(platform.asked()).toBe(before + 1);
		for (let tries = 0; tries < 3; tries += 1)
			expect(await told(arrive({}, { kid: 'made up' }))).toBe('notFromPlatform');
		expect(platform.asked()).toBe(before + 2);
	});
});
