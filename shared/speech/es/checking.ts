import { onPaper } from './on-paper.ts';
import { photograph } from './photograph.ts';
import { tape } from './tape.ts';

/** Lo que solo se dice en la página de los trazados en papel. */
export const checking = { onPaper, photograph, tape };
