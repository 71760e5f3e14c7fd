import { mm, type Mm } from '#shared/units.ts';

/** What is laid between the points; how far a reading of it may be off. */
export const TAPES = ['rule', 'tape'] as const;
export type Tape = (typeof TAPES)[number];

/**
 * How far one reading may be off, as a standard deviation. A rule or steel tape of EU class II may be 0.3 + 0.2 mm off within a metre
 * (directive 2014/32/EU, annex VIII), is read to half a millimetre, and a pencil mark is half a millimetre wide. A tape of the
 * sewing room has no class and lies less flat: twice as much, from memory.
 */
export const READING_ERROR: Readonly<Record<Tape, Mm>> = { rule: mm(0.5), tape: mm(1) };

/** Readings that agree so many times worse than a tape should are said to. */
export const BADLY = 1.5;
