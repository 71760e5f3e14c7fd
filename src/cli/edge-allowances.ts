import { edgeAllowance } from '#shared/speech/en/nouns.ts';
import { CUTTING_ALLOWANCES, type LengthAllowance } from '#shared/allowances.ts';
import { BadInput, shown } from '#shared/bad-input.ts';
import { readBody, readLengthAllowance, type Body } from '#shared/body.ts';
import { didYouMean } from '#shared/nearest-name.ts';
import type { Mm, Unit } from '#shared/units.ts';
import type { EdgeRule, Garment } from '#garment/garment.ts';
import { parsedJson, type InputFile } from './input-file.ts';

/** A body, and what its maker chose to cut single edges with, by the edges' names (`front.side`). */
export interface Maker {
	readonly body: Body;
	readonly edges: Readonly<Record<string, Mm>>;
}

/** How wide an edge may be cut: as wide as any other of its kind. None for a fold, which is not cut. */
const allowanceOf = ({ kind }: EdgeRule, name: string): LengthAllowance | undefined => {
	const usual = kind === 'hem' ? 'hemAllowance' : 'seamAllowance';
	const found = kind === 'fold' ? undefined : CUTTING_ALLOWANCES.find(({ key }) => key === usual);
	return found && { ...found, key: name, noun: edgeAllowance(name) };
};

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
	typeof value === 'object' && value !== null && !Array.isArray(value);

const readEdges = (
	input: unknown,
	{ pieces }: Garment,
	unit: Unit,
	place: string
): Readonly<Record<string, Mm>> => {
	if (!isRecord(input))
		throw new BadInput(
			`${place}edges`,
			`allowances of edges are {"front.side":1.5,...}, not ${shown(input)}`
		);
	const edges = new Map(
		pieces.flatMap(({ key, edges: own }) =>
			own.map((edge): readonly [string, EdgeRule] => [`${key}.${edge.name}`, edge])
		)
	);
	const chosen = Object.entries(input).map(([name, value]): readonly [string, Mm] => {
		const edge = edges.get(name);
		const at = `${place}edges.`;
		if (!edge)
			throw new BadInput(at + name, `there is no edge of this name${didYouMean(name, edges.keys())}`);
		const allowance = allowanceOf(edge, name);
		if (!allowance) throw new BadInput(at + name, 'this edge lies on the fold of the cloth and is not cut');
		return [name, readLengthAllowance(allowance, value, unit, at)];
	});
	return Object.fromEntries(chosen);
};

/**
 * Reads a body's file for a garment: besides measurements and allowances it may say `"edges": {"front.side": 1.5}`, in the body's
 * unit. Throws BadInput, naming the place, the nearest name and the value.
 */
export const readMaker = (file: InputFile, garment: Garment): Maker => {
	const place = `${file.place}: `;
	const input = parsedJson(file);
	const { edges = {}, ...rest } = isRecord(input) ? input : {};
	const body = readBody(isRecord(input) ? rest : input, place, file.name, garment.allowances);
	return { body, edges: readEdges(edges, garment, body.unit, place) };
};
