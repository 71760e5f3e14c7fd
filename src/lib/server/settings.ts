import { BadInput, shown } from '#shared/bad-input.ts';
import { message } from '#shared/speech/message.ts';

/** Where the classes of a school are kept: a folder of this machine, or a PostgreSQL server. */
export type StorePlace =
	{ readonly kind: 'folder'; readonly folder: string } | { readonly kind: 'postgres'; readonly url: string };

/** The settings of the class server, all of them environment variables. */
export interface Settings {
	/** Undefined where the site is to be without classes. */
	readonly place: StorePlace | undefined;
}

/** Names the folder that everything is kept in; `none` turns the class server off. */
export const DATA = 'SQUARE_ACROSS_DATA';
/** Names a PostgreSQL database that is used in place of the folder. */
const DATABASE = 'DATABASE_URL';

/** The value of DATA that turns the class server off. */
export const NO_DATA = 'none';

/** Reads the address of a PostgreSQL database. Throws BadInput at `place`, without the password that may stand in it. */
export const readDatabaseUrl = (text: string, place: string): StorePlace => {
	const url = URL.canParse(text) ? new URL(text) : undefined;
	if (url?.protocol !== 'postgres:' && url?.protocol !== 'postgresql:') {
		const seen = text.includes('@') ? `...@${text.split('@').at(-1) ?? ''}` : text;
		throw new BadInput(place, message('server', 'notPostgres', { seen: shown(seen) }));
	}
	return { kind: 'postgres', url: text };
};

/** Reads the settings. Throws BadInput that names the variable. */
export const readSettings = (variables: Readonly<Record<string, string | undefined>>): Settings => {
	const url = variables[DATABASE];
	if (url) return { place: readDatabaseUrl(url, DATABASE) };
	const folder = variables[DATA];
	return { place: !folder || folder === NO_DATA ? undefined : { kind: 'folder', folder } };
};
