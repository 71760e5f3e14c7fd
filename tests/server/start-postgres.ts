import type { TestProject } from 'vitest/node';
import { newPostgres } from '../support/postgres.ts';

declare module 'vitest' {
	interface ProvidedContext {
		/** The address of a PostgreSQL server in which tests make databases of their own. */
		readonly postgres: string;
	}
}

/** One PostgreSQL for all tests of the class server, started before the first and ended after the last. */
export default async (project: TestProject): Promise<() => void> => {
	const postgres = await newPostgres();
	project.provide('postgres', postgres.url);
	return () => postgres.remove();
};
