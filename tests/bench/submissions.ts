import type { Body } from '#shared/body.ts';
import type { Placement } from '#shared/placement.ts';
import { asHandedIn, checkSubmission, type SubmissionReport } from '#checker/check-submission.ts';
import { misstepIn } from '#checker/missteps/of-work.ts';
import { pointMissteps } from '#checker/missteps/point-missteps.ts';
import { OwnDraft } from '#checker/own-draft.ts';
import { placementOfPath } from '#checker/placed.ts';
import { judged, type Judged, type LearnersWork } from '#checker/work.ts';
import type { Draft } from '#drafting/evaluate.ts';
import type { Method } from '#drafting/method.ts';
import { stepMakes } from '#drafting/steps/kinds.ts';
import type { Step } from '#drafting/steps/step-rules.ts';
import { pathMapped } from '#geometry/path.ts';
import { at, type SheetPoint } from '#geometry/point.ts';
import { chanceOf, type Chance } from '#practice/chance.ts';
import { generatedBody } from '#practice/generate-body.ts';
import { backBlock, frontBlock } from '../drafting/lesson-method.ts';
import { draftOf } from '../drafting/small-method.ts';
import { median, type Figure } from './figure.ts';

const GOAL = 10_000;
const GOAL_SECONDS = 30;
/** What went wrong is weighed once a wrong mark, when the verdict stands already: in so many milliseconds. */
const GOAL_WEIGHED = 30;
/** Learners a block; each draws another body. */
const LEARNERS = 60;
const ROUNDS = 9;
/** Rounds left out at the start, while the machine code is still being made. */
const WARM_UP = 2;
/** Spread of the hand along one axis, standard deviation: the same as where missteps are measured. */
const HAND_MM = 1;
/** Times that the drafts alone are worked in a round: one pass would be too short for the clock. */
const REPEATS = 20;

/** The work of one learner, as it is handed in. */
interface HandedIn {
	readonly method: Method;
	readonly body: Body;
	readonly placements: Readonly<Record<string, unknown>>;
	/** Points that were put elsewhere by a wrong rule. */
	readonly slips: readonly string[];
}

/** Where this learner goes wrong: one or two point steps, each by one of its missteps. */
const slipsOf = (method: Method, body: Body, truth: Draft, chance: Chance) => {
	const steps = method.steps.filter(({ kind, name }) => kind !== 'corner' && name in truth.points);
	const count = chance.fraction() < 0.5 ? 1 : 2;
	return new Map(
		chance
			.shuffled(steps)
			.flatMap(({ name }) => {
				const missteps = pointMissteps(method, name, body, truth);
				const misstep = chance.weighted(missteps, ({ prior }) => prior);
				return misstep ? [[name, misstep.place] as const] : [];
			})
			.slice(0, count)
	);
};

/** What the learner puts down for a step: the slip, or where their own earlier work leads, with an unsteady hand. */
const putDown = (
	step: Step,
	own: OwnDraft,
	truth: Draft,
	slips: ReturnType<typeof slipsOf>,
	chance: Chance
): Placement | undefined => {
	const stray = (): number => HAND_MM * chance.normal();
	const led = own.consequence(step) ?? truth;
	if (stepMakes(step) === 'point') {
		const place = slips.get(step.name) ?? led.points[step.name] ?? truth.points[step.name];
		return place && { kind: 'point', at: [place.x + stray(), place.y + stray()] };
	}
	const line = led.lines[step.name] ?? truth.lines[step.name];
	// A line is laid on its points; the hand strays with the handles of a curve, which stand on no point.
	const points = [own.drafted, truth].flatMap((drafted) => Object.values(drafted.points));
	const isPoint = ({ x, y }: SheetPoint): boolean => points.some((each) => each.x === x && each.y === y);
	return (
		line &&
		placementOfPath(
			pathMapped(line.path, (place) => (isPoint(place) ? place : at(place.x + stray(), place.y + stray())))
		)
	);
};

/** A whole block, points and lines or points alone. */
const handedIn = (method: Method, seed: number, lines: boolean): HandedIn => {
	const body = generatedBody(seed, method);
	const [truth, chance] = [draftOf(method, body), chanceOf(seed, 'handed in')];
	const slips = slipsOf(method, body, truth, chance);
	const own = new OwnDraft(method, body, truth);
	const placements: Record<string, unknown> = {};
	for (const step of method.steps) {
		const { name } = step;
		const wanted = name in truth.points || (lines && name in truth.lines);
		if (step.kind === 'corner' || !wanted) continue;
		const placement = putDown(step, own, truth, slips, chance);
		if (!placement) continue;
		placements[name] = placement;
		own.keep(step, placement, slips.has(name));
	}
	return { method, body, placements, slips: [...slips.keys()] };
};

const checked = ({ method, body, placements }: HandedIn): SubmissionReport =>
	checkSubmission(method, body, draftOf(method, body), placements);

/** Only real work is timed: every slip must have been seen, and some must have been named. */
const checkSeen = (work: readonly HandedIn[]): void => {
	const slipped = work.flatMap((each) => checked(each).steps.filter(({ step }) => each.slips.includes(step)));
	const named = slipped.filter(({ note }) => note.includes(':')).length;
	const missed = slipped.filter(({ verdict }) => verdict.answer !== 'wrong').length;
	const invalid = work
		.flatMap((each) => checked(each).steps)
		.filter(({ verdict }) => verdict.answer === 'not-valid');
	if (invalid.length > 0) throw new Error(`${invalid.length} placements were none`);
	if (missed > slipped.length / 10 || named < slipped.length / 2)
		throw new Error(`of ${slipped.length} slips ${missed} went unseen and only ${named} were named`);
};

/** Milliseconds of one core: by the processor's clock, so that what else the machine does is not counted. */
const timed = (work: () => void): number => {
	const start = process.cpuUsage();
	work();
	const { user, system } = process.cpuUsage(start);
	return (user + system) / 1000;
};

const worksOf = (work: readonly HandedIn[]): readonly LearnersWork[] =>
	work.map(({ method, body, placements }) => asHandedIn(method, body, draftOf(method, body), placements));

const isWrong = (found: Judged, step: string): boolean => found.verdict(step).answer === 'wrong';

/** One round: drafted alone, judged, and with every wrong mark weighed. */
const round = (work: readonly HandedIn[]) => {
	const alone = timed(() => {
		for (let i = 0; i < REPEATS; i++) for (const { method, body } of work) draftOf(method, body);
	});
	const all = worksOf(work);
	const drafted = timed(() => worksOf(work));
	let found: readonly Judged[] = [];
	const judging = timed(() => (found = all.map(judged)));
	const wrong = all.flatMap((each, i) => {
		const one = found[i];
		return one
			? Object.keys(each.entries)
					.filter((step) => isWrong(one, step))
					.map((step) => [each, one, step] as const)
			: [];
	});
	const weighing = timed(() => wrong.forEach(([each, one, step]) => misstepIn(each, one, step)));
	return { alone: alone / REPEATS, judging: drafted + judging, weighing, wrong: wrong.length };
};

const figuresOf = (what: string, lines: boolean): readonly Figure[] => {
	const work = [backBlock(), frontBlock()].flatMap((method) =>
		Array.from({ length: LEARNERS }, (_, seed) => handedIn(method, seed + 1, lines))
	);
	checkSeen(work);
	const rounds = Array.from({ length: ROUNDS }, () => round(work)).slice(WARM_UP);
	const seconds = (median(rounds.map(({ judging }) => judging)) / 1000 / work.length) * GOAL;
	const ratio = median(rounds.map(({ judging, alone }) => judging / alone));
	const weighed = median(rounds.map(({ weighing, wrong }) => weighing / wrong));
	const wrong = rounds[0]?.wrong ?? 0;
	return [
		{
			name: `judging ${GOAL} whole blocks, ${what}`,
			figure: `${seconds.toFixed(1)} s on one core (${ratio.toFixed(0)} times drafting them alone; ${work.length} blocks with slips, ${rounds.length} rounds)`,
			goal: `at most ${GOAL_SECONDS} s`,
			met: seconds <= GOAL_SECONDS
		},
		{
			name: `telling what went wrong in them, ${what}`,
			figure: `${weighed.toFixed(2)} ms a wrong mark (${wrong} of them, a hand that strays among them: ${((weighed * wrong * GOAL) / work.length / 1000).toFixed(0)} s for ${GOAL} blocks)`,
			goal: `at most ${GOAL_WEIGHED} ms`,
			met: weighed <= GOAL_WEIGHED
		}
	];
};

/** How long whole blocks take to be judged, and what went wrong in them to be told: half backs, half fronts, on generated bodies. */
export const submissionFigures = (): readonly Figure[] => [
	...figuresOf('points alone', false),
	...figuresOf('points, lines and curves', true)
];
