/**
 * The piece on the screen: the fabric as one bitmap, everything else as shapes
 * that draw what is in view. Usable without Svelte.
 *
 * Columns of the viewport are slots, so that L1 is column −1 and the centre of
 * the bed lies at 0.
 */
import Konva from 'konva/lib/Core.js';
import { drawnFrom, isMirroredOnNeedles, type Shows } from '@shared/bed/index.ts';
import { mirrorAcross, type Grid } from '@shared/grid/index.ts';
import type { PlacedGroup, Plan } from '@shared/knitting/index.ts';
import type { Project } from '@shared/project/index.ts';
import { createCellStage, Viewport, type CellPicture, type CellStage, type Room } from '../../ui/cells/index.ts';
import type { Reading } from '../moving/reading.ts';
import { drawGhosts, drawGuides, ghostsOf, type Ghost } from './carried.ts';
import { COUNTER_WIDTH, drawCounter } from './counter.ts';
import { drawCursor, type StitchSpot } from './cursor.ts';
import { drawFloats, drawTags, strandsIn, type Strand } from './floats.ts';
import { drawCentre, drawChosen, drawFold, drawGroups } from './group-marks.ts';
import type { Look } from './look.ts';
import { stepsOf, type Step } from './outline.ts';
import { drawRuler, RULER_GAP, RULER_HEIGHT } from './ruler.ts';
import { drawSpaces, spacesOf, type SpacesScene } from './spaces.ts';
import { drawOutline } from './stitches.ts';
import { drawWraps } from './wraps.ts';

export interface PieceScene {
  readonly plan: Plan;
  readonly project: Project;
  readonly showsFloats: boolean;
  readonly showsWraps: boolean;
  /** As worn, or as the knitter sees the needles. */
  readonly shows: Shows;
  /** Cells as stitches. */
  readonly showsStitches: boolean;
  readonly look: Look;
  readonly font: string;
  readonly acrossSeam: readonly string[];
  readonly fold: string;
  /** The group that the commands move. */
  readonly chosen: PlacedGroup | null;
}

export class PieceDrawing {
  readonly #cells: CellStage;
  readonly #marks: Konva.Layer;
  readonly #pointer: Konva.Layer;
  #scene: PieceScene;
  #view: Viewport;
  #spot: StitchSpot | null = null;
  #carried: Reading | null = null;
  #ghosts: readonly Ghost[] = [];
  #steps: Step[];
  #spaces: SpacesScene[];

  constructor(container: HTMLDivElement, scene: PieceScene, width: number, height: number) {
    this.#scene = scene;
    this.#steps = stepsOf(scene.plan.outline);
    this.#spaces = spacesIn(scene);
    this.#view = fittedView(scene, width, height);
    this.#cells = createCellStage(container, {
      picture: pictureOf(scene),
      viewport: this.#cellView(),
      width,
      height,
      lines: null,
    });
    this.#cells.setFabric(fabricOf(scene));
    this.#marks = shapeLayer((context) => this.#drawMarks(context));
    this.#pointer = shapeLayer((context) => this.#drawPointer(context));
    this.#cells.konva.add(this.#marks, this.#pointer);
  }

  get view(): Viewport {
    return this.#view;
  }

  show(scene: PieceScene): void {
    const before = this.#scene;
    this.#scene = scene;
    if (scene.plan !== before.plan || scene.look !== before.look || scene.shows !== before.shows) {
      this.#steps = stepsOf(scene.plan.outline);
      this.#spaces = spacesIn(scene);
      this.#cells.show(pictureOf(scene));
      this.#cells.look(this.#cellView());
    }
    this.#cells.setFabric(fabricOf(scene));
    this.#marks.batchDraw();
    this.#pointer.batchDraw();
  }

  look(view: Viewport): void {
    this.#view = view;
    this.#cells.look(this.#cellView());
    this.#marks.batchDraw();
    this.#pointer.batchDraw();
  }

  point(spot: StitchSpot | null): void {
    if (spot?.needle === this.#spot?.needle && spot?.row === this.#spot?.row) return;
    this.#spot = spot;
    this.#pointer.batchDraw();
  }

  /** Shows groups where they are being moved to; null when they are put down. */
  carry(carried: Reading | null): void {
    if (carried === this.#carried) return;
    const { plan, look } = this.#scene;
    if (carried?.band !== this.#carried?.band) this.#ghosts = carried ? ghostsOf(plan, carried.band, look) : [];
    this.#carried = carried;
    this.#marks.batchDraw();
  }

  resize(width: number, height: number): void {
    this.#cells.resize(width, height);
    this.#marks.draw();
    this.#pointer.draw();
  }

  destroy(): void {
    this.#cells.destroy();
  }

  /** The cell stage counts columns from the left edge of the fabric as it is seen. */
  #cellView(): Viewport {
    const { columnWidth, cellHeight, y } = this.#view;
    const { first, width } = this.#scene.plan.fabric;
    return new Viewport(columnWidth, cellHeight, this.#view.span(first, first + width - 1).left, y);
  }

  /** Under the cast-on edge, or at the foot of the view where that is out of sight. */
  #rulerY(): number {
    return Math.min(this.#view.top(-1) + RULER_GAP, this.#cells.konva.height() - RULER_HEIGHT);
  }

  #drawMarks(context: CanvasRenderingContext2D): void {
    const { plan, project, showsFloats, showsWraps, look, font, acrossSeam, fold } = this.#scene;
    const carried = this.#carried;
    const resting = carried ? plan.groups.filter(({ band }) => band !== carried.band) : plan.groups;
    const groups = carried ? [...resting, ...carried.groups] : resting;
    const chosen = carried ? (carried.groups[carried.group] ?? null) : this.#scene.chosen;
    const view = this.#view;
    const width = this.#cells.konva.width();
    const height = this.#cells.konva.height();
    const rulerY = this.#rulerY();
    if (carried) drawGhosts(context, view, this.#ghosts, carried.groups);
    drawOutline(context, view, this.#steps, look, width, height, !this.#scene.showsStitches);
    drawCentre(context, view, plan.outline, look, rulerY);
    drawFold(context, view, plan.outline, project.piece.hemRows, fold, look, font);
    if (carried) drawGuides(context, view, carried, look);
    drawGroups(context, view, groups, look, rulerY);
    if (chosen) drawChosen(context, view, chosen, look);
    let strands: Strand[] = [];
    // Seen from the knit side, strands and wraps lie behind the fabric.
    // While groups move they are those of where they stood.
    const isFromBehind = sideOf(this.#scene) === 'purl' && !carried;
    if (showsFloats && isFromBehind) {
      strands = strandsIn(plan.rows, view, width, height);
      drawFloats(context, strands, view.cellHeight, look);
    }
    if (showsWraps && isFromBehind) drawWraps(context, view, plan.rows, look, width, height);
    for (const spaces of carried ? spacesWith(this.#scene, carried) : this.#spaces)
      drawSpaces(context, view, spaces, plan.outline, acrossSeam, look, font);
    drawTags(context, strands, look, font);
    drawCounter(context, view, plan.outline, look, font, width, height);
    const { first, width: needles } = plan.fabric;
    drawRuler(context, view, { first, last: first + needles - 1, groups }, look, font, rulerY, width);
  }

  #drawPointer(context: CanvasRenderingContext2D): void {
    if (this.#spot) drawCursor(context, this.#view, this.#spot, this.#scene.look, this.#rulerY());
  }
}

/** The whole piece, with room for what stands around it. */
export function fittedView(
  scene: Pick<PieceScene, 'plan' | 'project' | 'shows'>,
  width: number,
  height: number,
): Viewport {
  const { first, width: columns, rows } = scene.plan.fabric;
  const { gauge } = scene.project.piece;
  const isTurned = isTurnedIn(scene);
  const column = isTurned ? -(first + columns) : first;
  const box = { column, row: 0, width: columns, height: rows };
  const fitted = Viewport.fit(box, gauge.rows / gauge.stitches, roomAround(width, height));
  return isTurned ? fitted.turned() : fitted;
}

/** The side of the fabric that is seen. */
export function sideOf({ project, shows }: Pick<PieceScene, 'project' | 'shows'>): 'knit' | 'purl' {
  return drawnFrom(shows, project.piece.finishedFace);
}

/** True if the needles run from right to left: the fabric is seen from the side that does not face the knitter. */
export function isTurnedIn({ project, shows }: Pick<PieceScene, 'project' | 'shows'>): boolean {
  return isMirroredOnNeedles(shows, project.piece.finishedFace);
}

function fabricOf(scene: PieceScene): 'knit' | 'purl' | null {
  return scene.showsStitches ? sideOf(scene) : null;
}

/** The view less the title, the ruler, the counter and the numbers beside the piece. */
export function roomAround(width: number, height: number): Room {
  return { width, height, left: 72, right: COUNTER_WIDTH + 12, top: 72, bottom: RULER_GAP + RULER_HEIGHT + 8 };
}

function pictureOf(scene: PieceScene): CellPicture {
  const { width, rows, cells } = scene.plan.fabric;
  const grid: Grid = { width, height: rows, cells };
  return { grid: isTurnedIn(scene) ? mirrorAcross(grid) : grid, colours: scene.look.yarns, surround: null };
}

function spacesIn({ plan, project }: PieceScene): SpacesScene[] {
  return plan.bands.flatMap((band, index) => {
    return spacesOf(band, project.bands[index]?.judge ?? 'figure', plan.outline) ?? [];
  });
}

/** The spaces while a band is moved. */
function spacesWith({ plan, project }: PieceScene, { band: moved, placed }: Reading): SpacesScene[] {
  return plan.bands.flatMap((band, index) => {
    return spacesOf(index === moved ? placed : band, project.bands[index]?.judge ?? 'figure', plan.outline) ?? [];
  });
}

function shapeLayer(draw: (context: CanvasRenderingContext2D) => void): Konva.Layer {
  const layer = new Konva.Layer({ listening: false });
  layer.add(
    new Konva.Shape({ listening: false, perfectDrawEnabled: false, sceneFunc: (context) => draw(context._context) }),
  );
  return layer;
}
