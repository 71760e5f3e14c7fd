import { addressIn } from '#shared/speech/language.ts';
import { id } from '../people/shapes.ts';
import type { Caller, World } from '../world.ts';
import type { Wanted } from './message.ts';

/** What a link of a platform opens here: something that a class was set, a lesson, or else the page of whoever comes. */
export interface Goal {
	readonly kind: 'assignment' | 'lesson';
	readonly id: string;
}

/** Under which names a link carries it, which the platform hands back with every launch. */
const KINDS = ['assignment', 'lesson'] as const;

/** Where it stands on this site, without a language: whoever comes has their own. */
const PATHS = { assignment: '/class', lesson: '/lessons' } as const satisfies Record<Goal['kind'], string>;

const pathOf = ({ kind, id: of }: Goal): string => `${PATHS[kind]}/${of}`;

/** The address that a link of a platform is given. */
export const addressOf = (goal: Goal, site: string): string => site + pathOf(goal);

/** What an address of this site leads to; undefined where it is none of ours, or of nothing that a link may open. */
const atAddress = (address: string, site: string): Goal | undefined => {
	const url = URL.canParse(address) ? new URL(address) : undefined;
	if (url?.origin !== site) return undefined;
	const path = addressIn('en', url.pathname);
	const kind = KINDS.find((each) => path.startsWith(`${PATHS[each]}/`));
	return kind && { kind, id: path.slice(PATHS[kind].length + 1) };
};

/** What a link wants to be opened: as it was chosen here, or by its address. Nothing but what stands on this site. */
export const goalOf = (
	{ custom, target }: Extract<Wanted, { readonly kind: 'link' }>,
	site: string
): Goal | undefined => {
	for (const kind of KINDS) {
		const of = id.safeParse(custom[kind]).data;
		if (of) return { kind, id: of };
	}
	return atAddress(target, site);
};

/** What is to be opened, where there is such a thing; an assignment only in its own class. */
export const foundGoal = async (
	{ store: { db }, course }: World,
	goal: Goal | undefined,
	inClass: string
): Promise<Goal | undefined> => {
	if (goal?.kind === 'lesson') return course.lessons.some((each) => each.id === goal.id) ? goal : undefined;
	const found =
		goal &&
		(await db
			.selectFrom('assignments')
			.select('id')
			.where('id', '=', goal.id)
			.where('class', '=', inClass)
			.executeTakeFirst());
	return found && goal;
};

/** The path of what is to be opened; that of their own page where it is nothing. */
export const pathFor = (
	goal: Goal | undefined,
	{ role, class: inClass }: Pick<Caller, 'role'> & { readonly class: string }
): string => {
	if (goal && (role === 'learner' || goal.kind === 'lesson')) return pathOf(goal);
	if (role === 'learner') return PATHS.assignment;
	return `${PATHS.assignment}/${inClass}${goal ? `?assignment=${goal.id}` : ''}`;
};
