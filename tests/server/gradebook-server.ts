import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { text } from 'node:stream/consumers';
import { createLocalJWKSet, jwtVerify, type JSONWebKeySet } from 'jose';
import { z } from 'zod';

/** A platform's gradebook that takes nothing but what the specifications say: LTI AGS 2.0; 1EdTech security framework 1.0. */

const SCOPE = 'https://purl.imsglobal.org/spec/lti-ags/scope';
export const ALL_SCOPES = ['score', 'lineitem', 'lineitem.readonly', 'result.readonly'].map(
	(each) => `${SCOPE}/${each}`
);
const SCORE = 'application/vnd.ims.lis.v1.score+json';
const COLUMN = 'application/vnd.ims.lis.v2.lineitem+json';
const LIST = 'application/vnd.ims.lis.v2.lineitemcontainer+json';

/** With parts of a second, as the specification asks of whoever may send two in one. */
const time = z.string().regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3,}Z$/);
const scoreShape = z
	.strictObject({
		userId: z.string().min(1),
		timestamp: time,
		activityProgress: z.enum(['Initialized', 'Started', 'InProgress', 'Submitted', 'Completed']),
		gradingProgress: z.enum(['FullyGraded', 'Pending', 'PendingManual', 'Failed', 'NotReady']),
		scoreGiven: z.number().nonnegative().optional(),
		scoreMaximum: z.number().positive().optional(),
		comment: z.string().min(1).optional(),
		submission: z.strictObject({ startedAt: time.optional(), submittedAt: time }).optional()
	})
	.refine(({ scoreGiven, scoreMaximum }) => (scoreGiven === undefined) === (scoreMaximum === undefined));
type Posted = z.infer<typeof scoreShape>;
const columnShape = z.strictObject({
	scoreMaximum: z.number().positive(),
	label: z.string().min(1),
	resourceId: z.string().optional(),
	resourceLinkId: z.string().optional(),
	tag: z.string().optional()
});
type Column = z.infer<typeof columnShape> & { readonly id: string };

/** What the platform does instead of what it is asked: an answer with that status, or none. */
type Trouble =
	{ readonly status: number; readonly headers?: Readonly<Record<string, string>> } | 'cut' | 'silent';

/** What stands in the gradebook of one learner. */
interface Cell {
	readonly mark: number | undefined;
	readonly comment: string | undefined;
	readonly last: Posted;
}

class Wrong extends Error {
	constructor(
		readonly status: number,
		why: string
	) {
		super(why);
	}
}

interface Ready {
	/** Where this site's keys come from. */
	readonly keys: () => Promise<unknown>;
	readonly now: () => number;
	readonly client: string;
	/** Whom the platform knows; undefined for everybody. */
	readonly users?: readonly string[];
}

export class Gradebook {
	readonly columns: Column[] = [];
	readonly posted: { readonly column: string; readonly score: Posted }[] = [];
	readonly cells = new Map<string, Cell>();
	/** Each refusal with its reason, for whoever reads a failed test. */
	readonly refused: string[] = [];
	/** What is to go wrong, each once and in turn. */
	readonly troubles: Trouble[] = [];
	/** How many columns it lists at once. */
	pageOf = 100;
	tokens = 0;
	lasts = 3600;
	readonly #good = new Map<string, { readonly scopes: readonly string[]; readonly until: number }>();
	readonly #used = new Set<string>();
	readonly #server = createServer((request, response) => void this.#answer(request, response));
	address = '';

	constructor(private readonly ready: Ready) {}

	async start(): Promise<this> {
		await new Promise<void>((resolve) => this.#server.listen(0, '127.0.0.1', resolve));
		const found = this.#server.address();
		this.address = `http://127.0.0.1:${typeof found === 'object' && found ? found.port : 0}`;
		return this;
	}

	close(): void {
		this.#server.closeAllConnections();
		this.#server.close();
	}

	/** What a launch says of it; `column` is that of the link, where it has one. */
	claim(column?: string, scope: readonly string[] = ALL_SCOPES): Readonly<Record<string, unknown>> {
		return {
			'https://purl.imsglobal.org/spec/lti-ags/claim/endpoint': {
				scope,
				lineitems: `${this.address}/columns?course=1`,
				...(column === undefined ? {} : { lineitem: column })
			}
		};
	}

	/** A column of the platform's own making. */
	addColumn(column: Omit<Column, 'id'>): string {
		const id = `${this.address}/columns/${this.columns.length + 1}?course=1`;
		this.columns.push({ ...column, id });
		return id;
	}

	/** Takes back every leave that it has given. */
	forgetTokens(): void {
		this.#good.clear();
	}

	async #answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
		const body = await text(request);
		const url = new URL(request.url ?? '/', this.address);
		const trouble = url.pathname === '/token' ? undefined : this.troubles.shift();
		if (trouble === 'silent') return;
		if (trouble === 'cut') return void request.socket.destroy();
		if (trouble) return void response.writeHead(trouble.status, trouble.headers).end();
		try {
			const { status, type, json, next } = await this.#done(request, url, body);
			const link = next === undefined ? {} : { link: `<${next}>; rel="next"` };
			response.writeHead(status, { 'content-type': type, ...link }).end(JSON.stringify(json));
		} catch (problem) {
			const why = problem instanceof Error ? problem.message : String(problem);
			this.refused.push(`${request.method ?? ''} ${url.pathname}: ${why}`);
			response.writeHead(problem instanceof Wrong ? problem.status : 400).end(why);
		}
	}

	async #done(
		request: IncomingMessage,
		url: URL,
		body: string
	): Promise<{
		readonly status: number;
		readonly type: string;
		readonly json: unknown;
		readonly next?: string;
	}> {
		const asked = `${request.method ?? ''} ${url.pathname}`;
		if (asked === 'POST /token')
			return { status: 200, type: 'application/json', json: await this.#token(request, body) };
		const scopes = this.#scopesOf(request);
		const may = (...wanted: readonly string[]): void => {
			if (!wanted.some((each) => scopes.includes(`${SCOPE}/${each}`))) throw new Wrong(403, 'no such scope');
		};
		if (url.searchParams.get('course') !== '1') throw new Wrong(404, 'the question of the address is gone');
		if (asked === 'GET /columns') {
			may('lineitem', 'lineitem.readonly');
			if (request.headers.accept !== LIST) throw new Wrong(406, 'accept');
			const link = url.searchParams.get('resource_link_id');
			const found = this.columns.filter(({ resourceLinkId }) => link === null || resourceLinkId === link);
			const from = Number(url.searchParams.get('from') ?? 0);
			url.searchParams.set('from', String(from + this.pageOf));
			const more = from + this.pageOf < found.length;
			const json = found.slice(from, from + this.pageOf);
			return { status: 200, type: LIST, json, ...(more ? { next: url.href } : {}) };
		}
		if (asked === 'POST /columns') {
			may('lineitem');
			if (request.headers['content-type'] !== COLUMN) throw new Wrong(415, 'media type');
			const id = this.addColumn(columnShape.parse(JSON.parse(body)));
			return { status: 201, type: COLUMN, json: this.columns.find((each) => each.id === id) };
		}
		const [, number = ''] = /^POST \/columns\/(\d+)\/scores$/.exec(asked) ?? [];
		const column = this.columns[Number(number) - 1];
		if (!column) throw new Wrong(404, 'no such column');
		may('score');
		if (request.headers['content-type'] !== SCORE) throw new Wrong(415, 'media type');
		this.#take(column, scoreShape.parse(JSON.parse(body)));
		return { status: 204, type: 'application/json', json: null };
	}

	#take(column: Column, score: Posted): void {
		const { userId, timestamp, scoreGiven, scoreMaximum, comment } = score;
		if (this.ready.users && !this.ready.users.includes(userId)) throw new Wrong(404, 'no such user');
		const key = `${column.id} ${userId}`;
		const before = this.cells.get(key);
		if (before && before.last.timestamp >= timestamp) throw new Wrong(409, 'not later than the one before');
		this.posted.push({ column: column.id, score });
		const share = scoreGiven === undefined ? undefined : scoreGiven / (scoreMaximum ?? 1);
		const mark = share === undefined ? undefined : share * column.scoreMaximum;
		this.cells.set(key, { mark, comment, last: score });
	}

	#scopesOf(request: IncomingMessage): readonly string[] {
		const [, token = ''] = /^Bearer (\S+)$/.exec(request.headers.authorization ?? '') ?? [];
		const found = this.#good.get(token);
		if (!found || found.until <= this.ready.now()) throw new Wrong(401, 'no leave');
		return found.scopes;
	}

	async #token(request: IncomingMessage, body: string): Promise<unknown> {
		if (!request.headers['content-type']?.startsWith('application/x-www-form-urlencoded'))
			throw new Wrong(400, 'no form');
		const form = new URLSearchParams(body);
		const { client, keys, now } = this.ready;
		if (form.get('grant_type') !== 'client_credentials') throw new Wrong(400, 'grant_type');
		const type = 'urn:ietf:params:oauth:client-assertion-type:jwt-bearer';
		if (form.get('client_assertion_type') !== type) throw new Wrong(400, 'client_assertion_type');
		const { payload } = await jwtVerify(
			form.get('client_assertion') ?? '',
			createLocalJWKSet((await keys()) as JSONWebKeySet),
			{
				issuer: client,
				subject: client,
				audience: `${this.address}/token`,
				algorithms: ['RS256'],
				requiredClaims: ['iat', 'exp', 'jti'],
				maxTokenAge: 300,
				currentDate: new Date(now())
			}
		);
		const once = payload.jti ?? '';
		if (this.#used.has(once)) throw new Wrong(400, 'the same assertion twice');
		this.#used.add(once);
		const scopes = (form.get('scope') ?? '').split(' ');
		if (scopes.some((each) => !ALL_SCOPES.includes(each))) throw new Wrong(400, 'scope');
		this.tokens += 1;
		const token = `token-${this.tokens}`;
		this.#good.set(token, { scopes, until: now() + this.lasts * 1000 });
		return { access_token: token, token_type: 'Bearer', expires_in: this.lasts, scope: scopes.join(' ') };
	}
}
