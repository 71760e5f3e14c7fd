import type { SaidHeading, steps as english } from '../en/steps.ts';
import { capital, del, El, el } from './grammar.ts';
import { farDown, farOut } from './slight.ts';
import { offsetIn, WAYS } from './ways.ts';

const headingWords = (heading: SaidHeading): string => {
	if (heading === 'chord') return 'directa hacia el otro extremo';
	if (heading === 'join') return 'sin quiebro al pasar por la unión';
	if (typeof heading === 'string') return WAYS[heading];
	if ('sewn' in heading) return `en la dirección ${del(heading.sewn)} con la pinza cosida`;
	return 'along' in heading
		? `en la dirección ${del(heading.along)}`
		: `a escuadra con ${el(heading.squareTo)}`;
};

type AlongWhat = Parameters<ReturnType<typeof english>['along']>[0]['on'];
/** After "desde" or "de": a point, or an end of a line. */
const startWords = (on: AlongWhat): string =>
	'line' in on ? `el ${on.end === 'start' ? 'principio' : 'final'} ${del(on.line)}` : on.from;
const fromStart = (on: AlongWhat): string =>
	'line' in on ? `Del ${on.end === 'start' ? 'principio' : 'final'} ${del(on.line)}` : `De ${on.from}`;
const alongWords = (on: AlongWhat): string => {
	if ('line' in on) return `a lo largo ${del(on.line)}`;
	return 'as' in on ? `en la misma dirección que ${el(on.as)}` : `en línea recta hacia ${on.toward}`;
};

const SHARES: Readonly<Record<string, string>> = {
	'0.5': 'la mitad del camino',
	'0.25': 'la cuarta parte del camino',
	'0.75': 'las tres cuartas partes del camino'
};

const HANDLES = {
	corner:
		'Las líneas a escuadra de los dos extremos se cruzan en una esquina; cada tirador avanza 0,55 del camino desde su extremo hasta esa esquina.',
	thirds: 'Cada tirador está a un tercio de la distancia recta desde su propio extremo.',
	both: 'Donde las líneas a escuadra de dos extremos se cruzan por delante de ambos, cada tirador avanza 0,55 del camino hasta esa esquina; donde no, está a un tercio de la distancia recta desde su extremo.'
};

/** The rule of each kind of step, in its three rungs. */
export const steps: typeof english = (v) => ({
	corner: ({ name }) => ({
		where: `${name} es la esquina de la hoja.`,
		rule: 'Allí se encuentran la línea central y el nivel superior.',
		worked: 'Está a 0 hacia fuera y 0 hacia abajo.'
	}),
	mark: ({ name, from, go, by, arithmetic }) => ({
		where: `Empieza en ${from} y ve ${WAYS[go]}.`,
		rule: `De ${from} a ${name}: ${el(by)}.`,
		worked: `${capital(arithmetic)}, ${WAYS[go]} desde ${from}.`
	}),
	meeting: ({ name, down, across, x, y }) => ({
		where: `Mira en línea recta hacia abajo desde ${down}, y hacia fuera desde ${across}.`,
		rule: `${name} está donde la línea a escuadra que baja desde ${down} se cruza con la línea a escuadra que sale de ${across}.`,
		worked: `${name} queda a ${farOut(v, x)}, como ${down}, y a ${farDown(v, y)}, como ${across}.`
	}),
	division: ({ name, from, to, share, whole, part, offset }) => {
		const way = SHARES[String(share)] ?? `${v.number(share, 3)} del camino`;
		return {
			where: `Mira entre ${from} y ${to}.`,
			rule: `${name} está a ${way} de ${from} a ${to}.`,
			worked: `De ${from} a ${to} hay ${v.length(whole)}; ${way} son ${v.length(part)}: desde ${from}, ${offsetIn(v, offset)}.`
		};
	},
	along: ({ name, on, by, arithmetic }) => {
		const [start, way] = [startWords(on), alongWords(on)];
		return {
			where: `Empieza en ${start} y ve ${way}.`,
			rule: `${fromStart(on)} a ${name}, ${way}: ${el(by)}.`,
			worked: `${capital(arithmetic)}, ${way} desde ${start}.`
		};
	},
	swing: ({ name, from, side, by, level, depth, arithmetic }) => ({
		where: `Gira una longitud alrededor de ${from}, hacia ${side === 'outward' ? 'fuera' : 'dentro'}, hasta que su extremo toque el nivel que está ${v.length(depth)} más abajo.`,
		rule: `De ${from} a ${name}: ${el(by)}; y ${name} está por debajo de la esquina: ${el(level)}.`,
		worked: `Gira ${arithmetic} desde ${from} hasta el nivel que está ${v.length(depth)} por debajo de la esquina.`
	}),
	level: ({ from, by, arithmetic }) => ({
		where: `Empieza en ${from} y ve en línea recta hacia fuera.`,
		rule: `A escuadra hacia fuera desde ${from}: toda la línea a la misma altura, y tan larga como ${el(by)}.`,
		worked: `Hacia fuera desde ${from}, sin subir ni bajar, ${arithmetic}.`
	}),
	straight: ({ first, last, through, length }) => {
		const passing = through.length > 0 ? `, pasando por ${v.list(through)}` : '';
		return {
			where: `Coloca la regla de ${first} a ${last}${passing}.`,
			rule: `Una línea recta de ${first} a ${last}${passing}.`,
			worked: `Elige ${first} y luego ${last}: la línea mide ${v.length(length)}.`
		};
	},
	curve: ({ through, handles, pieces, length }) => {
		const ways = through.map(({ point, heading }) => `${point}, ${headingWords(heading)}`);
		const lie = pieces.map(
			({ from, out, to, into }) =>
				`el que sale de ${from}, ${offsetIn(v, out)}; el que llega a ${to}, ${offsetIn(v, into)} desde allí`
		);
		return {
			where: `Fíjate en el recorrido de la curva: por ${ways.join('; luego por ')}.`,
			rule: HANDLES[handles],
			worked: `Tiradores: ${lie.join('; ')}. La curva mide ${v.length(length)}.`
		};
	},
	turn: ({ name, move, about, until, radius, angle }) => {
		const goal =
			'onto' in until
				? `queda sobre la línea que va de ${about} por ${until.onto}`
				: `se abre lo que mide ${el(until.opening)}`;
		return {
			where: `Pon un alfiler en ${about} y gira la parte que lleva ${move}.`,
			rule: `${name} es donde queda ${move} cuando gira alrededor de ${about} hasta que ${goal}. Sigue tan lejos de ${about} como estaba.`,
			worked: `De ${about} a ${move} hay ${v.length(radius)}, y así se queda; la parte gira ${v.fixed(Math.abs((angle * 180) / Math.PI), 1)}°.`
		};
	},
	spread: ({ name, move, go, by, arithmetic }) => ({
		where: `Desliza la parte que lleva ${move} ${WAYS[go]}, sin girarla.`,
		rule: `${name} es donde queda ${move}: ${el(by)}, ${WAYS[go]}.`,
		worked: `${capital(arithmetic)}, ${WAYS[go]} desde ${move}.`
	}),
	mirror: ({ name, move, fold }) => ({
		where: `Dobla por ${fold} y mira dónde queda ${move}.`,
		rule: `${name} está tan lejos más allá del doblez ${fold} como ${move} antes de él, en una línea a escuadra con el doblez.`,
		worked: `A escuadra desde ${move} hasta el doblez, y otro tanto más allá.`
	}),
	folded: ({ name, point, about, from, onto, radius, angle }) => ({
		where: `Cierra la pinza doblándola en ${about} y mira dónde queda ${point}.`,
		rule: `${name} es donde queda ${point} mientras ${from} está sobre ${onto}: todo lo que hay debajo de la pinza ha girado alrededor de ${about}.`,
		worked: `${name} está tan lejos de ${about} como ${point}, a ${v.length(radius)}; el doblez lo gira ${v.fixed((angle * 180) / Math.PI, 1)}°.`
	}),
	crossing: ({ name, of, over, from, through, length }) => {
		const line = over === undefined ? `la línea recta ${of}` : `la línea ${of}, doblada sobre ${over},`;
		return {
			where: `Mira a lo largo de la línea que va de ${from} por ${through}.`,
			rule: `${name} está donde ${line} cruza la línea que va de ${from} por ${through}.`,
			worked: `En esa línea, ${name} está a ${v.length(length)} de ${from}.`
		};
	},
	section: ({ of, from, to }) => ({
		where: `Mira a lo largo ${del(of)}.`,
		rule: `Es una parte ${del(of)}.`,
		worked: `De ${v.length(from)} a ${v.length(to)} a lo largo de ella.`
	}),
	chain: ({ of, lengths }) => ({
		where: `Mira a lo largo ${v.list(of.map(del))}.`,
		rule: 'Las líneas siguen como una sola.',
		worked: `Miden ${v.list(lengths.map((each) => v.length(each)))}.`
	}),
	parallel: ({ of, toward, by, arithmetic }) => ({
		where: `Mide a escuadra desde ${el(of)}, ${WAYS[toward]}.`,
		rule: `En todas partes a la misma distancia ${del(of)}: ${el(by)}.`,
		worked: `A escuadra desde ${el(of)}, en varios sitios: ${arithmetic}.`
	}),
	arc: ({ about, from, radius, angle }) => ({
		where: `Sujeta un hilo con un alfiler en ${about} y gíralo desde ${from}.`,
		rule: `En todas partes tan lejos de ${about} como ${from}.`,
		worked: `El hilo mide ${v.length(radius)} y gira ${v.fixed(Math.abs((angle * 180) / Math.PI), 1)}°.`
	}),
	until: ({ name, from, way, by, arithmetic, far, offset }) => {
		const going = typeof way === 'string' ? WAYS[way] : `alrededor de ${way.about}`;
		return {
			where: `Empieza en ${from} y ve ${going}.`,
			rule: `Desde ${from}, ${going}: ${name} está a la distancia justa para que la curva que pasa por él mida lo mismo que ${el(by)}.`,
			worked: `La curva debe medir lo mismo que ${arithmetic}. Así ${name} queda a ${v.length(far)} de ${from}: ${offsetIn(v, offset)}.`
		};
	},
	traced: ({ name, label }) => ({
		where: `${name} se calca del trazado anterior.`,
		rule: `${El(label)} queda donde está en ese trazado.`,
		worked: 'No hay que medir nada.'
	}),
	carried: ({ name, of, step }) => ({
		where: `${name} es donde ha ido ${of}.`,
		rule: `${name} se ha movido con ${step}, como si fuera de una sola cartulina.`,
		worked: 'No hay que medir nada.'
	})
});
