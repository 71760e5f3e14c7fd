import type { RequestListener } from 'node:http';

/**
 * Compresses what is made on request: by brotli or gzip, as it comes, where whoever asks takes it. What was compressed when it was built
 * goes on as it is, and so do streams of events, each of which is to arrive at once.
 */
export const compressing = async (listener: RequestListener): Promise<RequestListener> => {
	const { default: compression } = await import('compression');
	const compress = compression({
		filter: (request, response) =>
			!String(response.getHeader('content-type')).startsWith('text/event-stream') &&
			compression.filter(request, response)
	});
	return (request, response) => {
		compress(request, response, () => {
			listener(request, response);
		});
	};
};
