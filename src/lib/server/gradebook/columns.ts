import { hashOf } from '../people/ids.ts';
import type { Launch } from '../lti/message.ts';
import type { PlatformRow } from '../store/tables.ts';
import type { World } from '../world.ts';

/** Who has come from a platform to an assignment, by which link. */
interface Came {
	readonly platform: PlatformRow;
	readonly message: Launch;
	readonly person: string;
	readonly assignment: string;
}

/**
 * Notes where the marks of an assignment go, as the platform says it with each launch, and whom there the learner is that has come:
 * the mark is looked at, and sent, from then on.
 */
export const keepColumn = async (
	{ store: { db } }: World,
	{ platform, message, person, assignment }: Came
): Promise<void> => {
	const { wanted, isTeacher, subject, language } = message;
	if (wanted.kind !== 'link' || !wanted.gradebook || platform.token === null) return;
	const { link, gradebook } = wanted;
	const { scope, lineitems: columns = null, lineitem } = gradebook;
	const id = hashOf(`${platform.id} ${link} ${assignment}`);
	const said = { columns, scopes: scope.join(' '), ...(lineitem === undefined ? {} : { address: lineitem }) };
	await db
		.insertInto('mark_columns')
		.values({ id, platform: platform.id, assignment, link, address: null, held_until: 0, ...said })
		.onConflict((conflict) => conflict.column('id').doUpdateSet(said))
		.execute();
	if (isTeacher) return;
	const known = { subject, language: language ?? 'en' };
	const nothing = {
		upto: 0,
		looked: 0,
		look_at: null,
		score: null,
		state: 'nothing',
		outcome: null
	} as const;
	const sending = { tries: 0, due: 0, holder: '', held_until: 0, stamp: 0, status: null };
	await db
		.insertInto('sendings')
		.values({ id: hashOf(`${id} ${person}`), mark_column: id, person, ...known, ...nothing, ...sending })
		.onConflict((conflict) => conflict.column('id').doUpdateSet(known))
		.execute();
};
