import { expect, it } from 'vitest';
import { Learner } from '#ui/learner/learner.svelte.ts';
import { Work } from '#ui/lesson/work.svelte.ts';
import { backBlock } from '../drafting/lesson-method.ts';
it('reacts', () => {
	const learner = new Learner();
	const work = new Work(backBlock(), learner);
	console.log(work.state('A'));
	work.place('A', { kind: 'point', at: [0, 222] });
	console.log(work.state('A'), work.verdict('A'));
	work.check('A');
	expect(work.state('A')).toBe('right');
	learner.change({body:'wren'});
	console.log(work.body.name, work.draft?.points['A']);
	expect(work.body.name).toBe('Wren');
});
