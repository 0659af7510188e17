/** What the pointer and the space key do to cells. */
export type Tool = 'draw' | 'erase' | 'fill';

export const TOOLS: readonly Tool[] = ['draw', 'erase', 'fill'];
