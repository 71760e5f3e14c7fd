import { describe, expect, it } from 'vitest';
import { sentOnTo, type AskedPage } from '#shared/speech/sent-on.ts';

const asked = (path: string, more: Partial<AskedPage> = {}): AskedPage => ({
	path,
	search: '',
	chosen: undefined,
	accepted: 'en',
	...more
});

describe('where a request for a page is sent on to', () => {
	it.each([
		['a first visit goes to the language of the browser', asked('/', { accepted: 'es-MX,es' }), '/es'],
		[
			'with what else stands in the address',
			asked('/practice', { accepted: 'es', search: '?seed=7' }),
			'/es/practice?seed=7'
		],
		[
			'what was chosen comes before the browser',
			asked('/practice', { accepted: 'en', chosen: 'es' }),
			'/es/practice'
		],
		[
			'no page in English is left for English',
			asked('/practice', { accepted: 'en', chosen: 'en' }),
			undefined
		],
		[
			'nor a Spanish one, which was asked for by its address',
			asked('/es/practice', { chosen: 'en' }),
			undefined
		],
		['nor for a language that there is not', asked('/practice', { accepted: 'fr', chosen: 'xx' }), undefined]
	] as const)('%s', (_, page, to) => {
		expect(sentOnTo(page)?.to).toBe(to);
		expect(sentOnTo(page)?.chosen).toBeUndefined();
	});

	it.each([
		['/es/practice', '?language=en&seed=7', { to: '/practice?seed=7', chosen: 'en' }],
		['/practice', '?language=es', { to: '/es/practice', chosen: 'es' }],
		['/es', '?language=en', { to: '/', chosen: 'en' }]
	] as const)('a choice is told, and taken out of the address: %s%s', (path, search, sent) => {
		expect(sentOnTo(asked(path, { search, chosen: 'es' }))).toEqual(sent);
	});

	it.each(['//other.example/', '/es//other.example/', '/\\other.example/', '/es/\\other.example/'])(
		'never to another site: %s',
		(path) => {
			for (const language of ['en', 'es']) {
				const to = sentOnTo(asked(path, { search: `?language=${language}` }))?.to ?? '';
				expect(new URL(to, 'http://localhost').host).toBe('localhost');
			}
		}
	);
});
