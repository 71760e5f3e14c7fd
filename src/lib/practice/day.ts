import { z } from '#shared/shape.ts';

/** A day as 2026-11-25. The small dialect's own date is a module that practice alone would bring in. */
export const daySchema = z
	.string()
	.check(z.refine((day) => /^\d{4}-\d\d-\d\d$/.test(day) && !Number.isNaN(Date.parse(`${day}T00:00:00Z`))));

const DAY_MS = 24 * 60 * 60 * 1000;

/** Days are counted in universal time, so that a night with an hour more or less is one day like any other. */
export const dayNumber = (day: string): number => Date.parse(`${day}T00:00:00Z`) / DAY_MS;

/** The day of a number of days. */
export const dayOf = (number: number): string => new Date(number * DAY_MS).toISOString().slice(0, 10);
