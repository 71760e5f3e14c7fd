/** A name of a point or line of another method's draft has that method's short name before it: `back.shoulder`. */
export const isBorrowed = (name: string): boolean => name.includes('.');

/** Points have capital letters, lines small ones. */
export const isPointName = (name: string): boolean => /^[A-Z]/.test(name.split('.').at(-1) ?? name);
