import { PostgresDialect } from 'kysely';
import pg from 'pg';

/** Few are enough: a query takes a millisecond or two, and several programs may share one server. */
const CONNECTIONS = 10;
/** How long a request waits for a connection before it is told that there is none, in milliseconds. */
const WAIT = 5_000;

/** Whole numbers of 64 bits, and sums, as numbers: all of ours are times and counts. */
const types = new pg.TypeOverrides();
types.setTypeParser(pg.types.builtins.INT8, Number);
types.setTypeParser(pg.types.builtins.NUMERIC, Number);

/** A PostgreSQL database by its address. A connection that is lost is made again with the next query. */
export const postgresAt = (url: string): PostgresDialect => {
	const pool = new pg.Pool({
		connectionString: url,
		max: CONNECTIONS,
		connectionTimeoutMillis: WAIT,
		// Connections that nobody uses do not hold up a program that is done.
		allowExitOnIdle: true,
		application_name: 'square-across',
		types
	});
	// One that waits in the pool and is cut off: the next query takes another. Nobody listening would end the program.
	pool.on('error', () => undefined);
	// One that is in use is cut off: whoever uses it is told by its next query.
	pool.on('connect', (client) => client.on('error', () => undefined));
	return new PostgresDialect({ pool });
};
