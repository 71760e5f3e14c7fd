import { gzipSync } from 'node:zlib';
import { chromium } from '@playwright/test';
import { PROJECT } from '../architecture/tree-copy.ts';
import { CHROMIUM_SWITCHES, ensureChromium } from '../support/chromium.ts';
import { serveFrom } from '../support/serving.ts';
import type { Figure } from './figure.ts';

const FIRST_LESSON = '/lessons/10-the-sheet';
/** 120 kB of JavaScript, compressed. */
const GOAL_BYTES = 120_000;
const GZIP_LEVEL = 9;

/**
 * All JavaScript that a page brings in until it comes to rest, asked of a browser, because only that knows what
 * is imported in the end: scripts by address, and those written in the page itself.
 */
const scriptsOf = async (page: string): Promise<ReadonlyMap<string, string>> => {
	const browser = await chromium.launch({ executablePath: ensureChromium(), args: [...CHROMIUM_SWITCHES] });
	try {
		const tab = await browser.newPage();
		const bodies: Promise<readonly [string, string]>[] = [];
		tab.on('response', (response) => {
			if (response.request().resourceType() === 'script') {
				bodies.push(response.text().then((text) => [response.url(), text] as const));
			}
		});
		const answer = await tab.goto(page, { waitUntil: 'networkidle' });
		if (!answer?.ok()) throw new Error(`${page} answered ${String(answer?.status())}`);
		const html = await answer.text();
		const inline = [...html.matchAll(/<script\b(?![^>]*\bsrc=)[^>]*>([\s\S]*?)<\/script>/g)];
		const written = inline.map(([, code = ''], i) => [`${page}#${i + 1}`, code] as const);
		return new Map([...(await Promise.all(bodies)), ...written]);
	} finally {
		await browser.close();
	}
};

/** The compressed size of all JavaScript of the first lesson's page, from the built app as it is served. */
export const pageWeightFigures = async (): Promise<readonly Figure[]> => {
	const serving = await serveFrom(PROJECT);
	try {
		const scripts = await scriptsOf(new URL(FIRST_LESSON, serving.address).href);
		const sizes = [...scripts.values()].map((code) => gzipSync(code, { level: GZIP_LEVEL }).length);
		const sum = sizes.reduce((all, each) => all + each, 0);
		return [
			{
				name: "the first lesson's JavaScript, compressed",
				figure: `${(sum / 1000).toFixed(1)} kB (${scripts.size} scripts)`,
				goal: `at most ${GOAL_BYTES / 1000} kB`,
				met: sum <= GOAL_BYTES
			}
		];
	} finally {
		await serving.stop();
	}
};
