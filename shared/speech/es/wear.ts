import { mm } from '../../units.ts';
import type { SaidChange, SaidSpoilt, WearBounds, WearNumber, wear as english } from '../en/wear.ts';
import { el, El } from './grammar.ts';
import { measurementNoun } from './nouns.ts';

/** Whether a finished garment can be worn, and what would put it right. */
export const wear: typeof english = (v) => {
	const number = ({ kind, value }: WearNumber): string => {
		if (kind === 'length') return v.length(mm(value));
		return kind === 'angle' ? `${v.number(value, 1)}°` : v.fixed(value, 2);
	};
	const bounds = ({ kind, least, most }: WearBounds): string => {
		const [low, high] = [least, most].map((value) => value !== undefined && number({ kind, value }));
		if (low && high) return `entre ${low} y ${high}`;
		return low ? `${low} como mínimo` : `${high || ''} como máximo`;
	};
	const changed = (changes: readonly SaidChange[]): string =>
		v.list(
			changes.map(({ noun, from, to }) => `${el(noun)} en ${v.length(to)} en lugar de ${v.length(from)}`)
		);
	const spoils = (spoilt: SaidSpoilt): string => {
		if (spoilt.kind === 'run')
			return 'label' in spoilt.run ? spoilt.run.label : `${spoilt.run.piece}: ${spoilt.run.edge}`;
		return spoilt.label;
	};
	return {
		title: '¿Se puede llevar?',
		wear: 'Al llevarlo',
		seams: 'Costuras',
		check: 'Comprobación',
		found: 'Resultado',
		wanted: 'Debe ser',
		state: 'Estado',
		states: ({ state }) => ({ holds: 'se cumple', fails: 'no se cumple', 'not-known': 'no se sabe' })[state],
		number,
		bounds,
		mark: ({ label, ...of }) => `${label}: ${number(of)}`,
		allHold: ({ all }) =>
			`${v.plural(all, { one: 'La única comprobación se cumple', other: `Se cumplen las ${all} comprobaciones` })}.`,
		someFail: ({ open, all }) =>
			`${v.plural(open, { one: 'No se cumple', other: 'No se cumplen' })} ${open} de ${all} comprobaciones.`,
		unknown: ({ count }) =>
			v.plural(count, { one: 'De otra no se sabe.', other: `De otras ${count} no se sabe.` }),
		allKnown: ({ all }) => v.plural(all, { one: 'La comprobación', other: `Las ${all} comprobaciones` }),
		fails: ({ label, because, ...of }) =>
			`${label}: ${number(of)}; debe ser ${bounds(of)}.${because === undefined ? '' : ` ${because}.`}`,
		notKnown: ({ needs }) => `no se sabe: mide ${v.list(needs.map((key) => el(measurementNoun(key))))}`,
		looking: 'Buscando qué lo arreglaría…',
		cure: ({ changes }) => {
			const [one, ...more] = changes;
			const said = `${one ? `${El(one.noun)} en ${v.length(one.to)} en lugar de ${v.length(one.from)}` : ''}${
				more.length > 0 ? `, con ${changed(more)},` : ''
			}`;
			return `${said} lo arreglaría.`;
		},
		doIt: ({ changes }) => `Cambiar a ${v.list(changes.map(({ to }) => v.length(to)))}`,
		doItLabel: ({ changes }) => `Cambiar: ${changed(changes)}`,
		done: ({ changes }) => `Cambiado: ${changed(changes)}.`,
		odds: ({ label, changes, spoilt }) =>
			`Dos cosas se contradicen: con ${changed(changes)} se cumpliría esto (${label}), pero ya no esto: ${spoils(spoilt)}.`,
		tooFar: ({ changes, odds }) => {
			const [one, other] = (odds ?? []).map(measurementNoun);
			const both =
				one && other ? ` ${El(one)} y ${el(other)} no concuerdan: vuelve a tomar las dos medidas.` : '';
			return `${v.list(changes.map(({ noun, to }) => `${El(noun)} no pasa de ${v.length(to)}`))}, y no basta.${both}`;
		},
		none: 'Ningún número de los que eliges lo cambia. Repasa las medidas y prueba la prenda en tela barata.',
		within: ({ label, value, ...of }) => `${label}: ${number({ value, ...of })} (${bounds(of)})`
	};
};
