import { pathMeetings } from '#geometry/kernel/meetings.ts';
import { crossings, selfCrossings } from '#geometry/kernel/crossings.ts';
import { withoutLoops } from '#geometry/kernel/loops.ts';
import { polyline } from '#geometry/path.ts';
const a={"kind":"cubic","from":{"x":268.0374487848118,"y":530.3651431128558},"leaving":{"x":273.0988137769419,"y":515.9166778653549},"arriving":{"x":277.8672715636009,"y":501.6468486528096},"to":{"x":282.95539997978534,"y":488.1002896111012}} as any;
const b={"kind":"cubic","from":{"x":282.92856974149674,"y":488.17256727062556},"leaving":{"x":286.62891435247934,"y":478.0852358314982},"arriving":{"x":290.9342201774525,"y":468.9038620310254},"to":{"x":295.7378860004764,"y":460.4760216327748}} as any;
console.log(pathMeetings([a],[b]), crossings([a],[b]), pathMeetings([b],[a]));
