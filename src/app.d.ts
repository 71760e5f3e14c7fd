declare module '*.md' {
	import type { Component } from 'svelte';
	const component: Component;
	export default component;
	export const metadata: Record<string, unknown>;
}

declare namespace App {
	/** What the server hands on beside a request; absent in development. */
	interface Platform {
		readonly req: { readonly headers: Record<string, string | string[] | undefined> };
	}
}
