/** What lies beyond the outermost lines of a lattice: paper, the lines going on, or the photo's edge. */
import type { Bounds, CellSides } from './cell-sides.ts';
import type { Point } from './corners.ts';
import type { LatticeModel } from './lattice-model.ts';
import type { Picture } from './picture.ts';

/** `paper`: no lines, as around a chart. `lines`: they go on, up to the edge of the sheet or of the photo. */
export type Beyond = 'paper' | 'lines-to-sheet' | 'lines-to-photo';

/** Looked at beyond the outermost line, in cells. */
const FROM = 0.15;
const TO = 0.8;
const STEP = 0.05;

/** Paper to both sides of a line that would go on, in cells. */
const ASIDE = 0.25;

/** Darker than this share of the paper in the chart is no paper. */
const PAPER_FROM = 0.72;

/** Lines go on if they show this share of what they usually show. */
const GOES_ON = 0.4;

/** So many looks are needed to say that there is paper: less of it is hardly seen. */
const LEAST_LOOKS = 3;

/** Beyond the left, the right, the upper and the lower side. */
export function beyondOf(
  picture: Picture,
  model: LatticeModel,
  sides: CellSides,
  bounds: Bounds,
  typical: number,
): readonly [Beyond, Beyond, Beyond, Beyond] {
  const { left, right, top, bottom } = bounds;
  const look = (
    lines: number,
    placeAt: (line: number, out: number) => readonly [column: number, row: number],
  ): Beyond => {
    const shares: number[] = [];
    let isPhoto = 0;
    for (let line = 1; line < lines; line++) {
      for (let out = FROM; out <= TO; out += STEP) {
        const [on, one, other] = [0, -ASIDE, ASIDE].map((aside) =>
          brightAt(picture, model.at(...placeAt(line + aside, out))),
        );
        if (
          on === undefined ||
          one === undefined ||
          other === undefined ||
          on === null ||
          one === null ||
          other === null
        )
          continue;
        if (Math.min(one, other) < PAPER_FROM * paper) continue;
        shares.push((one + other) / 2 - on);
      }
      if (isPaperToTheEdge(picture, (out) => model.at(...placeAt(line + 0.5, out)), paper)) isPhoto++;
    }
    const lie = isPhoto >= REACHES_EDGE * lines ? 'lines-to-photo' : 'lines-to-sheet';
    if (shares.length < LEAST_LOOKS * lines) return lie;
    shares.sort((a, b) => a - b);
    return (shares[shares.length >> 1] as number) >= GOES_ON * typical ? lie : 'paper';
  };
  const paper = paperOf(sides, bounds);
  return [
    look(bottom - top, (line, out) => [left - out, top + line]),
    look(bottom - top, (line, out) => [right + out, top + line]),
    look(right - left, (line, out) => [left + line, top - out]),
    look(right - left, (line, out) => [left + line, bottom + out]),
  ];
}

/** Rows that end in a filled cell do not show paper at the photo's edge; of a sheet that ends before it none does. */
const REACHES_EDGE = 0.25;

/** How far out the photo's edge may lie to cut a lattice off, in cells. */
const EDGE_WITHIN = 2.5;

/** Whether the last that the photo shows on the way out is paper, and not what the sheet lies on. */
function isPaperToTheEdge(picture: Picture, at: (out: number) => Point, paper: number): boolean {
  let last: number | null = null;
  for (let out = FROM; out <= EDGE_WITHIN; out += 2 * STEP) {
    const bright = brightAt(picture, at(out));
    if (bright === null) return last === null || last >= PAPER_FROM * paper;
    last = bright;
  }
  return false;
}

/** Null beyond the photo. */
function brightAt({ width, height, rgba }: Picture, { x, y }: Point): number | null {
  if (!(x >= 0 && y >= 0 && x < width && y < height)) return null;
  const at = (Math.floor(y) * width + Math.floor(x)) * 4;
  return (rgba[at] as number) + (rgba[at + 1] as number) + (rgba[at + 2] as number);
}

/** How bright cells usually are that are not filled. */
function paperOf({ columns, within, filled, middles }: CellSides, { left, right, top, bottom }: Bounds): number {
  const brights: number[] = [];
  for (let row = top - within.top; row < bottom - within.top; row++) {
    for (let column = left - within.left; column < right - within.left; column++) {
      const i = row * columns + column;
      if (filled[i] === 1) continue;
      brights.push((middles[3 * i] as number) + (middles[3 * i + 1] as number) + (middles[3 * i + 2] as number));
    }
  }
  brights.sort((a, b) => a - b);
  return brights[brights.length >> 1] ?? 0;
}
