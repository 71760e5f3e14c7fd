import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { diagnose } from '#checker/missteps/diagnose.ts';
import type { Diagnosis } from '#checker/missteps/misstep.ts';
import { diagnosisWords } from '#checker/missteps/words.ts';
import { readSum } from '#drafting/formula/sum.ts';
import { stepNamed } from '#drafting/method.ts';
import { COMPASS } from '#drafting/steps/compass.ts';
import { stepRuler } from '#drafting/steps/kinds.ts';
import { moved } from '#geometry/point.ts';
import { draftOf } from '../drafting/small-method.ts';
import { lessonMethods } from '../lessons/lesson-files.ts';
import { notesOf } from '../checker/missteps/notes.ts';
import { english } from '../support/speech.ts';
import { TYPED_MISTAKES, UNTOLD, type TypedMistake } from './typed-sums.ts';

/**
 * How often a typed sum's mistake is named first, on a list that is not the generators' own. `held` measures the half that
 * is held back, without showing it; else the other half is measured and what is not named right is shown.
 */
const HELD = process.argv[2] === 'held';

const METHODS = lessonMethods();

const told = ({ body: id, method: name, step, sum, from, go }: TypedMistake): Diagnosis => {
	const [method, body] = [METHODS.get(name), DEMO_BODIES.find((each) => each.id === id)?.body];
	if (!method || !body) throw new Error(`there is no ${name} of ${id}`);
	const draft = draftOf(method, body);
	const ruler = stepRuler(stepNamed(method, step));
	const [start, way] = [from ?? ruler?.from ?? '', go ?? ruler?.go];
	const begin = draft.points[start];
	if (!begin || !way) throw new Error(`${name} ${step} is not typed`);
	const { x, y } = moved(begin, COMPASS[way], readSum(sum, body.unit).value);
	return diagnose(method, step, body, draft, {
		kind: 'point',
		at: [x, y],
		typed: { form: 'distance', sum, from: start, go: way, unit: body.unit }
	});
};

const isFirst = ({ told: wanted }: TypedMistake, found: Diagnosis): boolean => {
	const [first = ''] = notesOf(found);
	return wanted.some((note) => first.startsWith(note));
};

const list = TYPED_MISTAKES.filter((_, i) => (i % 2 === 1) === HELD);
const found = list.map((mistake) => ({ mistake, diagnosis: told(mistake) }));
const right = found.filter(({ mistake, diagnosis }) => isFirst(mistake, diagnosis));
const falsely = found.filter(
	({ mistake, diagnosis }) => diagnosis.kind === 'certain' && !isFirst(mistake, diagnosis)
);
const share = (part: number, whole: number): string => `${((100 * part) / whole).toFixed(1)} % of ${whole}`;
console.log(
	`first right ${share(right.length, list.length)}, certain and wrong ${share(falsely.length, list.length)}`
);
const certain = UNTOLD.filter((each) => told(each).kind === 'certain');
for (const each of certain) console.log(each.step, each.sum, notesOf(told(each)));
console.log(`certain where there is nothing to tell: ${certain.length} of ${UNTOLD.length}`);
if (!HELD)
	for (const { mistake, diagnosis } of found.filter((each) => !right.includes(each)))
		console.log(
			`${mistake.body} ${mistake.method} ${mistake.step} ${mistake.sum}: wanted ${mistake.told.join(' or ')}; ` +
				`told ${notesOf(diagnosis).join(' | ') || 'nothing'} ${diagnosisWords(diagnosis, english)}`
		);
