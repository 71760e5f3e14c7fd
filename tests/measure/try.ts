import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { pointMissteps } from '#checker/missteps/point-missteps.ts';
import { diagnose } from '#checker/missteps/diagnose.ts';
import { generatedBody } from '../../src/lib/practice/generate-body.ts';
import { chanceOf } from '../../src/lib/practice/chance.ts';
import { backBlock, frontBlock } from '../drafting/lesson-method.ts';
import { draftOf } from '../drafting/small-method.ts';
const N = Number(process.argv[2] ?? 30);
const front = frontBlock();
const bodies = [...DEMO_BODIES.map((b) => b.body), ...Array.from({ length: N }, (_, i) => generatedBody(i + 1, front))];
const chance = chanceOf(1, 'measure');
const kindOf = (note: string) => note.split(':').slice(0, note.startsWith('allowance') || note.startsWith('direction') || note.startsWith('unit')? 2 : 1).join(':');
interface T { n: number; w: number; top: number; topW: number; wrongC: number; wrongCW: number; cert: number; either: number; none: number; in3: number }
const T0 = (): T => ({ n: 0, w: 0, top: 0, topW: 0, wrongC: 0, wrongCW: 0, cert: 0, either: 0, none: 0, in3: 0 });
const all = T0(), sep = T0(); const kinds = new Map<string, T>(); const kindsAll = new Map<string, T>();
const misses = new Map<string, number>();
let rnd = 0, rndC = 0, rndE = 0, axis = 0, axisC = 0, passed = 0, t = 0, calls = 0;
for (const m of [backBlock(), front]) for (const body of bodies) {
 const d = draftOf(m, body); const pts = Object.values(d.points);
 const [x0, x1, y0, y1] = [Math.min(...pts.map(p => p.x)), Math.max(...pts.map(p => p.x)), Math.min(...pts.map(p => p.y)), Math.max(...pts.map(p => p.y))];
 for (const s of m.steps) { const right = d.points[s.name]; if (!right || s.kind === 'corner') continue;
  const cs = pointMissteps(m, s.name, body, d);
  for (const c of cs) {
   const at: [number, number] = [c.place.x + chance.normal(), c.place.y + chance.normal()];
   if (Math.hypot(at[0] - right.x, at[1] - right.y) <= 2) { passed++; continue; }
   const t0 = performance.now(); const r = diagnose(m, s.name, body, d, { kind: 'point', at }); t += performance.now() - t0; calls++;
   const notes = r.kind === 'certain' ? [r.misstep.note] : r.kind === 'either' ? r.missteps.map(x => x.note) : [];
   const isSep = !cs.some(o => o.note !== c.note && Math.hypot(o.place.x - c.place.x, o.place.y - c.place.y) <= 4);
   const k = kindOf(c.note); if (!kinds.has(k)) kinds.set(k, T0()); if (!kindsAll.has(k)) kindsAll.set(k, T0());
   for (const a of [all, kindsAll.get(k)!, ...(isSep ? [sep, kinds.get(k)!] : [])]) { a.n++; a.w += c.prior; if (notes[0] === c.note) { a.top++; a.topW += c.prior; } if (notes.includes(c.note)) a.in3++;
    if (r.kind === 'certain') { a.cert++; if (notes[0] !== c.note) { a.wrongC++; a.wrongCW += c.prior; } } else if (r.kind === 'either') a.either++; else a.none++; }
   if (isSep && notes[0] !== c.note) { const key = `${s.name} ${c.note} -> ${r.kind} ${notes[0] ?? ''} d=${Math.round(Math.hypot(c.place.x - right.x, c.place.y - right.y)/2)*2}`; misses.set(key, (misses.get(key) ?? 0) + 1); }
  }
  for (let i = 0; i < 40; i++) { const at: [number, number] = [x0 + chance.fraction() * (x1 - x0), y0 + chance.fraction() * (y1 - y0)]; if (Math.hypot(at[0] - right.x, at[1] - right.y) <= 2) continue;
   const r = diagnose(m, s.name, body, d, { kind: 'point', at }); rnd++; if (r.kind === 'certain') rndC++; if (r.kind === 'either') rndE++; }
  for (let i = 0; i < 20; i++) { const alongY = s.kind === 'mark' && (s.go === 'down' || s.go === 'up'); const at: [number, number] = alongY ? [right.x + chance.normal(), y0 + chance.fraction() * (y1 - y0)] : [x0 + chance.fraction() * (x1 - x0), right.y + chance.normal()]; if (Math.hypot(at[0] - right.x, at[1] - right.y) <= 2) continue;
   const r = diagnose(m, s.name, body, d, { kind: 'point', at }); axis++; if (r.kind === 'certain') axisC++; }
 }
}
const pc = (a: number, b: number) => (100 * a / b).toFixed(2);
const line = (name: string, a: T) => console.log(name.padEnd(24), 'n', a.n, 'top', pc(a.top, a.n), 'topW', pc(a.topW, a.w), 'wrongCertain', pc(a.wrongC, a.n), 'W', pc(a.wrongCW, a.w), 'certain', pc(a.cert, a.n), 'either', pc(a.either, a.n), 'none', pc(a.none, a.n), 'told', pc(a.in3, a.n));
line('all', all); line('separable', sep);
for (const [k, a] of [...kinds].sort()) line('  ' + k, a);
for (const [k, a] of [...kindsAll].sort()) line('  all ' + k, a);
console.log('random certain', pc(rndC, rnd), 'either', pc(rndE, rnd), 'axis certain', pc(axisC, axis), 'passed', passed, 'ms/call', (t / calls).toFixed(4));
for (const [k, n] of [...misses].sort((a, b) => b[1] - a[1]).slice(0, 40)) console.log(n, k);
