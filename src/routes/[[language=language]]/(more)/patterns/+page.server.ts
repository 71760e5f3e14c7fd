import { GARMENTS } from '../../../catalogue.server.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = () => ({ garments: GARMENTS });
