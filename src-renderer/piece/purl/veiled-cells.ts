/**
 * The purl side from afar, where a strand is thinner than a pixel: each stitch
 * takes on a share of the yarn that lies over it, so that a pattern is seen
 * through its floats as it is on the fabric.
 */
import { OUTSIDE, type Fabric } from '@shared/fabric/index.ts';
import type { PurlSide } from '@shared/plan/purl-side/index.ts';
import type { CellPicture } from '../../canvas/index.ts';

/** The share of a stitch that a strand over it hides. */
const VEIL = 0.3;

/** The fabric with each stitch as it looks under the strand that lies uppermost there. `yarns` are `#rrggbb` by palette index. */
export function veiledPicture(fabric: Fabric, side: PurlSide, yarns: readonly string[]): CellPicture {
  const { first, width, rows } = fabric;
  const cells = fabric.cells.slice();
  const colours = [...yarns];
  /** By the stitch's yarn and the one over it: the palette index of their mixture. */
  const mixed: number[][] = [];
  const mixtureOf = (below: number, above: number): number => {
    const known = mixed[below]?.[above];
    if (known !== undefined) return known;
    // The palette is full: the stitch stays as it is.
    if (colours.length >= OUTSIDE) return below;
    const index = colours.push(mixture(yarns[below] ?? '#000000', yarns[above] ?? '#000000')) - 1;
    (mixed[below] ??= [])[above] = index;
    return index;
  };
  for (let row = 1; row <= rows; row++) {
    const start = (row - 1) * width - first;
    for (const { strand, first: from, last } of side.row(row).floats) {
      for (let needle: number = from; needle <= last; needle++) {
        const below = fabric.cells[start + needle] as number;
        if (below !== OUTSIDE) cells[start + needle] = mixtureOf(below, strand.yarn);
      }
    }
  }
  return { grid: { width, height: rows, cells }, colours, surround: null };
}

function mixture(below: string, above: string): string {
  const part = (at: number): string => {
    const [one, other] = [below, above].map((colour) => Number.parseInt(colour.slice(at, at + 2), 16)) as [
      number,
      number,
    ];
    return Math.round(one + (other - one) * VEIL)
      .toString(16)
      .padStart(2, '0');
  };
  return `#${part(1)}${part(3)}${part(5)}`;
}
