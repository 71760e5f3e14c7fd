/** The components that a lesson's Markdown may use; the build imports them into every lesson. */
export { default as Comparison } from './Comparison.svelte';
export { default as Figure } from './Figure.svelte';
export { default as SideBySide } from './SideBySide.svelte';
export { default as Step } from './Step.svelte';
export { default as Tape } from './Tape.svelte';
export { default as TryIt } from './TryIt.svelte';
