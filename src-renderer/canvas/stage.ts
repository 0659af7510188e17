/**
 * Cells on the screen: one bitmap, one Konva shape, and only what changed drawn again.
 *
 * Usable without Svelte. A bench puts what else it shows (labels, overlays) on
 * layers of its own above the cells. Nothing here listens to the pointer:
 * pixel to cell is arithmetic (`Viewport.cellAt`).
 */
import type { CellBox } from '@shared/grid/index.ts';
import Konva from 'konva/lib/Core.js';
import { CellBitmap } from './bitmap.ts';
import { changedBox, joinedBox } from './changed.ts';
import { isPatchOf, shownBoxes, type CellPicture } from './picture.ts';
import { clipRows, drawCells, DeviceView, type LineColours } from './draw-cells.ts';
import { drawStitches, showsStitches, type FabricSide } from './draw-stitches.ts';
import { Viewport } from './viewport.ts';

// A draw is asked for where it is needed; Konva's own would draw twice.
Konva.autoDrawEnabled = false;

/** Rows (from 0) `from` up to and without `to`, and how they are seen; below the lowest and above the uppermost part there is nothing else. */
export interface PartOfCells {
  readonly rows: { readonly from: number; readonly to: number };
  readonly viewport: Viewport;
}

export interface CellStageOptions {
  readonly picture: CellPicture;
  readonly viewport: Viewport | readonly PartOfCells[];
  /** Size of the view in CSS pixels. */
  readonly width: number;
  readonly height: number;
  /** Null: no grid lines. */
  readonly lines: LineColours | null;
}

export interface CellStage {
  /** The Konva stage, for layers above the cells. */
  readonly konva: Konva.Stage;
  /** Of the lowest part. */
  readonly viewport: Viewport;
  /** Shows another picture; where it differs only in some cells, only they are drawn. */
  show(picture: CellPicture): void;
  /** Parts stand one on the other, from the lowest up. */
  look(viewport: Viewport | readonly PartOfCells[]): void;
  setLines(lines: LineColours | null): void;
  /** Shows the cells as stitches seen from a side of the fabric, or as cells again. */
  setFabric(side: FabricSide | null): void;
  /** The view has another size, or moved to a screen of another pixel density. */
  resize(width: number, height: number): void;
  /** Draws now what is waiting for the next frame; for measuring. */
  drawNow(): void;
  destroy(): void;
}

/** Makes the stage inside `container`, which should have the size given. */
export function createCellStage(container: HTMLDivElement, options: CellStageOptions): CellStage {
  let { picture, lines } = options;
  let looked = options.viewport;
  let bitmap = new CellBitmap(picture);
  /** Rectangles to draw again; null: all. */
  let dirty: CellBox[] | null = null;
  let fabric: FabricSide | null = null;

  const konva = new Konva.Stage({ container, width: options.width, height: options.height, listening: false });
  const parts = (): readonly PartOfCells[] =>
    looked instanceof Viewport ? [{ rows: { from: 0, to: picture.grid.height }, viewport: looked }] : looked;
  const seen = (): CellBox =>
    parts()
      .map(({ viewport }) => viewport.cellsIn(konva.width(), konva.height()))
      .reduce(joinedBox);
  const layer = new Konva.Layer({ listening: false, clearBeforeDraw: false });
  const shape = new Konva.Shape({
    listening: false,
    perfectDrawEnabled: false,
    sceneFunc: (context) => {
      bitmap.bringIntoView(picture, seen());
      const all = parts();
      all.forEach(({ rows, viewport }, index) => {
        const view = new DeviceView(viewport, konva.width(), konva.height(), layer.getCanvas().getPixelRatio());
        context.save();
        if (all.length > 1) {
          clipRows(
            context._context,
            view,
            index === 0 ? -Infinity : rows.from,
            index + 1 === all.length ? Infinity : rows.to,
          );
        }
        if (fabric && showsStitches(view)) drawStitches(context._context, view, bitmap, fabric);
        else drawCells(context._context, view, picture, bitmap, fabric ? null : lines, dirty);
        context.restore();
      });
      dirty = [];
    },
  });
  layer.add(shape);
  konva.add(layer);

  const drawWhole = (): void => {
    dirty = null;
    layer.batchDraw();
  };
  const drawBoxes = (boxes: readonly CellBox[]): void => {
    if (fabric) dirty = null;
    else if (dirty) dirty.push(...boxes);
    layer.batchDraw();
  };
  layer.draw();

  return {
    konva,
    get viewport() {
      return (parts()[0] as PartOfCells).viewport;
    },
    show(next) {
      const before = picture;
      picture = next;
      const box = isPatchOf(next, before) ? changedBox(before.grid, next.grid) : undefined;
      if (box === null) return;
      const boxes = box === undefined ? null : shownBoxes(next, box);
      if (boxes) {
        bitmap.paint(next, boxes, seen());
        drawBoxes(boxes);
      } else {
        if (box === undefined) bitmap = new CellBitmap(next);
        else bitmap.paint(next, [bitmap.area], seen());
        drawWhole();
      }
    },
    look(next) {
      if (next === looked) return;
      looked = next;
      drawWhole();
    },
    setLines(next) {
      lines = next;
      drawWhole();
    },
    setFabric(side) {
      if (side === fabric) return;
      fabric = side;
      drawWhole();
    },
    resize(width, height) {
      const ratio = window.devicePixelRatio;
      if (Konva.pixelRatio !== ratio) Konva.pixelRatio = ratio;
      if (layer.getCanvas().getPixelRatio() !== ratio) {
        for (const each of konva.getLayers()) each.getCanvas().setPixelRatio(ratio);
      }
      konva.size({ width, height });
      dirty = null;
      // A canvas of another size is blank until drawn; waiting for the next frame would flash.
      layer.draw();
    },
    drawNow() {
      layer.draw();
    },
    destroy() {
      konva.destroy();
    },
  };
}
