declare module 'subset-font' {
	/** A typeface with some letters of another. */
	export default function subsetFont(
		whole: Buffer,
		letters: string,
		options: { readonly targetFormat: 'woff2'; readonly keepFeatures: readonly string[] }
	): Promise<Buffer>;
}
