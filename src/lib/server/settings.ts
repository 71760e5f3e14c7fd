import { BadInput, shown } from '#shared/bad-input.ts';
import { nearestName } from '#shared/nearest-name.ts';
import { message } from '#shared/speech/message.ts';

/** Where the classes of a school are kept: a folder of this machine, or a PostgreSQL server. */
export type StorePlace =
	{ readonly kind: 'folder'; readonly folder: string } | { readonly kind: 'postgres'; readonly url: string };

/** How much is written of what the server does: nothing, only what went wrong, or every request as well. */
const LOGS = ['none', 'faults', 'requests'] as const;
export type Log = (typeof LOGS)[number];

/** The value of SQUARE_ACROSS_DATA that turns the class server off. */
export const NO_DATA = 'none';
/** Names the folder that everything is kept in. */
export const DATA = 'SQUARE_ACROSS_DATA';

/** The highest port that there is. */
export const HIGHEST_PORT = 65_535;
/** The most proxies that stand one before another. */
const MOST_PROXIES = 10;

/** Reads the address of a PostgreSQL database. Throws BadInput at `place`, without the password that may stand in it. */
export const readDatabaseUrl = (text: string, place: string): StorePlace => {
	const url = URL.canParse(text) ? new URL(text) : undefined;
	// A port may stand behind the question mark too: with one that is none the client would wait for ever.
	const port = url?.searchParams.get('port') ?? '0';
	const isPort = /^\d+$/.test(port) && Number(port) <= HIGHEST_PORT;
	if (!isPort || (url?.protocol !== 'postgres:' && url?.protocol !== 'postgresql:')) {
		const seen = text.includes('@') ? `...@${text.split('@').at(-1) ?? ''}` : text;
		throw new BadInput(place, message('server', 'notPostgres', { seen: shown(seen) }));
	}
	return { kind: 'postgres', url: text };
};

const wholeNumber =
	(least: number, most: number) =>
	(text: string, place: string): number => {
		const number = Number(text);
		if (!/^\d+$/.test(text) || number < least || number > most)
			throw new BadInput(place, message('server', 'notWhole', { least, most, seen: shown(text) }));
		return number;
	};

/** An origin: how and where a site is asked for, without a path. */
const origin = (text: string, place: string): string => {
	const url = URL.canParse(text) ? new URL(text) : undefined;
	if (!url || !/^https?:$/.test(url.protocol) || url.origin !== text.replace(/\/$/, ''))
		throw new BadInput(place, message('server', 'notOrigin', { seen: shown(text) }));
	return url.origin;
};

const headerName = (text: string, place: string): string => {
	if (!/^[a-z][a-z\d-]*$/i.test(text))
		throw new BadInput(place, message('server', 'notHeader', { seen: shown(text) }));
	return text.toLowerCase();
};

const UNITS: Readonly<Record<string, number>> = { '': 1, K: 1024, M: 1024 ** 2 };

/** A number of bytes, as the framework also reads it: `512K`, `2M`. */
const bytes = (text: string, place: string): number => {
	const [, number = '', unit = ''] = /^([1-9]\d{0,8})([KM]?)$/.exec(text) ?? [];
	if (number === '') throw new BadInput(place, message('server', 'notBytes', { seen: shown(text) }));
	return Number(number) * (UNITS[unit] ?? 1);
};

const log = (text: string, place: string): Log => {
	const found = LOGS.find((each) => each === text);
	if (!found) throw new BadInput(place, message('server', 'notOneOf', { known: LOGS, seen: shown(text) }));
	return found;
};

const anything = (text: string): string => text;

/** Every setting, an environment variable: how it is read. OPERATING.md says what each does, and what holds without it. */
export const SETTINGS = {
	SQUARE_ACROSS_HOST: anything,
	SQUARE_ACROSS_PORT: wholeNumber(0, HIGHEST_PORT),
	[DATA]: anything,
	DATABASE_URL: readDatabaseUrl,
	SQUARE_ACROSS_LOG: log,
	SQUARE_ACROSS_FRAMED_BY: (text: string, place: string): readonly string[] =>
		text
			.trim()
			.split(/\s+/)
			.map((each) => origin(each, place)),
	ORIGIN: origin,
	ADDRESS_HEADER: headerName,
	XFF_DEPTH: wholeNumber(1, MOST_PROXIES),
	BODY_SIZE_LIMIT: bytes
} as const;

/** What holds where nobody says otherwise; where nothing stands here there is no such thing. */
export const USUAL = {
	SQUARE_ACROSS_HOST: 'localhost',
	SQUARE_ACROSS_LOG: 'faults',
	XFF_DEPTH: '1',
	BODY_SIZE_LIMIT: '512K'
} as const satisfies Partial<Record<keyof typeof SETTINGS, string>>;

/** Variables of the same beginning that are no settings of a server: of the build, and of the tests. */
const OTHERS = ['SQUARE_ACROSS_BUILD', 'SQUARE_ACROSS_CHROMIUM', 'SQUARE_ACROSS_POSTGRES'];

/** The settings, read. */
export interface Settings {
	readonly host: string;
	/** Undefined where none was asked for: then the first free one does. */
	readonly port: number | undefined;
	/** Undefined where the site is to be without classes. */
	readonly place: StorePlace | undefined;
	readonly log: Log;
	/** Which sites may show this one in a frame, as its policy says it. */
	readonly frames: string;
	/** The most that a request may send, in bytes. */
	readonly most: number;
}

type Variables = Readonly<Record<string, string | undefined>>;

const mustBeKnown = (variables: Variables): void => {
	const known = Object.keys(SETTINGS);
	for (const name of Object.keys(variables)) {
		if (!name.startsWith('SQUARE_ACROSS_') || known.includes(name) || OTHERS.includes(name)) continue;
		throw new BadInput(name, message('server', 'noSetting', { near: nearestName(name, known) }));
	}
};

/** Reads all settings, also those that only the framework uses; an empty one is as none. Throws BadInput that names the variable. */
export const readSettings = (variables: Variables): Settings => {
	mustBeKnown(variables);
	const read = <K extends keyof typeof SETTINGS>(name: K): ReturnType<(typeof SETTINGS)[K]> | undefined => {
		const text = variables[name] || (USUAL as Variables)[name];
		// The compiler does not see that one name goes with its own reader.
		return text ? (SETTINGS[name](text, name) as ReturnType<(typeof SETTINGS)[K]>) : undefined;
	};
	for (const name of ['ORIGIN', 'ADDRESS_HEADER', 'XFF_DEPTH'] as const) read(name);
	const folder = read(DATA);
	return {
		host: read('SQUARE_ACROSS_HOST') ?? USUAL.SQUARE_ACROSS_HOST,
		port: read('SQUARE_ACROSS_PORT'),
		place:
			read('DATABASE_URL') ??
			(folder === undefined || folder === NO_DATA ? undefined : { kind: 'folder', folder }),
		log: read('SQUARE_ACROSS_LOG') ?? USUAL.SQUARE_ACROSS_LOG,
		frames: `frame-ancestors ${read('SQUARE_ACROSS_FRAMED_BY')?.join(' ') ?? "'none'"}`,
		most: read('BODY_SIZE_LIMIT') ?? 0
	};
};
