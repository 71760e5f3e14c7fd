import { deep, LONG, type Hostile } from './bodies.ts';

const written = (step: string, value: unknown): string => JSON.stringify({ [step]: value });

/** Placement files that are of no use as a whole. */
export const hostilePlacements = (): Hostile => ({
	'nothing at all': '',
	'half a file': '{"A":[0,',
	null: 'null',
	'a list': '[]',
	'a number': '7',
	'a list nested 100,000 deep': deep(100_000),
	'a step of no name': written('a', [0, 1]),
	'a step called constructor': written('constructor', [0, 1]),
	'a step called toString': written('toString', [0, 1]),
	'a step whose name has ten megabytes': written(LONG, [0, 1]),
	'a step whose name has 15,000 letters': written('A'.repeat(15_000), [0, 1]),
	'a step called __proto__': '{"__proto__":[0,1]}',
	'a step twice': '{"W":[0,1],"W":[0,425]}',
	'a place twice': '{"W":{"kind":"point","at":[0,1],"at":[0,425]}}',
	'a typed distance from nowhere': '{"W":{"typed":"1","from":"Q9","go":"down"}}',
	'a typed distance where a line is asked for': '{"armhole":{"typed":"1"}}',
	'a step with a terminal code': written('\u001b[31mA', [0, 1])
});

const far = 1e308;
const bent = {
	kind: 'line',
	segments: [{ from: [330.9, -1], leaving: [330.9, -1], arriving: [5000, 397], to: [330.9, -1] }]
};

/** What one step is answered with that is no answer: the step is not valid or wrong, and the rest is judged. */
export const hostileAnswers: Readonly<Record<string, string>> = {
	null: 'null',
	true: 'true',
	'a text': '"here"',
	'one number': '[1]',
	'three numbers': '[1,2,3]',
	'places beyond all': `[${far},-${far}]`,
	'places of 1e999': '[1e999,1e999]',
	'texts for numbers': '["0","1"]',
	'nested 20,000 deep': deep(20_000),
	'nested 20,000 deep, as a place': `[${deep(20_000)},1]`,
	'no kind': '{"kind":"circle"}',
	'a point without a place': '{"kind":"point"}',
	'a point nested 20,000 deep': `{"kind":"point","at":${deep(20_000)}}`,
	'a line of nothing': '{"kind":"line","segments":[]}',
	'a line of 20,000 pieces': JSON.stringify({
		kind: 'line',
		segments: Array.from({ length: 20_000 }, () => ({ from: [0, 0], to: [1, 1] }))
	}),
	'a line that does not join':
		'{"kind":"line","segments":[{"from":[0,0],"to":[1,1]},{"from":[5,5],"to":[6,6]}]}',
	'a line of no length': '{"kind":"line","segments":[{"from":[0,0],"to":[0,0]}]}',
	'a curve out to the edge of the sheet and back': JSON.stringify(bent),
	'typed: nothing': '{"typed":""}',
	'typed: half a sum': '{"typed":"1+"}',
	'typed: a part of nothing': '{"typed":"1/0"}',
	'typed: nothing of nothing': '{"typed":"0/0"}',
	'typed: beyond all': '{"typed":"1e999"}',
	'typed: 10,000 brackets': JSON.stringify({ typed: '('.repeat(10_000) }),
	'typed: 10,000 terms': JSON.stringify({ typed: '1+'.repeat(10_000) }),
	'typed: 100,000 spaces': JSON.stringify({ typed: `9${' '.repeat(100_000)}x` }),
	'typed: ten megabytes': JSON.stringify({ typed: LONG }),
	'typed: a function of the language': '{"typed":"constructor(1)"}',
	'typed: a sum of 5,000 terms': JSON.stringify({ typed: Array.from({ length: 5000 }, () => '1').join('+') }),
	'typed: from __proto__': '{"typed":"1","from":"__proto__","go":"down"}',
	'typed: a way of no name': '{"typed":"1","from":"O","go":"constructor"}',
	'typed: 1e308 and more': '{"typed":"1e308*1e308"}',
	'typed: farther than the sheet goes': '{"typed":"999999999"}',
	'a key of no name': '{"kind":"point","at":[0,1],"colour":"red"}',
	'a key of two million letters': `{"kind":"point","at":[0,1],"${LONG}":1}`,
	'a point where a line is asked for, and the other way':
		'{"kind":"line","segments":[{"from":[0,0],"to":[0,425]}]}',
	'curved pieces that all lie in one place': JSON.stringify({
		kind: 'line',
		segments: [{ from: [9, 9], leaving: [9, 9], arriving: [9, 9], to: [9, 9] }]
	}),
	'typed: a list': '{"typed":[1]}'
};

/** Lines of a batch that are refused, or marked as nothing, each in its own line of output. */
export const hostileLines: readonly string[] = [
	'{"placements":',
	'7',
	'null',
	'[]',
	'"work"',
	'{}',
	'{"placements":7}',
	'{"placements":{},"body":null}',
	'{"placements":{},"body":7}',
	`{"placements":{},"body":${deep(20_000)}}`,
	`{"placements":{},"body":{"bust":${deep(20_000)}}}`,
	`{"placements":{},"body":{"unit":${deep(20_000)}}}`,
	`{"placements":{},"body":{"allowances":${deep(20_000)}}}`,
	`{"placements":{},"body":{"${LONG}":1}}`,
	`{"placements":${deep(20_000)}}`,
	`{"placements":{"A":${deep(20_000)}}}`,
	`{"placements":{"${LONG}":[0,1]}}`,
	`{"placements":{"__proto__":[0,1]}}`,
	`{"learner":${deep(20_000)},"placements":{}}`,
	`{"learner":"Ash","placements":{"W":{"typed":"1/0"}}}`,
	deep(100_000),
	'{"placements":{"W":[0,1],"W":[0,425]}}',
	'{"placements":{},"placements":{}}',
	'{"placements":{},"__proto__":{"body":7}}',
	'{"placements":{},"body":{"__proto__":{"bust":1}}}',
	'{"placements":{},"body":{"allowances":{"__proto__":{}}}}',
	'{"placements":{},"body":{"bust":1,"bust":2}}',
	'{"learner":"Ash","learner":"Elm","placements":{}}',
	`{"learner":"${LONG}","placements":7}`,
	'{"learner":"\\u001b[31mAsh","placements":7}',
	'{"placements":{"A":{"typed":"1","from":"__proto__"}}}',
	'{"placements":{"A":{"typed":"1","from":"O","go":"constructor"}}}'
];

/** Policies that are none. */
export const hostilePolicies: Hostile = {
	'nothing at all': '',
	'a list': '[]',
	'a level of no name': '{"level":"cruel"}',
	'a level called toString': '{"level":"toString"}',
	'a cost beyond all': '{"wrongCost":1e999}',
	'a negative cost': '{"wrongCost":-1}',
	'a key of no name': '{"cost":1}',
	'a level twice': '{"level":"normal","level":"strict"}',
	'a level called __proto__': '{"level":"__proto__"}',
	'a key called __proto__': '{"__proto__":{"level":"normal"}}',
	'half a file': '{"level":',
	'a cost nested 20,000 deep': `{"wrongCost":${deep(20_000)}}`,
	'a key of two million letters': `{"${LONG}":1}`,
	'nested 20,000 deep': `{"level":${deep(20_000)}}`
};
