/** The page of a lesson, for who loads it only when an assignment is drafted. Asked for by itself it would part the file that lessons begin with. */
export { default as Desk } from '#ui/pages/lesson/LessonPage.svelte';
