/** What the sheet shows once an outline has closed: brought in then, and not before. */
export { default as Closed } from './Closed.svelte';
export { default as Whole } from './Whole.svelte';
