import type { Compass } from '../../method.ts';
import { UNWRITTEN } from '../../tolerances.ts';
import { mm, type Mm } from '../../units.ts';
import type { offsetIn as english } from '../en/ways.ts';

/** How a direction is said after a verb: "ve en línea recta hacia abajo". */
export const WAYS: Readonly<Record<Compass, string>> = {
	up: 'en línea recta hacia arriba',
	down: 'en línea recta hacia abajo',
	across: 'en línea recta hacia fuera',
	in: 'en línea recta hacia dentro'
};

/** The way from one place to another: "3,6 cm hacia fuera y 1,4 cm hacia abajo"; "en el mismo sitio" where there is none. */
export const offsetIn: typeof english = (v, { across, down }) => {
	const said = (length: Mm, ahead: string, back: string): string[] => {
		const size = mm(Math.abs(length));
		return size < UNWRITTEN ? [] : [`${v.length(size)} ${length > 0 ? ahead : back}`];
	};
	const parts = [
		...said(across, 'hacia fuera', 'hacia dentro'),
		...said(down, 'hacia abajo', 'hacia arriba')
	];
	return parts.length > 0 ? v.list(parts) : 'en el mismo sitio';
};
