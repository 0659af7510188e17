/** Margins and gaps of a band as dimension lines on the piece, and the gap across the closed seam. */
import type { Run } from '@shared/bed/index.ts';
import type { PlacedBand } from '@shared/fabric/index.ts';
import { edgesAt, type Outline } from '@shared/piece/index.ts';
import type { Viewport } from '../../canvas/index.ts';
import { spreadOut } from './labels.ts';
import type { Look } from './look.ts';

/** Needles without figure between two things, `first` … `last`; empty if last = first − 1. */
export interface Space {
  readonly first: number;
  readonly last: number;
  readonly stitches: number;
}

export interface SpacesScene {
  readonly spaces: readonly Space[];
  readonly acrossSeam: number;
  readonly edges: Run;
  readonly firstRow: number;
  readonly lastRow: number;
}

/** The spaces of the placement taken, on the row the groups stand on. */
export function spacesOf(band: PlacedBand, judge: 'figure' | 'blocks', outline: Outline): SpacesScene | null {
  const choice = band.choices[band.taken];
  if (!choice) return null;
  const edges = edgesAt(outline, band.firstRow);
  const things = choice.groups.map((group) => (judge === 'figure' ? group.figure : group.block));
  const starts = [edges.first, ...things.map(({ last }) => last + 1)];
  const ends = [...things.map(({ first }) => first - 1), edges.last];
  const spaces = starts.map((first, index): Space => {
    const last = ends[index] as number;
    return { first, last, stitches: last - first + 1 };
  });
  return { spaces, acrossSeam: choice.acrossSeam, edges, firstRow: band.firstRow, lastRow: band.lastRow };
}

/** From the band to its dimension line, out of the way of the strands that hang under it. */
const AWAY = 34;
/** Where there is no room for that. */
const NEAR = 15;
/** From line to line of what is written beside the piece. */
const LINE = 14;
/** Half the height of the numbers, with some air. */
const HALF = 11;

export function drawSpaces(
  context: CanvasRenderingContext2D,
  view: Viewport,
  scene: SpacesScene,
  outline: Outline,
  acrossSeam: readonly string[],
  look: Look,
  font: string,
): void {
  const foot = view.top(scene.firstRow - 2);
  const head = view.top(scene.lastRow - 1);
  const castOn = view.top(-1);
  const top = view.top(outline.rows - 1);
  const places = [foot + AWAY, head - NEAR, foot + NEAR];
  const free = places.find((place) => place + HALF <= castOn && place - HALF >= top);
  // A pattern from edge to edge leaves no plain rows; then the line lies across its foot.
  const y = Math.round(free ?? foot - HALF - 4) + 0.5;

  context.font = `600 13px ${font}`;
  context.textBaseline = 'middle';
  context.textAlign = 'center';
  // Left to right as they are seen.
  const spaces = view.isTurned ? scene.spaces.toReversed() : scene.spaces;
  const texts = spaces.map(({ stitches }) => String(stitches));
  const widths = texts.map((text) => context.measureText(text).width + 6);
  const middles = spaces.map(({ first, last }) => (view.left(first) + view.left(last + 1)) / 2);
  const whole = view.span(scene.edges.first, scene.edges.last);
  const placed = spreadOut(middles, widths, whole.left, whole.right);

  context.lineWidth = 1;
  spaces.forEach(({ first, last }, index) => {
    const span = view.span(first, last);
    const left = Math.round(span.left) + 1.5;
    const right = Math.round(span.right) - 1.5;
    const middle = placed[index] as number;
    const half = (widths[index] as number) / 2;
    context.strokeStyle = look.onMain;
    context.beginPath();
    stop(context, left, y);
    stop(context, right, y);
    if (middle - half > left) segment(context, left, middle - half, y);
    if (middle + half < right) segment(context, middle + half, right, y);
    context.stroke();
    context.fillStyle = look.onMain;
    context.fillText(texts[index] as string, middle, y);
  });

  // Where the seam takes more than there is, the panel says so.
  if (scene.acrossSeam < 0) return;
  const x = whole.left - 10;
  const height = LINE * (1 + acrossSeam.length);
  const first = Math.min(y - LINE / 2, castOn - height + LINE / 2);
  context.textAlign = 'right';
  context.fillStyle = look.ink;
  context.fillText(String(scene.acrossSeam), x, first);
  context.font = `400 12px ${font}`;
  context.fillStyle = look.soft;
  acrossSeam.forEach((text, index) => context.fillText(text, x, first + (index + 1) * LINE));
}

function stop(context: CanvasRenderingContext2D, x: number, y: number): void {
  context.moveTo(x, y - 4);
  context.lineTo(x, y + 4);
}

function segment(context: CanvasRenderingContext2D, from: number, to: number, y: number): void {
  context.moveTo(from, y);
  context.lineTo(to, y);
}
