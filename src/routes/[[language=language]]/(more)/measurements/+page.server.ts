import { METHODS_IN_ORDER } from '../../../catalogue.server.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = () => ({
	methods: METHODS_IN_ORDER.filter(({ measurements }) => measurements.length > 0)
});
