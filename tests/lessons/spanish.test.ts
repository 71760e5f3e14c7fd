import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const PROJECT = fileURLToPath(new URL('../../', import.meta.url));
const texts = (folder: string, named: RegExp): readonly (readonly [file: string, text: string])[] =>
	readdirSync(path.join(PROJECT, folder), { recursive: true, encoding: 'utf8' })
		.filter((file) => named.test(file))
		.map((file) => [file, readFileSync(path.join(PROJECT, folder, file), 'utf8')]);

/** One word for one thing, and one way of speaking to a learner: what Spanish does not say here, and what it says. */
const SAID_OTHERWISE: readonly [never: RegExp, say: string][] = [
	[/\b(?:usted|ustedes|vos|vosotros|vosotras)\b/i, 'tú'],
	[/\bdobladillo/i, 'bajo'],
	[/\bmoldes?\b/i, 'patrón'],
	[/\bcampos?\b/i, 'casilla'],
	[/\baparatos?\b/i, 'dispositivo'],
	[/\blínea del centro\b/i, 'línea central'],
	[/\btamaño natural\b/i, 'tamaño real'],
	[/\bsólo\b/i, 'solo'],
	[/\b(?:bastilla|ruedo)\b/i, 'bajo'],
	[/\b(?:pretinilla|cinturilla)\b/i, 'pretina'],
	[/\bensanche de costura\b|\bmargen de costuras\b/i, 'margen de costura'],
	[/[“”]/, '«»']
];

const misspoken = (text: string): readonly string[] =>
	SAID_OTHERWISE.flatMap(([never, say]) => {
		const found = never.exec(text);
		return found ? [`"${found[0]}": say ${say}`] : [];
	});

/** Signs that open and close a question or a cry. */
const unopened = (text: string): readonly string[] =>
	[
		['¿', '?'],
		['¡', '!']
	].flatMap(([open = '', close = '']) => {
		return text.split(open).length === text.split(close).length
			? []
			: [`${close} without ${open}, or the reverse`];
	});

describe('Spanish has one word for one thing', () => {
	it.each(texts('lessons', /\bes\.(?:md|yaml)$/))('%s', (_file, text) => {
		expect([...misspoken(text), ...unopened(text)]).toEqual([]);
	});

	it.each(texts('shared/speech/es', /\.ts$/))('%s', (_file, text) => {
		expect(misspoken(text)).toEqual([]);
	});

	it('another word is seen, and a question that does not open', () => {
		expect(misspoken('Cosa usted el dobladillo.')).toEqual(['"usted": say tú', '"dobladillo": say bajo']);
		expect(unopened('Por qué un cuarto?')).toEqual(['? without ¿, or the reverse']);
	});
});
