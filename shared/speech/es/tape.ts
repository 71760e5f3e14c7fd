import type { tape as english } from '../en/tape.ts';

/** Comprobar con cinta un trazado en papel. */
export const tape: typeof english = (v) => {
	const pair: ReturnType<typeof english>['pair'] = ({ from, to }) => `${from}–${to}`;
	type Misread = Parameters<ReturnType<typeof english>['misread']>[0]['of'][number];
	const told = ({ read, told: right, ...of }: Misread): string =>
		`${pair(of)} (has leído ${v.length(read)}, las demás dicen ${v.length(right)})`;
	return {
		pair,
		about: ({ takings, points, least }) =>
			`Extiende el papel bien plano y mide en línea recta de marca a marca. Con ${v.number(takings)} distancias se encuentran los ${v.number(points)} puntos: ` +
			`${v.number(least)} serían las mínimas, y las demás muestran una lectura equivocada y de qué lado está un punto. Puedes parar donde quieras: se dice lo que se haya encontrado.`,
		cannot:
			'Este trazado no se puede medir con cinta: sus puntos están demasiado juntos, o demasiado lejos unos de otros.',
		tooNear: ({ points }) =>
			`Demasiado cerca de otro punto para una cinta, y por eso no se miden: ${v.list(points)}.`,
		with: 'Medido con',
		tapes: { rule: 'una regla o una cinta de acero', tape: 'una cinta de costura' },
		aboutTape: ({ error }) =>
			`Se da por hecho que una lectura se desvía como mucho ${v.small(error) ?? ''}, dos veces de cada tres. La cinta de tela se estira: compara antes la tuya con una regla.`,
		side: ({ top, below, point }) => `Gira el papel para que ${top} quede encima de ${below}. ${point} está`,
		sides: { right: 'a la derecha', left: 'a la izquierda' },
		mirrored:
			'El tuyo es la imagen en espejo del trazado calculado: sirve para la otra mitad del cuerpo. Se compara dándole la vuelta.',
		twice:
			'Una distancia se puede medir dos veces, con un punto y coma entre las lecturas. Cuenta su media, y a dos que concuerdan se les cree.',
		order: 'Las distancias, en orden',
		field: ({ from, to, number }) => `${v.number(number)}: de ${from} a ${to}, en ${v.unit}`,
		fieldAgain: ({ from, to, number }) => `${v.number(number)}: de ${from} a ${to} otra vez, en ${v.unit}`,
		picture: 'El trazado con las distancias; la que toca está marcada más fuerte',
		progress: ({ read, takings, found, points }) =>
			`${v.number(read)} de ${v.number(takings)} distancias leídas; ${v.number(found)} de ${v.number(points)} puntos encontrados.`,
		begin: ({ from }) => `Todavía no se ha encontrado nada: empieza por las distancias de ${from}, en orden.`,
		misses: ({ by }) => `Las lecturas concuerdan con ${v.small(by) ?? 'un pelo'} de diferencia.`,
		worse: ({ by }) =>
			`Las lecturas discrepan en ${v.small(by) ?? 'un pelo'}, más de lo que debería una cinta así. El error propio de cada punto se toma mayor en la misma medida. ¿Está plano el papel, y recta la cinta?`,
		misread: ({ of: [only, ...others] }) => {
			if (!only) return '';
			return others.length === 0
				? `Una lectura no concuerda con las demás: ${told(only)}. Mídela otra vez; hasta entonces no cuenta.`
				: `Una de estas lecturas no concuerda con las demás: ${v.list([only, ...others].map(told))}. Mídelas otra vez; hasta entonces no cuentan.`;
		},
		perhaps: ({ of, points }) =>
			`${points.length === 0 ? 'Hay puntos que quedan' : `${v.list(points)} ${points.length === 1 ? 'queda' : 'quedan'}`} muy lejos. Si en tu papel no es así, ${of.length === 1 ? 'esta lectura es errónea' : 'una de estas lecturas es errónea'}: ${v.list(of.map(told))}. Mídela otra vez: a dos lecturas que concuerdan se les cree.`,
		apart: ({ by }) =>
			`las lecturas difieren en ${v.length(by)}, más de lo que explica una cinta así: mide otra vez`,
		again: 'mídela otra vez',
		clear: 'Borrar todas las lecturas',
		reallyClear: '¿De verdad?',
		keepsHere: 'Lo que escribes se guarda en este navegador.'
	};
};
