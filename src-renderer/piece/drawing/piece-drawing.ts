/**
 * The layers of the piece: the fabric as one bitmap, everything else as shapes
 * that draw what is in view.
 *
 * Columns of the viewport are slots, so that L1 is column −1 and the centre of
 * the bed lies at 0.
 */
import { mirrorAcross, type Grid } from '@shared/grid/index.ts';
import type { PlacedGroup } from '@shared/fabric/index.ts';
import {
  cellsLayer,
  Viewport,
  type CellPicture,
  type ChartLayer,
  type PartOfCells,
  type PixelBox,
  type Room,
  type Size,
} from '../../canvas/index.ts';
import type { Reading } from '../moving/reading.ts';
import type { StitchSpot } from '../stitch-spot.ts';
import { draggedGrid } from './dragged-cells.ts';
import { COUNTER_WIDTH } from './counter.ts';
import { drawCursor } from './cursor.ts';
import { drawFloats, drawTags, ROOMY_ROW, warnedInOpen } from './floats.ts';
import { drawFinding, NOTHING_SHOWN, type Shown } from './finding-marks.ts';
import {
  drawOverMovingGroups,
  drawOverStillGroups,
  drawUnderMovingGroups,
  drawUnderStillGroups,
  movingGroups,
  stillGroups,
  type Marked,
} from './marks.ts';
import { laidBox, type LaidView } from './laid-view.ts';
import { pointedStrands } from './pointed-strands.ts';
import { drawRowMark } from './draw-profile.ts';
import { RULER_GAP, RULER_HEIGHT } from './ruler.ts';
import type { PieceScene } from './scene.ts';
import { isTurnedIn, sideOf } from './side.ts';

/** What the stage shows of a piece now. */
export interface ShownPiece {
  readonly scene: PieceScene;
  /** The cells, by {@link pictureOf} and {@link draggedPicture}. */
  readonly picture: CellPicture;
  /** Groups in the hand. */
  readonly dragged: Reading | null;
  /** The stitch that the pointer or the keyboard is on. */
  readonly spot: StitchSpot | null;
  /** Where a finding is that was gone to. */
  readonly found: Shown;
}

type PieceLayer = ChartLayer<LaidView, ShownPiece>;

/** The layers of one stage. What stays while a group is dragged is drawn once; what goes with it, each time. */
export function pieceLayers(): readonly PieceLayer[] {
  const cells = cellsLayer<LaidView, ShownPiece>({
    picture: ({ picture }) => picture,
    parts: (laid, { scene }) => cellParts(laid, scene),
    lines: () => null,
    fabric: ({ scene }) => fabricOf(scene),
  });
  /** Where the numbers of the spaces stand, as they were drawn last. */
  let numbers: readonly PixelBox[] = [];
  const stays = (isDrawn: (shown: ShownPiece) => boolean) =>
    ({
      draw(context, laid, shown, frame) {
        if (isDrawn(shown)) drawUnderStillGroups(context, markedIn(laid, shown, frame));
      },
      nodes: (laid, shown, size) => (isDrawn(shown) ? stillGroups(markedIn(laid, shown, size)) : []),
      drawOver(context, laid, shown, frame) {
        if (isDrawn(shown)) numbers = drawOverStillGroups(context, markedIn(laid, shown, frame));
      },
      changed: (before, after) => before.scene !== after.scene || before.dragged?.band !== after.dragged?.band,
    }) satisfies PieceLayer;
  // While a group is dragged its cells are drawn again, and what stands around is not. At rest both have one canvas:
  // each that is seen costs in every frame that draws on any of them.
  const atRest = stays(({ dragged }) => dragged === null);
  const pointed = (isDrawn: (shown: ShownPiece) => boolean) =>
    ({
      isLight: true,
      draw: (context, laid, shown, size) => (isDrawn(shown) ? drawPointed(context, laid, shown, size, numbers) : []),
      changed: (before, after) =>
        before.scene !== after.scene ||
        before.found !== after.found ||
        (before.dragged === null) !== (after.dragged === null) ||
        !isSameSpot(before.spot, after.spot),
      isBlank: (shown) => {
        const { scene, spot, found } = shown;
        return !isDrawn(shown) || (!spot && !scene.chosen && found === NOTHING_SHOWN);
      },
    }) satisfies PieceLayer;
  return [
    {
      ...atRest,
      where: cells.where,
      isKept: () => true,
      draw(context, laid, shown, frame) {
        cells.draw(context, laid, shown, frame);
        atRest.draw(context, laid, shown, frame);
      },
      changed(before, after) {
        // Another plan may begin at another needle.
        const others = before.scene.plan !== after.scene.plan || cells.changed(before, after);
        if (before.dragged && after.dragged) return others;
        return others !== false || atRest.changed(before, after);
      },
    },
    { ...pointed(({ dragged }) => dragged === null), sharesCanvas: true },
    { ...stays(({ dragged }) => dragged !== null), isBlank: ({ dragged }) => dragged === null },
    {
      draw: (context, laid, shown, frame) => drawUnderMovingGroups(context, markedIn(laid, shown, frame)),
      nodes: (laid, shown, size) => movingGroups(markedIn(laid, shown, size)),
      drawOver: (context, laid, shown, frame) => drawOverMovingGroups(context, markedIn(laid, shown, frame)),
      changed: (before, after) => before.scene !== after.scene || before.dragged !== after.dragged,
      isBlank: ({ dragged }) => dragged === null,
    },
    pointed(({ dragged }) => dragged !== null),
  ];
}

/** What is pointed at and what was found; gives where, in pixels, if that is no more than a stitch. */
function drawPointed(
  context: CanvasRenderingContext2D,
  laid: LaidView,
  shown: ShownPiece,
  size: Size,
  numbers: readonly PixelBox[],
): PixelBox[] | null {
  const { scene, spot, dragged } = shown;
  // What was found is of the groups where they stood: in the hand they leave its frames behind.
  const found = dragged ? { ...shown.found, places: [] } : shown.found;
  const { plan, look } = scene;
  const foot = rulerY(laid, size.height);
  const marksRow = spot !== null && scene.showsFloats && sideOf(scene) === 'purl';
  if (marksRow) drawRowMark(context, laid, spot.row, plan, look, size.width);
  drawFinding(context, laid, found, plan.outline, look, foot);
  // Over the frames, which would cross the tags out.
  const hasStrands = drawPointedStrands(context, laid, shown, size, numbers);
  const cursor = spot ? drawCursor(context, laid, spot, look, foot) : [];
  return marksRow || hasStrands || found !== NOTHING_SHOWN ? null : cursor;
}

/**
 * The strands of what is pointed at, with their stitches; none while a group is in the hand, or where they lie
 * behind the fabric. False if there is none.
 */
function drawPointedStrands(
  context: CanvasRenderingContext2D,
  laid: LaidView,
  { scene, spot, found, dragged }: ShownPiece,
  size: Size,
  numbers: readonly PixelBox[],
): boolean {
  if (!scene.showsFloats || dragged || sideOf(scene) !== 'purl') return false;
  const { plan, look, font, chosen } = scene;
  const pointed = { row: spot?.row ?? null, group: chosen, places: found.floats };
  const strands = warnedInOpen(pointedStrands(plan.rows, laid, size, pointed), plan.sections);
  if (strands.length === 0) return false;
  drawFloats(context, strands, ROOMY_ROW, look);
  drawTags(context, strands, numbers, look, font, 'below');
  return true;
}

/** The cells are counted from the left edge of the fabric as it is seen. */
function cellParts({ parts }: LaidView, { plan }: PieceScene): PartOfCells[] {
  const { first, width } = plan.fabric;
  return parts.map(({ first: lowest, last, view }) => {
    const { left } = view.span(first, first + width - 1);
    return {
      rows: { from: lowest - 1, to: last },
      viewport: new Viewport(view.columnWidth, view.cellHeight, left, view.y),
    };
  });
}

/** Under the cast-on edge, or at the foot of the view where that is out of sight. */
function rulerY(laid: LaidView, height: number): number {
  return Math.min(laid.castOn + RULER_GAP, height - RULER_HEIGHT);
}

function markedIn(laid: LaidView, { scene, dragged }: ShownPiece, { width, height }: Size): Marked {
  return { scene, laid, width, height, rulerY: rulerY(laid, height), dragged };
}

function isSameSpot(one: StitchSpot | null, other: StitchSpot | null): boolean {
  return one?.needle === other?.needle && one?.row === other?.row;
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

function fabricOf(scene: PieceScene): 'knit' | 'purl' | null {
  return scene.showsStitches ? sideOf(scene) : null;
}

/** The view less the ruler, the counter, the profile and the numbers beside the piece, and `heading` pixels for a title that lies on it. */
export function roomAround(width: number, height: number, heading: number, profile: number): Room {
  return {
    width,
    height,
    left: 72,
    right: COUNTER_WIDTH + 12 + profile,
    top: 16 + heading,
    bottom: RULER_GAP + RULER_HEIGHT + 8,
  };
}

/** The fabric with every group in its place. */
export function pictureOf(scene: Pick<PieceScene, 'plan' | 'project' | 'shows' | 'look'>): CellPicture {
  const { width, rows, cells } = scene.plan.fabric;
  const grid: Grid = { width, height: rows, cells };
  return { grid: isTurnedIn(scene) ? mirrorAcross(grid) : grid, colours: scene.look.yarns, surround: null };
}

/** The fabric as it would be if the groups were put down where they are dragged; `picture` has them in their place. */
export function draggedPicture(
  picture: CellPicture,
  dragged: Reading | null,
  scene: Pick<PieceScene, 'plan' | 'project' | 'shows'>,
): CellPicture {
  if (!dragged) return picture;
  const { plan, project } = scene;
  const { first, width } = plan.fabric;
  const isTurned = isTurnedIn(scene);
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
  return { ...picture, grid: draggedGrid(picture.grid, boxes, project.mainYarn) };
}
