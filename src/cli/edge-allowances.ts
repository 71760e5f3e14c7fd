import { CUTTING_ALLOWANCES, type LengthAllowance } from '#shared/allowances.ts';
import { BadInput, shown } from '#shared/bad-input.ts';
import { readBody, readLengthAllowance, type Body } from '#shared/body.ts';
import { unknownHere } from '#shared/reading.ts';
import { message } from '#shared/speech/message.ts';
import type { Speech } from '#shared/speech/speech.ts';
import type { Mm, Unit } from '#shared/units.ts';
import type { EdgeRule, Garment } from '#garment/garment.ts';
import { tellFormer } from './former-names.ts';
import type { InputFile } from './input-file.ts';
import { readJson } from './read-json.ts';

/** A body, and what its maker chose to cut single edges with, by the edges' names (`front.side`). */
export interface Maker {
	readonly body: Body;
	readonly edges: Readonly<Record<string, Mm>>;
}

/** How wide an edge may be cut: as wide as any other of its kind. None for a fold, which is not cut. */
const allowanceOf = ({ kind }: EdgeRule, name: string, { words }: Speech): LengthAllowance | undefined => {
	const usual = kind === 'hem' ? 'hemAllowance' : 'seamAllowance';
	const found = kind === 'fold' ? undefined : CUTTING_ALLOWANCES.find(({ key }) => key === usual);
	return found && { ...found, key: name, noun: words.nouns.edgeAllowance(name) };
};

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
	typeof value === 'object' && value !== null && !Array.isArray(value);

const readEdges = (
	input: unknown,
	{ pieces }: Garment,
	unit: Unit,
	place: string,
	speech: Speech
): Readonly<Record<string, Mm>> => {
	if (!isRecord(input))
		throw new BadInput(`${place}edges`, message('command', 'edgesShape', { seen: shown(input) }));
	const edges = new Map(
		pieces.flatMap(({ key, edges: own }) =>
			own.map((edge): readonly [string, EdgeRule] => [`${key}.${edge.name}`, edge])
		)
	);
	const chosen = Object.entries(input).map(([name, value]): readonly [string, Mm] => {
		const edge = edges.get(name);
		const at = `${place}edges.`;
		if (!edge) throw new BadInput(at + name, unknownHere('edge', name, edges.keys()));
		const allowance = allowanceOf(edge, name, speech);
		if (!allowance) throw new BadInput(at + name, message('command', 'onFold'));
		return [name, readLengthAllowance(allowance, value, unit, at)];
	});
	return Object.fromEntries(chosen);
};

/**
 * Reads a body's file for a garment: besides measurements and allowances it may say `"edges": {"front.side": 1.5}`, in the body's
 * unit. Throws BadInput, naming the place, the nearest name and the value.
 */
export const readMaker = (file: InputFile, garment: Garment, speech: Speech): Maker => {
	const place = `${file.place}: `;
	const input = readJson(file);
	tellFormer(input, file.place, speech);
	const { edges = {}, ...rest } = isRecord(input) ? input : {};
	const body = readBody(isRecord(input) ? rest : input, place, file.name, garment.allowances);
	return { body, edges: readEdges(edges, garment, body.unit, place, speech) };
};
