/** What teachers say of learners' work beside the judge: marks of their own, and words. */

/** A mark that a teacher gave a step in the judge's place. */
export interface Override {
	readonly id: string;
	readonly method: string;
	readonly step: string;
	/** A share of 1, as the judge's. */
	readonly mark: number;
	readonly reason: string;
	/** The teacher's name; null for one who has gone. */
	readonly by: string | null;
	readonly at: number;
	/** When it was taken back; null while it holds. */
	readonly back: number | null;
}

/** What a teacher wrote at a step. */
export interface Comment {
	readonly id: string;
	readonly method: string;
	readonly step: string;
	readonly text: string;
	/** The teacher's name; null for one who has gone. */
	readonly by: string | null;
	readonly at: number;
}
