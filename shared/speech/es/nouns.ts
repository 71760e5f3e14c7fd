import type {
	allowanceNoun as englishAllowance,
	MeasurementWords,
	nouns as english,
	measurementNoun as englishMeasurement
} from '../en/nouns.ts';
import type { MeasurementKey } from '../../measurements.ts';
import { readNoun, type Noun } from '../noun.ts';
import { capital, del, el, El } from './grammar.ts';

const noun = (text: string): Noun => readNoun(text, 'es');
const measurement = (name: string, title: string, what: string): MeasurementWords => ({
	noun: noun(name),
	title,
	what
});

/** Every measurement. */
export const MEASUREMENT_WORDS: Readonly<Record<MeasurementKey, MeasurementWords>> = {
	bust: measurement(
		'el contorno de busto',
		'Contorno de busto',
		'alrededor del cuerpo, por la parte más saliente del busto'
	),
	waist: measurement(
		'el contorno de cintura',
		'Contorno de cintura',
		'alrededor del cuerpo, por la cintura natural'
	),
	hip: measurement(
		'el contorno de cadera',
		'Contorno de cadera',
		'alrededor del cuerpo, por la parte más saliente de la cadera'
	),
	neck: measurement(
		'el contorno de cuello',
		'Contorno de la base del cuello',
		'alrededor de la base del cuello'
	),
	shoulderWidth: measurement(
		'el ancho de hombros',
		'Ancho de hombros',
		'por la espalda, de un punto de hombro al otro'
	),
	backLength: measurement(
		'el largo de espalda',
		'Largo de espalda',
		'del punto lateral del cuello a la cintura, por la espalda; el «nuca a cintura» de una ficha es unos 2 cm (3/4 de pulgada) menor'
	),
	waistToHip: measurement(
		'la altura de cadera',
		'Altura de cadera',
		'del nivel de la cintura al nivel de la cadera, por el costado'
	),
	frontLength: measurement(
		'el largo delantero',
		'Largo delantero',
		'del punto lateral del cuello a la cintura, por delante y sobre el punto de busto'
	),
	bustHeight: measurement(
		'la altura de busto',
		'Altura de busto',
		'del punto lateral del cuello al punto de busto'
	),
	bustSpan: measurement('la separación de busto', 'Separación de busto', 'de un punto de busto al otro'),
	napeToWaist: measurement(
		'el largo de nuca a cintura',
		'Largo de nuca a cintura',
		'del hueso de la nuca a la cintura, por la espalda; unos 2 cm (3/4 de pulgada) menos que el largo de espalda'
	),
	shoulderLength: measurement(
		'el largo de hombro',
		'Largo de hombro',
		'del punto lateral del cuello al punto de hombro, a lo largo del hombro'
	),
	shoulderDrop: measurement(
		'la caída del hombro',
		'Caída del hombro',
		'cuánto más bajo queda el punto de hombro que el punto lateral del cuello, en vertical'
	),
	acrossBack: measurement(
		'el ancho de espalda',
		'Ancho de espalda',
		'de brazo a brazo por la espalda, a media altura de la sisa'
	),
	acrossChest: measurement(
		'el ancho de pecho',
		'Ancho de pecho',
		'de brazo a brazo por delante, a media altura de la sisa'
	),
	scyeDepth: measurement(
		'la profundidad de sisa',
		'Profundidad de sisa',
		'del hueso de la nuca al nivel de la axila, por la espalda'
	),
	upperBust: measurement(
		'el contorno de pecho',
		'Contorno de pecho',
		'alrededor del cuerpo por encima del busto, justo bajo los brazos'
	),
	underBust: measurement(
		'el contorno bajo el busto',
		'Contorno bajo el busto',
		'alrededor del cuerpo, justo por debajo del busto'
	),
	upperArm: measurement(
		'el contorno de brazo',
		'Contorno de brazo',
		'alrededor del brazo por su parte más gruesa, con el brazo caído'
	),
	armLength: measurement(
		'el largo de brazo',
		'Largo de brazo',
		'del punto de hombro a la muñeca, por fuera, con el brazo un poco doblado'
	),
	wrist: measurement('el contorno de muñeca', 'Contorno de muñeca', 'alrededor de la muñeca, sobre el hueso'),
	sideWaistToFloor: measurement(
		'el alto de cintura a suelo',
		'Alto de cintura a suelo',
		'del nivel de la cintura al suelo, por el costado y sin zapatos'
	)
};

export const STANDING: ReturnType<typeof english>['standing'] = {
	bustEase: noun('la holgura de busto'),
	waistEase: noun('la holgura de cintura'),
	hipEase: noun('la holgura de cadera'),
	sideMost: noun('la entrada máxima del costado'),
	waistDartTop: noun('la bajada de la pinza de cintura'),
	armholeDrop: noun('la bajada de la sisa'),
	neckAllow: noun('el añadido del cuello'),
	frontNeckDrop: noun('la bajada del escote delantero'),
	backNeckDepth: noun('la profundidad del escote de espalda'),
	shoulderDropBack: noun('la caída del hombro de espalda'),
	shoulderDropFront: noun('la caída del hombro delantero'),
	hollowBack: noun('el hueco de la sisa de espalda'),
	hollowFront: noun('el hueco de la sisa delantera'),
	dartBelow: noun('la bajada de la pinza'),
	dartShort: noun('el acortamiento de la pinza'),
	seamAllowance: noun('el margen de costura'),
	hemAllowance: noun('el margen de bajo'),
	edge: noun('el margen de un borde'),
	cloth: noun('el ancho de la tela')
};

/** What an allowance is called: by its method, or by its key where it is a standing one. */
export const allowanceNoun: typeof englishAllowance = (allowance) =>
	allowance.noun ?? (STANDING as Readonly<Record<string, Noun>>)[allowance.key] ?? { name: allowance.key };

/** What a measurement is called, by its key; any other key is left as it is. */
export const measurementNoun: typeof englishMeasurement = (key) =>
	(MEASUREMENT_WORDS as Readonly<Record<string, MeasurementWords>>)[key]?.noun ?? { name: key };

/** A part of a whole: «el hombro de la espalda». */
export const partOf = (part: Noun, whole: Noun): Noun => ({ ...part, name: `${part.name} ${del(whole)}` });

/** Measurements, allowances and other things with a name, as nouns. */
export const nouns: typeof english = (_voice) => ({
	measurements: MEASUREMENT_WORDS,
	standing: STANDING,
	allowance: allowanceNoun,
	measurement: measurementNoun,
	edgeAllowance: (edge) => noun(`el margen de ${edge}`),
	partOf,
	fromTo: ({ from, to }) => ({ name: `de ${from} a ${to}` }),
	the: el,
	The: El,
	title: ({ name }) => capital(name)
});
