/**
 * A strict reader for the SVG that this program writes: elements, attributes between double quotes,
 * numeric character references, text. Anything else in the file is an error with its place.
 */
export interface SvgElement {
	readonly tag: string;
	readonly attributes: Readonly<Record<string, string>>;
	readonly children: SvgElement[];
	text: string;
}

const TOKEN = /<(\/?)([a-zA-Z]+)((?:\s+[a-zA-Z-]+="[^"<]*")*)\s*(\/?)>|([^<]+)/y;
const REFERENCE = /&#(\d+);/g;

const decoded = (text: string): string => {
	const bare = text.replace(REFERENCE, (_, code: string) => String.fromCodePoint(Number(code)));
	if (text.replace(REFERENCE, '').includes('&')) throw new Error(`a bare ampersand in: ${text}`);
	return bare;
};

const attributesOf = (text: string): Record<string, string> =>
	Object.fromEntries(
		[...text.matchAll(/([a-zA-Z-]+)="([^"]*)"/g)].map(([, name = '', value = '']) => [name, decoded(value)])
	);

/** Reads a whole file into its root element. Throws where it is not well formed. */
export const readSvg = (file: string): SvgElement => {
	const top: SvgElement = { tag: '', attributes: {}, children: [], text: '' };
	const open: SvgElement[] = [top];
	TOKEN.lastIndex = 0;
	while (TOKEN.lastIndex < file.length) {
		const place = TOKEN.lastIndex;
		const token = TOKEN.exec(file);
		const inside = open.at(-1);
		if (!token || !inside) throw new Error(`not well formed at ${place}: ${file.slice(place, place + 40)}`);
		const [, closing, tag, attributes = '', alone, text] = token;
		if (text !== undefined) inside.text += decoded(text);
		else if (closing) {
			if (open.pop()?.tag !== tag) throw new Error(`</${tag ?? ''}> closes nothing at ${place}`);
		} else {
			const element = { tag: tag ?? '', attributes: attributesOf(attributes), children: [], text: '' };
			inside.children.push(element);
			if (!alone) open.push(element);
		}
	}
	const [root, ...others] = top.children;
	if (!root || others.length > 0 || open.length > 1 || top.text) throw new Error('not one closed element');
	return root;
};

/** Every element of a tag, wherever it stands. */
export const elements = (root: SvgElement, tag: string): readonly SvgElement[] => [
	...(root.tag === tag ? [root] : []),
	...root.children.flatMap((child) => elements(child, tag))
];

/** The numbers written in a text. */
export const numbersIn = (text: string | undefined): readonly number[] =>
	[...(text ?? '').matchAll(/-?\d+(?:\.\d+)?/g)].map(([number]) => Number(number));

/** One attribute as a number. */
export const numberOf = (element: SvgElement | undefined, name: string): number => {
	const written = element?.attributes[name];
	if (written === undefined || !/^-?\d+(\.\d+)?(mm)?$/.test(written))
		throw new Error(`${element?.tag ?? 'nothing'} has no number "${name}": ${written ?? ''}`);
	return Number.parseFloat(written);
};
