/** What a file is, by its first bytes: systems give no type for some, or the wrong one. */
export type FileKind = 'jpeg' | 'png' | 'webp' | 'heic' | 'other';

/** What the first bytes of a picture's file say. */
export interface FileHead {
	readonly kind: FileKind;
	/** In pixels; undefined where they do not say. */
	readonly size: { readonly width: number; readonly height: number } | undefined;
}

/** How many bytes tell: a JPEG may hold a small picture of itself before its size. */
export const HEAD_BYTES = 256 * 1024;

/** Brands of the file format of moving pictures that hold a still one in HEVC or AV1 (ISO/IEC 23008-12, annex B). */
const HEIC = ['heic', 'heix', 'heim', 'heis', 'hevc', 'hevx', 'mif1', 'msf1'];

const textAt = (bytes: Uint8Array, from: number, length: number): string =>
	String.fromCharCode(...bytes.subarray(from, from + length));

/** The size in a JPEG's frame header: SOF0 to SOF15 but for the three that are no frames (ITU-T T.81, table B.1). */
const jpegSize = (view: DataView): FileHead['size'] => {
	let at = 2;
	while (at + 9 < view.byteLength && view.getUint8(at) === 0xff) {
		const marker = view.getUint8(at + 1);
		if (marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker))
			return { height: view.getUint16(at + 5), width: view.getUint16(at + 7) };
		at += marker === 0xff ? 1 : 2 + view.getUint16(at + 2);
	}
	return undefined;
};

/** The size in a WebP's first part, whichever of the three it is (RFC 9649). */
const webpSize = (bytes: Uint8Array, view: DataView): FileHead['size'] => {
	const part = textAt(bytes, 12, 4);
	const three = (at: number): number => view.getUint16(at, true) + (view.getUint8(at + 2) << 16);
	if (part === 'VP8X') return { width: 1 + three(24), height: 1 + three(27) };
	if (part === 'VP8 ')
		return { width: view.getUint16(26, true) & 0x3fff, height: view.getUint16(28, true) & 0x3fff };
	const packed = view.getUint32(21, true);
	return { width: 1 + (packed & 0x3fff), height: 1 + ((packed >> 14) & 0x3fff) };
};

/** What a file is and how large its picture, by its first bytes. */
export const fileHead = (bytes: Uint8Array): FileHead => {
	const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
	if (bytes.length >= 32) {
		if (view.getUint16(0) === 0xffd8) return { kind: 'jpeg', size: jpegSize(view) };
		if (view.getUint32(0) === 0x89504e47)
			return { kind: 'png', size: { width: view.getUint32(16), height: view.getUint32(20) } };
		if (textAt(bytes, 0, 4) === 'RIFF' && textAt(bytes, 8, 4) === 'WEBP')
			return { kind: 'webp', size: webpSize(bytes, view) };
		if (textAt(bytes, 4, 4) === 'ftyp' && HEIC.includes(textAt(bytes, 8, 4)))
			return { kind: 'heic', size: undefined };
	}
	return { kind: 'other', size: undefined };
};
