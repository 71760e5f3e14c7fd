/** Garments, methods and lessons that were renamed or became one: the id of each now, by the id that it had. */
const NOW: Readonly<Record<string, string>> = {
	'swift-quarter-skirt': 'circle-skirt',
	'swift-half-skirt': 'circle-skirt',
	'swift-three-quarter-skirt': 'circle-skirt',
	'swift-full-skirt': 'circle-skirt',
	'85-swift-quarter-skirt': '85-circle-skirt',
	'86-swift-half-skirt': '85-circle-skirt',
	'87-swift-three-quarter-skirt': '85-circle-skirt',
	'88-swift-full-skirt': '85-circle-skirt'
};

/** What is now called otherwise, by the id that it had; undefined for what was never renamed. */
export const renamed = (id: string): string | undefined => (Object.hasOwn(NOW, id) ? NOW[id] : undefined);

/** A page that shows something by its id, in any language: `/es/patterns/circle-skirt`. */
const PAGE = /^((?:\/[a-z]+)?\/(?:lessons|patterns|drafts)\/)([^/]+)/;

/** The path of a page under the new id of what it shows; undefined where no old id stands in it. */
export const movedPath = (path: string): string | undefined => {
	const [whole = '', before = '', id = ''] = PAGE.exec(path) ?? [];
	const now = renamed(id);
	return now === undefined ? undefined : before + now + path.slice(whole.length);
};
