/** What a piece is cut in. Apart from the garment file's schema, which no page needs to bring. */
export const CLOTHS = ['fabric', 'lining', 'interfacing'] as const;

export type Cloth = (typeof CLOTHS)[number];
