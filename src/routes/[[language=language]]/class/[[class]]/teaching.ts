/** What a teacher looks at drafts with: loaded when that is asked for. */
export { default as DraftPage } from '#ui/pages/class/teaching/DraftPage.svelte';
export { default as BoardPage } from '#ui/pages/class/teaching/BoardPage.svelte';
export { default as RemarkingPage } from '#ui/pages/class/teaching/RemarkingPage.svelte';
