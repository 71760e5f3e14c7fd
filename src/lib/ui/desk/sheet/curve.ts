/** What is drawn about a curve while it is set, loaded only for one: the guides under it, and how it looks from near by. */
export { default as Guides } from './CurveGuides.svelte';
export { default as Near } from './Inset.svelte';
