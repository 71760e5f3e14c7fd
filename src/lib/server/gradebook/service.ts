import { z } from 'zod';
import { safeAddress } from '../lti/message.ts';
import { signed } from '../lti/own-keys.ts';
import type { PlatformRow } from '../store/tables.ts';
import type { World } from '../world.ts';

/** The services of a platform's gradebook (1EdTech: LTI Assignment and Grade Services 2.0; security framework 1.0, section 4.1). */

const SCOPE = 'https://purl.imsglobal.org/spec/lti-ags/scope';
const SCORES = `${SCOPE}/score`;
const COLUMNS = `${SCOPE}/lineitem`;
const COLUMNS_READ = `${SCOPE}/lineitem.readonly`;
const OURS = [SCORES, COLUMNS, COLUMNS_READ];

const SCORE = 'application/vnd.ims.lis.v1.score+json';
const COLUMN = 'application/vnd.ims.lis.v2.lineitem+json';
const LIST = 'application/vnd.ims.lis.v2.lineitemcontainer+json';
const ASSERTION = 'urn:ietf:params:oauth:client-assertion-type:jwt-bearer';

/** How long a platform may take over one answer, in milliseconds. */
const WITHIN = 10_000;
/** A token is not used any more so long before it runs out, in milliseconds. */
const BEFORE_END = 30_000;
/** The longest that a platform is left alone because it says so, in milliseconds. */
const LONGEST_WAIT = 24 * 60 * 60_000;
/** The most pages of a list that are read. */
const MOST_PAGES = 20;
/** The most that is read of an answer. */
const LONGEST = 1_000_000;

/** Why a platform was not served; `sent` where it was. What is told of each to a teacher stands in the words for platforms. */
export type Outcome = 'sent' | 'answered' | 'noAnswer' | 'noToken' | 'notAllowed' | 'noColumn';

/** A platform that did not do what it was asked. */
export class NotServed extends Error {
	constructor(
		readonly outcome: Exclude<Outcome, 'sent'>,
		/** The platform's status, where it answered. */
		readonly status?: number,
		/** How long it wants to be left alone, in milliseconds. */
		readonly wait = 0
	) {
		super(outcome);
	}

	/** Whether the same may go well another time. */
	get mayPass(): boolean {
		const { outcome, status } = this;
		if (outcome === 'notAllowed') return false;
		return status === undefined || status >= 500 || [401, 408, 409, 425, 429].includes(status);
	}
}

const waitOf = (answer: Response): number => {
	const said = answer.headers.get('retry-after') ?? '0';
	const wait = /^\d+$/.test(said) ? Number(said) * 1000 : Date.parse(said) - Date.now();
	return wait > 0 ? Math.min(wait, LONGEST_WAIT) : 0;
};

/** Asks, and nowhere but where was said. Throws NotServed where no answer comes. */
const fetched = async (address: string, how: RequestInit, stop: AbortSignal): Promise<Response> => {
	try {
		const signal = AbortSignal.any([stop, AbortSignal.timeout(WITHIN)]);
		return await fetch(address, { redirect: 'error', ...how, signal });
	} catch {
		throw new NotServed('noAnswer');
	}
};

const readJson = async (answer: Response): Promise<unknown> => {
	try {
		const text = await answer.text();
		return text.length > LONGEST ? undefined : JSON.parse(text);
	} catch {
		return undefined;
	}
};

const tokenShape = z.object({
	access_token: z.string().min(1),
	token_type: z.string().regex(/^bearer$/i),
	expires_in: z.number().positive().default(60)
});

interface Token {
	readonly value: string;
	readonly until: number;
}

/** An address below another one, which may have a question behind it. */
const below = (address: string, name: string): string => {
	const url = new URL(address);
	url.pathname = `${url.pathname.replace(/\/$/, '')}/${name}`;
	return url.href;
};

const columnShape = z.object({
	id: safeAddress,
	resourceId: z.string().nullish(),
	resourceLinkId: z.string().nullish()
});

type Listed = z.infer<typeof columnShape>;

/** What a column is found by, or made with. */
export interface Column {
	readonly link: string;
	readonly assignment: string;
	readonly label: string;
	readonly most: number;
}

/** Asks platforms, as one process. */
export class GradebookService {
	/** By platform and scopes: each is used until it runs out. */
	readonly #tokens = new Map<string, Promise<Token>>();

	constructor(
		private readonly world: World,
		/** Ends what is under way. */
		private readonly stop: AbortSignal
	) {}

	async #newToken({ client, token: address }: PlatformRow, scopes: string): Promise<Token> {
		if (address === null) throw new NotServed('noToken');
		const assertion = await signed(this.world, { iss: client, sub: client, aud: address });
		const body = new URLSearchParams({
			grant_type: 'client_credentials',
			client_assertion_type: ASSERTION,
			client_assertion: assertion,
			scope: scopes
		});
		const headers = { accept: 'application/json' };
		const answer = await fetched(address, { method: 'POST', body, headers }, this.stop);
		const read = tokenShape.safeParse(await readJson(answer));
		if (!answer.ok || !read.success) throw new NotServed('noToken', answer.status, waitOf(answer));
		const { access_token: value, expires_in: seconds } = read.data;
		return { value, until: this.world.now() + seconds * 1000 - BEFORE_END };
	}

	/** Leave for what we use of what the platform allows. */
	async #token(platform: PlatformRow, allowed: string): Promise<{ readonly value: string; forget(): void }> {
		const scopes = OURS.filter((each) => allowed.split(' ').includes(each)).join(' ');
		const key = `${platform.id} ${scopes}`;
		const kept = this.#tokens.get(key);
		const known = await kept?.catch(() => undefined);
		const isGood = known && known.until > this.world.now();
		const asked = isGood && kept ? kept : this.#tokenAnew(key, kept, platform, scopes);
		const { value } = await asked;
		return { value, forget: () => void (this.#tokens.get(key) === asked && this.#tokens.delete(key)) };
	}

	/** Many may find at once that a token has run out: the first asks for another, for all. */
	#tokenAnew(
		key: string,
		old: Promise<Token> | undefined,
		platform: PlatformRow,
		scopes: string
	): Promise<Token> {
		const newer = this.#tokens.get(key);
		if (newer && newer !== old) return newer;
		const asked = this.#newToken(platform, scopes);
		this.#tokens.set(key, asked);
		asked.catch(() => this.#tokens.get(key) === asked && this.#tokens.delete(key));
		return asked;
	}

	/** Asks with leave; where the platform takes it no longer, once more with another. */
	async #ask(
		platform: PlatformRow,
		allowed: string,
		address: string,
		how: Omit<RequestInit, 'headers'> & { readonly headers: Readonly<Record<string, string>> },
		again = true
	): Promise<Response> {
		const token = await this.#token(platform, allowed);
		const headers = { ...how.headers, authorization: `Bearer ${token.value}` };
		const answer = await fetched(address, { ...how, headers }, this.stop);
		if (answer.ok) return answer;
		await answer.body?.cancel();
		if (answer.status === 401) {
			token.forget();
			if (again) return this.#ask(platform, allowed, address, how, false);
		}
		throw new NotServed('answered', answer.status, waitOf(answer));
	}

	/** Sends a score into a column. Throws NotServed. */
	async post(platform: PlatformRow, allowed: string, column: string, score: unknown): Promise<void> {
		if (!allowed.split(' ').includes(SCORES)) throw new NotServed('notAllowed');
		const how = { method: 'POST', body: JSON.stringify(score), headers: { 'content-type': SCORE } };
		const answer = await this.#ask(platform, allowed, below(column, 'scores'), how);
		await answer.body?.cancel();
	}

	/** All columns of a list, page by page. */
	async #columns(platform: PlatformRow, allowed: string, list: string): Promise<readonly Listed[]> {
		const found: Listed[] = [];
		let at: string | undefined = list;
		for (let pages = 0; at !== undefined && pages < MOST_PAGES; pages += 1) {
			const answer: Response = await this.#ask(platform, allowed, at, { headers: { accept: LIST } });
			const page = z.array(columnShape).safeParse(await readJson(answer));
			if (!page.success) throw new NotServed('noColumn');
			found.push(...page.data);
			const [, next] = /<([^>]+)>\s*;\s*rel="?next"?/.exec(answer.headers.get('link') ?? '') ?? [];
			at = safeAddress.safeParse(next).data;
		}
		return found;
	}

	/** The address of the column of a link, which is made where the platform has none. Throws NotServed. */
	async column(platform: PlatformRow, allowed: string, columns: string, wanted: Column): Promise<string> {
		const scopes = allowed.split(' ');
		const { link, assignment, label, most } = wanted;
		if (![COLUMNS, COLUMNS_READ].some((each) => scopes.includes(each))) throw new NotServed('notAllowed');
		const at = new URL(columns);
		at.searchParams.set('resource_link_id', link);
		const listed = await this.#columns(platform, allowed, at.href);
		const own = listed.filter(({ resourceLinkId }) => resourceLinkId === link);
		const known = own.find(({ resourceId }) => resourceId === assignment) ?? own[0];
		if (known) return known.id;
		if (!scopes.includes(COLUMNS)) throw new NotServed('notAllowed');
		const body = JSON.stringify({
			scoreMaximum: most,
			label,
			resourceId: assignment,
			resourceLinkId: link
		});
		const headers = { 'content-type': COLUMN, accept: COLUMN };
		const answer = await this.#ask(platform, allowed, columns, { method: 'POST', body, headers });
		const made = columnShape.safeParse(await readJson(answer));
		if (!made.success) throw new NotServed('noColumn');
		return made.data.id;
	}
}
