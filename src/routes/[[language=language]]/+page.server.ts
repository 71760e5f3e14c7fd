import { LESSONS, METHODS_IN_ORDER } from '../catalogue.server.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = () => ({ lessons: LESSONS, methods: METHODS_IN_ORDER });
