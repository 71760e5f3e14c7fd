import { randomBytes, scrypt, timingSafeEqual } from 'node:crypto';

/** What a passphrase costs to hash: scrypt's own parameters. */
export interface Cost {
	readonly N: number;
	readonly r: number;
	readonly p: number;
}

/**
 * Node's own scrypt. Cost after OWASP's Password Storage Cheat Sheet: N = 2^14, r = 8, p = 5, as hard as its other choices and
 * with 16 MiB the least memory, so that a class may come in at once on a small machine.
 */
export const COST: Cost = { N: 2 ** 14, r: 8, p: 5 };
const SALT_BYTES = 16;
const HASH_BYTES = 32;

const hashed = (passphrase: string, salt: Buffer, cost: Cost): Promise<Buffer> =>
	new Promise((resolve, reject) => {
		scrypt(passphrase, salt, HASH_BYTES, { ...cost }, (problem, hash) => {
			if (problem) reject(problem);
			else resolve(hash);
		});
	});

/** A passphrase as it is kept: with its cost and its salt, so that the cost can rise one day. */
export const hashPassphrase = async (passphrase: string, cost: Cost): Promise<string> => {
	const salt = randomBytes(SALT_BYTES);
	const hash = await hashed(passphrase, salt, cost);
	const { N, r, p } = cost;
	return ['scrypt', N, r, p, salt.toString('base64'), hash.toString('base64')].join('$');
};

/** What is compared where there is no such person, so that the answer takes as long. */
const nobody = ({ N, r, p }: Cost): string =>
	['scrypt', N, r, p, ...[SALT_BYTES, HASH_BYTES].map((bytes) => randomBytes(bytes).toString('base64'))].join(
		'$'
	);

/** Whether a passphrase is the one that is kept; `kept` is undefined where nobody has the name. */
export const isPassphrase = async (tried: string, kept: string | undefined, cost: Cost): Promise<boolean> => {
	const [, N = '', r = '', p = '', salt = '', hash = ''] = (kept ?? nobody(cost)).split('$');
	const own = Buffer.from(hash, 'base64');
	const found = await hashed(tried, Buffer.from(salt, 'base64'), {
		N: Number(N),
		r: Number(r),
		p: Number(p)
	});
	return timingSafeEqual(own, found) && kept !== undefined;
};
