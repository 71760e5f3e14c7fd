import { mm, MM_PER } from '../../units.ts';
import type { doubts as english, Doubted } from '../en/doubts.ts';
import { capital, del, el, El } from './grammar.ts';
import { measurementNoun } from './nouns.ts';

export const doubts: typeof english = (v) => {
	const ten = v.length(mm(10 * MM_PER[v.unit]));
	const beside = ({ expected }: Doubted): string => {
		if (!expected) return '';
		const { least, most } = v.range(expected.range);
		return ` Al lado de las demás medidas lo habitual sería cerca de ${v.length(mm(Math.round(expected.value)))}, de ${least} a ${most}.`;
	};
	return {
		doubted: (doubt) => {
			const { of, value, other, plain } = doubt;
			const noun = measurementNoun(of);
			if (other)
				return `${El(noun)} y ${el(measurementNoun(other))} parecen estar cada uno en la casilla del otro.`;
			if (plain) {
				const { least, most } = v.range(plain);
				return `¿${capital(noun.name)} de ${v.outside(value, plain)}? Casi siempre está entre ${least} y ${most}.`;
			}
			return `${El(noun)}: ¿${v.length(value)}?${beside(doubt)}`;
		},
		slipped: ({ slip, other }) => {
			const noun = other && measurementNoun(other);
			switch (slip) {
				case 'less':
					return `¿Leíste ${ten} de menos?`;
				case 'more':
					return `¿Leíste ${ten} de más?`;
				case 'digits':
					return '¿Se cambiaron de sitio dos cifras?';
				case 'inches':
					return '¿Se leyó en pulgadas?';
				case 'centimetres':
					return '¿Se leyó en centímetros?';
				case 'half':
					return '¿Es solo la mitad del contorno?';
				case 'twice':
					return '¿Se duplicó?';
				case 'point':
					return '¿Se corrió la coma decimal?';
				case 'hundred':
					return '¿Falta el 1 de la centena?';
				case 'swapped':
					return `¿Está este número en la casilla ${noun ? del(noun) : ''}, y el de esa aquí?`;
				case 'instead':
					return `¿Se midió en su lugar ${noun ? el(noun) : ''}?`;
			}
		},
		use: ({ value }) => `Poner ${v.length(value)}`,
		swap: 'Intercambiar los dos',
		again:
			'Vuelve a tomarla. Si sale igual, déjala: nadie tiene todas las medidas como las tiene la mayoría.',
		otherUnit: ({ unit }) =>
			unit === 'inches'
				? 'Todos estos números serían los de un cuerpo adulto en pulgadas. ¿Se leyó la cinta en pulgadas? Entonces elige pulgadas arriba y vuelve a escribirlos.'
				: 'Todos estos números serían los de un cuerpo adulto en centímetros. ¿Se leyó la cinta en centímetros? Entonces elige centímetros arriba y vuelve a escribirlos.',
		doubtFirst: 'Vuelve a tomarla o mira si se escribió tal como se leyó.'
	};
};
