/**
 * The floats on the purl side of the fabric: each strand as it lies there, in
 * its yarn, from the stitch before it to the stitch after it. Long ones have an
 * edge in the colour of warnings and a tag with their stitches.
 *
 * It comes when the purl side is first looked at.
 */
import { GRAPHIC_CONTRAST, legibleOn } from '@shared/colour/index.ts';
import type { CellBox } from '@shared/grid/index.ts';
import type { FloatLimit, Gauge } from '@shared/piece/index.ts';
import { floatsOfDrawing, type Float } from '@shared/strands/index.ts';
import { CHART_FONT, cellShown, pictureArea, type CellPicture, type Viewport } from '../../canvas/index.ts';
import { sagOf, tagsOf, TAG_HEIGHT, type Strand } from '../../canvas/strands.ts';
import type { MotifLook } from './look.ts';
import type { DrawnFloats } from './motif-drawing.ts';

/** On rows thinner than this many pixels only long floats are drawn: from afar the others hide the figure. */
const LEAST_ROW = 6;
/** The share of a row's height that yarn takes, and the least and most pixels of it. */
const YARN = { share: 0.24, least: 1.2, most: 6 };
/** Edges of a strand in pixels: its shadow, and what marks a long one. */
const SHADOW = 1;
const WARNING = 2;

export interface FloatsOn {
  readonly picture: CellPicture;
  /** Palette index of the main yarn. */
  readonly ground: number;
  readonly gauge: Gauge;
  readonly limit: FloatLimit;
  readonly look: Pick<MotifLook, 'raised' | 'warn' | 'ink'>;
}

/** The floats of a picture and of the copies that show around it, ready to be drawn. */
export function fabricFloats({ picture, ground, gauge, limit, look: { raised, warn, ink } }: FloatsOn): DrawnFloats {
  const { width, height } = picture.grid;
  const rows = floatsSeen(picture, ground, gauge, limit);
  const isOwn = ({ first }: Float): boolean => first >= 0 && first < width;
  const own = rows.filter(({ row }) => row >= 0 && row < height).flatMap(({ floats }) => floats.filter(isOwn));
  const look = {
    yarns: picture.colours,
    warn,
    raised,
    ink,
    warning: picture.colours.map((colour) => legibleOn(colour ?? '#000000', '#d98a1e', GRAPHIC_CONTRAST)),
  };
  return {
    over: own.filter(({ isOver }) => isOver).length,
    longest: Math.max(0, ...own.map(({ stitches }) => stitches)),
    draw(context, view, size) {
      const strands = strandsSeen(rows, view, size);
      const chart = view.pixels({ column: 0, row: 0, width, height });
      const whole = new Path2D();
      whole.rect(chart.left, chart.top, chart.width, chart.height);
      // Strands end with the fabric that shows, and sag under its lowest row.
      const shown = view.pixels(pictureArea(picture));
      const around = new Path2D(whole);
      around.rect(shown.left, shown.top, shown.width, shown.height + view.cellHeight);
      for (const [part, rule, alpha] of [
        [whole, 'nonzero', 1],
        [around, 'evenodd', picture.surround?.strength ?? 0],
      ] as const) {
        if (alpha === 0) continue;
        context.save();
        context.clip(part, rule);
        context.globalAlpha = alpha;
        drawStrands(context, strands, view.cellHeight, look);
        context.restore();
      }
      const long = strands.filter(({ float, row }) => float.isOver && row >= 1 && row <= height && isOwn(float));
      // On the chart, where no number of a row is.
      const right = chart.left + chart.width;
      drawTags(
        context,
        long.map((strand) => ({ ...strand, x2: Math.min(strand.x2, right) })),
        look,
      );
    },
  };
}

interface FloatsOfRow {
  /** From 0, as the chart counts. */
  readonly row: number;
  /** Their needles are columns of the chart. */
  readonly floats: readonly Float[];
}

/** The floats that show, those that go on beyond what shows told whole. */
export function floatsSeen(picture: CellPicture, ground: number, gauge: Gauge, limit: FloatLimit): FloatsOfRow[] {
  const area = pictureArea(picture);
  const beyond = picture.surround?.copies.width ?? 0;
  const plane: CellBox = { ...area, column: area.column - beyond, width: area.width + 2 * beyond };
  const cells = new Uint8Array(plane.width * plane.height);
  for (let row = 0, at = 0; row < plane.height; row++) {
    for (let column = 0; column < plane.width; column++) {
      cells[at++] = cellShown(picture, plane.column + column, plane.row + row);
    }
  }
  const laid = floatsOfDrawing({ width: plane.width, height: plane.height, cells }, ground, gauge, limit);
  return laid.map((floats, index) => ({
    row: plane.row + index,
    floats: floats
      .map((float) => ({ ...float, first: float.first + plane.column, last: float.last + plane.column }) as Float)
      .filter(({ first, last }) => last >= area.column && first < area.column + area.width),
  }));
}

interface Size {
  readonly width: number;
  readonly height: number;
}

function strandsSeen(rows: readonly FloatsOfRow[], view: Viewport, { width, height }: Size): Strand[] {
  const seen = view.cellsIn(width, height);
  return rows
    .filter(({ row }) => row >= seen.row - 1 && row <= seen.row + seen.height)
    .flatMap(({ row, floats }) =>
      floats
        .filter(({ first, last, isOver }) => {
          if (last < seen.column || first > seen.column + seen.width) return false;
          return isOver || view.cellHeight >= LEAST_ROW;
        })
        .map((float) => {
          const { left: x1, right: x2 } = view.span(float.first, float.last);
          const y = view.top(row) + view.cellHeight / 2;
          const { stitches, isOver } = float;
          return {
            float,
            row: row + 1,
            stitches,
            isOver,
            x1,
            x2,
            y,
            y1: y,
            y2: y,
            sag: sagOf(x2 - x1, view.cellHeight),
          };
        }),
    );
}

interface FloatLook {
  readonly yarns: readonly (string | null)[];
  readonly warn: string;
  readonly raised: string;
  readonly ink: string;
  /** By palette index: the edge of a long strand of that yarn. */
  readonly warning: readonly string[];
}

/** The shorter first, so that long ones lie over them. */
function drawStrands(
  context: CanvasRenderingContext2D,
  strands: readonly Strand[],
  rowHeight: number,
  look: FloatLook,
): void {
  const yarn = Math.min(YARN.most, Math.max(YARN.least, rowHeight * YARN.share));
  context.lineCap = 'round';
  for (const strand of [...strands].sort((a, b) => a.float.stitches - b.float.stitches)) {
    const { x1, x2, y, sag, float } = strand;
    const index = float.strand.yarn;
    context.beginPath();
    context.moveTo(x1, y);
    // The curve reaches half as deep as its control point.
    context.quadraticCurveTo((x1 + x2) / 2, y + sag * 2, x2, y);
    context.lineWidth = yarn + 2 * (float.isOver ? WARNING : SHADOW);
    context.strokeStyle = float.isOver ? (look.warning[index] ?? look.warn) : 'rgb(0 0 0 / 35%)';
    context.stroke();
    context.lineWidth = yarn;
    context.strokeStyle = look.yarns[index] ?? look.ink;
    context.stroke();
  }
}

function drawTags(context: CanvasRenderingContext2D, strands: readonly Strand[], look: FloatLook): void {
  context.save();
  context.font = `600 12px ${CHART_FONT}`;
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  for (const { text, x, y, width } of tagsOf(strands, (letters) => context.measureText(letters).width)) {
    context.beginPath();
    context.roundRect(x - width / 2, y - TAG_HEIGHT / 2, width, TAG_HEIGHT, TAG_HEIGHT / 2);
    context.fillStyle = look.raised;
    context.fill();
    context.lineWidth = 1.5;
    context.strokeStyle = look.warn;
    context.stroke();
    context.fillStyle = look.ink;
    context.fillText(text, x, y + 0.5);
  }
  context.restore();
}
