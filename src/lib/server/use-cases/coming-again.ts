import { z } from 'zod';
import { hashOf } from '../people/ids.ts';
import { hashPassphrase } from '../people/passphrases.ts';
import { newSession } from '../people/sessions.ts';
import { passphrase } from '../people/shapes.ts';
import { countTry, fromAddress } from '../people/tries.ts';
import { Refused } from '../refused.ts';
import { useCase } from '../use-case.ts';

/** A teacher who lost their passphrase chooses another, by a link of the server's own; whoever is signed in as them is signed out. */
export const comeAgain = useCase({
	who: 'anybody',
	input: z.strictObject({ link: z.string().max(100), passphrase }),
	run: async (typed, { world, address }): Promise<{ readonly secret: string }> => {
		const { store, now } = world;
		const giveBack = await countTry(world, [fromAddress(address)]);
		const hash = await hashPassphrase(typed.passphrase, world.cost);
		const person = await store.db.transaction().execute(async (whole) => {
			const link = await whole
				.deleteFrom('invitations')
				.where('id', '=', hashOf(typed.link))
				.where('until', '>', now())
				.where('person', 'is not', null)
				.returning('person')
				.executeTakeFirst();
			if (!link?.person) throw new Refused('linkUsed');
			await whole.updateTable('people').set({ passphrase: hash }).where('id', '=', link.person).execute();
			await whole.deleteFrom('sessions').where('person', '=', link.person).execute();
			return link.person;
		});
		await giveBack();
		return { secret: await newSession(world, person) };
	}
});
