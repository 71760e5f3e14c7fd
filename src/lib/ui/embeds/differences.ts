import type { Placement } from '#shared/placement.ts';
import type { Speech } from '#shared/speech/speech.ts';
import { SAME_PLACE, TOLERANCES, UNSPOKEN } from '#shared/tolerances.ts';
import type { Finding, Verdict } from '#shared/verdict.ts';
import { verdictWords } from '#checker/words.ts';
import { pathOfPlacement, pointOfPlace } from '#checker/placed.ts';
import { pathEnd } from '#geometry/path.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import type { ScreenPoint } from '#ui/drawing/view.ts';
import { px } from '#shared/units.ts';

/** The differences of one step for a table: how far off and which way, or how far a line strays and how much longer it is. */
export const differenceWords = (
	findings: readonly Finding[],
	{ words: { verdicts: say } }: Speech
): string => {
	const parts = findings.flatMap((finding) => {
		if (finding.aspect === 'place') return finding.offBy < UNSPOKEN ? [] : [say.way(finding)];
		if (finding.aspect === 'course') return finding.away < UNSPOKEN ? [] : [say.strays(finding)];
		if (finding.aspect !== 'length' || Math.abs(finding.by) < UNSPOKEN) return [];
		return [say.differs(finding)];
	});
	return parts.join(', ') || say.noDifference;
};

/** What a table says of a step beside its verdict: how far it is off, or what there is to say where that was not looked at. */
export const againstWords = (name: string, verdict: Verdict, speech: Speech): string =>
	verdict.answer !== 'cannot-tell' && 'findings' in verdict
		? differenceWords(verdict.findings, speech)
		: verdictWords(verdict, { name }, speech).sentences.join(' ') || '–';

/** What a sharp pencil holds. */
const SHARP = TOLERANCES.strict;

/** How far a step is off, as a share of what a sharp pencil holds: more than 1 is worth showing. */
const weightOf = (verdict: Verdict): number => {
	if (!('findings' in verdict)) return 0;
	const shares = verdict.findings.map((finding) => {
		if (finding.aspect === 'place') return finding.offBy / SHARP.point;
		if (finding.aspect === 'course') return finding.away / SHARP.curve;
		return finding.aspect === 'length' ? Math.abs(finding.by) / SHARP.length : 0;
	});
	return Math.max(0, ...shares);
};

/** As many differences are shown as can be told apart in one picture. */
const MOST = 6;

/** The few differences that matter: what is wrong, and what a sharp pencil would not have strayed; the greatest of them, in the order of drafting. */
export const fewDifferences = (
	names: readonly string[],
	of: (name: string) => Verdict
): readonly string[] => {
	const rank = (name: string): number => weightOf(of(name)) + (of(name).answer === 'wrong' ? 1e3 : 0);
	const most = names
		.filter((name) => rank(name) > 1 + SAME_PLACE)
		.toSorted((a, b) => rank(b) - rank(a))
		.slice(0, MOST);
	return names.filter((name) => most.includes(name));
};

/** Where a difference is to be seen: at the learner's mark, or where their line strays furthest. */
export const placeOfDifference = (
	placement: Placement | undefined,
	verdict: Verdict
): SheetPoint | undefined => {
	if (!placement || !('findings' in verdict)) return undefined;
	if (placement.kind === 'point') return pointOfPlace(placement.at);
	const course = verdict.findings.find((finding) => finding.aspect === 'course');
	return course ? at(...course.where) : pathEnd(pathOfPlacement(placement));
};

/** Pixels from a ring's middle to that of its number, which stands outside of it. */
const NUMBER_AWAY = 19;
const SIDES = Array.from({ length: 16 }, (_, i) => ((i - 2) * Math.PI) / 8);

/** Where the number of each ring stands, as clear of what is written, of all rings and of one another as it can. */
export const numbersBeside = (
	rings: readonly ScreenPoint[],
	written: readonly ScreenPoint[]
): readonly ScreenPoint[] =>
	rings.reduce<readonly ScreenPoint[]>((numbers, ring) => {
		const others = [...written, ...numbers, ...rings.filter((each) => each !== ring)];
		const room = ({ left, top }: ScreenPoint): number =>
			Math.min(...others.map((each) => Math.hypot(each.left - left, each.top - top)));
		const [best = ring] = SIDES.map((angle) => ({
			left: px(ring.left + NUMBER_AWAY * Math.cos(angle)),
			top: px(ring.top + NUMBER_AWAY * Math.sin(angle))
		})).toSorted((a, b) => room(b) - room(a));
		return [...numbers, best];
	}, []);
