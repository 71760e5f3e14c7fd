import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import { readBody, type Body } from '#shared/body.ts';
import { MEASUREMENT_KEYS } from '#shared/measurements.ts';
import type { Method } from '#drafting/method.ts';
import type { Garment } from '#garment/garment.ts';
import { makePattern, type Choices, type Pattern, type PatternWork } from '#garment/pattern.ts';
import { readGarment } from '#garment/read-garment.ts';
import { selfCrossings } from '#geometry/kernel/crossings.ts';
import { lessonMethod } from '../drafting/lesson-method.ts';
import type { Numbers } from './back-block.ts';

const PLACE = 'lessons/60-the-course-dress/garment.yaml';
const FILE = fileURLToPath(new URL(`../../${PLACE}`, import.meta.url));
const METHODS: readonly Method[] = [
	'62-dress-front-top',
	'68-dress-back-waist',
	'69-dress-facing',
	'70-dress-skirt',
	'71-dress-casing',
	'72-dress-binding'
].map(lessonMethod);

/** The course dress, as its lessons make it. */
export const DRESS: Garment = readGarment(parse(readFileSync(FILE, 'utf8')), PLACE, (id) =>
	METHODS.find((method) => method.id === id)
);

/** A body of so many centimetres each; what is no measurement is an allowance. */
const bodyOf = (numbers: Numbers): Body => {
	const isMeasured = ([key]: [string, number]): boolean => MEASUREMENT_KEYS.some((each) => each === key);
	const all = Object.entries(numbers);
	return readBody(
		{
			...Object.fromEntries(all.filter(isMeasured)),
			allowances: Object.fromEntries(all.filter((each) => !isMeasured(each)))
		},
		'',
		'body',
		DRESS.allowances
	);
};

/** The dress for a body of so many centimetres; `edges` are cut with seam allowances of their own, in millimetres. */
export const dressFor = (numbers: Numbers, edges: Choices['edges'] = {}): PatternWork =>
	makePattern(DRESS, bodyOf(numbers), { allowances: {}, edges });

/** What is wrong with a pattern that nobody would be told of: an outline that crosses itself, before or after allowances. */
export const tangles = ({ pieces }: Pattern): readonly string[] =>
	pieces.flatMap(({ key, outline, cutting }) => [
		...(selfCrossings(outline).length > 0 ? [`${key} stitching`] : []),
		...(selfCrossings(cutting.outline).length > 0 ? [`${key} cutting`] : [])
	]);
