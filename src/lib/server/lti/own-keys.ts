import { exportJWK, generateKeyPair, importJWK, SignJWT, type JWK, type JWTPayload } from 'jose';
import { newId, newSecret } from '../people/ids.ts';
import type { SigningKeyRow } from '../store/tables.ts';
import type { World } from '../world.ts';

/** What this site says to learning platforms is signed by a key of its own, RS256 (1EdTech security framework 1.0, section 6.1). */
const ALGORITHM = 'RS256';
const DAY = 24 * 60 * 60_000;
/** How long one key signs, and how long after that it is still handed out, in milliseconds. */
const SIGNS = 90 * DAY;
const STAYS = 2 * DAY;
/** How long what is signed is good, in seconds: a platform reads it at once. */
const GOOD_FOR = 300;

const keysSince = ({ store: { db } }: World, since: number): Promise<SigningKeyRow[]> =>
	db.selectFrom('signing_keys').selectAll().where('since', '>', since).orderBy('since', 'desc').execute();

/** The key that signs just now, made where there is none. Of two that are made at once both are handed out. */
const signingKey = async (world: World): Promise<SigningKeyRow> => {
	const [known] = await keysSince(world, world.now() - SIGNS);
	if (known) return known;
	const { privateKey } = await generateKeyPair(ALGORITHM, { extractable: true });
	const since = world.now();
	const row = { id: newId(since), secret: JSON.stringify(await exportJWK(privateKey)), since };
	await world.store.db
		.deleteFrom('signing_keys')
		.where('since', '<=', since - SIGNS - STAYS)
		.execute();
	await world.store.db.insertInto('signing_keys').values(row).execute();
	return row;
};

/** The keys by which a platform knows what was signed here: the part of each that is no secret. */
export const publicKeys = async (world: World): Promise<readonly JWK[]> => {
	await signingKey(world);
	const rows = await keysSince(world, world.now() - SIGNS - STAYS);
	return rows.map(({ id, secret }) => {
		const { kty, n, e } = JSON.parse(secret) as JWK;
		return { kty, n, e, kid: id, alg: ALGORITHM, use: 'sig' };
	});
};

/** Signs what is said to one platform, good for a short while and once. */
export const signed = async (
	world: World,
	claims: JWTPayload & { readonly iss: string; readonly aud: string }
): Promise<string> => {
	const { id, secret } = await signingKey(world);
	const now = Math.floor(world.now() / 1000);
	return new SignJWT({ iat: now, exp: now + GOOD_FOR, jti: newSecret(), ...claims })
		.setProtectedHeader({ alg: ALGORITHM, kid: id, typ: 'JWT' })
		.sign(await importJWK(JSON.parse(secret) as JWK, ALGORITHM));
};
