import { UNSPOKEN } from '../../tolerances.ts';
import { mm, radians, type Mm, type Radians } from '../../units.ts';
import type { Noun } from '../noun.ts';
import type { Off } from '../en/slight.ts';
import type { Mark, verdicts as english } from '../en/verdicts.ts';
import { el, El } from './grammar.ts';
import { partOf } from './nouns.ts';
import { overIn, smallIn, wayOff } from './slight.ts';

const SUBJECTS = { place: 'Está', start: 'Su primer extremo está', end: 'Su último extremo está' } as const;
const UPRIGHT = { up: 'la vertical hacia arriba', down: 'la vertical hacia abajo' } as const;

/** «K», «K de la espalda». */
export const markNoun = ({ noun, of }: Mark): Noun => (of ? partOf(noun, of) : noun);

/** Lo que dice el corrector de lo que se ha colocado. */
export const verdicts: typeof english = (v) => {
	const small = (length: Mm): string => smallIn(v, length);
	const over = (size: Mm, limit: Mm | undefined): string => overIn(v, size, limit);
	const overDegrees = (angle: Radians, limit: Radians): string =>
		angle > limit && v.degrees(angle) === v.degrees(limit)
			? `algo más de ${v.degrees(angle)}`
			: v.degrees(angle);
	const way = (off: Off): string => wayOff(v, off);
	return {
		small,
		way,
		right: ({ step, nearness }) => `${El(step)} está bien. ${nearness}`,
		wrong: ({ step }) => `${El(step)} no está bien todavía.`,
		unfinished: ({ step }) => `Todavía no has colocado nada para ${el(step)}.`,
		notValid: 'Esa entrada no se puede usar; no se cuenta nada.',
		excused: ({ step }) => `${El(step)} no se juzga todavía, y no cuesta nada.`,
		putFirst: ({ first }) =>
			`Corrige antes ${v.list(first.map((mark) => el(markNoun(mark))))}: tal como está, esto no se puede trazar.`,
		ourFault: 'El programa no ha podido corregir esto. La culpa es nuestra, y no se cuenta nada.',
		because: ({ because }) => `${because}.`,
		spotOn: 'Exacto.',
		within: ({ worst }) => `A ${small(worst)} como mucho.`,
		place: ({ aspect, across, down, tolerance }) =>
			`${SUBJECTS[aspect]} ${way({ across, down, limit: tolerance })}.`,
		turned: ({ drawn, wanted }) => {
			const [size, rule] = [v.degrees(radians(Math.abs(drawn))), v.degrees(radians(Math.abs(wanted)))];
			const sense = (angle: Radians): string => `en sentido ${angle > 0 ? 'horario' : 'antihorario'}`;
			if (drawn === 0) return `No está girado; la regla lo gira ${rule} ${sense(wanted)}.`;
			return `Está girado ${size} ${sense(drawn)}; la regla lo gira ${rule}${drawn * wanted < 0 ? ' en sentido contrario' : ''}.`;
		},
		handle: ({ point, leaving, across, down }) =>
			`El tirador que ${leaving ? 'sale de' : 'llega a'} ${point} está ${way({ across, down, limit: undefined })}.`,
		direction: ({ way: side, point, wanted, square, turned, tolerance }) => {
			const verb = side === 'leaving' ? 'Sale de' : 'Llega a';
			const upright = wanted === 'down' || wanted === 'up' ? UPRIGHT[wanted] : undefined;
			const what = upright ?? (square ? 'la escuadra' : 'su dirección');
			return `${verb} ${point} con ${overDegrees(turned, tolerance)} de desvío respecto a ${what}; ahí se admiten hasta ${v.degrees(tolerance)}.`;
		},
		course: ({ across, down, away, tolerance }) => {
			const bothWays = Math.min(Math.abs(across), Math.abs(down)) >= UNSPOKEN;
			const together = bothWays ? `, en total ${over(away, tolerance)}` : '';
			return `En el peor punto pasa ${way({ across, down, limit: bothWays ? undefined : tolerance })}${together}; se admiten hasta ${small(tolerance)}.`;
		},
		length: ({ by, tolerance }) =>
			`Mide ${over(mm(Math.abs(by)), tolerance)} de ${by > 0 ? 'más' : 'menos'}; se admiten hasta ${small(tolerance)}.`,
		reach: ({ by, tolerance }) =>
			by > 0
				? `Se pasa ${over(by, tolerance)} de donde lo lleva la regla.`
				: `Termina ${over(mm(-by), tolerance)} antes de donde debe llegar.`,
		strays: ({ away }) => `se desvía ${small(away)}`,
		differs: ({ by }) => `${small(mm(Math.abs(by)))} de ${by > 0 ? 'más' : 'menos'}`,
		noDifference: 'sin diferencia apreciable',
		noPlacement: ({ where }) => ['esto no es una colocación', where].filter(Boolean).join(': '),
		asksForPoint: 'este paso pide un punto, y se ha trazado una línea',
		asksForLine: 'este paso pide una línea, y se ha colocado un punto',
		notJoined: 'los tramos de la línea no se unen',
		noLength: 'la línea empieza y termina en el mismo sitio',
		misread: ({ place, rule }) => `${place}: ${rule}`,
		fault: ({ words }) => words
	};
};
