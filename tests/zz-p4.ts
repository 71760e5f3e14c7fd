import {pathPart} from '#geometry/section.ts';import {pathEnd} from '#geometry/path.ts';import {movedBy,turning} from '#geometry/motion.ts';
import { cuttingLine, type StitchedEdge } from '#garment/cutting-line.ts';
import { pathReversed, pathData, pathSamples, polyline, pathStart, type Path } from '#geometry/path.ts';
import { segmentPoint, segmentDirection, cubic, straight } from '#geometry/segment.ts';
import { selfCrossings } from '#geometry/kernel/crossings.ts';
import { enclosedArea } from '#geometry/area.ts';
import { at, distance, between, directionTo, squareTo, moved } from '#geometry/point.ts';
import { mm } from '#shared/units.ts';
import { writeFileSync } from 'node:fs';
import { chances } from './reference/random-bodies.ts';
const chance = chances(77);
const pick=<T,>(a:T[]):T=>a[Math.floor(chance()*a.length)]!;
const AL=[0,6,10,15,30,40];
const same = process.argv[2]==='same';
const make=():StitchedEdge[]=>{
 const n=4+Math.floor(chance()*6);
 const vs=Array.from({length:n},(_,i)=>{const an=(i+0.7*chance())/n*2*Math.PI;const r=120+280*chance();return at(500+r*Math.cos(an),500+r*Math.sin(an));});
 const dir=chance()<.5; 
 let edges=vs.map((v,i)=>{const w=vs[(i+1)%n]!;const d=directionTo(v,w)!;const s=squareTo(d);const l=distance(v,w);
  const b1=(chance()-.5)*l*.6,b2=(chance()-.5)*l*.6; 
  const path:Path= chance()<.4?[straight(v,w)]:[cubic(v,moved(between(v,w,.3+.1*chance()),s,mm(b1)),moved(between(v,w,.6+.1*chance()),s,mm(b2)),w)];
  return path;});
 if(process.argv[5]){edges=edges.flatMap(path=>{if(chance()<.3)return [path];const t=.2+.6*chance();const [a]=[pathPart(path,0,t)!],[b]=[pathPart(path,t,1)!];const g=Math.pow(10,-5*chance())*(chance()<.5?-1:1)*.3;const e=pathEnd(b);const turned=b[0].kind==='straight'?b:[cubic(b[0].from,movedBy(turning(b[0].from,g as any),(b[0] as any).leaving),(b[0] as any).arriving,e)] as any;return [a,turned];});}
 if(dir) edges=edges.map(pathReversed).reverse();
 const a=pick(AL); const foldAt=chance()<.3?Math.floor(chance()*edges.length):-1;
 return edges.map((path,i)=>({name:'e'+i,path,kind:i===foldAt&&path[0].kind==='straight'?'fold' as const:chance()<.2?'hem' as const:'seam' as const,allowance:mm(same?a:pick(AL)),...(chance()<.3?{endCorner:pick(['mitre','square','trim','turn-up'] as const)}:{})}));
};
const bad:string[]=[];let tried=0,skipped=0,cross=0,near=0,off=0,area=0;let t=0;
for(let k=0;k<Number(process.argv[3]??1000);k++){
 const edges=make();const st=edges.flatMap(e=>e.path) as any;
 if(selfCrossings(st).length){skipped++;continue;}
 tried++;
 let c;const t0=performance.now();try{c=cuttingLine(edges);}catch(e){console.log('THROWN',k,e);continue;} t+=performance.now()-t0;
 let why='';if(process.argv[4]===String(k)){(globalThis as any).K={edges,c};const i=c.outline.findIndex(s=>selfCrossings(c.outline).some(q=>distance(q,s.from)<3));for(const s of c.outline.slice(Math.max(0,i-2),i+6))console.log(JSON.stringify(s));console.log(JSON.stringify(selfCrossings(c.outline)));}
 if(selfCrossings(c.outline).length){cross++;why+='cross ';}
 if(Math.abs(enclosedArea(c.outline))<Math.abs(enclosedArea(st))*.999||Math.sign(enclosedArea(c.outline))!==Math.sign(enclosedArea(st))){area++;why+='area ';}
 const samples=edges.map(e=>pathSamples(e.path,mm(1)));
 // straight paths need samples too
 const dense=edges.map((e,i)=>e.path[0].kind==='straight'?Array.from({length:801},(_,j)=>segmentPoint(e.path[0],j/800)):samples[i]!);
 const side=enclosedArea(st)>0?-1:1;const al=edges.map(e=>e.kind==='fold'?0:e.allowance);
 const corners=edges.map((e,i)=>({p:pathStart(e.path),r:3.2*Math.max(al[i]!,al.at(i-1)!)}));
 const marks:any[]=[];let worstNear=0,worstOff=0;
 for(const s of c.outline)for(let j=0;j<12;j++){const p=segmentPoint(s,j/12);
  let reached=false;
  const nearCorner=corners.some(q=>distance(q.p,p)<q.r+1);
  for(let e=0;e<edges.length;e++){const pts=dense[e]!;let m=1e9,mi=0;for(let i=0;i<pts.length;i++){const d2=(pts[i]!.x-p.x)**2+(pts[i]!.y-p.y)**2;if(d2<m){m=d2;mi=i;}}
   const seg=(i:number)=>{const a=pts[i],b=pts[i+1];if(!a||!b)return 1e18;const x=b.x-a.x,y=b.y-a.y;const u=Math.min(1,Math.max(0,((p.x-a.x)*x+(p.y-a.y)*y)/(x*x+y*y)));return (a.x+u*x-p.x)**2+(a.y+u*y-p.y)**2};m=Math.min(m,seg(mi-1),seg(mi));const d=Math.sqrt(m);const foot=mi>0&&mi<pts.length-1;
   const q1=pts[Math.max(0,mi-1)]!,q2=pts[Math.min(pts.length-1,mi+1)]!;const outw=((q2.x-q1.x)*(p.y-pts[mi]!.y)-(q2.y-q1.y)*(p.x-pts[mi]!.x))*side>0;if(foot&&!nearCorner&&outw){{worstNear=Math.max(worstNear,al[e]!-d);if(al[e]!-d>.1)marks.push(p)}}
   if(Math.abs(d-al[e]!)<.1)reached=true; 
  }
  if(!reached&&!nearCorner){worstOff++;marks.push(p)}
 }
 if(worstNear>.1){near++;why+='near'+worstNear.toFixed(2)+' ';}
 if(worstOff){off++;why+='off'+worstOff;}
 if(why)bad.push(`<g><text x="100" y="60" font-size="40">${k} ${why}</text><path d="${edges.map(e=>pathData(e.path)).join('')}" fill="none" stroke="#888" stroke-width="2"/><path d="${pathData(c.outline,3,true)}" fill="rgba(200,80,80,.15)" stroke="#c00" stroke-width="2"/>${marks.map(m=>`<circle cx="${m.x}" cy="${m.y}" r="5" fill="blue"/>`).join('')}${selfCrossings(c.outline).map(m=>`<circle cx="${m.x}" cy="${m.y}" r="9" fill="lime"/>`).join('')}${edges.map((e,i)=>{const m=segmentPoint(e.path[0],.5);return `<text x="${m.x}" y="${m.y}" font-size="30">${e.kind[0]}${al[i]}${e.endCorner??''}</text>`}).join('')}</g>`);
}
console.log({tried,skipped,cross,near,off,area,ms:t/tried});
writeFileSync('/tmp/p4.html',`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4000 2800" width="2600">${bad.slice(0,24).map((b,i)=>b.replace('<g>',`<g transform="translate(${(i%4)*1000} ${Math.floor(i/4)*1000})">`)).join('')}</svg>`);
