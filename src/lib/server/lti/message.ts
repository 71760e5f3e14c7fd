import { errors, jwtVerify } from 'jose';
import { z } from 'zod';
import { Refused } from '../refused.ts';
import type { PlatformRow } from '../store/tables.ts';
import type { PlatformKeys } from './keys.ts';

/**
 * What a learning platform says when somebody comes from it: the message of LTI Core 1.3 (1EdTech, section 4.5, "Required message
 * claims", and the security framework 1.0, section 5.1.3, "Authentication response validation").
 */

const CLAIM = 'https://purl.imsglobal.org/spec/lti/claim';
/** How far a platform's clock may be off, in seconds. */
const CLOCK = 60;
/** The oldest that a message may be, in seconds. */
const OLDEST = 600;
/** The longest id or name that is read. */
const LONGEST = 255;

const text = z.string().min(1).max(LONGEST);
const shape = z.object({
	sub: text,
	nonce: text,
	[`${CLAIM}/version`]: z.literal('1.3.0'),
	[`${CLAIM}/message_type`]: z.literal('LtiResourceLinkRequest'),
	[`${CLAIM}/deployment_id`]: text,
	[`${CLAIM}/target_link_uri`]: z.url(),
	[`${CLAIM}/roles`]: z.array(z.string()),
	[`${CLAIM}/resource_link`]: z.object({ id: text }),
	[`${CLAIM}/context`]: z
		.object({ id: text, title: z.string().optional(), label: z.string().optional() })
		.optional(),
	name: z.string().optional(),
	given_name: z.string().optional(),
	family_name: z.string().optional()
});

/** Who comes, and where from. An e-mail address is not read. */
export interface Launch {
	/** Who it is, to the platform. */
	readonly subject: string;
	/** A word that stands in one message alone. */
	readonly nonce: string;
	readonly isTeacher: boolean;
	/** What the platform calls them; undefined where it does not say. */
	readonly name: string | undefined;
	/** The course that they come from; undefined where it does not say. */
	readonly context: { readonly id: string; readonly title: string | undefined } | undefined;
}

/** Whoever teaches in the course, in full or in the short form that the specification allows. No role of a whole school makes a teacher here. */
const TEACHES = /^(http:\/\/purl\.imsglobal\.org\/vocab\/lis\/v2\/membership#)?Instructor$/;

const named = (claims: z.infer<typeof shape>): string | undefined =>
	[claims.name, [claims.given_name, claims.family_name].filter(Boolean).join(' ')]
		.map((each) => each?.trim())
		.find(Boolean);

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
		if (claims[`${CLAIM}/deployment_id`] !== platform.deployment) throw new Refused('notFromPlatform');
		const context = claims[`${CLAIM}/context`];
		return {
			subject: claims.sub,
			nonce: claims.nonce,
			isTeacher: claims[`${CLAIM}/roles`].some((role) => TEACHES.test(role)),
			name: named(claims),
			context: context && { id: context.id, title: context.title ?? context.label }
		};
	} catch (problem) {
		if (problem instanceof errors.JOSEError || problem instanceof z.ZodError)
			throw new Refused('notFromPlatform');
		throw problem;
	}
};
