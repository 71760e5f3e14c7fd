/**
 * How near what is told of the sureness of points comes to what is tried: every point of every draft that measurements move, on all
 * demo bodies. `-- 4000` for that many tries each, a second word for drafts that begin so.
 */
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { lessonCourse } from '../../src/cli/lesson-course.ts';
import { comparedWithTries, errorOf } from '../drafting/against-tries.ts';

const USUAL_TRIES = 20_000;
const ALLOWED = 0.05;

const [tries = String(USUAL_TRIES), begins = ''] = process.argv.slice(2).filter((word) => word !== '--');
const course = lessonCourse();
let [points, beyond] = [0, 0];
for (const id of course.methodIds.filter((each) => each.startsWith(begins))) {
	const method = course.method(id);
	if (!method || method.measurements.length === 0) continue;
	for (const { body } of DEMO_BODIES) {
		const compared = comparedWithTries(method, body, Number(tries));
		const worst = compared.toSorted((a, b) => errorOf(b) - errorOf(a))[0];
		const far = compared.filter((each) => errorOf(each) > ALLOWED);
		points += compared.length;
		beyond += far.length;
		const bent = compared.filter(({ bends }) => bends).length;
		const named = far.map((each) => `${each.point} ${each.told.toFixed(2)}/${each.tried.toFixed(2)}`);
		console.log(
			`${id.padEnd(22)}${body.name.padEnd(8)}${String(compared.length).padStart(4)} points, ${String(bent)} tried; worst ${(100 * (worst ? errorOf(worst) : 0)).toFixed(1)} %${named.length > 0 ? `; beyond 5 %: ${named.join(', ')}` : ''}`
		);
	}
}
console.log(`${String(points)} points, ${String(beyond)} of them beyond 5 %`);
