/**
 * What is drawn over the fabric, in two parts: what stays where it is while a
 * group is dragged, and what goes with it. In the middle of each stand groups,
 * which are taken hold of, so that each has marks under and over them.
 */
import { bandSpaces, copyGaps, type PlacedGroup } from '@shared/fabric/index.ts';
import { bandsOf } from '@shared/pattern/index.ts';
import { edgesAt, facingRows } from '@shared/piece/index.ts';
import type { PlanRow } from '@shared/plan/index.ts';
import type { ChartNode, PixelBox } from '../../canvas/index.ts';
import type { Reading } from '../moving/reading.ts';
import { drawAnchors } from './anchors.ts';
import { drawBedEnds } from './bed-ends.ts';
import { drawCounter } from './counter.ts';
import type { Strand } from '../../canvas/strands.ts';
import { drawFloats, drawTags, ROOMY_ROW, strandsIn, warnedInOpen } from './floats.ts';
import { drawCentre, drawChosen, drawEdges, drawFold, drawGroup } from './group-marks.ts';
import { drawFeeding } from './feeding-strip.ts';
import { drawGroupNumbers } from './group-numbers.ts';
import { drawGuides } from './guides.ts';
import type { LaidView } from './laid-view.ts';
import { stepsOf } from './outline.ts';
import type { PieceScene } from './scene.ts';
import { drawProfile } from './draw-profile.ts';
import { profileWidth } from './profile.ts';
import { drawRuler, rulerMarks } from './ruler.ts';
import { sideOf } from './side.ts';
import { drawSpaces } from './spaces.ts';
import { drawOutline } from './stitches.ts';
import { drawWraps } from './wraps.ts';

/** What is marked, and how it is looked at. */
export interface Marked {
  readonly scene: PieceScene;
  readonly laid: LaidView;
  readonly width: number;
  readonly height: number;
  readonly rulerY: number;
  /** Groups in the hand. */
  readonly dragged: Reading | null;
}

/** A group that can be taken hold of; its key is its number in the plan. */
function nodeOf({ scene, laid, rulerY }: Marked, group: PlacedGroup, index: number): ChartNode {
  const { block, firstRow, lastRow } = group;
  return {
    key: String(index),
    corners: laid.corners(block.first, block.last, firstRow, lastRow),
    draw: (context) => drawGroup(context, laid, group, scene.look, rulerY),
  };
}

export function stillGroups(marked: Marked): ChartNode[] {
  return marked.scene.plan.groups.flatMap((group, index) =>
    group.band === marked.dragged?.band ? [] : [nodeOf(marked, group, index)],
  );
}

export function movingGroups(marked: Marked): ChartNode[] {
  const { scene, dragged } = marked;
  if (!dragged) return [];
  const first = scene.plan.groups.findIndex(({ band }) => band === dragged.band);
  return dragged.groups.map((group, index) => nodeOf(marked, group, first + index));
}

export function drawUnderStillGroups(context: CanvasRenderingContext2D, marked: Marked): void {
  const { scene, laid, width, height, rulerY } = marked;
  const { plan, project, look, font, fold } = scene;
  const steps = stepsOf(
    plan.outline,
    laid.parts.map(({ first }) => first),
  );
  drawOutline(context, laid, steps, look, width, height, !scene.showsStitches);
  drawCentre(context, laid, plan.outline, look, rulerY);
  drawFold(context, laid, plan.outline, facingRows(project.piece), fold, look, font);
}

/** Gives where the numbers of the spaces stand, so that nothing is set over them. */
export function drawOverStillGroups(context: CanvasRenderingContext2D, marked: Marked): readonly PixelBox[] {
  const { scene, laid, width, height, rulerY } = marked;
  const { plan, showsFloats, showsWraps, look, font } = scene;
  for (const row of rowsMeasured(marked, restingGroups(marked))) {
    drawEdges(context, laid, plan.outline, row, look, rulerY);
  }
  if (plan.beyondBed) drawBedEnds(context, laid, plan.outline, plan.beyondBed, look, font, rulerY, scene.stripTop);
  // Under the numbers of floats, which it would cut.
  if (scene.chosen && !marked.dragged) drawChosen(context, laid, scene.chosen, look);
  const strands: Strand[] = [];
  const rows = restingRows(marked);
  for (const part of laid.parts) drawAnchors(context, part.view, rows, look, width, height, part);
  // Seen from the knit side, strands and wraps lie behind the fabric.
  if (sideOf(scene) === 'purl') {
    for (const part of laid.parts) {
      const { view } = part;
      if (showsFloats && view.cellHeight >= ROOMY_ROW) {
        const own = warnedInOpen(strandsIn(rows, view, width, height, part), plan.sections);
        drawFloats(context, own, view.cellHeight, look);
        strands.push(...own);
      }
      if (showsWraps) drawWraps(context, view, rows, look, width, height, part);
    }
  }
  const numbers = drawSpacesOf(context, marked, (band) => band !== marked.dragged?.band);
  drawTags(context, strands, numbers, look, font);
  numberGroups(context, marked, restingGroups(marked));
  drawCounter(context, laid, plan.outline, look, font, width - profileWidth(plan, width), height);
  if (scene.feeding) drawFeeding(context, laid, scene.feeding, look, font, scene.stripTop, rulerY);
  if (showsFloats && sideOf(scene) === 'purl') drawProfile(context, laid, scene, rows, width, rulerY);
  if (!marked.dragged) drawNeedles(context, marked);
  return numbers;
}

export function drawUnderMovingGroups(
  context: CanvasRenderingContext2D,
  { scene: { look }, laid, dragged }: Marked,
): void {
  if (dragged) drawGuides(context, laid, dragged, look);
}

export function drawOverMovingGroups(context: CanvasRenderingContext2D, marked: Marked): void {
  const { scene, laid, rulerY, dragged } = marked;
  const { plan, look } = scene;
  if (dragged) {
    drawEdges(context, laid, plan.outline, dragged.placed.firstRow, look, rulerY);
    const chosen = dragged.groups[dragged.group];
    if (chosen) drawChosen(context, laid, chosen, look);
    drawSpacesOf(context, marked, (band) => band === dragged.band);
    numberGroups(context, marked, dragged.groups);
    drawNeedles(context, marked);
  }
}

/** The ruler of needles, with where the edges and all groups stand on it. */
function drawNeedles(context: CanvasRenderingContext2D, marked: Marked): void {
  const { scene, laid, width, rulerY, dragged } = marked;
  const { plan, look, font } = scene;
  const { first, width: needles } = plan.fabric;
  const groups = [...restingGroups(marked), ...(dragged?.groups ?? [])];
  const edges = rowsMeasured(marked, groups).map((row) => edgesAt(plan.outline, row));
  const marks = rulerMarks(groups, edges);
  // Its needles stand as on the row above it, to which all lines down to it lead.
  const { view, row } = laid.rowAtHeight(rulerY);
  const onRow = laid.parts.length > 1 ? scene.spaceWords.onRow(row) : '';
  const bed = plan.beyondBed?.bed ?? null;
  drawRuler(context, view, { first, last: first + needles - 1, marks, onRow, bed }, look, font, rulerY, width);
}

/** Writes the numbers of some groups, which are those of whole bands. */
function numberGroups(
  context: CanvasRenderingContext2D,
  { scene, laid }: Marked,
  groups: readonly PlacedGroup[],
): void {
  const { plan, project, look, font, groupNames } = scene;
  for (const band of new Set(groups.map((group) => group.band))) {
    const first = plan.groups.findIndex((group) => group.band === band);
    const own = groups.filter((group) => group.band === band);
    drawGroupNumbers(context, laid, own, first, project.piece.finishedFace, groupNames, look, font);
  }
}

/** The rows that the spaces beside some groups are measured on. */
function rowsMeasured({ scene, dragged }: Marked, groups: readonly PlacedGroup[]): number[] {
  const placed = bandsOf(scene.plan).map((band) => (band.number === dragged?.band ? dragged.placed : band));
  return placed.filter(({ number }) => groups.some(({ band }) => band === number)).map(({ firstRow }) => firstRow);
}

function restingGroups({ scene, dragged }: Marked): readonly PlacedGroup[] {
  const { groups } = scene.plan;
  return dragged ? groups.filter(({ band }) => band !== dragged.band) : groups;
}

/** The rows without the strands of groups that are no longer where they stood. */
function restingRows({ scene, dragged }: Marked): readonly PlanRow[] {
  const { rows } = scene.plan;
  const band = dragged && bandsOf(scene.plan)[dragged.band];
  if (!band) return rows;
  return rows.map((row) =>
    row.row >= band.firstRow && row.row <= band.lastRow ? { ...row, floats: [], wraps: [], anchors: [] } : row,
  );
}

function drawSpacesOf(
  context: CanvasRenderingContext2D,
  marked: Marked,
  isDrawn: (band: number) => boolean,
): PixelBox[] {
  const { scene, laid, dragged } = marked;
  const { plan, spaceWords, look, font } = scene;
  const taken: PixelBox[] = [];
  bandsOf(plan).forEach((band) => {
    if (!isDrawn(band.number)) return;
    const placed = band.number === dragged?.band ? dragged.placed : band;
    const spaces = bandSpaces(placed, placed.question.judge, plan.outline);
    if (!spaces) return;
    // Blocks have no needles between copies; a raised group has none on the row.
    const onRow =
      placed.question.judge === 'figure' ? placed.groups.filter(({ firstRow }) => firstRow === spaces.row) : [];
    taken.push(...drawSpaces(context, laid, spaces, onRow.flatMap(copyGaps), spaceWords, taken, look, font));
  });
  return taken;
}
