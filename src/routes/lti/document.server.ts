/** Pages for whoever comes from a learning platform: they work in a frame, without a script and with nothing kept in the browser. */

const SIGNS: Readonly<Record<string, string>> = {
	'&': '&amp;',
	'<': '&lt;',
	'>': '&gt;',
	'"': '&quot;',
	"'": '&#39;'
};

/** A text that stands in a page, or in quotation marks within a tag. */
export const written = (text: string): string => text.replace(/[&<>"']/g, (sign) => SIGNS[sign] ?? '');

/** As plain as a form can be: the site's own styles come with its pages. */
const STYLE = `:root{color-scheme:light dark}
body{max-width:44rem;margin:0 auto;padding:1.25rem;font:1rem/1.6 system-ui,sans-serif}
h1{margin:0 0 .5rem;font-size:1.4rem}h2{margin:1.5rem 0 .25rem;font-size:1.05rem}
label{display:flex;gap:.6rem;align-items:baseline;padding:.3rem 0}
summary{padding:.3rem 0;cursor:pointer}p{margin:.5rem 0}
button{margin:1.25rem 0;padding:.6rem 1.2rem;border:0;border-radius:8px;background:#1f5f9e;color:#fff;font:inherit;font-weight:600;cursor:pointer}
button:focus-visible,summary:focus-visible,input:focus-visible{outline:3px solid #1f5f9e;outline-offset:2px}`;

/** Apart, since it would end the script that whoever reads this file puts it into. */
const SCRIPT = 'script';

interface Parts {
	readonly language: string;
	/** Of HTML. */
	readonly body: string;
	/** The platform that may show it in a frame, once it has proved to be one. */
	readonly origin: string;
	/** Where its form may go: this site alone, where nothing is said. */
	readonly formTo?: string;
	/** The path of a script. */
	readonly script?: string;
}

export const page = ({ language, body, origin, formTo = "'self'", script }: Parts): Response =>
	new Response(
		`<!doctype html><html lang="${language}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width">` +
			`<title>Square Across</title><style>${STYLE}</style></head><body>${body}` +
			`${script === undefined ? '' : `<${SCRIPT} src="${script}"></${SCRIPT}>`}</body></html>`,
		{
			headers: {
				'content-type': 'text/html; charset=utf-8',
				'cache-control': 'no-store',
				'content-security-policy':
					`default-src 'none'; style-src 'unsafe-inline'; script-src ${script === undefined ? "'none'" : "'self'"}; ` +
					`form-action ${formTo}; object-src 'none'; base-uri 'none'; frame-ancestors ${origin}`
			}
		}
	);
