import { mm } from '../../units.ts';
import type { drafts as english } from '../en/drafts.ts';
import { el } from './grammar.ts';
import { measurementNoun } from './nouns.ts';

/** Why a body cannot be drafted, and what to look at before cutting. */
export const drafts: typeof english = (v) => ({
	broken: ({ because, measured, differs }) => {
		if (measured === undefined) return because;
		const long = v.length(differs ? mm(Math.abs(measured)) : measured);
		return differs
			? `${because} (aquí, ${long} de ${differs === 'too-much' ? 'más' : 'menos'})`
			: `${because} (aquí: ${long})`;
	},
	disagree: ({ odds, because }) =>
		`${v.list(odds.map(el))} no concuerdan: ${because}; vuelve a tomar las dos medidas`,
	cannot: ({ because }) => `este cuerpo no se puede trazar: ${because}`,
	warning: ({ odds, because }) => `${v.list(odds.map(el))}: ${because}`,
	missing: ({ key, body }) => `falta ${el(measurementNoun(key))} de ${body}`,

	samePlace: ({ name, from, toward }) =>
		`${name} no tiene dirección: ${from} y ${toward} están en el mismo sitio`,
	noWay: ({ name }) => `${name} no tiene dirección: su línea no tiene longitud`,
	beyondEnd: ({ name, line }) => `${name} quedaría más allá del final de ${line}`,
	noRadius: ({ name, about, from }) => `${name} no tiene radio: ${about} y ${from} están en el mismo sitio`,
	runsBack: ({ noun }) =>
		`${el(noun)} volvería sobre sí misma, porque queda más lejos de lo que permite la curva de la línea de al lado`,
	notJoined: ({ name }) => `las líneas de ${name} no se unen`,
	doesNotCross: ({ name }) => `no se puede colocar ${name}: sus dos líneas no se cruzan ahí`,
	noFold: ({ name }) => `no se puede reflejar ${name}: su doblez no tiene longitud`,
	nothingLeft: ({ name, of }) => `no queda nada de ${of} para ${name}`,
	doesNotReach: ({ name, from }) => `la longitud girada desde ${from} no llega al nivel de ${name}`,
	cannotTurn: ({ name, move, about }) => `no se llega a ${name} girando ${move} alrededor de ${about}`,
	noPlace: ({ name }) => `ninguna posición de ${name} da a la curva la longitud que debe tener`,
	notFinite: ({ name }) => `la regla de ${name} divide entre cero o da más de lo que mide cualquier trazado`
});
