/** What exercises that a class was set are answered and looked at with: loaded when that is asked for. */
export { default as PractisePage } from '#ui/pages/class/practising/PractisePage.svelte';
export { default as AnswersPage } from '#ui/pages/class/practising/AnswersPage.svelte';
