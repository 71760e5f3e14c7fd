import { readBody, type Body } from '../body.ts';
import eider from './eider.json' with { type: 'json' };
import gannet from './gannet.json' with { type: 'json' };
import heron from './heron.json' with { type: 'json' };
import lark from './lark.json' with { type: 'json' };
import plover from './plover.json' with { type: 'json' };
import siskin from './siskin.json' with { type: 'json' };
import wren from './wren.json' with { type: 'json' };

/** A body that lessons may be tried with. */
export interface DemoBody {
	/** Names the file and the choice: "heron". */
	readonly id: string;
	readonly body: Body;
}

const demo = (id: string, file: unknown): DemoBody => ({
	id,
	body: readBody(file, `shared/bodies/${id}.json: `)
});

/** The invented bodies, named after birds. Nobody was measured for any of them. The first is the one that lessons show. */
export const DEMO_BODIES: readonly DemoBody[] = [
	demo('heron', heron),
	demo('wren', wren),
	demo('plover', plover),
	demo('lark', lark),
	demo('gannet', gannet),
	demo('eider', eider),
	demo('siskin', siskin)
];
