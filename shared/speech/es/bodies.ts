import type { MeasurementKey } from '../../measurements.ts';
import { mm, type Mm } from '../../units.ts';
import type { bodies as english, HowTo } from '../en/bodies.ts';
import { el } from './grammar.ts';
import { measurementNoun } from './nouns.ts';

const STRAIGHT =
	'De pie, con el cuerpo derecho y sin forzar, los pies juntos, los brazos caídos, la vista al frente. Suelta el aire como siempre.';
const HANGING = 'De pie, los hombros sueltos y los brazos caídos.';

const HOW: Readonly<Record<MeasurementKey, HowTo>> = {
	bust: {
		stand: STRAIGHT,
		hold: 'La cinta por debajo de los brazos, sobre lo más saliente del busto y a nivel por la espalda. Toca y no aprieta.'
	},
	waist: { stand: STRAIGHT, hold: 'La cinta sobre el cordón de la cintura, a nivel todo alrededor.' },
	hip: {
		stand: STRAIGHT,
		hold: 'La cinta a nivel por lo más saliente de los glúteos. Mira de lado dónde está.'
	},
	neck: {
		stand: 'La cabeza derecha, la vista al frente.',
		hold: 'La cinta por la base del cuello: sobre el hueso de la nuca, los dos puntos laterales del cuello y el hoyo de delante. Ponla de canto si no se acomoda.'
	},
	shoulderWidth: {
		stand: HANGING,
		hold: 'De la punta de un hombro, por el hueso de la nuca, a la punta del otro.'
	},
	backLength: {
		stand: STRAIGHT,
		hold: 'El cero en el punto lateral del cuello, recto hacia abajo por el omóplato hasta el cordón.'
	},
	waistToHip: {
		stand: STRAIGHT,
		hold: 'Por el costado, del cordón sobre la cadera hasta el nivel de lo más saliente.'
	},
	frontLength: {
		stand: STRAIGHT,
		hold: 'El cero en el punto lateral del cuello, por la punta del busto y recto hasta el cordón.'
	},
	bustHeight: { stand: STRAIGHT, hold: 'El cero en el punto lateral del cuello, hasta la punta del busto.' },
	bustSpan: {
		stand: STRAIGHT,
		hold: 'Recto de una punta del busto a la otra, sin hundir la cinta en medio.'
	},
	napeToWaist: {
		stand: 'De pie; agacha la cabeza para encontrar el hueso de la nuca y vuelve a levantarla.',
		hold: 'El cero sobre el hueso de la nuca, por el centro de la espalda hasta el cordón.'
	},
	shoulderLength: {
		stand: HANGING,
		hold: 'Del punto lateral del cuello, por encima del hombro, hasta su punta.'
	},
	shoulderDrop: {
		stand: HANGING,
		hold: 'Una regla a nivel en el punto lateral del cuello; mide desde ella, recto hacia abajo, hasta la punta del hombro.'
	},
	acrossBack: {
		stand: HANGING,
		hold: 'A media sisa, del pliegue de un brazo al del otro por la espalda.'
	},
	acrossChest: {
		stand: HANGING,
		hold: 'A media sisa, del pliegue de un brazo al del otro por el pecho.'
	},
	scyeDepth: {
		stand: STRAIGHT,
		hold: 'Una tira de cartón a nivel bajo los brazos; por el centro de la espalda, del hueso de la nuca al cartón.'
	},
	upperBust: {
		stand: STRAIGHT,
		hold: 'Justo debajo de los brazos, a nivel por la espalda y por encima del busto.'
	},
	underBust: { stand: STRAIGHT, hold: 'A nivel por las costillas, justo debajo del busto.' },
	upperArm: {
		stand: 'El brazo caído, la mano abierta.',
		hold: 'Alrededor de lo más grueso del brazo, a escuadra con él.'
	},
	armLength: {
		stand: 'Dobla un poco el brazo, con la mano delante de la cadera.',
		hold: 'De la punta del hombro, por el codo, al hueso de la muñeca.'
	},
	wrist: { stand: 'La mano extendida y abierta.', hold: 'Alrededor de la muñeca, sobre el hueso.' },
	sideWaistToFloor: {
		stand: 'De pie y sin zapatos, los pies juntos, el peso en los dos.',
		hold: 'Por el costado, del cordón sobre la cadera y recto hasta el suelo.'
	}
};

const SURER: Readonly<Partial<Record<MeasurementKey, string>>> = {
	napeToWaist: 'Las fichas y tablas lo dan a menudo en lugar del largo de espalda, que sale de él.',
	shoulderLength: 'Dice si la costura del hombro acaba donde el hombro.',
	shoulderDrop: 'Dice si la costura del hombro cae como el hombro.',
	acrossBack: 'Dice si la sisa de la espalda se ahueca de más o de menos.',
	acrossChest: 'Dice si la sisa del delantero se ahueca de más o de menos.',
	scyeDepth: 'Dice cuánto queda la sisa por debajo de la axila.',
	upperBust: 'Permite comparar el busto: se ve un busto grande en una espalda estrecha.',
	underBust: 'Permite comparar el busto con las costillas de debajo.',
	upperArm: 'Dice si la manga es bastante ancha.',
	armLength: 'Da el largo de la manga.',
	wrist: 'Dice si la mano pasa por el final de la manga.',
	sideWaistToFloor: 'Ayuda a elegir el largo de una falda o un vestido.'
};

const WHO = { women: 'mujeres', men: 'hombres' } as const;
const OF_WHOM = { women: 'de las mujeres medidas', men: 'de los hombres medidos' } as const;
const SIDE = { left: 'izquierdo', right: 'derecho' } as const;

export const bodies: typeof english = (v) => {
	const whole = (length: Mm): string => v.length(mm(Math.round(length)));
	const from = (range: Parameters<typeof v.range>[0]): string => {
		const { least, most } = v.range(range);
		return `de ${least} a ${most}`;
	};
	return {
		how: HOW,
		surer: SURER,
		standard:
			'Lo que se mide y sus nombres siguen la norma ISO 8559-1 (medidas del cuerpo para la ropa), tal como la recordamos; las palabras son nuestras.',
		details: 'Cómo, para qué y una segunda lectura',
		detailsOf: ({ title }) => `Cómo, para qué y una segunda lectura: ${title}`,
		stand: 'Postura',
		hold: 'Cinta',
		neededFor: ({ garments }) => `Hace falta para: ${v.list(garments)}.`,
		neededByNone: 'Ningún trazado la necesita.',
		percentile: ({ percent, who }) =>
			percent < 1
				? `Menos de 1 de cada 100 ${OF_WHOM[who]} tiene menos.`
				: percent > 99
					? `Más de 99 de cada 100 ${OF_WHOM[who]} tienen menos.`
					: `${v.number(percent, 0)} de cada 100 ${OF_WHOM[who]} tienen menos.`,
		expected: ({ value, range }) =>
			`Por las demás se espera cerca de ${whole(value)}; 19 cuerpos de cada 20 tienen ${from(range)}.`,
		estimate: ({ value, range }) =>
			`Sin tomar: cerca de ${whole(value)}; en 19 cuerpos de cada 20, ${from(range)}.`,
		useEstimate: 'Usarla como estimada',
		workOut: ({ value }) =>
			`De la nuca a la cintura sale ${v.length(value)}: el punto lateral del cuello queda unos 2 cm más alto.`,
		useWorkedOut: 'Usar lo que sale',
		estimated:
			'Estimada con tus demás medidas, no tomada. Así se dice donde se usa, y cambia con ellas. Escribe encima cuando la tomes.',
		workedOut:
			'Calculada de la nuca a la cintura, no tomada. Así se dice donde se usa. Escribe encima cuando la tomes.',
		second: 'Segunda lectura',
		secondWhat: 'tómala otra vez, sin mirar la primera',
		apart: ({ first, second, mean, difference }) =>
			`${v.length(first)} y ${v.length(second)}: ${v.length(difference)} de diferencia. Se usa ${v.length(mean)}, el punto medio.`,
		tooFar: ({ most }) =>
			`Más de ${v.length(most)} de diferencia: tómala una tercera vez y quédate con las dos que coincidan.`,
		sides: 'Izquierda y derecha, y observaciones',
		sidesAbout:
			'Casi nadie es igual de los dos lados. Lo que anotes aquí se guarda y se muestra. Todavía no se traza: aquí todo trazado es igual a izquierda y derecha, así que ajusta cada lado en la prenda de prueba.',
		left: 'izquierdo',
		right: 'derecho',
		sidesDiffer: ({ of, difference, longer }) =>
			`${v.length(difference)} más en el lado ${SIDE[longer]}: ${el(measurementNoun(of))}. Todavía no se traza.`,
		remarks: 'Observaciones',
		beside: 'Al lado de cuerpos reales',
		compared: 'Comparar con',
		likelier: ({ who }) => `lo más probable (${WHO[who]})`,
		women: 'mujeres',
		men: 'hombres',
		allWell: ({ count }) =>
			v.plural(count, {
				one: 'La única medida es corriente.',
				other: `Las ${v.number(count)} medidas van bien juntas.`
			}),
		toAsk: ({ keys }) =>
			`Vuelve a tomar: ${v.list(keys.map((key) => el(measurementNoun(key))))}. En su casilla se dice qué pudo pasar. Es un consejo: puedes trazar igualmente.`,
		outlying: ({ percent, who }) =>
			percent > 99
				? `Juntas quedan más lejos del medio que las de más de 99 de cada 100 ${OF_WHOM[who]}.`
				: `Juntas quedan más lejos del medio que las de cerca de ${v.number(percent, 0)} de cada 100 ${OF_WHOM[who]}.`,
		unknown:
			'En el estudio apenas hay cuerpos como este: de niños, muy grandes o poco comunes por otra razón. No hay nada malo en ello. Aquí solo se notan fallos grandes, y lo estimado es poco seguro.',
		cannotSee: ({ sizes }) =>
			`Lo que no se puede ver: un fallo de menos de ${v.list(sizes.map(({ of, least }) => `${whole(least)} en ${el(measurementNoun(of))}`))} parece otro cuerpo cualquiera. Mide dos veces.`,
		survey:
			'Se compara con 2208 mujeres y 1774 hombres del Ejército de Estados Unidos, medidos en 1988 con calibre y cinta: gente en forma, de 17 a 51 años. Los cuerpos mayores, muy grandes, embarazados y muy jóvenes están mal representados, y los de hoy pueden ser distintos. Poco común no es equivocado: cerca de una de cada diez de esas mujeres tiene más busto que cadera.',
		standIns: ({ keys }) =>
			`No se tomaron como aquí, y algo parecido hace sus veces: ${v.list(keys.map((key) => el(measurementNoun(key))))}.`,
		private:
			'Estos números se quedan en este navegador. Solo salen de él en un archivo que guardes tú, o en un trabajo que entregues a una clase y lo digas.',
		duplicate: 'Duplicar',
		copyDemo: 'Copiar como tuyas',
		card: 'Ficha de medidas para imprimir',
		cardTitle: 'Ficha de medidas',
		cardAbout:
			'Para dos personas que se miden una a otra. Ata un cordón a la cintura, lleva ropa fina y marca con pegatinas los puntos laterales del cuello. Toma cada medida dos veces y anota las dos; si difieren más de un dedo, vuelve a tomarla.',
		cardName: 'Nombre',
		cardBy: 'Medido por',
		cardDate: 'Fecha',
		first: '1.ª',
		secondShort: '2.ª',
		print: 'Imprimirla',
		back: 'Volver a las casillas'
	};
};
