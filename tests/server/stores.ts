import { mkdtempSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import pg from 'pg';
import { afterAll, describe, inject } from 'vitest';
import type { StorePlace } from '#server/settings.ts';

/** Both databases: whatever the class server does is tested on each. */
const KINDS = ['folder', 'postgres'] as const;

let made = 0;

/** Runs one command on the PostgreSQL server itself. */
const onServer = async (command: string): Promise<void> => {
	const client = new pg.Client({ connectionString: inject('postgres') });
	await client.connect();
	await client.query(command);
	await client.end();
};

/** Makes an empty place for a store, and a way to take it away. */
export const newPlace = async (
	kind: StorePlace['kind']
): Promise<{ readonly place: StorePlace; readonly remove: () => Promise<void> }> => {
	if (kind === 'folder') {
		const folder = mkdtempSync(path.join(tmpdir(), 'square-across-store-'));
		return {
			place: { kind, folder },
			remove: () => rm(folder, { recursive: true, force: true })
		};
	}
	made += 1;
	const name = `t${process.pid}_${Date.now()}_${made}`;
	await onServer(`create database ${name}`);
	const url = new URL(inject('postgres'));
	url.pathname = `/${name}`;
	return {
		place: { kind, url: url.href },
		remove: () => onServer(`drop database ${name} with (force)`)
	};
};

/** The same tests on both databases; `newStorePlace` gives an empty place, which is taken away at the end. */
export const onBoth = (
	name: string,
	tests: (newStorePlace: () => Promise<StorePlace>, kind: StorePlace['kind']) => void
): void => {
	describe.each(KINDS)(`${name}, in a %s`, (kind) => {
		const removes: (() => Promise<void>)[] = [];
		afterAll(async () => {
			for (const remove of removes) await remove();
		});
		tests(async () => {
			const { place, remove } = await newPlace(kind);
			removes.push(remove);
			return place;
		}, kind);
	});
};
