import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { diagnose } from '#checker/missteps/diagnose.ts';
import { backBlock, frontBlock } from '../drafting/lesson-method.ts';
import { draftOf } from '../drafting/small-method.ts';
const cases = [backBlock(), frontBlock()].flatMap((m) => DEMO_BODIES.flatMap(({ body }) => { const d = draftOf(m, body); return m.steps.filter(s => d.points[s.name] && s.kind !== 'corner').map(s => ({ m, body, d, s: s.name, p: d.points[s.name]! })); }));
for (let r = 0; r < 4; r++) { const t = performance.now(); let n = 0; for (let i = 0; i < 40; i++) for (const c of cases) { diagnose(c.m, c.s, c.body, c.d, { kind: 'point', at: [c.p.x + 20 + i, c.p.y] }); n++; } console.log(((performance.now() - t) / n).toFixed(4), 'ms', n); }
