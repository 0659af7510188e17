/** What should be seen of a piece, worked out by eye from what was drawn and where the plan puts it. */
import type { Motif } from '@shared/motif/index.ts';
import type { PlacedAllOver } from '@shared/fabric/index.ts';
import { allOversOf, bandsOf, type Band, type AllOver } from '@shared/pattern/index.ts';
import type { Plan } from '@shared/plan/index.ts';
import type { ProjectAt } from '@shared/project/index.ts';
import { edgesOn, isPartedOn, isSelectingOn } from '../property/edge-needles.ts';
import { MAIN, type Picture } from './bed-simulated.ts';
import { rowsOfFill } from './rows-of-fill.ts';

/**
 * What should be seen: plain main, and on it each group's copies as drawn,
 * worked out from the motif, the piece, and the first needles and first row of
 * the plan. On a knit face left and right are exchanged; so is a chart that
 * was drawn as on the needles, and once more in a mirrored group. Copies that
 * the edge cuts are left out where the band says so: any cut one, or one that
 * has lost more than a quarter of its figure. Where end-needle selection is on
 * the edge needles knit contrast.
 */
export function placedDesign(project: ProjectAt, plan: Plan): Picture {
  const isMirrored = project.piece.finishedFace === 'knit';
  const rows = plan.outline.rows;
  const first = Math.min(...plan.outline.first);
  const last = Math.max(...plan.outline.last);
  const seenAt = (needle: number): number => (isMirrored ? last - needle : needle - first);
  const isInPiece = (row: number, needle: number): boolean =>
    needle >= (plan.outline.first[row] as number) && needle <= (plan.outline.last[row] as number);
  const picture: (string | null)[][] = Array.from({ length: rows }, (_, row) =>
    Array.from({ length: last - first + 1 }, (_, seen): string | null =>
      isInPiece(row, isMirrored ? last - seen : seen + first) ? MAIN : null,
    ),
  );
  let groupIndex = 0;
  for (const band of bandsOf(project)) {
    for (const group of band.groups) {
      const place = plan.groups[groupIndex++] as Plan['groups'][number];
      const motif = project.motifs.find(({ id }) => id === group.motif) as Motif;
      const copyWidth = widthOfCopy(motif, band);
      const width = group.across * copyWidth;
      const leftmostNeedle = place.block.first as number;
      const left = isMirrored ? seenAt(leftmostNeedle + width - 1) : seenAt(leftmostNeedle);
      const cellAt = (up: number, across: number): number => {
        const inCopy = across % copyWidth;
        const isTurned = (motif.shows === 'needles' && isMirrored) !== group.isMirrored;
        const column = isTurned ? copyWidth - 1 - inCopy : inCopy;
        return motif.grid.cells[(up % motif.grid.height) * motif.grid.width + column] as number;
      };
      /** On the piece: the seen place of a stitch of the group. */
      const isKnitted = (up: number, across: number): boolean =>
        typeof picture[place.firstRow - 1 + up]?.[left + across] === 'string';
      const copyOf = (up: number, across: number): string =>
        `${Math.floor(up / motif.grid.height)} ${Math.floor(across / copyWidth)}`;
      const figure = new Map<string, number>();
      const lost = new Map<string, number>();
      const stitches = Array.from({ length: group.up * motif.grid.height * width }, (_, at): [number, number] => [
        Math.floor(at / width),
        at % width,
      ]);
      for (const [up, across] of stitches) {
        if (cellAt(up, across) === project.mainYarn) continue;
        const copy = copyOf(up, across);
        figure.set(copy, (figure.get(copy) ?? 0) + 1);
        if (!isKnitted(up, across)) lost.set(copy, (lost.get(copy) ?? 0) + 1);
      }
      const isLeftOut = (copy: string): boolean => {
        const share = (lost.get(copy) ?? 0) / (figure.get(copy) ?? 1);
        return band.cutCopies === 'left-out' ? share > 0 : band.cutCopies === 'kept-if-read' && share > 1 / 4;
      };
      for (const [up, across] of stitches) {
        if (!isKnitted(up, across) || isLeftOut(copyOf(up, across))) continue;
        const cell = cellAt(up, across);
        (picture[place.firstRow - 1 + up] as (string | null)[])[left + across] =
          cell === project.mainYarn ? MAIN : (project.yarns[cell]?.name ?? '?');
      }
    }
  }
  for (const [index, fill] of allOversOf(project).entries()) knitFill(project, plan, fill, index, picture);
  // Left and right of the needles are those of the picture, or exchanged.
  const asNeedles = (row: readonly (string | null)[]) => (isMirrored ? [...row].reverse() : row);
  const needles = picture.map(asNeedles);
  const isOn = (row: number): boolean => isSelectingOn(project, plan, row);
  const isParted = (row: number): boolean => isPartedOn(project, plan.groups, row);
  return needles.map((_, index) => asNeedles(edgesOn<string>(needles, index + 1, MAIN, isOn, isParted)));
}

/**
 * A fill, worked out on the needles and seen from the finished face: the copies
 * of a motif tile the plane from the first needle that the plan gives, each
 * tier moved by the step. Copies that have figure outside the fill (beside the
 * piece, in the border, above the last row) are cut.
 */
function knitFill(project: ProjectAt, plan: Plan, fill: AllOver, index: number, picture: (string | null)[][]): void {
  const motif = project.motifs.find(({ id }) => id === fill.motif) as Motif;
  const isKnitFace = project.piece.finishedFace === 'knit';
  const width = widthOfCopy(motif, fill);
  const height = heightOfCopy(motif, fill);
  const first = Math.min(...plan.outline.first);
  const last = Math.max(...plan.outline.last);
  const [firstRow, lastRow] = rowsOfFill(project.piece, fill) as [number, number];
  const { origin } = allOversOf(plan)[index] as PlacedAllOver;
  const drawn = (up: number, across: number): number => {
    // As-worn charts of a knit face are turned on the needles, a mirrored fill once more.
    const isTurned = (motif.shows === 'worn' && isKnitFace) !== fill.isMirrored;
    return motif.grid.cells[up * motif.grid.width + (isTurned ? width - 1 - across : across)] as number;
  };
  const isInFill = (row: number, needle: number): boolean =>
    row >= firstRow &&
    row <= lastRow &&
    needle >= (plan.outline.first[row - 1] as number) + fill.border.left &&
    needle <= (plan.outline.last[row - 1] as number) - fill.border.right;
  for (let tier = 0; firstRow + tier * height <= lastRow; tier++) {
    const bottom = firstRow + tier * height;
    const start = origin + tier * fill.step;
    const leftmost = start - Math.ceil((start - first) / width + 1) * width;
    for (let left = leftmost; left <= last; left += width) {
      let [figure, lost] = [0, 0];
      for (let up = 0; up < height; up++) {
        for (let across = 0; across < width; across++) {
          if (drawn(up, across) === project.mainYarn) continue;
          figure++;
          if (!isInFill(bottom + up, left + across)) lost++;
        }
      }
      const isCut = lost > 0 && lost < figure;
      if (isCut && (fill.cutCopies === 'left-out' || (fill.cutCopies === 'kept-if-read' && lost / figure > 1 / 4))) {
        continue;
      }
      for (let up = 0; up < height; up++) {
        for (let across = 0; across < width; across++) {
          const needle = left + across;
          if (!isInFill(bottom + up, needle)) continue;
          const cell = drawn(up, across);
          (picture[bottom + up - 1] as (string | null)[])[isKnitFace ? last - needle : needle - first] =
            cell === project.mainYarn ? MAIN : (project.yarns[cell]?.name ?? '?');
        }
      }
    }
  }
}

/** All drawn rows, or the fewest that repeat at least twice. */
function heightOfCopy({ grid }: Motif, { unit }: Pick<AllOver, 'unit'>): number {
  if (unit === 'whole') return grid.height;
  for (let p = 1; p * 2 <= grid.height; p++) {
    const after = p * grid.width;
    if (grid.cells.every((cell, at) => at + after >= grid.cells.length || cell === grid.cells[at + after])) return p;
  }
  return grid.height;
}

/** All drawn columns, or the fewest that repeat at least twice. */
function widthOfCopy({ grid }: Motif, { unit }: Pick<Band, 'unit'>): number {
  if (unit === 'whole') return grid.width;
  for (let p = 1; p * 2 <= grid.width; p++) {
    if (grid.cells.every((cell, at) => (at % grid.width) + p >= grid.width || cell === grid.cells[at + p])) return p;
  }
  return grid.width;
}
