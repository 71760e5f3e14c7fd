import type { Speech } from '#shared/speech/speech.ts';
import { mm, type Mm } from '#shared/units.ts';
import type { Finish } from './file-maker.svelte.ts';
import type { MadeFile } from './job.ts';

/** Dots to the millimetre of a picture: a line of 0.25 mm is one dot wide. */
const DOTS = 4;
/** What every browser's canvas can hold: the least is that of telephones. */
const MOST_DOTS = 16_000_000;
const LONGEST_SIDE = 8192;
/** Steps in which a large picture is made coarser. */
const STEP = 0.1;

/** What a browser could not draw: it has no canvas, or none so large. */
export class NoPicture extends Error {
	constructor() {
		super('this browser cannot make a picture so large');
		this.name = 'NoPicture';
	}
}

/** The size that an SVG file of ours says of itself. */
const sizeIn = (svg: string): { readonly width: Mm; readonly height: Mm } => {
	const [, width, height] = /<svg [^>]*width="([\d.]+)mm" height="([\d.]+)mm"/.exec(svg) ?? [];
	if (width === undefined || height === undefined) throw new Error('a drawing without its size');
	return { width: mm(Number(width)), height: mm(Number(height)) };
};

/** How many dots to the millimetre a picture of this size has: as many as a canvas can hold, and no more than `DOTS`. */
export const dotsFor = (width: Mm, height: Mm): number => {
	const most = Math.min(
		DOTS,
		LONGEST_SIDE / Math.max(width, height),
		Math.sqrt(MOST_DOTS / (width * height))
	);
	return most >= DOTS ? DOTS : Math.max(STEP, Math.floor(most / STEP) * STEP);
};

/** An SVG file drawn on a white canvas, so many dots wide and high. */
export const drawnOnWhite = async (
	svg: string,
	width: number,
	height: number
): Promise<HTMLCanvasElement> => {
	const address = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
	try {
		const image = new Image();
		image.src = address;
		await image.decode();
		const canvas = Object.assign(document.createElement('canvas'), { width, height });
		const pen = canvas.getContext('2d');
		if (!pen) throw new NoPicture();
		pen.fillStyle = '#fff';
		pen.fillRect(0, 0, width, height);
		pen.drawImage(image, 0, 0, width, height);
		return canvas;
	} finally {
		URL.revokeObjectURL(address);
	}
};

/** An SVG file as a picture (PNG) on white, with the dots to the millimetre that it has. */
const picture = async ({ name, content }: MadeFile): Promise<MadeFile & { readonly dots: number }> => {
	const svg = await content.text();
	const { width, height } = sizeIn(svg);
	const dots = dotsFor(width, height);
	const canvas = await drawnOnWhite(svg, Math.round(width * dots), Math.round(height * dots));
	const png = await new Promise<Blob | null>((resolve) => {
		canvas.toBlob(resolve, 'image/png');
	});
	if (!png) throw new NoPicture();
	return { name: name.replace(/\.svg$/, '.png'), content: png, dots };
};

/** Makes pictures of SVG files, one after another, and says how fine they are. */
export const pictures =
	({ words }: Speech): Finish =>
	async (drawings) => {
		const files: MadeFile[] = [];
		let coarsest = DOTS;
		for (const drawing of drawings) {
			const { dots, ...file } = await picture(drawing);
			files.push(file);
			coarsest = Math.min(coarsest, dots);
		}
		return { files, note: words.files.dots({ dots: coarsest }) };
	};
