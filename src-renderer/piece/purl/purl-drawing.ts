/** The layers of the purl side: the fabric, what lies on it, and what is pointed at. */
import type { Plan } from '@shared/plan/index.ts';
import type { ProjectAt } from '@shared/project/index.ts';
import type { PurlSide } from '@shared/plan/purl-side/index.ts';
import { facingRows } from '@shared/piece/index.ts';
import type { PlacedGroup } from '@shared/fabric/index.ts';
import {
  cellsLayer,
  Viewport,
  type CellPicture,
  type ChartLayer,
  type PartOfCells,
  type Size,
} from '../../canvas/index.ts';
import { drawCounter } from '../drawing/counter.ts';
import { drawCursor } from '../drawing/cursor.ts';
import { drawFeeding, type FeedingScene } from '../drawing/feeding-strip.ts';
import { drawFinding, NOTHING_SHOWN, type Shown } from '../drawing/finding-marks.ts';
import { drawFloats, drawTags, ROOMY_ROW, strandsIn, warnedInOpen } from '../drawing/floats.ts';
import { drawFold } from '../drawing/group-marks.ts';
import type { LaidView } from '../drawing/laid-view.ts';
import type { Look } from '../drawing/look.ts';
import { stepsOf } from '../drawing/outline.ts';
import { pointedStrands } from '../drawing/pointed-strands.ts';
import { drawRowMark } from '../drawing/draw-profile.ts';
import { drawRuler, RULER_GAP, RULER_HEIGHT } from '../drawing/ruler.ts';
import { drawOutline } from '../drawing/stitches.ts';
import type { StitchSpot } from '../stitch-spot.ts';
import { drawLying, type Pens } from './purl-strands.ts';

export interface PurlScene {
  readonly plan: Plan;
  readonly project: ProjectAt;
  readonly side: PurlSide;
  /** The stitches; from afar with the veil of the strands over them. */
  readonly picture: CellPicture;
  readonly look: Look;
  readonly pens: Pens;
  readonly font: string;
  readonly fold: string;
  readonly showsFloats: boolean;
  readonly showsWraps: boolean;
  /** Along the rows; null where it is not shown, or not known yet. */
  readonly feeding: FeedingScene | null;
  /** Pixels at the top that the heading covers. */
  readonly stripTop: number;
}

export interface ShownPurlSide {
  readonly scene: PurlScene;
  /** The stitch that the pointer or the keyboard is on. */
  readonly spot: StitchSpot | null;
  readonly chosen: PlacedGroup | null;
  /** Where a finding is that was gone to. */
  readonly found: Shown;
}

/** The layers of one stage. */
export function purlLayers(): readonly ChartLayer<LaidView, ShownPurlSide>[] {
  const cells = cellsLayer<LaidView, ShownPurlSide>({
    picture: ({ scene }) => scene.picture,
    parts: (laid, { scene }) => cellParts(laid, scene),
    lines: () => null,
    fabric: () => 'purl',
  });
  return [
    // On one canvas, as both change with the scene alone: each that is seen costs in every frame that draws on any of them.
    {
      draw(context, laid, shown, frame) {
        cells.draw(context, laid, shown, frame);
        drawStrands(context, laid, shown, frame);
      },
      changed: (before, after) => before.scene !== after.scene,
      isKept: () => true,
    },
    {
      sharesCanvas: true,
      isLight: true,
      draw: drawPointed,
      changed: (before, after) =>
        before.scene !== after.scene ||
        before.found !== after.found ||
        before.chosen !== after.chosen ||
        before.spot?.needle !== after.spot?.needle ||
        before.spot?.row !== after.spot?.row,
      isBlank: ({ spot, chosen, found }) => !spot && !chosen && found === NOTHING_SHOWN,
    },
  ];
}

/** The cells are counted from the left edge of the fabric. */
function cellParts({ parts }: LaidView, { plan }: PurlScene): PartOfCells[] {
  const { first, width } = plan.fabric;
  return parts.map(({ first: lowest, last, view }) => ({
    rows: { from: lowest - 1, to: last },
    viewport: new Viewport(view.columnWidth, view.cellHeight, view.span(first, first + width - 1).left, view.y),
  }));
}

function footOf(laid: LaidView, height: number): number {
  return Math.min(laid.castOn + RULER_GAP, height - RULER_HEIGHT);
}

function drawStrands(context: CanvasRenderingContext2D, laid: LaidView, { scene }: ShownPurlSide, size: Size): void {
  const { plan, project, side, look, pens, font, fold, showsFloats, showsWraps } = scene;
  const { outline, fabric } = plan;
  const foot = footOf(laid, size.height);
  const starts = laid.parts.map(({ first }) => first);
  drawOutline(context, laid, stepsOf(outline, starts), look, size.width, size.height, false);
  drawLying(context, laid, size, { side, rows: outline.rows, main: project.mainYarn, pens, showsFloats, showsWraps });
  drawFold(context, laid, outline, facingRows(project.piece), fold, look, font);
  if (showsFloats) {
    const roomy = laid.parts.filter(({ view }) => view.cellHeight >= ROOMY_ROW);
    const strands = roomy.flatMap((part) => strandsIn(plan.rows, part.view, size.width, size.height, part));
    drawTags(context, warnedInOpen(strands, plan.sections), [], look, font);
  }
  drawCounter(context, laid, outline, look, font, size.width, size.height);
  if (scene.feeding) drawFeeding(context, laid, scene.feeding, look, font, scene.stripTop, foot);
  const { view, row } = laid.rowAtHeight(foot);
  const edges = { first: outline.first[row - 1] as number, last: outline.last[row - 1] as number };
  const marks = [edges.first, edges.last].map((slot) => ({ slot, kind: 'edge' as const }));
  const bed = plan.beyondBed?.bed ?? null;
  const last = fabric.first + fabric.width - 1;
  drawRuler(context, view, { first: fabric.first, last, marks, onRow: '', bed }, look, font, foot, size.width);
}

function drawPointed(
  context: CanvasRenderingContext2D,
  laid: LaidView,
  { scene, spot, chosen, found }: ShownPurlSide,
  size: Size,
): void {
  const { plan, look, font, showsFloats } = scene;
  const foot = footOf(laid, size.height);
  if (spot) drawRowMark(context, laid, spot.row, plan, look, 0);
  if (showsFloats) {
    const pointed = pointedStrands(plan.rows, laid, size, {
      row: spot?.row ?? null,
      group: chosen,
      places: found.floats,
    });
    const strands = warnedInOpen(pointed, plan.sections);
    // From afar they are lifted out of the veil.
    const { cellHeight } = laid.whole;
    if (cellHeight < ROOMY_ROW) drawFloats(context, strands, ROOMY_ROW, look);
    drawTags(context, strands, [], look, font);
  }
  drawFinding(context, laid, found, plan.outline, look, foot);
  if (spot) drawCursor(context, laid, spot, look, foot);
}
