import { doubts } from './doubts.ts';
import { drafts } from './drafts.ts';
import { files } from './files.ts';
import { formulas } from './formulas.ts';
import { garments } from './garments.ts';
import { looking } from './looking.ts';
import { keeping } from './keeping.ts';
import { markers } from './markers.ts';
import { measured } from './measured.ts';
import { measurements } from './measurements.ts';
import { missteps } from './missteps.ts';
import { nested } from './nested.ts';
import { paper } from './paper.ts';
import { pattern } from './pattern.ts';
import { practice } from './practice.ts';
import { shapes } from './shapes.ts';
import { sizes } from './sizes.ts';
import { steps } from './steps.ts';
import { sureness } from './sureness.ts';
import { wear } from './wear.ts';

/** What is said only where it is asked for, or on other pages. */
export const later = {
	doubts,
	drafts,
	formulas,
	sizes,
	steps,
	missteps,
	practice,
	garments,
	pattern,
	files,
	looking,
	nested,
	paper,
	keeping,
	markers,
	measured,
	measurements,
	shapes,
	sureness,
	wear
};
