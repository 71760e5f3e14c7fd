/** A name that no other body bears: "Ana", or "Ana 2" where there is an Ana already. */
export const freeName = (wanted: string, taken: readonly string[]): string => {
	const isTaken = (name: string): boolean =>
		taken.some((each) => each.trim().toLowerCase() === name.toLowerCase());
	const base = wanted.trim();
	let name = base;
	for (let number = 2; isTaken(name); number++) name = `${base} ${number}`;
	return name;
};
