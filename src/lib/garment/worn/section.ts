/** How deep a section of the body, and of what hangs round it, is for its width. Common proportion, no source. */
const DEPTH = 0.7;
const STEPS = 64;

/** How far round a quarter of the section, its half width being 1, each of equal steps of its angle lies. */
const ROUND: readonly number[] = (() => {
	const round = [0];
	const speed = (angle: number): number => Math.hypot(Math.cos(angle), DEPTH * Math.sin(angle));
	for (let i = 0; i < STEPS; i++) {
		const [from, to] = [i, i + 1].map((each) => (each * Math.PI) / 2 / STEPS) as [number, number];
		// Simpson's rule.
		const piece = ((to - from) / 6) * (speed(from) + 4 * speed((from + to) / 2) + speed(to));
		round.push((round[i] ?? 0) + piece);
	}
	return round;
})();

/** A quarter of the round of a section whose half width is 1. */
export const QUARTER_ROUND = ROUND.at(-1) ?? 1;

/** How wide, from its middle, an elliptical section is seen of which this is a quarter of the round. Millimetres. */
export const halfWidth = (quarter: number): number => quarter / QUARTER_ROUND;

/**
 * Where cloth that lies round the section is seen, as a share of the half width: `share` is how far round the quarter it lies, from the
 * centre (0) to the side (1). Beyond the centre it is seen on the other side.
 */
export const seenAcross = (share: number): number => {
	const round = Math.min(1, Math.abs(share)) * QUARTER_ROUND;
	// The section is nearly round, so equal steps of its angle are nearly equal steps round it.
	let i = Math.min(STEPS - 1, Math.floor((round / QUARTER_ROUND) * STEPS));
	while (i > 0 && (ROUND[i] ?? 0) > round) i--;
	while (i < STEPS - 1 && (ROUND[i + 1] ?? 0) < round) i++;
	const [from, to] = [ROUND[i] ?? 0, ROUND[i + 1] ?? 0];
	const angle = ((i + (round - from) / (to - from)) * Math.PI) / 2 / STEPS;
	return Math.sign(share) * Math.sin(angle);
};

/** Looseness up to this share of the body's girth stands round it without a fold. Common practice, no source. */
const SMOOTH = 0.12;
/** How strongly more than that falls in folds: 0 would let it stand out whole. Chosen by eye. */
const DRAWN = 0.6;

/**
 * How far round a quarter of the figure cloth is seen that is `own` round and hangs about a body that is `body` round, in millimetres:
 * close cloth as it is; of what is looser a part falls in folds, the more of it the looser it is. Grows with both.
 */
export const hanging = (own: number, body: number): number => {
	const loose = own / body - 1 - SMOOTH;
	return loose <= 0 ? own : body * (1 + SMOOTH + loose / (1 + DRAWN * loose));
};
