import { errors, jwtVerify } from 'jose';
import { z } from 'zod';
import { askedFor, type Language } from '#shared/speech/language.ts';
import { Refused } from '../refused.ts';
import type { PlatformRow } from '../store/tables.ts';
import type { PlatformKeys } from './keys.ts';

/**
 * What a learning platform says when somebody comes from it: the message of LTI Core 1.3 (1EdTech, section 4.5, "Required message
 * claims", and the security framework 1.0, section 5.1.3, "Authentication response validation").
 */

/** What the names of claims begin with. */
export const CLAIM = 'https://purl.imsglobal.org/spec/lti/claim';
/** How far a platform's clock may be off, in seconds. */
const CLOCK = 60;
/** The oldest that a message may be, in seconds. */
const OLDEST = 600;
/** The longest id or name that is read, address, and text that goes back as it came. */
const LONGEST = 255;
const LONGEST_ADDRESS = 2_000;
const LONGEST_DATA = 10_000;
const MOST_SCOPES = 20;
/** The claims of LTI Assignment and Grade Services 2.0, and of LTI Deep Linking 2.0. */
const GRADEBOOK = 'https://purl.imsglobal.org/spec/lti-ags/claim/endpoint';
const SETTINGS = 'https://purl.imsglobal.org/spec/lti-dl/claim/deep_linking_settings';

const text = z.string().min(1).max(LONGEST);
/** An address to which something is sent: over https, but on this machine. */
export const safeAddress = z
	.string()
	.max(LONGEST_ADDRESS)
	.refine(
		(typed) =>
			URL.canParse(typed) && /^(https:\/\/|http:\/\/(localhost|127\.0\.0\.1)[:/])/.test(new URL(typed).href)
	);
/** What goes on only where it can be read: a launch is not to fail by what it does not need. */
const orNone = <T extends z.ZodType>(shape: T) => shape.optional().catch(undefined);

const everyMessage = {
	sub: text,
	nonce: text,
	[`${CLAIM}/version`]: z.literal('1.3.0'),
	[`${CLAIM}/deployment_id`]: text,
	[`${CLAIM}/roles`]: z.array(z.string()),
	[`${CLAIM}/context`]: z
		.object({ id: text, title: z.string().optional(), label: z.string().optional() })
		.optional(),
	[`${CLAIM}/launch_presentation`]: orNone(z.object({ locale: z.string() })),
	name: z.string().optional(),
	given_name: z.string().optional(),
	family_name: z.string().optional()
};
const settings = z.object({
	deep_link_return_url: safeAddress,
	accept_types: z.array(z.string()),
	accept_multiple: orNone(z.boolean()),
	accept_lineitem: orNone(z.boolean()),
	/** Goes back as it came. */
	data: z.string().max(LONGEST_DATA).optional()
});
const gradebook = z.object({
	scope: z.array(z.string().max(LONGEST)).max(MOST_SCOPES),
	/** Where columns are looked for and made. */
	lineitems: safeAddress.optional(),
	/** The column of this link alone. */
	lineitem: safeAddress.optional()
});
const shape = z.discriminatedUnion(`${CLAIM}/message_type`, [
	z.object({
		...everyMessage,
		[`${CLAIM}/message_type`]: z.literal('LtiResourceLinkRequest'),
		[`${CLAIM}/target_link_uri`]: z.url(),
		[`${CLAIM}/resource_link`]: z.object({ id: text }),
		[`${CLAIM}/custom`]: orNone(z.record(z.string(), z.unknown())),
		[GRADEBOOK]: orNone(gradebook)
	}),
	z.object({
		...everyMessage,
		[`${CLAIM}/message_type`]: z.literal('LtiDeepLinkingRequest'),
		[SETTINGS]: settings
	})
]);
type Claims = z.infer<typeof shape>;

/** What somebody comes for: to what a link leads, or to choose what links are to lead to. */
export type Wanted =
	| {
			readonly kind: 'link';
			/** The link's id at the platform. */
			readonly link: string;
			readonly target: string;
			readonly custom: Readonly<Record<string, unknown>>;
			/** The gradebook that marks may go into; undefined where there is none. */
			readonly gradebook: Gradebook | undefined;
	  }
	| { readonly kind: 'choice'; readonly choice: Choice };

/** What a platform says of its gradebook (LTI Assignment and Grade Services 2.0, section 3.1, "LTI message claim"). */
export type Gradebook = z.infer<typeof gradebook>;

/** What a platform says of the links that it wants (LTI Deep Linking 2.0, section 4.4.1, "Deep linking settings"). */
export interface Choice {
	/** Where the answer goes. */
	readonly back: string;
	readonly links: boolean;
	readonly several: boolean;
	/** Whether a link may bring a column of marks. */
	readonly columns: boolean;
	readonly data: string | undefined;
}

/** Who comes, where from and what for. An e-mail address is not read. */
export interface Launch {
	/** Who it is, to the platform. */
	readonly subject: string;
	/** A word that stands in one message alone. */
	readonly nonce: string;
	/** The place at the platform that they come from. */
	readonly deployment: string;
	readonly isTeacher: boolean;
	/** What the platform calls them; undefined where it does not say. */
	readonly name: string | undefined;
	/** The course that they come from; undefined where it does not say. */
	readonly context: { readonly id: string; readonly title: string | undefined } | undefined;
	/** The language of the platform's pages, where it is one of ours. */
	readonly language: Language | undefined;
	readonly wanted: Wanted;
}

/** Whoever teaches in the course, in full or in the short form that the specification allows. No role of a whole school makes a teacher here. */
const TEACHES = /^(http:\/\/purl\.imsglobal\.org\/vocab\/lis\/v2\/membership#)?Instructor$/;

const named = (claims: Claims): string | undefined =>
	[claims.name, [claims.given_name, claims.family_name].filter(Boolean).join(' ')]
		.map((each) => each?.trim())
		.find(Boolean);

const wantedOf = (claims: Claims): Wanted => {
	if (!(SETTINGS in claims))
		return {
			kind: 'link',
			link: claims[`${CLAIM}/resource_link`].id,
			target: claims[`${CLAIM}/target_link_uri`],
			custom: claims[`${CLAIM}/custom`] ?? {},
			gradebook: claims[GRADEBOOK]
		};
	const {
		deep_link_return_url: back,
		accept_types: types,
		accept_multiple,
		accept_lineitem,
		data
	} = claims[SETTINGS];
	return {
		kind: 'choice',
		choice: {
			back,
			links: types.includes('ltiResourceLink'),
			several: accept_multiple ?? false,
			columns: accept_lineitem ?? true,
			data
		}
	};
};

/**
 * Reads a message that a platform has signed. Throws Refused where anything is not as it must be, without saying what.
 *
 * @param now milliseconds since 1970
 */
export const readMessage = async (
	token: string,
	platform: PlatformRow,
	keys: PlatformKeys,
	now: number
): Promise<Launch> => {
	try {
		const { payload } = await jwtVerify(token, keys.at(platform.keys), {
			algorithms: ['RS256'],
			issuer: platform.issuer,
			audience: platform.client,
			requiredClaims: ['exp', 'iat', 'nonce', 'sub'],
			clockTolerance: CLOCK,
			maxTokenAge: OLDEST,
			currentDate: new Date(now)
		});
		// Nobody else is trusted, so nobody else may be meant as well.
		if ([payload.aud].flat().length > 1 || ![undefined, platform.client].includes(payload['azp'] as string))
			throw new Refused('notFromPlatform');
		const claims = shape.parse(payload);
		const context = claims[`${CLAIM}/context`];
		return {
			subject: claims.sub,
			nonce: claims.nonce,
			deployment: claims[`${CLAIM}/deployment_id`],
			isTeacher: claims[`${CLAIM}/roles`].some((role) => TEACHES.test(role)),
			name: named(claims),
			context: context && { id: context.id, title: context.title ?? context.label },
			language: askedFor(claims[`${CLAIM}/launch_presentation`]?.locale ?? ''),
			wanted: wantedOf(claims)
		};
	} catch (problem) {
		if (problem instanceof errors.JOSEError || problem instanceof z.ZodError)
			throw new Refused('notFromPlatform');
		throw problem;
	}
};
