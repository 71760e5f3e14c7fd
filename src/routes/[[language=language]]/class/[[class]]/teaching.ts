/** What a teacher looks at drafts with: loaded when that is asked for. */
export { default as DraftPage } from '#ui/pages/class/teaching/DraftPage.svelte';
