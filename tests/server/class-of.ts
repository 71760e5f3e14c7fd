import { USE_CASES } from '#server/use-cases/all.ts';
import { handedEvent, type School } from './school.ts';

/** A mark that was put down for a step of the back, and checked. */
export const mark = (step: string, at: readonly [number, number], more: object = {}) => ({
	step,
	entry: { placement: { kind: 'point', at }, checked: true, kept: false, help: 0, shown: false, ...more }
});

/** A class with learners, who hand in one after the other what is theirs. */
export const classOf = async (
	school: School,
	work: Readonly<Record<string, readonly object[]>>,
	task: Readonly<Record<string, unknown>> = {}
) => {
	const teacher = await school.teacher('Ms Alder');
	const { class: own, code } = await school.newClass(teacher, 'Alder');
	const assignment = await school.newAssignment(teacher, own, {
		lessons: ['41-back-neck-and-shoulder', '42-back-armhole'],
		...task
	});
	const learners: Record<string, { readonly secret: string; readonly id: string }> = {};
	const hand = async (name: string, from: number, marks: readonly object[]): Promise<void> => {
		const { secret, id: learner } = learners[name] ?? { secret: '', id: '' };
		const events = marks.map((done, i) => handedEvent(assignment, from + i, done as Record<string, unknown>));
		await school.ask(USE_CASES.handIn, secret, { learner, events });
	};
	for (const [name, marks] of Object.entries(work)) {
		const made = await school.learner(code, name);
		learners[name] = made;
		await school.ask(USE_CASES.openAssignment, made.secret, { assignment });
		if (marks.length > 0) await hand(name, 1, marks);
	}
	return { teacher, class: own, code, assignment, learners, hand };
};
