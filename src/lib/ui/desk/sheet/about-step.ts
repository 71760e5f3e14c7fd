/** What few steps have about them, loaded with the first that does: the guides of a curve, how it looks from near by, and how a part moves. */
export { default as Guides } from './CurveGuides.svelte';
export { default as Near } from './Inset.svelte';
export { default as Moving } from './Moving.svelte';
