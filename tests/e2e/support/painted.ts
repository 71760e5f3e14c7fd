/** One line or word of a drawing, its colour and that of the paper that it lies on, as #rrggbb. */
interface Painted {
	readonly what: string;
	readonly word: boolean;
	readonly ink: string;
	readonly ground: string;
}

/** Run in the page: every line and word of its drawings that is meant to be seen. */
export const PAINTED = (): readonly Painted[] => {
	type Rgb = readonly [number, number, number];
	/** A colour of the page's style, whatever it is written as. */
	const probe = document.body.appendChild(document.createElement('i'));
	const rgb = (colour: string): Rgb => {
		probe.style.color = colour;
		const [red = 0, green = 0, blue = 0] = (getComputedStyle(probe).color.match(/[\d.]+/g) ?? []).map(Number);
		return [red, green, blue];
	};
	const named = (names: readonly string[]): readonly string[] =>
		names.map((name) => rgb(`var(--${name})`).join());
	/** Where the system has its own colours, some of these are that of the ink. */
	const ink = named(['ink']);
	const faint = named(['dot', 'rule', 'edge']).filter((colour) => !ink.includes(colour));
	const grounds = named([
		'page',
		'leaf',
		'sheet',
		'margin',
		'cloth',
		'cloth-inside',
		'chalk-wash',
		'good-wash',
		'on-chalk'
	]);
	const sheet = rgb('var(--sheet)');
	const over = (drawn: Rgb, share: number): Rgb => {
		const mixed = drawn.map((part, i) => Math.round(part * share + (sheet[i] ?? 0) * (1 - share)));
		return [mixed[0] ?? 0, mixed[1] ?? 0, mixed[2] ?? 0];
	};
	const hex = (colour: Rgb): string =>
		`#${colour.map((part) => part.toString(16).padStart(2, '0')).join('')}`;
	const found: Painted[] = [];
	for (const element of document.querySelectorAll<SVGElement>('svg :is(path, circle, rect, line, text)')) {
		const style = getComputedStyle(element);
		if (!element.checkVisibility() || element.closest('defs')) continue;
		const word = element.localName === 'text';
		const paint = word || style.stroke === 'none' ? style.fill : style.stroke;
		if (paint === 'none' || paint.startsWith('url') || Number(style.fillOpacity) < 1) continue;
		const drawn = rgb(paint);
		if (faint.includes(drawn.join()) || grounds.includes(drawn.join())) continue;
		found.push({
			what: `${element.localName}.${element.getAttribute('class') ?? ''}`,
			word,
			ink: hex(over(drawn, Number(style.opacity))),
			ground: hex(sheet)
		});
	}
	probe.remove();
	return [...new Map(found.map((each) => [`${each.what} ${each.ink}`, each])).values()];
};
