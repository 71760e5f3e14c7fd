import { lightAt, type Grey, type PicturePoint } from './picture.ts';

/** Steps across an edge, in pixels. */
const ACROSS = 0.25;

/** Where the light along a line across the edge is half way from its dark to its bright end, and how wide the change is. */
export const crossing = (profile: readonly number[]): { at: number; blur: number } | undefined => {
	const edge = Math.max(2, Math.round(profile.length / 6));
	const mean = (part: readonly number[]): number => part.reduce((sum, each) => sum + each, 0) / part.length;
	const [dark, bright] = [mean(profile.slice(0, edge)), mean(profile.slice(-edge))];
	if (bright - dark < 24) return undefined;
	const levelAt = (share: number, from: number): number | undefined => {
		const level = dark + (bright - dark) * share;
		for (let i = from; i + 1 < profile.length; i++) {
			const [a, b] = [profile[i] ?? 0, profile[i + 1] ?? 0];
			if (a < level && b >= level) return i + (level - a) / (b - a);
		}
		return undefined;
	};
	const at = levelAt(0.5, 0);
	const [low, high] = [levelAt(0.16, 0), levelAt(0.84, 0)];
	if (at === undefined || low === undefined || high === undefined) return undefined;
	// Of a blur like a bell's curve, 68 % of the change lies within one standard deviation to both sides.
	return { at: (at - (profile.length - 1) / 2) * ACROSS, blur: (Math.abs(high - low) / 2) * ACROSS };
};

/** The light along a way of one pixel's length through a place, from dark to bright, so far to both sides. */
export const profileAlong = (
	grey: Grey,
	{ u, v }: PicturePoint,
	way: PicturePoint,
	reach: number
): readonly number[] => {
	const steps = Math.round((2 * reach) / ACROSS);
	return Array.from({ length: steps + 1 }, (_, k) => {
		const out = (k - steps / 2) * ACROSS;
		return lightAt(grey, { u: u + way.u * out, v: v + way.v * out });
	});
};
