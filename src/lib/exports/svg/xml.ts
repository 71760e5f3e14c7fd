/** What no XML file may hold, not even escaped (XML 1.0, section 2.2): a reader refuses the whole file for one of them. */
const FORBIDDEN = /[^\t\n\r\u{20}-\u{D7FF}\u{E000}-\u{FFFD}\u{10000}-\u{10FFFF}]/gu;

/** Text as it may stand in an XML file, in an element or in an attribute. */
export const escaped = (text: string): string =>
	text.replace(FORBIDDEN, '').replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);
