import type { PixelFont } from './font.ts';
import { pixelifySans } from './fonts/pixelify-sans.ts';
import { silkscreen } from './fonts/silkscreen.ts';

export * from './font.ts';
export * from './place.ts';
export * from './set.ts';

/** The typefaces that come with the program; both are under the SIL Open Font License 1.1. */
export const PIXEL_FONTS: readonly PixelFont[] = [silkscreen, pixelifySans];
