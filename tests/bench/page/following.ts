/**
 * Painting with live symmetry and tiling, timed in the page: 1,600 cells change
 * with each one under the pointer.
 *
 * The program does all that the Motif bench does between a pointer event and
 * its pixels: the pen with what follows it, the change with its undo step, the
 * session, the chart with its neighbours, marks and pointer, and the measure.
 * That comes from the worker when the hand rests, so after every stroke there
 * is a frame that shows the new measure and says it in the panel.
 *
 * The bare canvas has none of this: one grid and its pixels changed in place,
 * the part of them that shows put on a canvas, and the view drawn from that.
 */
import { projectAround, START_YARNS } from '@shared/project/index.ts';
import { straightCopies, type Grid } from '@shared/grid/index.ts';
import { words } from '@shared/words/index.ts';
import {
  motifLayers,
  pictureOf,
  type MotifChart,
  type MotifScene,
} from '../../../src-renderer/motif/drawing/motif-drawing.ts';
import type { Following } from '../../../src-renderer/motif/editing/following.ts';
import { strokeChange } from '../../../src-renderer/motif/editing/strokes.ts';
import { measureDebounced, measureForNow } from '../../../src-renderer/motif/measured.ts';
import { Session } from '../../../src-renderer/session/session.ts';
import { CellBitmap, ChartStage, DeviceView, drawCells, type CellPicture } from '../../../src-renderer/canvas/index.ts';
import {
  COLOURS,
  drawing,
  hostElement,
  LINES,
  pointerAt,
  readPixel,
  STROKE,
  VIEW,
  VIEWPORT,
  WARM_UP,
} from './painter.ts';
import { holdUpFrame } from './held-up.ts';

const TILE = straightCopies({ width: 20, height: 25 });
const FOLLOWING: Following = { symmetry: 'both', tile: TILE };
const LOOK: MotifChart['look'] = {
  paper: '#f4f1ea',
  surface: '#ffffff',
  ink: '#22252b',
  raised: '#ffffff',
  warn: '#8a5200',
  accent: '#a8442f',
  onAccent: '#ffffff',
  lines: LINES,
  hatch: '#6b6b6b',
  guide: { inner: '#8a3020', outer: '#ffffff' },
};

/** The same for each scene, as on the bench: another list has all marks drawn anew. */
const NO_CELLS: MotifChart['doubts'] = [];

interface FollowingPainter {
  /** From the pointer event to the pixels. */
  frame(x: number, y: number): void;
  destroy(): void;
}

interface RestingPainter extends FollowingPainter {
  /** The hand rests; resolves with the time of the frame that shows the new measure. */
  rest(): Promise<number>;
}

/** The lower left copy everywhere. */
function tiledDrawing(): Grid {
  const { width, height, cells } = drawing();
  const copied = cells.map((_, at) => {
    const row = Math.floor(at / width) % TILE.height;
    return cells[row * width + ((at % width) % TILE.width)] as number;
  });
  return { width, height, cells: copied };
}

function programPainter(host: HTMLDivElement): RestingPainter {
  const session = new Session(projectAround('bench', 'bench', tiledDrawing(), 0, 'worn', START_YARNS), true);
  const container = document.createElement('div');
  const panel = document.createElement('div');
  host.append(container, panel);
  let rested: MotifChart['measure'] | null = null;
  let painted = 0;
  let giveUpMeasuring = (): void => undefined;
  let whenMeasured: (ms: number) => void = () => undefined;
  const drawn = () => ({ grid: session.motif.grid, ground: session.project.mainYarn });
  let hover: MotifScene['hover'] = null;
  const scene = (): MotifScene => {
    const chart: MotifChart = {
      grid: session.motif.grid,
      colours: COLOURS,
      measure: measureForNow(drawn(), rested),
      isHatched: true,
      isTurned: false,
      following: FOLLOWING,
      marked: null,
      doubts: NO_CELLS,
      neighbours: TILE,
      fabric: null,
      look: LOOK,
    };
    return { chart, picture: pictureOf(chart), floats: null, handles: null, hover, cursor: null };
  };
  const stage = new ChartStage(container, motifLayers(), VIEWPORT, scene(), VIEW);
  const context = container.querySelector('canvas')?.getContext('2d') as CanvasRenderingContext2D;
  const show = (x: number, y: number): void => {
    drawAtOnce(() => stage.show(scene()));
    readPixel(context, x, y);
  };
  const say = (): void => {
    const sentences = rested ? words.measure.sentences(rested) : [];
    panel.replaceChildren(
      ...sentences.map((sentence) => Object.assign(document.createElement('p'), { textContent: sentence })),
    );
  };
  return {
    frame(x, y) {
      holdUpFrame();
      const { motif } = session;
      const cell = VIEWPORT.cellAt(x, y);
      const colour = 1 - (motif.grid.cells[cell.row * motif.grid.width + cell.column] as number);
      const change = strokeChange(motif, 'draw', colour, [cell], FOLLOWING);
      if (!change) throw new Error('Nothing changes');
      session.change(change, `stroke ${Math.floor(painted++ / STROKE)}`);
      giveUpMeasuring();
      const measured = (measure: MotifChart['measure']): void => {
        const start = performance.now();
        rested = measure;
        show(x, y);
        say();
        whenMeasured(performance.now() - start);
      };
      giveUpMeasuring = measureDebounced(
        drawn(),
        measured,
        () => undefined,
        (problem) => {
          throw new Error(problem.code);
        },
      );
      hover = cell;
      show(x, y);
    },
    rest: () => new Promise((resolve) => (whenMeasured = resolve)),
    destroy() {
      giveUpMeasuring();
      stage.destroy();
    },
  };
}

/** Does what `work` leaves for the next animation frame right after it, so that both are timed and the wait is not. */
function drawAtOnce(work: () => void): void {
  const waiting: FrameRequestCallback[] = [];
  const { requestAnimationFrame } = window;
  window.requestAnimationFrame = (callback) => waiting.push(callback);
  work();
  window.requestAnimationFrame = requestAnimationFrame;
  for (const callback of waiting) callback(performance.now());
}

function barePainter(host: HTMLDivElement): FollowingPainter {
  const picture: CellPicture = { grid: tiledDrawing(), colours: COLOURS, surround: null };
  const { width, height, cells } = picture.grid;
  const bitmap = new CellBitmap(picture);
  const pixelContext = bitmap.canvas.getContext('2d') as CanvasRenderingContext2D;
  const image = pixelContext.getImageData(0, 0, width, height);
  const pixels = new Uint32Array(image.data.buffer);
  /** One pixel of each colour, taken from the picture itself. */
  const palette = [0, 1].map((colour) => {
    const at = cells.indexOf(colour);
    return pixels[(height - 1 - Math.floor(at / width)) * width + (at % width)] as number;
  });
  const seen = VIEWPORT.cellsIn(VIEW.width, VIEW.height);
  const canvas = document.createElement('canvas');
  canvas.width = VIEW.width;
  canvas.height = VIEW.height;
  host.append(canvas);
  const context = canvas.getContext('2d') as CanvasRenderingContext2D;
  const view = new DeviceView(VIEWPORT, VIEW.width, VIEW.height, 1);
  return {
    frame(x, y) {
      const { column, row } = VIEWPORT.cellAt(x, y);
      const colour = 1 - (cells[row * width + column] as number);
      const [left, low] = [column % TILE.width, row % TILE.height];
      for (const c of new Set([left, TILE.width - 1 - left])) {
        for (const r of new Set([low, TILE.height - 1 - low])) {
          for (let up = r; up < height; up += TILE.height) {
            for (let across = c; across < width; across += TILE.width) {
              cells[up * width + across] = colour;
              pixels[(height - 1 - up) * width + across] = palette[colour] as number;
            }
          }
        }
      }
      pixelContext.putImageData(image, 0, 0, seen.column, height - seen.row - seen.height, seen.width, seen.height);
      context.clearRect(0, 0, VIEW.width, VIEW.height);
      drawCells(context, view, picture, bitmap, LINES, null);
      readPixel(context, x, y);
    },
    destroy: () => canvas.remove(),
  };
}

/** Work from the pointer event to the pixels in each frame of painting with symmetry and tiling, ms. */
export interface FollowingTimes {
  readonly program: number[];
  readonly bare: number[];
}

/** From one frame on the screen to the next while the pointer paints in each, ms. */
export interface FollowingFrames {
  readonly program: number[];
  readonly bare: number[];
}

/** Each paints alone at the pace of the screen, a stroke after the other, with the measure as the hand rests. */
export async function showFollowing(frames: number): Promise<FollowingFrames> {
  const host = hostElement();
  const program = programPainter(host);
  const bare = barePainter(host);
  const shown: FollowingFrames = {
    program: await framesOf(program, frames, async () => void (await program.rest())),
    bare: await framesOf(bare, frames, () => new Promise((resolve) => setTimeout(resolve, 200))),
  };
  program.destroy();
  bare.destroy();
  return shown;
}

async function framesOf(painter: FollowingPainter, frames: number, rest: () => Promise<void>): Promise<number[]> {
  const intervals: number[] = [];
  let before = await nextFrame();
  for (let frame = -WARM_UP; frame < frames; frame++) {
    const { x, y } = pointerAt(frame);
    painter.frame(x, y);
    const now = await nextFrame();
    if (frame >= 0) intervals.push(now - before);
    before = now;
    if ((frame + WARM_UP) % STROKE !== STROKE - 1) continue;
    await rest();
    before = await nextFrame();
  }
  return intervals;
}

function nextFrame(): Promise<number> {
  return new Promise((resolve) => requestAnimationFrame(resolve));
}

/** Both paint the same cells in turn. */
export async function paintFollowing(frames: number): Promise<FollowingTimes> {
  const host = hostElement();
  const painters = { program: programPainter(host), bare: barePainter(host) };
  const times: FollowingTimes = { program: [], bare: [] };
  for (let frame = -WARM_UP; frame < frames; frame++) {
    const { x, y } = pointerAt(frame);
    const order = frame % 2 === 0 ? (['program', 'bare'] as const) : (['bare', 'program'] as const);
    for (const name of order) {
      const start = performance.now();
      painters[name].frame(x, y);
      const ms = performance.now() - start;
      if (frame >= 0) times[name].push(ms);
    }
    if ((frame + WARM_UP) % STROKE !== STROKE - 1) continue;
    const ms = await painters.program.rest();
    if (frame >= 0) times.program.push(ms);
  }
  painters.program.destroy();
  painters.bare.destroy();
  return times;
}
