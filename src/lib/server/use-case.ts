import type { z } from 'zod';
import { BadInput } from '#shared/bad-input.ts';
import { shapeSlip } from '#shared/reading.ts';
import { Refused } from './refused.ts';
import type { Asked, Caller, World } from './world.ts';

/** Who may: `anybody`, also who is not signed in; `member`, a teacher or a learner. */
export type Who = 'anybody' | 'member' | 'teacher' | 'learner';

/** What a use case is given besides its input. */
interface Given<W extends Who> {
	readonly world: World;
	/** Signed in, and of the role that may. */
	readonly caller: W extends 'anybody' ? Caller | undefined : Caller;
	readonly address: string;
}

/** One thing that somebody can do with the class server. Who may is checked before it runs, here and in no page. */
export interface UseCase<I, O, W extends Who = Who> {
	readonly who: W;
	readonly input: z.ZodType<I>;
	readonly run: (input: I, given: Given<W>) => Promise<O>;
}

/** A use case of some people, typed by what it is given. */
export const useCase = <I, O, W extends Who>(parts: UseCase<I, O, W>): UseCase<I, O, W> => parts;

const mayRun = (who: Who, caller: Caller | undefined): void => {
	if (who === 'anybody') return;
	if (!caller) throw new Refused('signIn');
	if (who !== 'member' && who !== caller.role) throw new Refused('notForRole');
};

/**
 * Does what somebody asks for. Throws Refused where they may not, BadInput where the input is of another shape.
 *
 * @param input as it came in: nothing of it is trusted
 */
export const carryOut = async <I, O, W extends Who>(
	{ who, input: shape, run }: UseCase<I, O, W>,
	world: World,
	{ caller, address }: Asked,
	input: unknown
): Promise<O> => {
	mayRun(who, caller);
	const read = shape.safeParse(input);
	const [issue] = read.error?.issues ?? [];
	if (issue) throw new BadInput(issue.path.join('.'), shapeSlip(issue, input));
	return run(read.data as I, { world, caller: caller as Given<W>['caller'], address });
};
