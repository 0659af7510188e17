/**
 * The piece on the screen: the fabric as one bitmap, everything else as shapes
 * that draw what is in view. Usable without Svelte.
 *
 * Columns of the viewport are slots, so that L1 is column −1 and the centre of
 * the bed lies at 0.
 */
import Konva from 'konva/lib/Core.js';
import { mirrorAcross, type Grid } from '@shared/grid/index.ts';
import type { PlacedGroup } from '@shared/fabric/index.ts';
import {
  createCellStage,
  Viewport,
  type CellPicture,
  type CellStage,
  type PartOfCells,
  type Room,
} from '../../canvas/index.ts';
import type { Reading } from '../moving/reading.ts';
import type { StitchSpot } from '../stitch-spot.ts';
import { draggedGrid } from './dragged-cells.ts';
import { COUNTER_WIDTH } from './counter.ts';
import { drawCursor } from './cursor.ts';
import { drawMovingMarks, drawStillMarks, type Marked } from './marks.ts';
import { laidBox, LaidView } from './laid-view.ts';
import { stepsOf, type Step } from './outline.ts';
import { RULER_GAP, RULER_HEIGHT } from './ruler.ts';
import type { PieceScene } from './scene.ts';
import { isTurnedIn, sideOf } from './side.ts';

export class PieceDrawing {
  readonly #cells: CellStage;
  /** What stays while a group is dragged is drawn once; what goes with it, each time. */
  readonly #still: Konva.Layer;
  readonly #moving: Konva.Layer;
  readonly #pointer: Konva.Layer;
  #scene: PieceScene;
  #laid: LaidView;
  #spot: StitchSpot | null = null;
  #dragged: Reading | null = null;
  /** The fabric with every group in its place. */
  #picture: CellPicture;
  #steps: Step[];

  constructor(container: HTMLDivElement, scene: PieceScene, width: number, height: number) {
    this.#scene = scene;
    this.#laid = new LaidView(fittedView(scene, roomAround(width, height, 0)), scene);
    this.#steps = stepsIn(scene, this.#laid);
    this.#picture = pictureOf(scene);
    this.#cells = createCellStage(container, {
      picture: this.#picture,
      viewport: this.#cellParts(),
      width,
      height,
      lines: null,
    });
    this.#cells.setFabric(fabricOf(scene));
    this.#still = shapeLayer((context) => drawStillMarks(context, this.#marked()));
    this.#moving = shapeLayer((context) => drawMovingMarks(context, this.#marked()));
    this.#pointer = shapeLayer((context) => this.#drawPointer(context));
    this.#cells.konva.add(this.#still, this.#moving, this.#pointer);
  }

  get view(): Viewport {
    return this.#laid.whole;
  }

  show(scene: PieceScene): void {
    const before = this.#scene;
    this.#scene = scene;
    if (scene.plan !== before.plan || scene.look !== before.look || scene.shows !== before.shows) {
      this.#laid = new LaidView(this.#laid.whole, scene);
      this.#steps = stepsIn(scene, this.#laid);
      this.#picture = pictureOf(scene);
      this.#cells.show(this.#pictureNow());
      this.#cells.look(this.#cellParts());
    }
    this.#cells.setFabric(fabricOf(scene));
    this.#still.batchDraw();
    this.#moving.batchDraw();
    this.#pointer.batchDraw();
  }

  look(view: Viewport): void {
    this.#laid = new LaidView(view, this.#scene);
    this.#cells.look(this.#cellParts());
    this.#still.batchDraw();
    this.#moving.batchDraw();
    this.#pointer.batchDraw();
  }

  point(spot: StitchSpot | null): void {
    if (spot?.needle === this.#spot?.needle && spot?.row === this.#spot?.row) return;
    this.#spot = spot;
    this.#pointer.batchDraw();
  }

  /** Shows groups where they are being moved to; null when they are put down. */
  drag(dragged: Reading | null): void {
    if (dragged === this.#dragged) return;
    const isTakenOrPutDown = dragged?.band !== this.#dragged?.band;
    this.#dragged = dragged;
    this.#cells.show(this.#pictureNow());
    if (isTakenOrPutDown) this.#still.batchDraw();
    this.#moving.batchDraw();
  }

  resize(width: number, height: number): void {
    this.#cells.resize(width, height);
    this.#still.draw();
    this.#moving.draw();
    this.#pointer.draw();
  }

  /** Draws now what is waiting for the next frame; for measuring. */
  drawNow(): void {
    this.#cells.drawNow();
    this.#moving.draw();
  }

  destroy(): void {
    this.#cells.destroy();
  }

  /** The cell stage counts columns from the left edge of the fabric as it is seen. */
  #cellParts(): PartOfCells[] {
    const { first, width } = this.#scene.plan.fabric;
    return this.#laid.parts.map(({ first: lowest, last, view }) => {
      const { left } = view.span(first, first + width - 1);
      return {
        rows: { from: lowest - 1, to: last },
        viewport: new Viewport(view.columnWidth, view.cellHeight, left, view.y),
      };
    });
  }

  /** Under the cast-on edge, or at the foot of the view where that is out of sight. */
  #rulerY(): number {
    return Math.min(this.#laid.castOn + RULER_GAP, this.#cells.konva.height() - RULER_HEIGHT);
  }

  #marked(): Marked {
    const konva = this.#cells.konva;
    return {
      scene: this.#scene,
      steps: this.#steps,
      laid: this.#laid,
      width: konva.width(),
      height: konva.height(),
      rulerY: this.#rulerY(),
      dragged: this.#dragged,
    };
  }

  /** The fabric as it would be if the groups were put down where they are dragged. */
  #pictureNow(): CellPicture {
    const dragged = this.#dragged;
    if (!dragged) return this.#picture;
    const { plan, project } = this.#scene;
    const { first, width } = plan.fabric;
    const isTurned = isTurnedIn(this.#scene);
    const column = ({ block }: PlacedGroup): number =>
      isTurned ? width - 1 - (block.last - first) : block.first - first;
    const boxes = plan.groups
      .filter(({ band }) => band === dragged.band)
      .map((group, index) => {
        const to = dragged.groups[index] as PlacedGroup;
        return {
          from: {
            column: column(group),
            row: group.firstRow - 1,
            width: group.block.last - group.block.first + 1,
            height: group.lastRow - group.firstRow + 1,
          },
          to: { column: column(to), row: to.firstRow - 1 },
        };
      });
    return { ...this.#picture, grid: draggedGrid(this.#picture.grid, boxes, project.mainYarn) };
  }

  #drawPointer(context: CanvasRenderingContext2D): void {
    if (this.#spot) drawCursor(context, this.#laid, this.#spot, this.#scene.look, this.#rulerY());
  }
}

/** The whole piece, with room for what stands around it. */
export function fittedView(scene: Pick<PieceScene, 'plan' | 'project' | 'shows'>, room: Room): Viewport {
  const { gauge } = scene.project.piece;
  const isTurned = isTurnedIn(scene);
  const laid = laidBox(scene);
  const box = isTurned ? { ...laid, column: -(laid.column + laid.width) } : laid;
  const fitted = Viewport.fit(box, gauge.rows / gauge.stitches, room);
  return isTurned ? fitted.turned() : fitted;
}

function stepsIn({ plan }: PieceScene, { parts }: LaidView): Step[] {
  return stepsOf(
    plan.outline,
    parts.map(({ first }) => first),
  );
}

function fabricOf(scene: PieceScene): 'knit' | 'purl' | null {
  return scene.showsStitches ? sideOf(scene) : null;
}

/** The view less the ruler, the counter and the numbers beside the piece, and `heading` pixels for a title that lies on it. */
export function roomAround(width: number, height: number, heading: number): Room {
  return {
    width,
    height,
    left: 72,
    right: COUNTER_WIDTH + 12,
    top: 16 + heading,
    bottom: RULER_GAP + RULER_HEIGHT + 8,
  };
}

function pictureOf(scene: PieceScene): CellPicture {
  const { width, rows, cells } = scene.plan.fabric;
  const grid: Grid = { width, height: rows, cells };
  return { grid: isTurnedIn(scene) ? mirrorAcross(grid) : grid, colours: scene.look.yarns, surround: null };
}

function shapeLayer(draw: (context: CanvasRenderingContext2D) => void): Konva.Layer {
  const layer = new Konva.Layer({ listening: false });
  layer.add(
    new Konva.Shape({ listening: false, perfectDrawEnabled: false, sceneFunc: (context) => draw(context._context) }),
  );
  return layer;
}
