/** A way to place the groups as a strip to scale: blocks, what is seen of them, and the spaces in stitches. */
import type { Run } from '@shared/bed/index.ts';
import { clearOf, type PlacementChoice } from '@shared/placement/index.ts';
import { spreadOut } from '../drawing/labels.ts';

/** From `x`, `width` pixels. */
export interface Bar {
  readonly x: number;
  readonly width: number;
}

/** A number with its middle at `x`. */
export interface StripNumber {
  readonly text: string;
  readonly x: number;
  readonly isSpace: boolean;
}

export interface Strip {
  readonly blocks: readonly Bar[];
  readonly figures: readonly Bar[];
  /** The edge stitches that the seam takes. */
  readonly seams: readonly Bar[];
  /** Spaces and widths, left to right; widths only where there is room. */
  readonly numbers: readonly StripNumber[];
  /** Margins and gaps, left to right. */
  readonly spaces: readonly number[];
  /** Stitches of each margin that the seam leaves; null where it takes none of either. */
  readonly clear: readonly [left: number, right: number] | null;
}

/** Pixels that a digit takes in the type the numbers are set in. */
const DIGIT = 7.5;
const PADDING = 5;

/** The strip of a choice on the needles `edges`, `width` pixels wide. */
export function stripOf(
  choice: PlacementChoice,
  judge: 'figure' | 'blocks',
  edges: Run,
  seamAllowance: { readonly left: number; readonly right: number },
  width: number,
): Strip {
  const stitch = width / (edges.last - edges.first + 1);
  const bar = (first: number, last: number): Bar => ({
    x: (first - edges.first) * stitch,
    width: (last - first + 1) * stitch,
  });
  const { margins, gaps } = choice[judge];
  const spaces = [margins[0], ...gaps, margins[1]];
  const judged = choice.groups.map((group) => (judge === 'figure' ? group.figure : group.block));
  const starts = [edges.first, ...judged.map(({ last }) => last + 1)];
  const ends = [...judged.map(({ first }) => first - 1), edges.last];
  const wanted = spaces.map((stitches, index) => {
    const { x, width: room } = bar(starts[index] as number, ends[index] as number);
    return { text: String(stitches), x: x + room / 2, isSpace: true };
  });
  const middles = spreadOut(
    wanted.map(({ x }) => x),
    wanted.map(({ text }) => widthOf(text)),
    0,
    width,
  );
  const spaceNumbers = wanted.map((number, index) => ({ ...number, x: middles[index] as number }));
  const widths = judged
    .map(({ first, last }) => {
      const { x, width: room } = bar(first, last);
      return { text: String(last - first + 1), x: x + room / 2, isSpace: false };
    })
    .filter((number) => spaceNumbers.every((space) => isApart(number, space)));
  const { left, right } = seamAllowance;
  const clear = clearOf(choice[judge], seamAllowance).margins;
  return {
    blocks: choice.groups.map(({ block }) => bar(block.first, block.last)),
    figures: choice.groups.map(({ figure }) => bar(figure.first, figure.last)),
    seams: [bar(edges.first, edges.first + left - 1), bar(edges.last - right + 1, edges.last)].filter(
      (seam) => seam.width > 0,
    ),
    numbers: [...spaceNumbers, ...widths].sort((one, other) => one.x - other.x),
    spaces,
    clear: left + right > 0 && Math.min(...clear) >= 0 ? clear : null,
  };
}

function widthOf(text: string): number {
  return text.length * DIGIT + PADDING;
}

function isApart(one: StripNumber, other: StripNumber): boolean {
  return Math.abs(one.x - other.x) >= (widthOf(one.text) + widthOf(other.text)) / 2;
}
