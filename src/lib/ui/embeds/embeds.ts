/** The components that a lesson's Markdown may use; the build reads this list, and imports into each lesson those that it uses. */
export { default as Comparison } from './Comparison.svelte';
export { default as Figure } from './Figure.svelte';
export { default as GarmentPieces } from './GarmentPieces.svelte';
export { default as Girths } from './Girths.svelte';
export { default as GarmentWorn } from './GarmentWorn.svelte';
export { default as LayingFigure } from './LayingFigure.svelte';
export { default as OrderOfSewing } from './OrderOfSewing.svelte';
export { default as PieceFigure } from './PieceFigure.svelte';
export { default as SewnSeam } from './SewnSeam.svelte';
export { default as Step } from './Step.svelte';
export { default as Tape } from './Tape.svelte';
export { default as Toile } from './Toile.svelte';
export { default as TryIt } from './TryIt.svelte';
