/** Photographs of charts that never existed, by seed: the sheet, the camera, the light, the sensor and the file. */
import type { Grid } from '@shared/grid/index.ts';
import type { Corners, Picture } from '@shared/reading/index.ts';
import { blobs, speckled } from '../../unit/reading/motifs.ts';
import { viewOf, type Pose } from './camera.ts';
import { painterOf, type DrawnChart } from './drawn-chart.ts';
import { endsOf, reachingItsEnds } from './ends.ts';
import { KINDS, lookOf, yarnsOf, type Kind, type ToldBy } from './kinds.ts';
import { LEGEND_MARGIN } from './legend.ts';
import { LAMPS, lampOf, type LampKind } from './lamps.ts';
import { Chances } from './random.ts';
import { onScreen, screenOf } from './screen.ts';
import { blurred, cornersSeen, exposed, grained, throughJpeg } from './sensor.ts';

export interface Photograph {
  readonly seed: number;
  readonly kind: Kind;
  readonly toldBy: ToldBy;
  readonly lamp: LampKind;
  readonly picture: Picture;
  /** Of the chart as drawn: its own top left first, wherever that is in the picture. */
  readonly corners: Corners;
  readonly grid: Grid;
  readonly yarns: number;
}

/** Charts that are looked at on a screen are those that were drawn with a computer. */
const ON_SCREENS: readonly Kind[] = ['printed colours', 'printed colours with symbols', 'symbols in black and white'];

/** Larger pictures take too long to draw; their cells get fewer pixels instead. */
const MOST_PICTURE_PIXELS = 2.6e6;

/** What is photographed besides a chart on paper. */
export interface Setting {
  /** Shown on a screen instead, which only printed charts are. */
  readonly isOnScreen?: boolean;
  /** With a written legend beside it. */
  readonly hasLegend?: boolean;
}

export function kindOf(seed: number, { isOnScreen = false }: Setting = {}): Kind {
  const kinds = isOnScreen ? ON_SCREENS : KINDS;
  return kinds[seed % kinds.length] as Kind;
}

/** The photograph of a seed; kinds and lamps follow one another, so that any run of seeds has all of them. */
export function photographOf(seed: number, { isOnScreen = false, hasLegend = false }: Setting = {}): Photograph {
  const chances = new Chances(seed);
  const kind = kindOf(seed, { isOnScreen });
  const lamp = LAMPS[Math.floor(seed / KINDS.length) % LAMPS.length] as LampKind;
  const yarns = yarnsOf(kind, chances);
  const columns = kind === 'punched card' ? 24 : chances.one([12, 20, 24, 32, 40, 60, 90, 200]);
  const rows = chances.whole(Math.max(10, Math.floor(columns / 3)), Math.min(120, Math.ceil(columns * 1.5)));
  const drawn = allUsed(
    yarns === 2 && chances.isSo(0.25) ? speckled(columns, rows, 0.3, seed) : blobs(columns, rows, yarns, seed),
    yarns,
  );
  const { toldBy, ...look } = lookOf(kind, yarns, chances);
  const margin = hasLegend ? LEGEND_MARGIN : look.margin;
  const ends = endsOf(look, seed);
  const grid = look.lines?.goOn === true && !ends.outline ? reachingItsEnds(drawn) : drawn;
  const chart: DrawnChart = { ...look, ...ends, margin, hasLegend, grid, seed };
  const pose = poseOf(chart, chances);
  const view = viewOf(pose, columns, rows * chart.cellHeight, chart.margin);
  const painted = painterOf(chart);
  // Chances are drawn in the same order whatever the setting, or all photographs on paper would change.
  const paint = isOnScreen ? onScreen(painted, screenOf(new Chances(seed + 7))) : painted;
  const values = exposed(pose, view, (x, y) => paint(x, y / chart.cellHeight));
  const picture = developed(values, pose, lampOf(lamp, chances), chances);
  const corners = cornersSeen(view, { width: columns, height: rows * chart.cellHeight });
  return { seed, kind, toldBy, lamp, picture, corners, grid, yarns };
}

/** Every yarn is in some cells, or the chart would have fewer. */
function allUsed(grid: Grid, yarns: number): Grid {
  const cells = grid.cells.slice();
  for (let yarn = 0; yarn < yarns; yarn++) {
    for (let i = 0; i < 4; i++) {
      const at = Math.floor(((yarn * 4 + i + 0.5) * cells.length) / (yarns * 4));
      if (!cells.includes(yarn) || cells.filter((cell) => cell === yarn).length < 4) cells[at] = yarn;
    }
  }
  return { ...grid, cells };
}

function poseOf({ grid, cellHeight, margin }: DrawnChart, chances: Chances): Pose {
  const across = grid.width + 2 * margin;
  const up = grid.height * cellHeight + 2 * margin;
  const wanted = chances.between(9, 22);
  const pixels = Math.min(wanted, Math.sqrt(MOST_PICTURE_PIXELS / (across * up)));
  return {
    width: Math.round(across * pixels * 1.12),
    height: Math.round(up * pixels * 1.12),
    roll: chances.between(-9, 9),
    tilt: chances.between(-22, 22),
    pan: chances.between(-22, 22),
    distance: 2.6,
    fill: 0.94,
    barrel: chances.isSo(0.4) ? chances.between(-0.02, 0.03) : 0,
    curl: chances.isSo(0.3) ? chances.between(0.01, 0.04) : 0,
  };
}

/** Lamp, lens, sensor and JPEG, in the order in which light meets them. */
function developed(values: Float32Array, pose: Pose, lamp: ReturnType<typeof lampOf>, chances: Chances): Picture {
  const { width, height } = pose;
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const light = lamp((x + 0.5) / width, (y + 0.5) / height);
      const at = (y * width + x) * 3;
      for (let c = 0; c < 3; c++) values[at + c] = lit(values[at + c] as number, light[c] as number);
    }
  }
  const seen = blurred(values, pose, chances.between(0.4, 1.3));
  const noise = chances.between(1, 7);
  const picture = grained(seen, pose, () => noise * chances.normal());
  return throughJpeg(picture, chances.whole(45, 95));
}

/**
 * An sRGB value 0 … 255 under so much of the light: light is multiplied before
 * it becomes sRGB (IEC 61966-2-1, its curve taken as a power of 2.2 here).
 */
function lit(value: number, light: number): number {
  return Math.max(0, value) * light ** (1 / 2.2);
}
