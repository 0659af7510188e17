/** What is drawn in a PDF beside its text, read by a reader that is not ours: paths with their paints, in mm. */
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

export type PointMm = readonly [x: number, y: number];

export interface DrawnPath {
  /** In mm from the page's top left corner; a closed line ends where it began. */
  readonly lines: readonly (readonly PointMm[])[];
  /** `#rrggbb`, or null if it is not filled. */
  readonly fill: string | null;
  readonly stroke: { readonly colour: string; readonly widthMm: number; readonly isDashed: boolean } | null;
  /** The tag of the marked content it belongs to, and which one of its page it is. */
  readonly tag: string;
  readonly part: number;
}

/** One unit is 1/72 in (ISO 32000). */
const UNIT_MM = 25.4 / 72;
/** How the reader writes paths down: what follows is one point, or none. */
const MOVE = 0;
const LINE = 1;
const CLOSE = 4;
const FILLS: ReadonlySet<number> = new Set([OPS.fill, OPS.eoFill, OPS.fillStroke, OPS.eoFillStroke]);
const STROKES: ReadonlySet<number> = new Set([OPS.stroke, OPS.closeStroke, OPS.fillStroke, OPS.eoFillStroke]);

type Matrix = readonly [number, number, number, number, number, number];

interface State {
  matrix: Matrix;
  fill: string;
  stroke: string;
  width: number;
  isDashed: boolean;
}

/**
 * The paths of each page, in the order of drawing; of the pages (from 1) that are
 * asked for, the others are empty. Throws for a curve: the sheet has none.
 */
export async function graphicsOf(bytes: Uint8Array, isAsked = (_page: number) => true): Promise<DrawnPath[][]> {
  const pdf = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
  const pages: DrawnPath[][] = [];
  for (let number = 1; number <= pdf.numPages; number++) {
    if (!isAsked(number)) {
      pages.push([]);
      continue;
    }
    const page = await pdf.getPage(number);
    const { height } = page.getViewport({ scale: 1 });
    const { fnArray, argsArray } = await page.getOperatorList();
    pages.push(pathsOf(fnArray, argsArray as unknown[][], height));
  }
  await pdf.destroy();
  return pages;
}

function pathsOf(operators: readonly number[], args: readonly unknown[][], height: number): DrawnPath[] {
  let state: State = { matrix: [1, 0, 0, 1, 0, 0], fill: '#000000', stroke: '#000000', width: 1, isDashed: false };
  const kept: State[] = [];
  const tags: [tag: string, part: number][] = [];
  let parts = 0;
  const found: DrawnPath[] = [];
  operators.forEach((operator, index) => {
    const given = args[index] ?? [];
    switch (operator) {
      case OPS.save:
        kept.push({ ...state });
        break;
      case OPS.restore:
        state = kept.pop() ?? state;
        break;
      case OPS.transform:
        state.matrix = times(state.matrix, given as unknown as Matrix);
        break;
      case OPS.setFillRGBColor:
        state.fill = given[0] as string;
        break;
      case OPS.setStrokeRGBColor:
        state.stroke = given[0] as string;
        break;
      case OPS.setLineWidth:
        state.width = given[0] as number;
        break;
      case OPS.setDash:
        state.isDashed = (given[0] as number[]).length > 0;
        break;
      case OPS.beginMarkedContent:
      case OPS.beginMarkedContentProps: {
        const [tag] = given as [string | { name: string }];
        tags.push([typeof tag === 'string' ? tag : tag.name, parts++]);
        break;
      }
      case OPS.endMarkedContent:
        tags.pop();
        break;
      case OPS.constructPath: {
        const [how, [data]] = given as [number, [ArrayLike<number> | null]];
        const [tag, part] = tags.at(-1) ?? ['', -1];
        const { matrix, fill, stroke, width, isDashed } = state;
        const toMm = ([x, y]: PointMm): PointMm => {
          const [a, b, c, d, e, f] = matrix;
          return [(a * x + c * y + e) * UNIT_MM, (height - (b * x + d * y + f)) * UNIT_MM];
        };
        found.push({
          lines: data ? linesOf(data).map((line) => line.map(toMm)) : [],
          fill: FILLS.has(how) ? fill : null,
          stroke: STROKES.has(how) ? { colour: stroke, widthMm: width * UNIT_MM, isDashed } : null,
          tag,
          part,
        });
      }
    }
  });
  return found;
}

/** `a` applied after `b`. */
function times(a: Matrix, b: Matrix): Matrix {
  return [
    a[0] * b[0] + a[2] * b[1],
    a[1] * b[0] + a[3] * b[1],
    a[0] * b[2] + a[2] * b[3],
    a[1] * b[2] + a[3] * b[3],
    a[0] * b[4] + a[2] * b[5] + a[4],
    a[1] * b[4] + a[3] * b[5] + a[5],
  ];
}

function linesOf(data: ArrayLike<number>): PointMm[][] {
  const lines: PointMm[][] = [];
  let at = 0;
  while (at < data.length) {
    const kind = data[at];
    const line = lines.at(-1);
    if (kind === CLOSE) {
      const [first] = line ?? [];
      if (line && first) line.push(first);
      at += 1;
      continue;
    }
    const point: PointMm = [data[at + 1] as number, data[at + 2] as number];
    if (kind === MOVE) lines.push([point]);
    else if (kind === LINE && line) line.push(point);
    else throw new RangeError(`A path with ${kind} in it`);
    at += 3;
  }
  return lines;
}

/** The paint that is seen at a point where only fills count: that of the last path round it. */
export function fillAt(paths: readonly DrawnPath[], x: number, y: number): string | null {
  for (let index = paths.length - 1; index >= 0; index--) {
    const { fill, lines } = paths[index] as DrawnPath;
    if (fill && lines.some((line) => isInside(line, x, y))) return fill;
  }
  return null;
}

type Bounds = readonly [left: number, right: number, top: number, bottom: number];
const bounds = new WeakMap<readonly PointMm[], Bounds>();

function boundsOf(outline: readonly PointMm[]): Bounds {
  const known = bounds.get(outline);
  if (known) return known;
  const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)];
  const found: Bounds = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  bounds.set(outline, found);
  return found;
}

function isInside(outline: readonly PointMm[], x: number, y: number): boolean {
  const [left, right, top, bottom] = boundsOf(outline);
  if (x < left || x > right || y < top || y > bottom) return false;
  let inside = false;
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
    const [ax, ay] = outline[i] as PointMm;
    const [bx, by] = outline[j] as PointMm;
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
  }
  return inside;
}
