import { mm } from '#shared/units.ts';
import { howSure } from '#drafting/sureness/how-sure.ts';
import type { SureJob } from './sure-job.ts';

self.addEventListener('message', ({ data }: MessageEvent<SureJob>) => {
	const { method, body, draft, errors } = data;
	self.postMessage(howSure(method, body, draft, (key) => errors[key] ?? mm(0)));
});
