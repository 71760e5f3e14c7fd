/** The contrast of two colours, 1 to 21, as WCAG 2.2 works it from #rgb or #rrggbb. */
export const contrast = (one: string, other: string): number => {
	const [dark = 0, light = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
	return (light + 0.05) / (dark + 0.05);
};

/** How light a colour is, 0 to 1: relative luminance of sRGB. */
const luminance = (colour: string): number => {
	const digits = /^#([\da-f]{6}|[\da-f]{3})$/i.exec(colour)?.[1];
	if (digits === undefined) throw new Error(`"${colour}" is not a colour`);
	const parts = (digits.length === 3 ? digits.replace(/./g, '$&$&') : digits).match(/../g) ?? [];
	const [red = 0, green = 0, blue = 0] = parts.map((part) => {
		const share = parseInt(part, 16) / 255;
		return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
	});
	return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
};
