/** What is used here of a package that says no types of its own, and whose outside ones bring those of a whole framework. */
declare module 'compression' {
	import type { IncomingMessage, ServerResponse } from 'node:http';

	interface Options {
		/** Whether an answer is to be compressed, once its headers are known. */
		readonly filter?: (request: IncomingMessage, response: ServerResponse) => boolean;
	}
	const compression: {
		(options: Options): (request: IncomingMessage, response: ServerResponse, next: () => void) => void;
		/** Whether what an answer is said to be is worth compressing. */
		filter(request: IncomingMessage, response: ServerResponse): boolean;
	};
	export default compression;
}
