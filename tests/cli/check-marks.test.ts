import { readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { firstWords } from '../exports/raster.ts';
import { BACK, bodyFile, checkHere } from './check-here.ts';
import { newFolder } from './run-here.ts';

const folder = newFolder();
afterAll(() => folder.remove());

/** Heron's back with the armhole level 7 mm too low: one mistake of twenty steps, and what follows from it. */
const placements = folder.write('p.json', JSON.stringify({ ...BACK, A: [0, 229] }));
const to = path.join(path.dirname(placements), 'marks.pdf');
const words = ['back-block', '--body', bodyFile('heron'), '--placements', placements];

describe('square-across check ... --marks FILE.pdf', () => {
	it('writes the marks that it prints, as a sheet', async () => {
		const { code, out, err } = await checkHere(...words, '--json', '--marks', to);
		expect({ code, err }).toEqual({ code: 0, err: '' });
		const { total } = JSON.parse(out) as { total: { mark: number; outOf: number } };
		const said = firstWords(new Uint8Array(readFileSync(to)));
		expect(said).toContain('The back block. Heron');
		expect(said).toMatch(/A, .*armhole level/i);
		expect(said).toContain('wrong');
		expect(said).toContain(`out of ${total.outOf}`);
		expect(said).toContain(String(Number(total.mark.toFixed(2))));
	});

	it('says what is off and which mistake it may have been, in words of whoever is handed it', async () => {
		const half = folder.write('half.json', JSON.stringify({ ...BACK, U: { typed: '96/2+2' } }));
		const marks = ['back-block', '--body', bodyFile('heron'), '--placements', half, '--marks', to];
		const english = [/\d cm too far out/, 'You took half of the bust; the rule is a quarter'];
		const spanish = [
			/\d cm demasiado hacia fuera/,
			'tomado la mitad del contorno de busto; la regla es la cuarta parte'
		];
		for (const [language, ...all] of [
			['en', ...english],
			['es', ...spanish]
		] as const) {
			await checkHere(...marks, '--language', language);
			const said = firstWords(new Uint8Array(readFileSync(to))).replace(/\s+/g, ' ');
			for (const each of all) expect(said).toMatch(each);
			expect(said).not.toContain('half-for-quarter');
		}
	});

	it('twice the same', async () => {
		await checkHere(...words, '--marks', to);
		const first = readFileSync(to);
		await checkHere(...words, '--marks', to);
		expect(readFileSync(to).equals(first)).toBe(true);
	});

	it.each<[more: readonly string[], line: string]>([
		[['--marks', 'marks.txt'], 'check: a marks sheet is a .pdf, not "marks.txt"'],
		[['--marks', '/no/such/folder/m.pdf'], '/no/such/folder/m.pdf: there is no such folder']
	])('%j', async (more, line) => {
		const { code, err } = await checkHere(...words, ...more);
		expect({ code, err }).toEqual({ code: 2, err: `${line}\n` });
	});

	it('is for one learner', async () => {
		const { code, err } = await checkHere('back-block', '--stdin', '--marks', to);
		expect(code).toBe(2);
		expect(err).toContain('--marks is for one learner');
	});
});
