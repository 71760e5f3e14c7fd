import { createLocalJWKSet, errors, type JSONWebKeySet, type JWTVerifyGetKey } from 'jose';
import { Refused } from '../refused.ts';

/** How long a platform may take to hand out its keys, in milliseconds. */
const WITHIN = 5_000;
/** Names of keys that a platform was asked for and does not have: more are forgotten, all at once. */
const MOST_MISSED = 100;

/** Fetches what stands at an address as JSON. */
export type FetchJson = (address: string) => Promise<unknown>;

/** Over the network, and nowhere but where was said. Throws where nothing of use comes. */
export const fetchJson: FetchJson = async (address) => {
	const answer = await fetch(address, { redirect: 'error', signal: AbortSignal.timeout(WITHIN) });
	if (!answer.ok) throw new Error(`status ${answer.status}`);
	return answer.json();
};

interface Kept {
	readonly set: ReturnType<typeof createLocalJWKSet>;
	/** Names that were asked for anew and were not there. */
	readonly missed: Set<string>;
}

/** The keys of platforms, by where they stand. What is fetched is kept, so a process need share it with no other. */
export class PlatformKeys {
	readonly #kept = new Map<string, Promise<Kept>>();

	constructor(private readonly fetch: FetchJson) {}

	#fetched(address: string, missed = new Set<string>()): Promise<Kept> {
		const kept = this.fetch(address).then((found) => ({
			set: createLocalJWKSet(found as JSONWebKeySet),
			missed
		}));
		this.#kept.set(address, kept);
		// What did not come is asked for again the next time.
		kept.catch(() => this.#kept.delete(address));
		return kept;
	}

	/** The key that a token names. A platform may have changed its keys: one that is not known is asked for again, once for each name. */
	at(address: string): JWTVerifyGetKey {
		return async (header, token) => {
			const { kid } = header;
			if (kid === undefined) throw new errors.JWKSNoMatchingKey();
			try {
				const kept = await (this.#kept.get(address) ?? this.#fetched(address));
				try {
					return await kept.set(header, token);
				} catch (problem) {
					if (!(problem instanceof errors.JWKSNoMatchingKey) || kept.missed.has(kid)) throw problem;
					if (kept.missed.size >= MOST_MISSED) kept.missed.clear();
					kept.missed.add(kid);
					return await (await this.#fetched(address, kept.missed)).set(header, token);
				}
			} catch (problem) {
				if (problem instanceof errors.JOSEError) throw problem;
				throw new Refused('noPlatformKeys');
			}
		};
	}
}
