/** Milliseconds after which a browser has surely taken a file up. */
const TAKEN_UP = 60_000;

/** Hands a file to the browser to be saved; nothing is sent anywhere. */
export const download = (name: string, content: Blob): void => {
	const address = URL.createObjectURL(content);
	const link = Object.assign(document.createElement('a'), { href: address, download: name });
	link.click();
	setTimeout(() => {
		URL.revokeObjectURL(address);
	}, TAKEN_UP);
};

/** Hands a text to the browser as a file to be saved. */
export const downloadText = (name: string, text: string, type = 'text/plain'): void => {
	download(name, new Blob([text], { type }));
};
