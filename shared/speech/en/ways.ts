import type { Compass } from '../../method.ts';
import { UNWRITTEN } from '../../tolerances.ts';
import { mm, type Mm } from '../../units.ts';
import type { Voice } from '../voice.ts';

/** How a direction is said after a verb: "go straight down". */
export const WAYS: Readonly<Record<Compass, string>> = {
	up: 'straight up',
	down: 'straight down',
	across: 'straight across',
	in: 'straight in toward the centre'
};

/** How far it is from one place to another. */
export interface Offset {
	readonly across: Mm;
	readonly down: Mm;
}

/** The way from one place to another in the drafter's terms: "3.6 cm across and 1.4 cm down"; "on the spot" where there is none. */
export const offsetIn = (v: Voice, { across, down }: Offset): string => {
	const said = (length: Mm, ahead: string, back: string): string[] => {
		const size = mm(Math.abs(length));
		return size < UNWRITTEN ? [] : [`${v.length(size)} ${length > 0 ? ahead : back}`];
	};
	const parts = [...said(across, 'across', 'in'), ...said(down, 'down', 'up')];
	return parts.length > 0 ? v.list(parts) : 'on the spot';
};
