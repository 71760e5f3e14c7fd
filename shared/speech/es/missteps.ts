import type { Compass } from '../../method.ts';
import type { Line, missteps as english, Share, Taken, TapeSlip } from '../en/missteps.ts';
import { did, misdoneOf, type Misdone } from '../misdone.ts';
import type { Noun } from '../noun.ts';
import type { Voice } from '../voice.ts';
import { del, el } from './grammar.ts';
import { allowanceNoun, measurementNoun, partOf } from './nouns.ts';

const ALONE: Readonly<Record<Share, string>> = {
	whole: 'el total',
	half: 'la mitad',
	third: 'la tercera parte',
	quarter: 'la cuarta parte',
	fifth: 'la quinta parte',
	sixth: 'la sexta parte',
	eighth: 'la octava parte',
	twelfth: 'la doceava parte',
	twoThirds: 'dos tercios',
	threeQuarters: 'tres cuartos',
	twice: 'el doble',
	part: 'otra parte'
};
const WAYS: Readonly<Record<Compass, string>> = {
	up: 'recto hacia arriba',
	down: 'recto hacia abajo',
	across: 'recto hacia fuera',
	in: 'recto hacia dentro, hacia el centro'
};
const TAPE: Readonly<Record<TapeSlip, string>> = {
	centimetre: 'un centímetro',
	halfCentimetre: 'medio centímetro',
	twoCentimetres: 'dos centímetros',
	inch: 'una pulgada',
	halfInch: 'media pulgada'
};
const SIDES = { outward: 'hacia fuera', inward: 'hacia dentro' } as const;
const ENDS = { start: 'empieza', end: 'termina' } as const;

/** How many times as deep, in tenths: nobody sees a curve more finely. */
const timesAs = (v: Voice, times: number): string => {
	const tenths = Math.round(times * 10);
	if (tenths === 5) return 'la mitad de honda que';
	return tenths === 20 ? 'el doble de honda que' : `${v.number(tenths / 10)} veces tan honda como`;
};

const lineNoun = ({ noun, of }: Line): Noun => (of ? partOf(noun, of) : noun);

const nounOf = (taken: Taken): Noun => {
	switch (taken.kind) {
		case 'measurement':
			return measurementNoun(taken.key);
		case 'allowance':
			return allowanceNoun(taken);
		case 'apart':
			return { article: 'la', name: `distancia de ${taken.from} a ${taken.to}`, gender: 'f' };
		case 'line':
			return { article: 'la', name: `longitud ${del(lineNoun(taken.line))}`, gender: 'f' };
		case 'difference':
			return {
				article: 'la',
				name: `diferencia entre ${said(taken.one)} y ${said(taken.other)}`,
				gender: 'f'
			};
		case 'distance':
			return { article: 'la', name: 'distancia', gender: 'f' };
		case 'length':
			return { article: 'la', name: 'longitud', gender: 'f' };
	}
};
const said = (taken: Taken): string => el(nounOf(taken));
const ofIt = (taken: Taken): string => del(nounOf(taken));
/** "lo", "la", "los" or "las", standing for what was named. */
const it = ({ gender, plural }: Noun): string => (gender === 'f' ? 'la' : 'lo') + (plural ? 's' : '');

const shareOf = (share: Share, of: readonly Taken[]): string =>
	share === 'whole'
		? `el total ${of.map(ofIt).join(' y ')}`
		: `${share === 'part' ? 'una parte' : ALONE[share]} ${of.map(ofIt).join(' y ')}`;
const SQUARED = {
	down: 'trazado a escuadra hacia abajo',
	across: 'trazado a escuadra hacia fuera'
} as const;
const wayShare = (share: Share): string =>
	share === 'whole' ? 'todo el camino' : `${share === 'part' ? 'una parte' : ALONE[share]} del camino`;

/** The rule, where its share has a name. */
const ruleShare = (right: Share): string | undefined =>
	right === 'part' ? undefined : `la regla es ${ALONE[right]}`;

/** What may have gone wrong; each follows «has» or «ha». */
const slipsIn = (v: Voice): ReturnType<typeof english>['slips'] => ({
	fraction: ({ wrong, right, of }) => did(`tomado ${shareOf(wrong, of)}`, ruleShare(right)),
	leftOut: ({ what }) => did(`olvidado ${said(what)}`),
	twice: ({ what, how }) =>
		did(`${{ added: 'sumado', takenOff: 'restado', taken: 'tomado' }[how]} dos veces ${said(what)}`),
	added: ({ what }) => did(`sumado ${said(what)}`, `la regla ${it(nounOf(what))} resta`),
	takenOff: ({ what }) => did(`restado ${said(what)}`, `la regla ${it(nounOf(what))} suma`),
	usual: ({ what }) =>
		did(
			`tomado ${said(what)} como suele ser`,
			`la regla toma ${it(nounOf(what)) === 'la' ? 'la elegida' : 'el elegido'} aquí`
		),
	addedToo: ({ what }) => did(`sumado ${said(what)}`, `la regla no ${it(nounOf(what))} usa`),
	takenOffToo: ({ what }) => did(`restado ${said(what)}`, `la regla no ${it(nounOf(what))} usa`),
	instead: ({ wrong, right }) => did(`tomado ${said(wrong)}`, `la regla toma ${said(right)}`),
	farEnd: ({ from, wrong, right }) =>
		did(`tomado la distancia de ${from} a ${wrong}`, `la regla la toma hasta ${right}`),
	inInches: ({ what }) => did(`leído ${said(what)} por el lado de las pulgadas de la cinta métrica`),
	inCentimetres: ({ what }) => did(`leído ${said(what)} por el lado de los centímetros de la cinta métrica`),
	decimal: ({ what }) => did(`corrido un lugar la coma decimal ${ofIt(what)}`),
	tape: ({ what }) => did(`leído ${said(what)} con una decena de más o de menos en la cinta métrica`),
	digits: ({ what, asRead }) =>
		did(
			`cambiado de orden dos cifras ${ofIt(what)}${asRead ? ` (${asRead.map((each) => v.bare(each)).join('; ')})` : ''}`
		),
	start: ({ wrong, right }) => did(`empezado en ${wrong}`, `la regla empieza en ${right}`),
	squaredFrom: ({ wrong, right, way }) =>
		did(
			`${SQUARED[way]} desde ${wrong}`,
			`la regla traza a escuadra ${way === 'down' ? 'hacia abajo' : 'hacia fuera'} desde ${right}`
		),
	between: ({ share, wrong, right }) =>
		share === 'half'
			? did(
					`tomado la mitad entre ${wrong.from} y ${wrong.to}`,
					`la regla la toma entre ${right.from} y ${right.to}`
				)
			: did(
					`recorrido ${wayShare(share)} de ${wrong.from} a ${wrong.to}`,
					`la regla va de ${right.from} a ${right.to}`
				),
	toward: ({ wrong, right }) => did(`ido hacia ${wrong}`, `la regla va hacia ${right}`),
	way: ({ wrong, right }) => did(`ido ${WAYS[wrong]}`, `la regla va ${WAYS[right]}`),
	notSloping: ({ wrong }) => did(`ido ${WAYS[wrong]}`, 'la regla va por una línea inclinada'),
	squareTo: ({ wrong, toward }) =>
		did(`medido ${WAYS[wrong]}`, `la regla mide por la línea inclinada hacia ${toward}`),
	alongLine: ({ line, right }) =>
		did(`medido a lo largo ${del(lineNoun(line))}`, `la regla va ${WAYS[right]}`),
	away: ({ toward }) => did(`ido en sentido contrario a ${toward}`, `la regla va hacia ${toward}`),
	otherEnd: ({ line, from }) =>
		did(
			`medido ${el(lineNoun(line))} desde el otro extremo`,
			`la regla empieza donde la línea ${ENDS[from]}`
		),
	opposite: () => did('ido en sentido contrario'),
	oppositeFrom: ({ from }) => did(`ido desde ${from} en sentido contrario`),
	otherPoint: ({ wrong, right }) => did(`colocado ${wrong}`, `este paso pide ${right}`),
	panel: ({ wrong, right }) => did(`seguido la regla ${del(wrong)}`, `este trazado es «${right}»`),
	share: ({ wrong, right, from, to }) =>
		did(`recorrido ${wayShare(wrong)} de ${from} a ${to}`, ruleShare(right)),
	fromFarEnd: ({ from, to }) => did(`medido de ${to} hacia ${from}`, `la regla va de ${from} a ${to}`),
	squaresExchanged: ({ down, across }) =>
		did(
			`trazado a escuadra hacia fuera desde ${down} y hacia abajo desde ${across}`,
			`la regla va hacia abajo desde ${down} y hacia fuera desde ${across}`
		),
	notFolded: ({ point, fold }) =>
		did(`dejado ${point} donde estaba`, `la regla lo dobla por ${fold.join('–')}`),
	toFold: ({ fold }) =>
		did(`parado en el doblez ${fold.join('–')}`, 'la regla sigue otro tanto al otro lado'),
	notSpread: ({ point }) => did(`dejado ${point} donde estaba`, 'la regla lo separa'),
	notTurned: ({ point, about }) =>
		did(`dejado ${point} donde estaba`, `la regla lo gira alrededor de ${about}`),
	notSwung: ({ from }) =>
		did(
			`medido recto hacia fuera ${from === undefined ? 'por su nivel' : `desde ${from}`}`,
			'la regla gira la longitud hasta que encuentra su nivel'
		),
	swung: ({ wrong, right }) => did(`girado la longitud ${SIDES[wrong]}`, `la regla la gira ${SIDES[right]}`),
	turnedBack: ({ point, onto }) =>
		did(
			'girado en sentido contrario',
			onto === undefined ? undefined : `la regla gira ${point} hacia ${onto}`
		),
	turnedFor: ({ other }) => did(`girado tanto como para ${other}`, 'la regla cierra esta pinza, y nada más'),
	turnedForBoth: ({ other }) =>
		did(`girado tanto como para ${other} y esta pinza juntas`, 'la regla cierra esta pinza'),
	turnedShare: ({ wrong, right, onto }) => did(`girado ${wayShare(wrong)} hasta ${onto}`, ruleShare(right)),
	straightOnto: ({ point, onto, about }) =>
		did(`llevado ${point} derecho a ${onto}`, `una parte que gira conserva su distancia a ${about}`),
	asLongAs: ({ line }) =>
		did(`seguido hasta que la curva fue tan larga como ${el(lineNoun(line))}`, 'la regla toma otra línea'),
	notGoneOn: ({ from }) =>
		did(`dejado el punto en ${from}`, 'la regla sigue hasta que la curva es lo bastante larga'),
	notCrossed: ({ from, of }) =>
		did(`dejado el punto en ${from}`, `la regla busca dónde cruza la línea ${of.join('–')}`),
	notFoldedOver: ({ of, fold }) =>
		did(`tomado la línea ${of.join('–')} tal como está`, `la regla la dobla sobre ${fold.join('–')}`),
	ruledFrom: ({ wrong, right }) => did(`trazado la línea desde ${wrong}`, `la regla pone ahí ${right}`),
	ruledTo: ({ wrong, right }) => did(`trazado la línea hasta ${wrong}`, `la regla pone ahí ${right}`),
	curveFrom: ({ wrong, right }) => did(`empezado la curva en ${wrong}`, `la regla pone ahí ${right}`),
	curveTo: ({ wrong, right }) => did(`trazado la curva hasta ${wrong}`, `la regla pone ahí ${right}`),
	nodeMissed: ({ node }) => did(`trazado la curva sin pasar por ${node}`, 'la de la regla pasa por ahí'),
	nodeTaken: ({ wrong, right }) => did(`trazado la curva por ${wrong}`, `la de la regla pasa por ${right}`),
	tooFlat: ({ times }) =>
		did('trazado la curva demasiado plana', `es más o menos ${timesAs(v, times)} la de la regla`),
	tooDeep: ({ times }) =>
		did('trazado la curva demasiado honda', `es más o menos ${timesAs(v, times)} la de la regla`),
	mirrored: () => did('trazado la curva al revés', 'es la imagen en espejo de la de la regla'),
	straightened: () => did('trazado la curva casi recta', 'la regla la hace cóncava'),
	wrongBulge: () => did('curvado la línea hacia el lado equivocado', 'la regla la curva hacia el otro'),
	wrongEnds: () =>
		did('trazado la forma correcta entre extremos equivocados', 'no empieza ni termina donde dice la regla'),
	wobble: () =>
		did('trazado una curva ondulada', 'se dobla a un lado y a otro donde la de la regla no lo hace'),
	leftSlanting: ({ point }) => did(`salido de ${point} en oblicuo`, 'la curva sale de ahí a escuadra'),
	reachedSlanting: ({ point }) => did(`llegado a ${point} en oblicuo`, 'la curva llega ahí a escuadra'),
	tooLong: () => did('trazado la línea demasiado larga', 'la de la regla es más corta'),
	tooShort: () => did('trazado la línea demasiado corta', 'la de la regla es más larga'),
	shareOfSum: ({ wrong }) =>
		did(
			`tomado ${wrong === 'part' ? 'una parte' : ALONE[wrong]} de toda la suma`,
			'la regla solo toma una parte de uno de sus términos'
		),
	shareInstead: ({ wrong, of }) =>
		did(`tomado ${wrong === 'whole' ? said(of) : shareOf(wrong, [of])}`, 'la regla toma otra longitud'),
	tapeBeside: ({ what, size, way }) =>
		did(`tomado ${TAPE[size]} de ${way === 'long' ? 'más' : 'menos'} en ${said(what)}`),
	fractionDropped: () => did('olvidado lo que la distancia tiene además de un número entero'),
	otherRule: ({ wrong }) =>
		did(`tomado la longitud que la regla da para ${wrong}`, 'este paso tiene su propia regla'),
	measuredStraight: ({ line }) =>
		did('medido en línea recta', `la regla mide a lo largo ${del(lineNoun(line))}`),
	alongOther: ({ wrong, right }) =>
		did(`medido a lo largo ${del(lineNoun(wrong))}`, `la regla mide a lo largo ${del(lineNoun(right))}`),
	otherFormula: ({ how }) =>
		({
			otherOfTwo: did('tomado la otra de las dos longitudes', 'la regla elige entre ellas'),
			otherCase: did('tomado la regla de otro caso', 'para estas medidas hay una regla propia'),
			otherChoice: did('calculado con otra fracción', 'la regla toma la que se ha elegido'),
			numberForgotten: did('olvidado un número por el que la regla multiplica o divide')
		})[how],
	squareToGuide: ({ from, to, right }) =>
		did(`medido a escuadra con la línea ${from}–${to}`, `la regla va ${WAYS[right]}`),
	swungUp: () => did('girado la longitud hacia arriba', 'la regla la gira hacia abajo hasta su nivel'),
	turnedAbout: ({ wrong, right }) =>
		did(`girado alrededor de ${wrong}`, `la regla gira alrededor de ${right}`),
	turnedOnto: ({ wrong, right }) => did(`girado hasta ${wrong}`, `la regla gira hasta ${right}`),
	straightOn: ({ how }) =>
		({
			byWhole: did('medido la longitud en línea recta', 'la regla la mide por la curva'),
			byWhatLacks: did(
				'seguido recto lo que le falta a la curva',
				'la regla sigue hasta que la curva es lo bastante larga'
			),
			notRound: did('seguido recto', 'la regla hace girar el punto')
		})[how],
	leftAt: ({ at }) => did(`dejado el punto en ${at}`, 'la regla sigue desde ahí'),
	squared: ({ down, across }) => did(`puesto el punto en la vertical de ${down} y al nivel de ${across}`),
	wholePart: ({ how }) =>
		({
			leftOut: did('olvidado una parte de la suma'),
			twice: did('tomado dos veces una parte de la suma'),
			half: did('tomado la mitad de una parte de la suma', 'la regla la toma entera'),
			otherSign: did('sumado una parte de la suma que se resta, o restado una que se suma')
		})[how],
	withRule: ({ of }) => did(`sumado la longitud que la regla da para ${of}`),
	withoutRule: ({ of }) => did(`restado la longitud que la regla da para ${of}`),
	laidOff: ({ of, share, way, from }) =>
		did(
			`llevado ${of.kind === 'rule' ? `la longitud de ${of.name}` : share === 'whole' ? said(of) : shareOf(share, [of])} desde ${from}, ${WAYS[way]}`,
			'la regla hace otra cosa desde ahí'
		),
	halfway: ({ from, to }) => did(`tomado la mitad entre ${from} y ${to}`)
});

/** Varias a la vez. */
const together = (all: readonly Misdone[]): string => all.map(({ did }) => did).join(' y ');

/** What may have gone wrong at a step. */
export const missteps: typeof english = (v) => {
	const slips = slipsIn(v);
	return {
		slips,
		yours: (misdone) => misdoneOf('Has', misdone),
		theirs: (misdone) => misdoneOf('Ha', misdone),
		theirSlip: ({ key, values }) =>
			misdoneOf('Ha', (slips[key] as (...values: readonly unknown[]) => Misdone)(...values)),
		wouldLie: (any) => {
			const [rule, ...more] = any.flat().flatMap((each) => each.rule ?? []);
			const told = any.flat().length === 1 && rule !== undefined && more.length === 0 ? `; ${rule}` : '';
			return `Estaría ahí si hubieras ${any.map(together).join(', o si hubieras ')}${told}.`;
		},
		perhaps: (all) => {
			const [only, ...more] = all;
			const told = only?.rule !== undefined && more.length === 0 ? `; ${only.rule}` : '';
			return `Quizá hayas ${together(all)}${told}.`;
		},
		either: (any) =>
			any
				.map((all, i) => `${i === 0 ? 'O' : 'o'} bien has ${together(all)}`)
				.join(', ')
				.concat('.')
	};
};
