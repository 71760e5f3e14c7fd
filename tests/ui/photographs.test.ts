import jpeg from 'jpeg-js';
import { describe, expect, it } from 'vitest';
import { fileHead } from '#ui/photographs/file-kind.ts';
import { sharpness } from '#ui/photographs/sharpness.ts';

const bytes = (...parts: readonly (string | readonly number[])[]): Uint8Array => {
	const all = parts.flatMap((part) =>
		typeof part === 'string' ? Array.from(part, (sign) => sign.charCodeAt(0)) : [...part]
	);
	return Uint8Array.from([...all, ...new Array<number>(Math.max(0, 40 - all.length)).fill(0)]);
};

describe('a file is known by its first bytes', () => {
	it('JPEG, with its size, as a library writes it', () => {
		const made = jpeg.encode({ width: 24, height: 16, data: new Uint8Array(24 * 16 * 4) }, 80).data;
		expect(fileHead(made)).toEqual({ kind: 'jpeg', size: { width: 24, height: 16 } });
		// Cut off before its size, it is still one.
		expect(fileHead(made.subarray(0, 40))).toEqual({ kind: 'jpeg', size: undefined });
	});

	it('PNG (its specification, 5.2 and 11.2.2)', () => {
		const head = bytes(
			[0x89],
			'PNG\r\n',
			[0x1a, 0x0a, 0, 0, 0, 13],
			'IHDR',
			[0, 0, 0x75, 0x30, 0, 0, 0x27, 0x10]
		);
		expect(fileHead(head)).toEqual({ kind: 'png', size: { width: 30_000, height: 10_000 } });
	});

	it('WebP in its three forms (RFC 9649)', () => {
		const riff = (part: string, ...rest: readonly number[]) =>
			bytes('RIFF', [0, 0, 0, 0], 'WEBP', part, [0, 0, 0, 0], rest);
		const whole = riff('VP8X', 0, 0, 0, 0, 0x9f, 0x0f, 0, 0xb7, 0x0b, 0);
		expect(fileHead(whole).size).toEqual({ width: 4000, height: 3000 });
		const lossy = riff('VP8 ', 0, 0, 0, 0x9d, 0x01, 0x2a, 0xa0, 0x0f, 0xb8, 0x0b);
		expect(fileHead(lossy)).toEqual({ kind: 'webp', size: { width: 4000, height: 3000 } });
		// 14 bits of the width less one, 14 of the height less one.
		const packed = 3999 | (2999 << 14);
		const lossless = riff(
			'VP8L',
			0x2f,
			packed & 255,
			(packed >> 8) & 255,
			(packed >> 16) & 255,
			(packed >> 24) & 255
		);
		expect(fileHead(lossless).size).toEqual({ width: 4000, height: 3000 });
	});

	it('HEIC by its brand, though a system may call it something else; anything else is no picture', () => {
		expect(fileHead(bytes([0, 0, 0, 24], 'ftypheic')).kind).toBe('heic');
		expect(fileHead(bytes([0, 0, 0, 24], 'ftypmif1')).kind).toBe('heic');
		expect(fileHead(bytes([0, 0, 0, 24], 'ftypisom')).kind).toBe('other');
		expect(fileHead(bytes('%PDF-1.7')).kind).toBe('other');
		expect(fileHead(new Uint8Array()).kind).toBe('other');
	});
});

describe('how sharp a picture is', () => {
	const stripes = (soft: number): number => {
		const size = 40;
		const rgba = new Uint8Array(size * size * 4);
		for (let i = 0; i < size * size; i++) {
			const across = i % size;
			rgba[i * 4 + 1] = 128 + 100 * Math.tanh(Math.sin((across / size) * 4 * Math.PI) / soft);
		}
		return sharpness(size, size, rgba);
	};

	it('is more the steeper its edges are, and nothing for one grey', () => {
		expect(stripes(0.05)).toBeGreaterThan(stripes(0.5));
		expect(stripes(0.5)).toBeGreaterThan(stripes(5));
		expect(sharpness(20, 20, new Uint8Array(1600).fill(90))).toBe(0);
	});
});
