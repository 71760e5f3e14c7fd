import { BadInput } from '#shared/bad-input.ts';
import { message, type Message } from '#shared/speech/message.ts';
import { readPlacement, type Placement } from '#shared/placement.ts';
import { POINT_TOLERANCE, SAME_PLACE, TOLERANCES, widened, type Tolerances } from '#shared/tolerances.ts';
import { mm, type Mm } from '#shared/units.ts';
import type { Finding, FindingOf, Verdict } from '#shared/verdict.ts';
import { pathLength, type Path } from '#geometry/path.ts';
import { distance, type SheetPoint } from '#geometry/point.ts';
import type { Drafted } from '#drafting/evaluate.ts';
import { stepNamed, type Method } from '#drafting/method.ts';
import { stepAnswer } from '#drafting/steps/kinds.ts';
import { turnAngle } from '#drafting/steps/motion.ts';
import type { Step } from '#drafting/steps/step-rules.ts';
import { checkLine } from './check-line.ts';
import { placeFinding } from './check-point.ts';
import { pathOfPlacement, pointOfPlace } from './placed.ts';

/** The verdict that findings come to. */
export const judged = (findings: readonly Finding[]): Verdict => ({
	answer: findings.every(({ within }) => within) ? 'right' : 'wrong',
	findings: [...findings]
});

const notValid = (because: Message): Verdict => ({ answer: 'not-valid', because });

/** Whether each piece begins where the one before it ends: a line with a gap could seem as long as it should be. */
const isWhole = (path: Path): boolean =>
	path.every((piece, i) => {
		const before = path[i - 1];
		return !before || distance(before.to, piece.from) <= SAME_PLACE;
	});

/** How far a part was turned, and how far its rule turns it; undefined where none is turned, or where its point has left its circle. */
const turnIn = (
	step: Step,
	placed: SheetPoint,
	right: SheetPoint,
	{ points }: Drafted
): FindingOf<'place'>['turn'] => {
	const answer = stepAnswer(step);
	if (answer.put !== 'way' || !answer.turns || !('about' in answer.on)) return undefined;
	const [about, begin] = [points[answer.on.about], points[answer.from]];
	if (!about || !begin) return undefined;
	const stretched = Math.abs(distance(about, placed) - distance(about, begin));
	if (stretched > POINT_TOLERANCE) return undefined;
	return { drawn: turnAngle(about, begin, placed), wanted: turnAngle(about, begin, right) };
};

/** Judges a placement that is already known to be well formed. */
const judge = (step: Step, placement: Placement, draft: Drafted, allowed: Tolerances): Verdict => {
	const point = draft.points[step.name];
	if (point) {
		if (placement.kind !== 'point') return notValid(message('verdicts', 'asksForPoint'));
		const placed = pointOfPlace(placement.at);
		return judged([placeFinding('place', placed, point, allowed.point, turnIn(step, placed, point, draft))]);
	}
	const line = draft.lines[step.name];
	if (!line) throw new Error(`the draft has neither a point nor a line "${step.name}"`);
	if (placement.kind !== 'line') return notValid(message('verdicts', 'asksForLine'));
	const path = pathOfPlacement(placement);
	if (!isWhole(path)) return notValid(message('verdicts', 'notJoined'));
	return pathLength(path) <= SAME_PLACE
		? notValid(message('verdicts', 'noLength'))
		: judged(checkLine(step, path, line.path, allowed));
};

/**
 * Judges a place whose error is known: it is right, or wrong, only where it is wherever it may truly lie.
 */
export const judgeMeasured = (error: Mm, judgeAt: (by: Mm) => Verdict): Verdict => {
	const verdict = judgeAt(mm(0));
	if (error === 0 || !('findings' in verdict)) return verdict;
	return judgeAt(mm(-error)).answer === 'right' || judgeAt(error).answer === 'wrong'
		? verdict
		: { answer: 'cannot-tell', findings: verdict.findings, error };
};

/**
 * What the checker says of one step's placement, against the computed draft. Never throws: an entry
 * that is no placement is *not-valid*, nothing at all is *unfinished*, and a fault of the program's
 * own is *our-fault*, which costs the learner nothing. `allowed` are the tolerances to be kept, `error` how
 * far what it is compared with may lie elsewhere itself.
 */
export const check = (
	method: Method,
	stepName: string,
	draft: Drafted,
	placement: unknown,
	allowed: Tolerances = TOLERANCES.normal,
	error: Mm = mm(0)
): Verdict => {
	if (placement === undefined || placement === null) return { answer: 'unfinished' };
	try {
		const parsed = readPlacement(placement);
		if (!parsed.success) {
			const issue = parsed.error.issues[0];
			const where = issue?.path.map(String).join('.') ?? '';
			return notValid(message('verdicts', 'noPlacement', { where, issue: issue?.message ?? '' }));
		}
		const { data } = parsed;
		return judgeMeasured(mm(Math.hypot(error, data.error ?? 0)), (by) =>
			judge(stepNamed(method, stepName), data, draft, widened(allowed, by))
		);
	} catch (error) {
		if (error instanceof BadInput)
			return notValid(message('verdicts', 'misread', { place: error.place, rule: error.slip }));
		const words = error instanceof Error ? error.message : String(error);
		return { answer: 'our-fault', because: message('verdicts', 'fault', { words }) };
	}
};
