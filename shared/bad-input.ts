/**
 * Input that a person can put right: `place` is where it stands (a file and field, a step), the
 * message names the rule and the value seen. It is never used for a fault of the program's own.
 */
export class BadInput extends Error {
	constructor(
		readonly place: string,
		readonly rule: string
	) {
		super(`${place}: ${rule}`);
		this.name = 'BadInput';
	}
}

/** JSON has no word for what is not a finite number, and would call it null. */
const written = (value: unknown): string | undefined =>
	typeof value === 'number' ? String(value) : JSON.stringify(value);

/** Shows a value in an error message: strings quoted, long ones cut. */
export const shown = (value: unknown): string => {
	const text = typeof value === 'string' ? `"${value}"` : (written(value) ?? String(value));
	return text.length > 60 ? `${text.slice(0, 57)}...` : text;
};
