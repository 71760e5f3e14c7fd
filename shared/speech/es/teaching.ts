import type { teaching as english } from '../en/teaching.ts';
import type { NamedStep } from '../en/desk.ts';
import { momentIn } from '../day.ts';
import type { Misdone } from '../misdone.ts';
import { el, El } from './grammar.ts';

/** Lo que se dice de una clase a quien la da, y lo que se dice a la clase. */
export const teaching: typeof english = (v) => {
	const at = ({ point, label }: NamedStep): string =>
		`En ${point === undefined ? '' : `${point}, `}${el(label)},`;
	const title = ({ point, label }: NamedStep): string =>
		point === undefined ? El(label) : `${point}, ${el(label)}`;
	const done = (did: readonly Misdone[]): string => {
		const rules = did.flatMap(({ rule }) => rule ?? []);
		return `${did.map((each) => each.did).join(' y ')}${rules.length === 1 ? `; ${rules.join()}` : ''}.`;
	};
	const have = (count: number): string => v.plural(count, { one: 'ha', other: 'han' });
	const when = (at: number): string => momentIn(v.language, at);
	const signed = ({ by, at: time }: { by: string | null; at: number }): string =>
		`${by ?? 'alguien que ya no da clase aquí'}, ${when(time)}`;
	return {
		missteps: 'Lo que la clase aún no ha entendido',
		missed: ({ step, did, count, of }) => `${at(step)} ${count} de ${of} ${have(count)} ${done(did)}`,
		missedPerhaps: ({ step, did, count, of }) =>
			`${at(step)} ${count} de ${of} probablemente ${have(count)} ${done(did)}`,
		missedOtherwise: ({ step, count, of }) =>
			`${at(step)} ${count} de ${of} ${v.plural(count, { one: 'se ha', other: 'se han' })} equivocado de un modo que ninguna regla explica.`,
		noMissteps: 'Nada de lo colocado estaba mal.',
		who: 'Quién',
		forBoard: 'Para la pizarra',
		board: ({ step, did }) => `${title(step)}: algunos hemos ${done(did)}`,
		boardPerhaps: ({ step, did }) => `${title(step)}: quizá algunos hemos ${done(did)}`,
		boardOtherwise: ({ step }) => `${title(step)}: vamos a trazarlo juntos una vez más.`,
		draftOf: ({ name }) => `El trazado de ${name}`,
		noBody: 'No se ha entregado nada que se pueda dibujar.',
		theirs: 'las marcas de la entrega',
		replay: 'Marca a marca',
		markBack: 'Una marca atrás',
		markOn: 'Una marca adelante',
		nothingYet: 'Aún no hay nada colocado.',
		markAt: ({ number, of, step, at: time, checked, wrong, help }) =>
			`${number} de ${of}: ${title(step)}, ${checked ? `comprobado, ${wrong ? 'mal' : 'sin error'}` : 'sin comprobar'}` +
			`${help > 0 ? `, ${v.plural(help, { one: '1 ayuda', other: `${help} ayudas` })}` : ''}. ${when(time)}`,
		against: 'Frente al calculado',
		chooseStep: 'Elige un paso en la tabla para darle otra nota o escribir junto a él.',
		judged: ({ mark, tries, help }) =>
			`La comprobación da ${v.number(mark)}: ${v.plural(tries, { one: '1 intento fallido', other: `${tries} intentos fallidos` })}, ` +
			`${v.plural(help, { one: '1 ayuda', other: `${help} ayudas` })}.`,
		given: ({ mark, reason, back, ...said }) =>
			`Puntuado con ${v.number(mark)} por ${signed(said)}: ${reason}${back === null ? '' : ` (Retirado el ${when(back)}).`}`,
		takeBack: 'Retirarlo',
		wrote: ({ text, ...said }) => `${text} (${signed(said)})`,
		removeComment: 'Quitarlo',
		write: 'Escribe al alumno junto a esto',
		send: 'Escribirlo',
		newMark: 'Otra nota, de 0 a 1',
		reason: 'Por qué (lo ve el alumno)',
		give: 'Dar esta nota',
		fromTeacher: ({ count }) =>
			v.plural(count, {
				one: 'Unas palabras de quien te da clase, en 1 sitio',
				other: `Unas palabras de quien te da clase, en ${count} sitios`
			}),
		outOf: 'De',
		wrongTries: 'Intentos fallidos',
		lateHeading: 'Fuera de plazo',
		asTable: 'Notas para una hoja de cálculo (CSV)',
		asTableComma: 'con comas decimales y puntos y comas',
		print: 'Imprimir',
		rawLog: 'Todo lo entregado, como archivo',
		now: 'Dónde está cada cual',
		live: 'al momento',
		asking: 'se pregunta cada pocos segundos',
		lost: ({ at: time }) =>
			`Se ha perdido la conexión. Esto es del ${when(time)}; se vuelve a intentar solo.`,
		signedOut: 'Tu sesión ha terminado.',
		notBegun: 'sin empezar',
		justNow: 'ahora mismo',
		minutesAgo: ({ minutes }) =>
			v.plural(minutes, { one: 'hace 1 minuto', other: `hace ${minutes} minutos` }),
		handed: ({ count }) => v.plural(count, { one: '1 marca', other: `${count} marcas` }),
		lookAgain: 'Puntuar lo que ha llegado desde entonces',
		toBoard: 'Mostrarlo en la pizarra',
		boardOf: ({ name }) => `${name}: la pizarra`,
		stepOf: ({ number, of }) => `${number} de ${of}`,
		back: 'Atrás',
		on: 'Adelante',
		answers: 'Dónde lo ha puesto la clase',
		firstBody: 'El cuerpo de la izquierda',
		secondBody: 'El cuerpo de la derecha',
		remarking: 'Puntuarlo de nuevo',
		outdated: ({ count }) =>
			v.plural(count, {
				one: 'La entrega de 1 alumno se puntuó con una versión anterior de la comprobación.',
				other: `Las entregas de ${count} alumnos se puntuaron con una versión anterior de la comprobación.`
			}),
		seeRemarking: 'Ver qué cambiaría al puntuarlo de nuevo',
		allCurrent: 'Todas las notas son las que daría hoy la comprobación.',
		remarkingAbout: ({ count }) =>
			`Se repite todo lo que ${v.plural(count, { one: 'entregó 1 alumno', other: `entregaron ${count} alumnos` })}, tal como se puso. ` +
			'La nota que dio quien enseña se queda. Nada cambia hasta que lo digas.',
		noChange: 'No cambiaría ninguna nota.',
		before: 'Antes',
		after: 'Después',
		where: 'Dónde',
		stepChange: ({ step, before, after }) => `${step}: ${v.number(before)} y después ${v.number(after)}`,
		remark: 'Puntuarlo de nuevo como se muestra',
		others: ({ count }) => v.plural(count, { one: 'Uno más', other: `${count} más` })
	};
};
