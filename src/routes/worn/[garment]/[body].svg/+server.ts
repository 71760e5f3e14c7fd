import { error } from '@sveltejs/kit';
import { DEMO_BODIES } from '#shared/bodies/index.ts';
import { wornSvg } from '#ui/garments/worn-svg.ts';
import { courseAt } from '../../../course.server.ts';
import { wornBy } from '../../../worn.server.ts';
import type { EntryGenerator, RequestHandler } from './$types';

export const prerender = true;

/** Every garment on every invented body that can have it. */
export const entries: EntryGenerator = () =>
	courseAt(new URL('http://localhost/')).garments.flatMap((garment) =>
		DEMO_BODIES.flatMap(({ id, body }) => (wornBy(garment, body) ? [{ garment: garment.id, body: id }] : []))
	);

/** A garment as an invented body wears it, as a picture. */
export const GET: RequestHandler = ({ params, url }) => {
	const garment = courseAt(url).garment(params.garment);
	const found = DEMO_BODIES.find(({ id }) => id === params.body);
	const worn = garment && found && wornBy(garment, found.body);
	if (!worn) return error(404);
	return new Response(wornSvg(worn), { headers: { 'content-type': 'image/svg+xml' } });
};
