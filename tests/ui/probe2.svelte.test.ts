// @vitest-environment ./tests/ui/browser-code.ts
import { flushSync } from 'svelte';
import { expect, it } from 'vitest';
import { Learner } from '#ui/learner/learner.svelte.ts';
import { Work } from '#ui/lesson/work.svelte.ts';
import { backBlock } from '../drafting/lesson-method.ts';
it('reacts', () => {
	const learner = new Learner();
	const work = new Work(backBlock(), learner);
	console.log(Work.toString().slice(0,900));
	const seen: string[] = [];
	const stop = $effect.root(() => { $effect(() => { seen.push(work.state('A')); }); });
	flushSync();
	work.place('A', { kind: 'point', at: [0, 222] });
	flushSync();
	work.check('A');
	flushSync();
	expect(work.state('A')).toBe('right');
	learner.change({body:'wren'});
	expect(work.body.name).toBe('Wren');
	flushSync(); stop();
	console.log(seen);
});
