import { sql, type ColumnDefinitionBuilder, type Kysely } from 'kysely';
import type { StorePlace } from '../settings.ts';

/** One step forward of the schema. It is never changed once it has been used: what is to be different is another step. */
interface Migration {
	/** What it brings, for whoever looks at the list of a database. */
	readonly brings: string;
	readonly up: (db: Kysely<unknown>, kind: StorePlace['kind']) => Promise<void>;
}

type Column = (column: ColumnDefinitionBuilder) => ColumnDefinitionBuilder;

/** A table with the id that every table has, to be read in order by. */
const table = (db: Kysely<unknown>, name: string) =>
	db.schema.createTable(name).addColumn('id', 'text', (column) => column.primaryKey());

const given: Column = (column) => column.notNull();
/** The row goes when the other one does. */
const partOf =
	(other: string): Column =>
	(column) =>
		column.references(`${other}.id`).onDelete('cascade');
const givenPartOf =
	(other: string): Column =>
	(column) =>
		partOf(other)(column).notNull();

const people: Migration = {
	brings: 'people, classes, sessions',
	up: async (db) => {
		const { schema } = db;
		await table(db, 'classes')
			.addColumn('name', 'text', given)
			.addColumn('code', 'text', (column) => column.notNull().unique())
			.addColumn('open_until', 'bigint', given)
			.addColumn('since', 'bigint', given)
			.execute();
		await table(db, 'people')
			.addColumn('role', 'text', given)
			.addColumn('name', 'text', given)
			.addColumn('known_as', 'text', given)
			.addColumn('class', 'text', partOf('classes'))
			.addColumn('passphrase', 'text', given)
			.addColumn('since', 'bigint', given)
			.execute();
		// Null is no value to an index: teachers need one of their own.
		await schema
			.createIndex('learners_by_name')
			.unique()
			.on('people')
			.columns(['class', 'known_as'])
			.execute();
		const teachers = schema.createIndex('teachers_by_name').unique().on('people').column('known_as');
		await teachers.where(sql.ref('class'), 'is', null).execute();
		await table(db, 'teaching')
			.addColumn('class', 'text', givenPartOf('classes'))
			.addColumn('teacher', 'text', givenPartOf('people'))
			.addUniqueConstraint('teaching_once', ['class', 'teacher'])
			.execute();
		await schema.createIndex('teaching_by_teacher').on('teaching').column('teacher').execute();
		await table(db, 'sessions')
			.addColumn('person', 'text', givenPartOf('people'))
			.addColumn('until', 'bigint', given)
			.execute();
		await schema.createIndex('sessions_by_person').on('sessions').column('person').execute();
		await table(db, 'invitations')
			.addColumn('by', 'text', partOf('people'))
			.addColumn('until', 'bigint', given)
			.execute();
		await table(db, 'tries').addColumn('of', 'text', given).addColumn('at', 'bigint', given).execute();
		await schema.createIndex('tries_by_what').on('tries').columns(['of', 'at']).execute();
	}
};

const platforms: Migration = {
	brings: 'learning platforms that people come from',
	up: async (db) => {
		await table(db, 'platforms')
			.addColumn('issuer', 'text', given)
			.addColumn('client', 'text', given)
			.addColumn('deployment', 'text', given)
			.addColumn('authorize', 'text', given)
			.addColumn('keys', 'text', given)
			.addColumn('by', 'text', (column) => column.references('people.id').onDelete('set null'))
			.addColumn('since', 'bigint', given)
			.addUniqueConstraint('platform_once', ['issuer', 'client', 'deployment'])
			.execute();
		await table(db, 'arrivals')
			.addColumn('platform', 'text', givenPartOf('platforms'))
			.addColumn('nonce', 'text')
			.addColumn('person', 'text', partOf('people'))
			.addColumn('until', 'bigint', given)
			.execute();
		await table(db, 'courses').addColumn('class', 'text', givenPartOf('classes')).execute();
		await table(db, 'comers').addColumn('person', 'text', givenPartOf('people')).execute();
	}
};

const handing: Migration = {
	brings: 'assignments, and what is handed in for them',
	up: async (db) => {
		await table(db, 'assignments')
			.addColumn('class', 'text', givenPartOf('classes'))
			.addColumn('name', 'text', given)
			.addColumn('task', 'text', given)
			.addColumn('since', 'bigint', given)
			.execute();
		await db.schema.createIndex('assignments_by_class').on('assignments').column('class').execute();
		await table(db, 'attempts')
			.addColumn('assignment', 'text', givenPartOf('assignments'))
			.addColumn('learner', 'text', givenPartOf('people'))
			.addColumn('body', 'text')
			.addColumn('received', 'bigint', given)
			.addColumn('extra', 'bigint', given)
			.addColumn('since', 'bigint', given)
			.addUniqueConstraint('attempt_once', ['assignment', 'learner'])
			.execute();
		await db.schema.createIndex('attempts_by_learner').on('attempts').column('learner').execute();
		await table(db, 'events')
			.addColumn('attempt', 'text', givenPartOf('attempts'))
			.addColumn('number', 'bigint', given)
			.addColumn('at', 'bigint', given)
			.addColumn('done', 'text', given)
			.addUniqueConstraint('receipt_once', ['attempt', 'number'])
			.execute();
		await table(db, 'conflicts')
			.addColumn('attempt', 'text', givenPartOf('attempts'))
			.addColumn('at', 'bigint', given)
			.addColumn('done', 'text', given)
			.execute();
		await db.schema.createIndex('conflicts_by_attempt').on('conflicts').column('attempt').execute();
		await table(db, 'verdicts')
			.addColumn('attempt', 'text', givenPartOf('attempts'))
			.addColumn('upto', 'bigint', given)
			.addColumn('until', 'bigint')
			.addColumn('engine', 'text', given)
			.addColumn('methods', 'text', given)
			.addColumn('mark', 'bigint', given)
			.addColumn('report', 'text', given)
			.addColumn('at', 'bigint', given)
			.execute();
		await db.schema.createIndex('verdicts_by_attempt').on('verdicts').columns(['attempt', 'upto']).execute();
	}
};

const choosingLinks: Migration = {
	brings: 'what somebody from a platform goes to, and chooses',
	up: async (db) => {
		await db.schema.alterTable('arrivals').addColumn('to', 'text').execute();
		await db.schema.alterTable('arrivals').addColumn('choice', 'text').execute();
		await table(db, 'signing_keys')
			.addColumn('secret', 'text', given)
			.addColumn('since', 'bigint', given)
			.execute();
	}
};

const gradebook: Migration = {
	brings: 'marks on their way to learning platforms',
	up: async (db) => {
		await db.schema.alterTable('platforms').addColumn('token', 'text').execute();
		await table(db, 'mark_columns')
			.addColumn('platform', 'text', givenPartOf('platforms'))
			.addColumn('assignment', 'text', givenPartOf('assignments'))
			.addColumn('link', 'text', given)
			.addColumn('columns', 'text')
			.addColumn('address', 'text')
			.addColumn('scopes', 'text', given)
			.addColumn('held_until', 'bigint', given)
			.execute();
		await db.schema.createIndex('columns_by_assignment').on('mark_columns').column('assignment').execute();
		await table(db, 'sendings')
			.addColumn('mark_column', 'text', givenPartOf('mark_columns'))
			.addColumn('person', 'text', givenPartOf('people'))
			.addColumn('subject', 'text', given)
			.addColumn('language', 'text', given)
			.addColumn('upto', 'bigint', given)
			.addColumn('looked', 'bigint', given)
			.addColumn('look_at', 'bigint')
			.addColumn('score', 'text')
			.addColumn('state', 'text', given)
			.addColumn('tries', 'bigint', given)
			.addColumn('due', 'bigint', given)
			.addColumn('holder', 'text', given)
			.addColumn('held_until', 'bigint', given)
			.addColumn('stamp', 'bigint', given)
			.addColumn('outcome', 'text')
			.addColumn('status', 'bigint')
			.execute();
		await db.schema.createIndex('sendings_by_column').on('sendings').column('mark_column').execute();
		await db.schema.createIndex('sendings_by_person').on('sendings').column('person').execute();
		await db.schema.createIndex('sendings_due').on('sendings').columns(['state', 'due']).execute();
	}
};

/** A table of what a teacher says of one step of an attempt. */
const saidOf = (db: Kysely<unknown>, name: string) =>
	table(db, name)
		.addColumn('attempt', 'text', givenPartOf('attempts'))
		.addColumn('method', 'text', given)
		.addColumn('step', 'text', given)
		.addColumn('by', 'text', (column) => column.references('people.id').onDelete('set null'))
		.addColumn('at', 'bigint', given);

const remarks: Migration = {
	brings: 'marks that teachers gave, and what they wrote beside steps',
	up: async (db) => {
		await saidOf(db, 'overrides')
			.addColumn('mark', 'bigint', given)
			.addColumn('reason', 'text', given)
			.addColumn('back', 'bigint')
			.execute();
		await saidOf(db, 'comments').addColumn('text', 'text', given).execute();
		for (const name of ['overrides', 'comments'])
			await db.schema.createIndex(`${name}_by_attempt`).on(name).column('attempt').execute();
	}
};

const exams: Migration = {
	brings: 'that a learner hands in an exam, and links for teachers who lost their passphrase',
	up: async (db) => {
		await db.schema.alterTable('attempts').addColumn('ended', 'bigint').execute();
		await db.schema.alterTable('invitations').addColumn('person', 'text', partOf('people')).execute();
	}
};

/** SQLite changes no constraint: the table is made anew. What refers to it does so by its name; migrate.ts sees that nothing is taken with the old one. */
const attemptsAnew = async (db: Kysely<unknown>): Promise<void> => {
	await table(db, 'attempts_anew')
		.addColumn('assignment', 'text', givenPartOf('assignments'))
		.addColumn('learner', 'text', givenPartOf('people'))
		.addColumn('body', 'text')
		.addColumn('received', 'bigint', given)
		.addColumn('extra', 'bigint', given)
		.addColumn('since', 'bigint', given)
		.addColumn('ended', 'bigint')
		.addColumn('exercises', 'text')
		.addColumn('number', 'bigint', given)
		.addUniqueConstraint('attempt_once', ['assignment', 'learner', 'number'])
		.execute();
	const columns = sql.raw('id, assignment, learner, body, received, extra, since, ended, exercises, number');
	await sql`insert into attempts_anew (${columns}) select ${columns} from attempts`.execute(db);
	await db.schema.dropTable('attempts').execute();
	await db.schema.alterTable('attempts_anew').renameTo('attempts').execute();
	await db.schema.createIndex('attempts_by_learner').on('attempts').column('learner').execute();
};

const several: Migration = {
	brings: 'exercises that are set, and several attempts of one learner',
	up: async (db, kind) => {
		const { schema } = db;
		await schema.alterTable('attempts').addColumn('exercises', 'text').execute();
		await schema
			.alterTable('attempts')
			.addColumn('number', 'bigint', (column) => column.notNull().defaultTo(1))
			.execute();
		if (kind === 'folder') return attemptsAnew(db);
		await schema.alterTable('attempts').dropConstraint('attempt_once').execute();
		await schema
			.alterTable('attempts')
			.addUniqueConstraint('attempt_once', ['assignment', 'learner', 'number'])
			.execute();
	}
};

/** All steps, in order; the first is number 1. */
export const MIGRATIONS: readonly Migration[] = [
	people,
	platforms,
	handing,
	choosingLinks,
	gradebook,
	remarks,
	exams,
	several
];
