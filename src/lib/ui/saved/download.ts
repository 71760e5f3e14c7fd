/** Hands a text to the browser as a file to be saved; nothing is sent anywhere. */
export const downloadText = (name: string, text: string, type = 'text/plain'): void => {
	const address = URL.createObjectURL(new Blob([text], { type }));
	const link = Object.assign(document.createElement('a'), { href: address, download: name });
	link.click();
	URL.revokeObjectURL(address);
};
