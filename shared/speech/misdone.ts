/** One thing that went wrong: what was done, to follow "you" or "they", and the rule that it is held against. */
export interface Misdone {
	readonly did: string;
	readonly rule?: string;
}

/** What was done, and its rule where there is one to say. */
export const did = (did: string, rule?: string): Misdone => (rule === undefined ? { did } : { did, rule });

/** The sentence of whoever did it; `who` is as a language begins it: "You", «Has». */
export const misdoneOf = (who: string, { did, rule }: Misdone): string =>
	rule === undefined ? `${who} ${did}.` : `${who} ${did}; ${rule}.`;
