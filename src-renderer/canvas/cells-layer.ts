/** The layer of a chart's cells: one bitmap, and of it only what changed is drawn again. */
import type { CellBox } from '@shared/grid/index.ts';
import { CellBitmap } from './bitmap.ts';
import { changedBox, joinedBox } from './changed.ts';
import type { ChartLayer } from './chart-layer.ts';
import { clipRows, DeviceView, drawCells, reachOf, type LineColours } from './draw-cells.ts';
import { drawStitches, showsStitches, type FabricSide } from './draw-stitches.ts';
import { isPatchOf, shownBoxes, type CellPicture } from './picture.ts';
import type { Viewport } from './viewport.ts';

/** Rows (from 0) `from` up to and without `to`, and how they are seen; below the lowest and above the uppermost part there is nothing else. */
export interface PartOfCells {
  readonly rows: { readonly from: number; readonly to: number };
  readonly viewport: Viewport;
}

/** What of a bench's scene the cells are. */
export interface CellsOf<View, Scene> {
  /** The same object while nothing of it has changed. */
  picture(scene: Scene): CellPicture;
  /** Parts stand one on the other, from the lowest up; never empty. */
  parts(view: View, scene: Scene): readonly PartOfCells[];
  /** Null: no grid lines. */
  lines(scene: Scene): LineColours | null;
  /** The side of the fabric on which cells show as stitches; null: cells. */
  fabric(scene: Scene): FabricSide | null;
}

type CellsLayer<View, Scene> = ChartLayer<View, Scene> & Required<Pick<ChartLayer<View, Scene>, 'where' | 'isKept'>>;

/** A layer for one stage: it keeps the bitmap of what it has drawn. */
export function cellsLayer<View, Scene>(of: CellsOf<View, Scene>): CellsLayer<View, Scene> {
  const kept = new KeptBitmap();
  return {
    draw(context, view, scene, { width, height, ratio, boxes, part }) {
      const picture = of.picture(scene);
      const parts = of.parts(view, scene);
      const fabric = of.fabric(scene);
      const lines = fabric ? null : of.lines(scene);
      const seen = parts.map(({ viewport }) => viewport.cellsIn(width, height)).reduce(joinedBox);
      const bitmap = kept.holding(picture, boxes, seen);
      parts.forEach(({ rows, viewport }, index) => {
        const device = new DeviceView(viewport, width, height, ratio);
        context.save();
        if (parts.length > 1) {
          const to = index + 1 === parts.length ? Infinity : rows.to;
          clipRows(context, device, index === 0 ? -Infinity : rows.from, to);
        }
        if (fabric && showsStitches(device)) drawStitches(context, device, bitmap, fabric);
        else drawCells(context, device, picture, bitmap, lines, part);
        context.restore();
      });
    },
    changed(before, after) {
      const [was, now] = [of.picture(before), of.picture(after)];
      if (of.lines(before) !== of.lines(after) || of.fabric(before) !== of.fabric(after)) return true;
      if (was === now) return false;
      if (!isPatchOf(now, was)) return true;
      const box = changedBox(was.grid, now.grid);
      if (!box) return false;
      // A stitch reaches into its neighbours.
      return of.fabric(after) ? true : (shownBoxes(now, box) ?? true);
    },
    where: (boxes, view, scene, { width, height, ratio }) =>
      of.parts(view, scene).flatMap(({ viewport }) => {
        const device = new DeviceView(viewport, width, height, ratio);
        return boxes.map((box) => reachOf(device, box));
      }),
    isKept: (scene) => of.fabric(scene) !== null,
  };
}

/** The bitmap of the picture that was drawn last, brought up to the next one cell by cell where that can be. */
class KeptBitmap {
  #picture: CellPicture | null = null;
  #bitmap: CellBitmap | null = null;

  /** `boxes`: all cells that differ from the picture before; null where that is not known. `seen`: the cells in view. */
  holding(picture: CellPicture, boxes: readonly CellBox[] | null, seen: CellBox): CellBitmap {
    const before = this.#picture;
    this.#picture = picture;
    if (!this.#bitmap || !before || !isPatchOf(picture, before)) return (this.#bitmap = new CellBitmap(picture));
    const differing = boxes ?? (picture === before ? [] : this.#differing(picture, before));
    this.#bitmap.paint(picture, differing, seen);
    return this.#bitmap;
  }

  #differing(picture: CellPicture, before: CellPicture): readonly CellBox[] {
    const box = changedBox(before.grid, picture.grid);
    return box ? (shownBoxes(picture, box) ?? [(this.#bitmap as CellBitmap).area]) : [];
  }
}
