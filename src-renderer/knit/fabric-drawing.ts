/** The fabric as it hangs from the needles, on a canvas: the row that is to come apart above, the last one knitted below it. */
import { stopsOf, type KnittingOrder } from '@shared/knitting/index.ts';

/** The row that is about to come stands apart, and tall enough to be read, in pixels. */
export const COMING = 8;
const GAP = 3;

export interface FabricDrawing {
  readonly knitting: KnittingOrder;
  /** So many rows are knitted. */
  readonly reading: number;
  /** From which side it is seen: from the knit side left and right change places. */
  readonly side: 'purl' | 'knit';
  /** The needles that are drawn, both ends included. */
  readonly reach: { readonly first: number; readonly last: number };
  /** How many rows are drawn at most, the uppermost ones. */
  readonly shown: number;
  /** In CSS pixels. */
  readonly width: number;
  readonly height: number;
}

/** How tall a row is that is knitted, in CSS pixels. */
export function rowHeight({ height, shown }: Pick<FabricDrawing, 'height' | 'shown'>): number {
  return (height - COMING - GAP) / shown;
}

/** How many rows below the one to come a place lies, `y` CSS pixels from the top: 0 for that one itself. */
export function rowsBelow(drawing: Pick<FabricDrawing, 'height' | 'shown'>, y: number): number {
  return Math.max(0, 1 + Math.floor((y - COMING - GAP) / rowHeight(drawing)));
}

export function drawFabric(canvas: HTMLCanvasElement, drawing: FabricDrawing): void {
  const { knitting, reading, side, reach, shown, width, height } = drawing;
  const context = canvas.getContext('2d');
  if (!context) return;
  const scale = devicePixelRatio;
  const [wide, high] = [Math.round(width * scale), Math.round(height * scale)];
  // To be given a size takes a canvas longer than to be cleared.
  if (canvas.width !== wide || canvas.height !== high) [canvas.width, canvas.height] = [wide, high];
  context.setTransform(side === 'knit' ? -scale : scale, 0, 0, scale, side === 'knit' ? wide : 0, 0);
  context.clearRect(0, 0, width, height);
  const stops = stopsOf(knitting);
  const cell = width / (reach.last - reach.first + 1);
  const colourOf = (yarn: number): string => knitting.yarns[yarn]?.colour ?? '#888888';
  const x = (needle: number): number => (needle - reach.first) * cell;
  const draw = (row: number, top: number, foot: number): void => {
    const { needles } = stops[row - 1]?.row ?? {};
    if (!needles) return;
    context.fillStyle = colourOf(knitting.mainYarn);
    context.fillRect(x(needles.first), top, x(needles.last + 1) - x(needles.first), foot - top);
    for (const { first, last, yarn } of knitting.contrast[row - 1] ?? []) {
      context.fillStyle = colourOf(yarn);
      context.fillRect(x(first), top, x(last + 1) - x(first), foot - top);
    }
  };
  draw(reading + 1, 1, COMING - 1);
  const tall = rowHeight(drawing);
  const top = (row: number): number => Math.round(COMING + GAP + (reading - row) * tall);
  for (let row = reading; row > Math.max(0, reading - shown); row--) draw(row, top(row), top(row - 1));
}
