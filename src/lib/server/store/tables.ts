/**
 * The tables of the store, alike in both databases: texts and whole numbers only, so that rows can be moved and compared
 * byte for byte. Times are milliseconds since 1970; every table has an `id` that its rows are read in order by; ids and
 * hashes are written in small hexadecimal letters, which all databases sort alike.
 */

/** A teacher or a learner. */
export interface PersonRow {
	readonly id: string;
	readonly role: 'teacher' | 'learner';
	readonly name: string;
	/** The name as it is compared: case and spaces forgiven. One teacher has it, or one learner of a class. */
	readonly known_as: string;
	/** A learner's one class; null for a teacher. */
	readonly class: string | null;
	/** Hashed, with the cost and salt that it was hashed with. */
	readonly passphrase: string;
	readonly since: number;
}

export interface ClassRow {
	readonly id: string;
	readonly name: string;
	/** Eight letters; whoever knows them may join until `open_until`. */
	readonly code: string;
	readonly open_until: number;
	readonly since: number;
}

/** That a teacher teaches a class. */
export interface TeachingRow {
	readonly id: string;
	readonly class: string;
	readonly teacher: string;
}

/** Somebody who is signed in; the id is the hash of what their browser keeps. */
export interface SessionRow {
	readonly id: string;
	readonly person: string;
	readonly until: number;
}

/** A link that makes one teacher, or lets one in again, once; the id is the hash of what stands in it. */
export interface InvitationRow {
	readonly id: string;
	/** The teacher who invites; null for the first one of all. */
	readonly by: string | null;
	/** The teacher who chooses a new passphrase by it; null where it makes a new one. */
	readonly person: string | null;
	readonly until: number;
}

/** A try that counts against a limit: at a passphrase, at a class code. Forgotten after a while, and never copied. */
export interface TryRow {
	readonly id: string;
	/** What is limited, and for whom: hashed, since it may hold an address. */
	readonly of: string;
	readonly at: number;
}

/** A learning platform from which people come: what its keeper says of it. */
export interface PlatformRow {
	readonly id: string;
	/** What it calls itself, exactly. */
	readonly issuer: string;
	/** What it calls us, and the place there that this row is about. */
	readonly client: string;
	readonly deployment: string;
	/** Where it is asked who somebody is, and where its keys stand. */
	readonly authorize: string;
	readonly keys: string;
	/** Where leave is asked for to send marks; null where none are sent. */
	readonly token: string | null;
	/** The teacher who entered it. */
	readonly by: string | null;
	readonly since: number;
}

/** Somebody on their way from a platform; the id is the hash of a secret that is good once. Forgotten after a while, and never copied. */
export interface ArrivalRow {
	readonly id: string;
	readonly platform: string;
	/** The hash of the word that the platform's answer must hold; null once that was read. */
	readonly nonce: string | null;
	/** Who it turned out to be; null before. */
	readonly person: string | null;
	/** The path that they go to; null where they do not know yet, or choose. */
	readonly to: string | null;
	/** What they are to choose, as JSON; null where they do not. */
	readonly choice: string | null;
	readonly until: number;
}

/** A key by which what is said to platforms is signed. */
export interface SigningKeyRow {
	readonly id: string;
	/** The private key, as JSON (JWK). */
	readonly secret: string;
	readonly since: number;
}

/** That a class is a platform's course; the id is a hash of platform and course. */
export interface CourseRow {
	readonly id: string;
	readonly class: string;
}

/** That a person comes from a platform; the id is a hash of platform, the person there, and the class. */
export interface ComerRow {
	readonly id: string;
	readonly person: string;
}

/** What a teacher sets a class. */
export interface AssignmentRow {
	readonly id: string;
	readonly class: string;
	readonly name: string;
	/** The whole of it, as JSON: src/lib/server/handing/task.ts. */
	readonly task: string;
	readonly since: number;
}

/** One learner's work on one assignment; where it may be done several times, one of these. */
export interface AttemptRow {
	readonly id: string;
	readonly assignment: string;
	readonly learner: string;
	/** Which of theirs, from 1. */
	readonly number: number;
	/** The body that is drafted for, as JSON; null until a learner has agreed to hand in for their own. */
	readonly body: string | null;
	/** The exercises that were drawn for it, as JSON; null where there are none, or it was not opened. */
	readonly exercises: string | null;
	/** Events so far: the number of the last receipt. */
	readonly received: number;
	/** More time than the others have, in milliseconds. */
	readonly extra: number;
	/** When the learner handed it in: an exam, or by beginning anew; null before. */
	readonly ended: number | null;
	readonly since: number;
}

/** One thing that a learner did, never changed; the id is its key: learner, browser, page, number. */
export interface EventRow {
	readonly id: string;
	readonly attempt: string;
	/** The receipt's number. */
	readonly number: number;
	readonly at: number;
	/** As JSON: shared/hand-in.ts. */
	readonly done: string;
}

/** An event that came under the key of another one; the id is the key and a hash. */
export interface ConflictRow {
	readonly id: string;
	readonly attempt: string;
	readonly at: number;
	readonly done: string;
}

/** What the judge said of an attempt as it stood at one receipt. What a screen shows and what counts are read from here. */
export interface VerdictRow {
	readonly id: string;
	readonly attempt: string;
	/** The receipt up to which it was judged. */
	readonly upto: number;
	/** Until when what came in counts; null where there is no end. */
	readonly until: number | null;
	/** Hashes of the program that judged, and of the methods by which. */
	readonly engine: string;
	readonly methods: string;
	/** Hundredths of a step. */
	readonly mark: number;
	readonly report: string;
	readonly at: number;
}

/** A column of a platform's gradebook, for an assignment that a link there leads to; the id is a hash of platform, link and assignment. */
export interface MarkColumnRow {
	readonly id: string;
	readonly platform: string;
	readonly assignment: string;
	/** The link's id at the platform. */
	readonly link: string;
	/** Where columns are looked for and made; null where the platform does not say. */
	readonly columns: string | null;
	/** The column's own address; null until it is found or made. */
	readonly address: string | null;
	/** What the platform allows, parted by spaces. */
	readonly scopes: string;
	/** Until when one process looks for it, or makes it. */
	readonly held_until: number;
}

/** One learner's mark on its way into a column: the last one only; the id is a hash of both. */
export interface SendingRow {
	readonly id: string;
	readonly mark_column: string;
	readonly person: string;
	/** Who it is, to the platform. */
	readonly subject: string;
	/** In which language the mark is said. */
	readonly language: string;
	/** The receipt up to which it was looked at, when, and when it is to be looked at again in any case. */
	readonly upto: number;
	readonly looked: number;
	readonly look_at: number | null;
	/** What is to arrive, as JSON: src/lib/server/gradebook/score.ts; null before there is anything. */
	readonly score: string | null;
	readonly state: 'nothing' | 'waiting' | 'sent' | 'refused';
	/** Tries since it changed, and when the next one is due. */
	readonly tries: number;
	readonly due: number;
	/** Which process sends it just now, and until when that is so. */
	readonly holder: string;
	readonly held_until: number;
	/** The time that it was last sent with: each later than the one before. */
	readonly stamp: number;
	/** What came of the last try, with the platform's status where it answered. */
	readonly outcome: string | null;
	readonly status: number | null;
}

/** A mark that a teacher gave a step in the place of the judge's, which stays beside it. Never changed but to be taken back. */
export interface OverrideRow {
	readonly id: string;
	readonly attempt: string;
	readonly method: string;
	readonly step: string;
	/** Hundredths of a step. */
	readonly mark: number;
	readonly reason: string;
	/** The teacher; null for one who has gone. */
	readonly by: string | null;
	readonly at: number;
	/** When it was taken back; null while it holds. */
	readonly back: number | null;
}

/** What a teacher wrote to a learner at one step. */
export interface CommentRow {
	readonly id: string;
	readonly attempt: string;
	readonly method: string;
	readonly step: string;
	readonly text: string;
	/** The teacher; null for one who has gone. */
	readonly by: string | null;
	readonly at: number;
}

/** A step of the schema that was taken. */
export interface MigrationRow {
	readonly number: number;
	readonly brings: string;
	readonly at: number;
}

export interface Tables {
	readonly migrations: MigrationRow;
	readonly people: PersonRow;
	readonly classes: ClassRow;
	readonly teaching: TeachingRow;
	readonly sessions: SessionRow;
	readonly invitations: InvitationRow;
	readonly tries: TryRow;
	readonly platforms: PlatformRow;
	readonly arrivals: ArrivalRow;
	readonly signing_keys: SigningKeyRow;
	readonly courses: CourseRow;
	readonly comers: ComerRow;
	readonly assignments: AssignmentRow;
	readonly attempts: AttemptRow;
	readonly events: EventRow;
	readonly conflicts: ConflictRow;
	readonly verdicts: VerdictRow;
	readonly mark_columns: MarkColumnRow;
	readonly sendings: SendingRow;
	readonly overrides: OverrideRow;
	readonly comments: CommentRow;
}

/** What is copied when the store is backed up or moved; what a row refers to stands before it. */
export const COPIED = [
	'classes',
	'people',
	'teaching',
	'sessions',
	'invitations',
	'platforms',
	'signing_keys',
	'courses',
	'comers',
	'assignments',
	'attempts',
	'events',
	'conflicts',
	'verdicts',
	'mark_columns',
	'sendings',
	'overrides',
	'comments'
] as const satisfies readonly (keyof Tables)[];
