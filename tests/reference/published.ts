import checks from '#shared/reference/geometry-checks.json' with { type: 'json' };

/** Check values from outside this program; shared/reference/README.md names the sources. */
export const PUBLISHED = checks;

/** The named numbers of a key such as `b=10,h=2`. */
export const numbersOf = (key: string): Readonly<Record<string, number>> =>
	Object.fromEntries(
		key.split(',').map((part) => {
			const [name = '', value] = part.split('=');
			return [name, Number(value)];
		})
	);
