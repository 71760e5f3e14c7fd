import { createServer } from 'node:http';
import { exportJWK, generateKeyPair, SignJWT, type JWTHeaderParameters } from 'jose';
import type { School } from './school.ts';
import { USE_CASES } from '#server/use-cases/all.ts';

const CLAIM = 'https://purl.imsglobal.org/spec/lti/claim';
const MEMBER = 'http://purl.imsglobal.org/vocab/lis/v2/membership';

export const TEACHER = `${MEMBER}#Instructor`;
export const LEARNER = `${MEMBER}#Learner`;

/** A learning platform that signs real messages, on this machine. */
export interface Platform {
	readonly issuer: string;
	/** How often it was asked for its keys. */
	asked(): number;
	/** Takes another key, under another name, and hands the old one out no more. */
	changeKey(): Promise<void>;
	/** Adds itself to a school. */
	enter(school: School, teacher: string, more?: Readonly<Record<string, unknown>>): Promise<void>;
	/** Sends somebody to the school, and gives the state and the nonce that came back. */
	begin(school: School): Promise<{ readonly state: string; readonly nonce: string }>;
	/** Signs what is said of somebody; `undefined` leaves a claim out. */
	sign(
		school: School,
		claims: Readonly<Record<string, unknown>>,
		header?: Partial<JWTHeaderParameters>
	): Promise<string>;
	close(): void;
}

/** A claim's whole name. */
export const claim = (name: string): string => `${CLAIM}/${name}`;

const CLIENT = 'square-across';

/** Answers every request with some JSON, on a free port of this machine. */
const serving = async (
	answer: () => Promise<unknown>
): Promise<{ readonly issuer: string; readonly close: () => void }> => {
	const server = createServer((_, response) => {
		void answer().then((found) => response.end(JSON.stringify(found)));
	});
	await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
	const address = server.address();
	return {
		issuer: `http://127.0.0.1:${typeof address === 'object' && address ? address.port : 0}`,
		close: () => server.close()
	};
};

export const SITE = 'https://site.example';

/** Somebody comes from a platform, by the browser that set out. */
export const arrive = async (
	school: School,
	platform: Platform,
	claims: Readonly<Record<string, unknown>>,
	how: Readonly<Record<string, unknown>> = {}
) => {
	const { state, nonce } = await platform.begin(school);
	const id_token = await platform.sign(school, { nonce, ...claims });
	const usual = { state, id_token, inFrame: false, kept: state, site: SITE };
	return school.ask(USE_CASES.launch, undefined, { ...usual, ...how });
};

/** Starts a platform. */
export const newPlatform = async (): Promise<Platform> => {
	let number = 1;
	let pair = await generateKeyPair('RS256');
	const changeKey = async (): Promise<void> => {
		number += 1;
		pair = await generateKeyPair('RS256');
	};
	let asked = 0;
	const { issuer, close } = await serving(async () => {
		asked += 1;
		const key = await exportJWK(pair.publicKey);
		return { keys: [{ ...key, kid: `key-${number}`, alg: 'RS256', use: 'sig' }] };
	});
	return {
		issuer,
		asked: () => asked,
		changeKey,
		enter: (school, teacher, more = {}) =>
			school.ask(USE_CASES.addPlatform, teacher, {
				issuer,
				client: CLIENT,
				deployment: 'room-1',
				authorize: `${issuer}/auth`,
				keys: `${issuer}/keys`,
				...more
			}),
		begin: async (school) => {
			const { to } = await school.ask(USE_CASES.beginLaunch, undefined, {
				iss: issuer,
				login_hint: 'h?nt/ä',
				lti_message_hint: 'm',
				answer: `${SITE}/lti/launch`
			});
			const { searchParams } = new URL(to);
			return { state: searchParams.get('state') ?? '', nonce: searchParams.get('nonce') ?? '' };
		},
		sign: async (school, claims, header = {}) => {
			const now = Math.floor(school.world.now() / 1000);
			const all = {
				iss: issuer,
				aud: CLIENT,
				sub: 'somebody',
				iat: now,
				exp: now + 300,
				[claim('version')]: '1.3.0',
				[claim('message_type')]: 'LtiResourceLinkRequest',
				[claim('deployment_id')]: 'room-1',
				[claim('target_link_uri')]: `${SITE}/lti/launch`,
				[claim('roles')]: [LEARNER],
				[claim('resource_link')]: { id: 'link-1' },
				[claim('context')]: { id: 'course-1', title: 'Alder Row' },
				...claims
			};
			return new SignJWT(all)
				.setProtectedHeader({ alg: 'RS256', kid: `key-${number}`, ...header })
				.sign(pair.privateKey);
		},
		close
	};
};
