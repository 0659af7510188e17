/** The colours a chart is drawn with, from the tokens of the page and the yarns. */
import { GRAPHIC_CONTRAST, legibleOn, twoTone } from '@shared/colour/index.ts';
import type { LineColours } from '../../canvas/index.ts';
import { lineGrey } from './line-grey.ts';

export interface MotifLook {
  readonly paper: string;
  readonly surface: string;
  readonly ink: string;
  readonly accent: string;
  readonly onAccent: string;
  readonly lines: LineColours;
  /** Hatching on the main yarn. */
  readonly hatch: string;
  /** Axes and seams cross all yarns: a line within a wider one. */
  readonly guide: { readonly inner: string; readonly outer: string };
}

/**
 * `colours` are those of the yarns, `main` that of the ground; `token` gives
 * the value of a colour token as it is now.
 */
export function motifLook(colours: readonly string[], main: string, token: (name: string) => string): MotifLook {
  const ink = token('ink');
  const grey = lineGrey(colours);
  return {
    paper: token('paper'),
    surface: token('surface'),
    ink,
    accent: token('accent'),
    onAccent: token('on-accent'),
    // Two more digits: the alpha.
    lines: { plain: `${grey}66`, fifth: `${grey}b3`, tenth: grey, edge: ink },
    hatch: legibleOn(main, main, GRAPHIC_CONTRAST),
    guide: twoTone(token('accent')),
  };
}
