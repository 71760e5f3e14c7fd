import { inkCrossing } from '#photograph/ink.ts';
import { greyOf, type Grey } from '#photograph/picture.ts';
import { lookedAt, STEPS } from '#photograph/reading.ts';
import { fileHead, HEAD_BYTES } from './file-kind.ts';
import type { Asked, Refused, Said } from './messages.ts';

/** No telephone's picture is larger, in bytes. */
const MOST_BYTES = 80e6;
/** Of more pixels a browser may run out of room: four bytes for each, twice. */
const MOST_PIXELS = 60e6;
/** A side below which nothing of a sheet can be measured, in pixels. */
const LEAST_SIDE = 400;

/** The picture that was looked at last: crossings are asked for in it. */
let grey: Grey | undefined;

const say = (said: Said, ...moved: Transferable[]): void => {
	self.postMessage(said, { transfer: moved });
};

class NotUsable extends Error {
	constructor(readonly why: Refused) {
		super(why);
	}
}

/** Decodes a file. Browsers turn it upright, as its own notes say. */
const decoded = async (file: Blob): Promise<ImageBitmap> => {
	if (file.size > MOST_BYTES) throw new NotUsable('huge');
	const { kind, size } = fileHead(new Uint8Array(await file.slice(0, HEAD_BYTES).arrayBuffer()));
	if (kind === 'other') throw new NotUsable('no-picture');
	// Before it is decoded: a small file can hold a picture that fills all of the memory.
	if (size && size.width * size.height > MOST_PIXELS) throw new NotUsable('many-pixels');
	try {
		return await createImageBitmap(file);
	} catch {
		throw new NotUsable(kind === 'heic' ? 'heic' : 'broken');
	}
};

const greyIn = (bitmap: ImageBitmap): Grey => {
	const { width, height } = bitmap;
	const context = new OffscreenCanvas(width, height).getContext('2d', { willReadFrequently: true });
	if (!context) throw new Error('there is no canvas');
	context.drawImage(bitmap, 0, 0);
	return greyOf(width, height, context.getImageData(0, 0, width, height).data);
};

const look = async (asked: Extract<Asked, { kind: 'file' | 'picture' }>): Promise<void> => {
	const start = performance.now();
	const of = STEPS + 2;
	say({ kind: 'progress', done: 0, of });
	const bitmap = asked.kind === 'file' ? await decoded(asked.file) : asked.bitmap;
	say({ kind: 'progress', done: 1, of });
	const { width, height } = bitmap;
	if (width * height > MOST_PIXELS) throw new NotUsable('many-pixels');
	if (Math.min(width, height) < LEAST_SIDE) throw new NotUsable('small');
	grey = greyIn(bitmap);
	say({ kind: 'progress', done: 2, of });
	const looked = lookedAt(grey, (done) => {
		say({ kind: 'progress', done: done + 2, of });
	});
	say({ kind: 'looked', looked, bitmap, took: performance.now() - start }, bitmap);
};

self.addEventListener('message', ({ data }: MessageEvent<Asked>) => {
	if (data.kind === 'crossing') {
		const found = grey && inkCrossing(grey, data.at, data.near);
		say({ kind: 'crossing', id: data.id, found });
		return;
	}
	look(data).catch((error: unknown) => {
		if (error instanceof NotUsable) say({ kind: 'refused', why: error.why });
		else say({ kind: 'our-fault', told: error instanceof Error ? error.message : String(error) });
	});
});
