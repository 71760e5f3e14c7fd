import type { Body } from '#shared/body.ts';
import type { Draft } from '#drafting/evaluate.ts';
import { ofDraft } from '#garment/of-draft.ts';
import type { SeamReport } from '#garment/seams.ts';
import { garmentOf } from '../garment/garment-files.ts';

const BLOCK = garmentOf('body-block');

/** How the side seam of the body block agrees for a front and the back that it leans on, as the garment measures it. */
export const blockSide = (front: Draft, body: Body): SeamReport => {
	const side = ofDraft(BLOCK, front, body).seams.find(({ name }) => name === 'sideSeam');
	if (!side) throw new Error('the block has no side seam');
	return side;
};
