/** Garments, methods and lessons that were renamed or became one: the id of each now, by the id that it had. */
const NOW: Readonly<Record<string, string>> = {
	'linnet-dress': 'course-dress',
	'linnet-back-top': 'dress-back-top',
	'linnet-front': 'dress-front',
	'linnet-back': 'dress-back',
	'linnet-facing': 'dress-facing',
	'linnet-skirt': 'dress-skirt',
	'linnet-casing': 'dress-casing',
	'linnet-binding': 'dress-binding',
	'dunlin-skirt': 'straight-skirt',
	'dunlin-front': 'straight-skirt-front',
	'dunlin-back': 'straight-skirt-back',
	'pipit-bodice': 'sleeved-bodice',
	'60-the-linnet-dress': '60-the-course-dress',
	'61-linnet-back-top': '61-dress-back-top',
	'62-linnet-front-top': '62-dress-front-top',
	'63-linnet-looseness': '63-dress-looseness',
	'64-linnet-contour-dart': '64-dress-armhole-dart',
	'65-linnet-moving-darts': '65-dress-moving-darts',
	'66-linnet-front-waist': '66-dress-front-waist',
	'67-linnet-band-and-stand': '67-dress-band-and-stand',
	'68-linnet-back-waist': '68-dress-back-waist',
	'69-linnet-facing': '69-dress-facing',
	'70-linnet-skirt': '70-dress-skirt',
	'71-linnet-casing': '71-dress-casing',
	'72-linnet-binding': '72-dress-binding',
	'73-linnet-truing': '73-dress-truing',
	'74-linnet-allowances-and-notches': '74-dress-allowances-and-notches',
	'75-linnet-labels-and-grain': '75-dress-labels-and-grain',
	'76-linnet-laying-out-and-cutting': '76-dress-laying-out-and-cutting',
	'77-linnet-order-of-sewing': '77-dress-order-of-sewing',
	'80-dunlin-front': '80-straight-skirt-front',
	'81-dunlin-front-dart': '81-straight-skirt-front-dart',
	'82-dunlin-back': '82-straight-skirt-back',
	'83-dunlin-back-darts': '83-straight-skirt-back-darts',
	'89-the-pipit-bodice': '89-the-sleeved-bodice',
	'25-back-width': '25-shoulder-width',
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
