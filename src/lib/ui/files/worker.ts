import fontAddress from '@fontsource/literata/files/literata-latin-400-normal.woff?url';
import { pageWords } from '#shared/speech/catalogue.ts';
import { speechOf, type Speech } from '#shared/speech/speech.ts';
import { doJob } from './do-job.ts';
import type { Job } from './job.ts';

/** The lessons' own typeface, from where the page itself comes from. */
const font = async (): Promise<Uint8Array> => {
	const answer = await fetch(fontAddress);
	if (!answer.ok) throw new Error(`the typeface could not be fetched: ${String(answer.status)}`);
	return new Uint8Array(await answer.arrayBuffer());
};

// A worker makes files, so that the page stays at hand meanwhile and can put an end to it.
self.addEventListener('message', ({ data }: MessageEvent<Job>) => {
	const onProgress = (done: number, of: number): void => {
		self.postMessage({ kind: 'progress', done, of });
	};
	const speech = async (): Promise<Speech> => speechOf(await pageWords(data.language), data.unit);
	void doJob(data, { font, speech, onProgress }).then((said) => {
		self.postMessage(said);
	});
});
