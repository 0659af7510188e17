/** Sides at which a second photo of a chart can go on. */
export const JOIN_SIDES = ['above', 'below', 'left', 'right'] as const;
export type JoinSide = (typeof JOIN_SIDES)[number];
