/** A process that takes in what learners hand in, and nothing else: `tsx tests/server/hand-in-server.ts PLACE`, a place as JSON. It says its address. */
import { createServer } from 'node:http';
import { json } from 'node:stream/consumers';
import { callerOf } from '#server/people/sessions.ts';
import type { StorePlace } from '#server/settings.ts';
import { openStore } from '#server/store/store.ts';
import { carryOut } from '#server/use-case.ts';
import { USE_CASES } from '#server/use-cases/all.ts';
import { lessonCourse } from '../../src/cli/lesson-course.ts';

const world = {
	store: await openStore(JSON.parse(process.argv[2] ?? '') as StorePlace),
	now: Date.now,
	cost: { N: 16, r: 1, p: 1 },
	course: lessonCourse(),
	engine: 'tested'
};

const server = createServer((request, response) => {
	const answer = async (): Promise<unknown> => {
		const [, secret = ''] = (request.headers.cookie ?? '').split('=');
		const caller = await callerOf(world, secret);
		return carryOut(USE_CASES.handIn, world, { caller, address: '' }, await json(request));
	};
	void answer().then(
		(found) => response.end(JSON.stringify(found)),
		() => response.writeHead(503).end()
	);
});
server.listen(0, '127.0.0.1', () => {
	const address = server.address();
	console.log(`http://127.0.0.1:${typeof address === 'object' && address ? address.port : ''}`);
});
