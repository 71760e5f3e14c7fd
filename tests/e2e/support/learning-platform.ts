import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { text } from 'node:stream/consumers';
import { createLocalJWKSet, exportJWK, generateKeyPair, jwtVerify, SignJWT, type JSONWebKeySet } from 'jose';
import { Gradebook } from '../../server/gradebook-server.ts';

/** A learning platform with pages of its own: a course with links, to be looked at in a browser. It stands on another site than ours. */

const CLAIM = 'https://purl.imsglobal.org/spec/lti/claim';
const DEEP_LINKING = 'https://purl.imsglobal.org/spec/lti-dl/claim';
const CLIENT = 'square-across';
const DEPLOYMENT = 'room-1';
const ROLES = { teacher: 'Instructor', learner: 'Learner' } as const;

interface Link {
	readonly title: string;
	readonly url: string;
	readonly custom: Readonly<Record<string, string>>;
	readonly lineItem?: { readonly scoreMaximum: number; readonly label: string; readonly resourceId: string };
}

const page = (body: string): string =>
	`<!doctype html><html lang="en"><meta charset="utf-8"><title>Course</title><body>${body}`;
const hidden = (values: Readonly<Record<string, string | undefined>>): string =>
	Object.entries(values)
		.map(([name, value]) =>
			value === undefined ? '' : `<input type="hidden" name="${name}" value="${value}">`
		)
		.join('');

export class LearningPlatform {
	readonly links: Link[] = [];
	readonly gradebook: Gradebook;
	/** The column of each link, where it has one. */
	readonly #columns = new Map<string, string>();
	readonly #pair = generateKeyPair('RS256');
	readonly #server = createServer((request, response) => void this.#answer(request, response));
	address = '';

	/** @param site where ours stands */
	constructor(private readonly site: string) {
		this.gradebook = new Gradebook({ keys: () => this.#siteKeys(), now: Date.now, client: CLIENT });
	}

	async start(): Promise<this> {
		await this.gradebook.start();
		await new Promise<void>((resolve) => this.#server.listen(0, '127.0.0.1', resolve));
		const found = this.#server.address();
		this.address = `http://127.0.0.1:${typeof found === 'object' && found ? found.port : 0}`;
		return this;
	}

	close(): void {
		this.gradebook.close();
		this.#server.closeAllConnections();
		this.#server.close();
	}

	/** What a teacher of ours is to enter. */
	get fields(): Readonly<Record<string, string>> {
		const { address } = this;
		return {
			issuer: address,
			client: CLIENT,
			deployment: DEPLOYMENT,
			authorize: `${address}/auth`,
			keys: `${address}/keys`,
			token: `${this.gradebook.address}/token`
		};
	}

	/** The address of the course, as somebody sees it; links open in a frame there where `framed`. */
	course(who: string, framed: boolean): string {
		return `${this.address}/course?who=${who}${framed ? '&framed' : ''}`;
	}

	async #siteKeys(): Promise<unknown> {
		return (await fetch(`${this.site}/lti/keys`)).json();
	}

	async #answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
		const url = new URL(request.url ?? '/', this.address);
		const form = new URLSearchParams(await text(request));
		const json = url.pathname === '/keys';
		try {
			const body = await this.#body(url, form);
			response.writeHead(200, { 'content-type': json ? 'application/json' : 'text/html; charset=utf-8' });
			response.end(body);
		} catch (problem) {
			response.writeHead(500).end(String(problem));
		}
	}

	async #body(url: URL, form: URLSearchParams): Promise<string> {
		if (url.pathname === '/keys') {
			const key = await exportJWK((await this.#pair).publicKey);
			return JSON.stringify({ keys: [{ ...key, kid: 'one', alg: 'RS256', use: 'sig' }] });
		}
		if (url.pathname === '/course') return this.#course(url);
		if (url.pathname === '/auth') return this.#signed(url.searchParams);
		return this.#linked(form.get('JWT') ?? '');
	}

	#course({ searchParams }: URL): string {
		const who = searchParams.get('who') ?? '';
		const framed = searchParams.has('framed');
		const launch = (name: string, hint: string, target: string): string =>
			`<form method="post" action="${this.site}/lti/login"${framed ? ' target="tool"' : ''}>` +
			hidden({
				iss: this.address,
				login_hint: who,
				lti_message_hint: hint,
				target_link_uri: target,
				client_id: CLIENT
			}) +
			`<button>${name}</button></form>`;
		const links = this.links.map(({ title, url }, index) => launch(title, `link ${index}`, url));
		const own = `${this.site}/lti/launch`;
		return page(
			`<h1>Course</h1>${launch('Open the tool', 'plain', own)}${launch('Choose links', 'choose', own)}${links.join('')}` +
				(framed ? '<iframe name="tool" title="tool" width="900" height="600"></iframe>' : '')
		);
	}

	/** What the platform says of somebody: by their name, whose first word is their role. */
	async #signed(asked: URLSearchParams): Promise<string> {
		const who = asked.get('login_hint') ?? '';
		const hint = asked.get('lti_message_hint') ?? '';
		const role = who.startsWith('teacher') ? ROLES.teacher : ROLES.learner;
		const token = await new SignJWT({
			nonce: asked.get('nonce'),
			name: who,
			[`${CLAIM}/version`]: '1.3.0',
			[`${CLAIM}/deployment_id`]: DEPLOYMENT,
			[`${CLAIM}/roles`]: [`http://purl.imsglobal.org/vocab/lis/v2/membership#${role}`],
			[`${CLAIM}/context`]: { id: 'course-1', title: 'Evening course' },
			...this.#message(hint)
		})
			.setProtectedHeader({ alg: 'RS256', kid: 'one' })
			.setIssuer(this.address)
			.setAudience(CLIENT)
			.setSubject(who)
			.setIssuedAt()
			.setExpirationTime('5m')
			.sign((await this.#pair).privateKey);
		const answer = hidden({ id_token: token, state: asked.get('state') ?? '' });
		return page(
			`<form method="post" action="${asked.get('redirect_uri') ?? ''}">${answer}</form><script>document.forms[0].submit()</script>`
		);
	}

	#message(hint: string): Readonly<Record<string, unknown>> {
		if (hint === 'choose')
			return {
				[`${CLAIM}/message_type`]: 'LtiDeepLinkingRequest',
				[`${DEEP_LINKING}/deep_linking_settings`]: {
					deep_link_return_url: `${this.address}/links`,
					accept_types: ['ltiResourceLink'],
					accept_presentation_document_targets: ['iframe'],
					accept_multiple: true,
					data: 'of this choice'
				}
			};
		const link = this.links[Number(/^link (\d+)$/.exec(hint)?.[1] ?? -1)];
		return {
			[`${CLAIM}/message_type`]: 'LtiResourceLinkRequest',
			[`${CLAIM}/target_link_uri`]: link?.url ?? `${this.site}/lti/launch`,
			[`${CLAIM}/resource_link`]: { id: hint },
			[`${CLAIM}/custom`]: link?.custom ?? {},
			...(link ? this.gradebook.claim(this.#columns.get(hint)) : {})
		};
	}

	/** Takes in what was chosen, with a column for each that wants one. */
	async #linked(token: string): Promise<string> {
		const { payload } = await jwtVerify(token, createLocalJWKSet((await this.#siteKeys()) as JSONWebKeySet), {
			issuer: CLIENT,
			audience: this.address
		});
		if (payload[`${DEEP_LINKING}/data`] !== 'of this choice') throw new Error('the data is gone');
		const links = payload[`${DEEP_LINKING}/content_items`] as readonly Link[];
		for (const link of links) {
			const hint = `link ${this.links.length}`;
			this.links.push(link);
			if (link.lineItem)
				this.#columns.set(hint, this.gradebook.addColumn({ ...link.lineItem, resourceLinkId: hint }));
		}
		return page(`<p>Linked: ${links.map(({ title }) => title).join(', ')}</p>`);
	}
}
