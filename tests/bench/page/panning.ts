/**
 * Panning over a piece of 200 × 1000 that is an all-over throughout, with all
 * its strands, wraps and feeders: its purl side, and the flat piece. Timed in the
 * page from another view to the pixels.
 *
 * The bare canvas draws the same picture and works out nothing: it makes the
 * very calls, one after the other on one canvas, that drew all of this view,
 * written down while the program drew it. Measuring texts is left out.
 */
import { makePlan, runningOrderOf } from '@shared/plan/index.ts';
import { feedingRuns } from '@shared/plan/feeding.ts';
import { purlSideOf } from '@shared/plan/purl-side/index.ts';
import { pieceIn, projectAt, sampleProject, START_PIECE, startAllOver, type ProjectAt } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { pieceDrawingWords } from '@shared/words/piece-drawing.ts';
import { ChartStage, Viewport, type CellPicture } from '../../../src-renderer/canvas/index.ts';
import { NOTHING_SHOWN } from '../../../src-renderer/piece/drawing/finding-marks.ts';
import { LaidView } from '../../../src-renderer/piece/drawing/laid-view.ts';
import { lookOf } from '../../../src-renderer/piece/drawing/look.ts';
import { fittedView, pictureOf, pieceLayers, roomAround } from '../../../src-renderer/piece/drawing/piece-drawing.ts';
import { purlLayers } from '../../../src-renderer/piece/purl/purl-drawing.ts';
import { LEAST_ROW, pensOf } from '../../../src-renderer/piece/purl/purl-strands.ts';
import { veiledPicture } from '../../../src-renderer/piece/purl/veiled-cells.ts';
import { settled } from '../../written-projects.ts';
import { contextOf, LOOK_TOKENS } from './dragging.ts';
import { holdUpFrame } from './held-up.ts';
import { hostElement, readPixel, VIEW } from './painter.ts';
import { recordCalls, type Call } from './record-calls.ts';

/** Views that are gone through again and again. */
const PLACES = 12;
const WARM_UP = 12;

function fullPiece(): ProjectAt {
  const sample = projectAt(sampleProject());
  const [motif] = sample.motifs;
  if (!motif) throw new Error('The sample has a motif');
  return settled(sample, {
    piece: { ...START_PIECE, shape: { kind: 'rectangle', stitches: 200, rows: 1000 } },
    patterns: [startAllOver(motif.id, 2)],
  });
}

/** Pixels a row: each strand large, as many of them as are drawn one by one, and the whole. */
export const ROW_HEIGHTS = { near: 24, crowded: LEAST_ROW, whole: null } as const;
export type From = keyof typeof ROW_HEIGHTS;
export type Side = 'purl' | 'flat';

interface Panned {
  readonly canvases: readonly HTMLCanvasElement[];
  readonly look: (place: number) => void;
  readonly drawNow: () => void;
  readonly redraw: () => void;
  readonly destroy: () => void;
}

function pan(host: HTMLDivElement, side: Side, from: From): Panned {
  const project = fullPiece();
  const piece = pieceIn(project);
  const plan = makePlan(piece);
  const running = runningOrderOf(piece, plan);
  if (!running.isKnittable) throw new Error('The piece can be knitted');
  const look = lookOf(project, (name) => LOOK_TOKENS[name] ?? '#000000');
  const feeding = { runs: feedingRuns(running.order), names: project.yarns.map(({ name }) => name) };
  const shared = { plan, project, look, font: 'sans-serif', fold: words.piece.stage.fold, feeding, stripTop: 56 };
  const laying = { plan, project, shows: 'needles' as const };
  const height = ROW_HEIGHTS[from];
  const whole =
    height === null
      ? fittedView(laying, roomAround(VIEW.width, VIEW.height, 56, 96))
      : new Viewport((height * 40) / 28, height, VIEW.width / 2, VIEW.height / 2 + 500 * height);
  const viewAt = (place: number): LaidView => {
    const turn = (place * 2 * Math.PI) / PLACES;
    return new LaidView(whole.pannedBy(60 * Math.sin(turn), 40 * Math.cos(turn)), laying);
  };
  const container = document.createElement('div');
  host.append(container);
  const canvasesIn = (): HTMLCanvasElement[] => [...container.querySelectorAll('canvas')];
  const panned = (stage: Pick<ChartStage<LaidView, never>, 'look' | 'drawNow' | 'refresh' | 'destroy'>): Panned => ({
    canvases: canvasesIn(),
    look: (place) => stage.look(viewAt(place)),
    drawNow: () => stage.drawNow(),
    redraw: () => {
      stage.refresh();
      stage.drawNow();
    },
    destroy: () => stage.destroy(),
  });
  if (side === 'flat') {
    const scene = {
      ...{ ...shared, shows: laying.shows, showsFloats: true, showsWraps: true, showsStitches: false, chosen: null },
      spaceWords: words.piece.stage.spaces,
      groupNames: pieceDrawingWords.group,
      profileTitle: pieceDrawingWords.profile.title,
      profileTop: 0,
    };
    const shown = { scene, picture: pictureOf(scene), dragged: null, spot: null, found: NOTHING_SHOWN };
    return panned(new ChartStage(container, pieceLayers(), viewAt(0), shown, VIEW));
  }
  const strands = purlSideOf(plan, project.mainYarn);
  const { width, rows, cells } = plan.fabric;
  const picture: CellPicture =
    viewAt(0).whole.cellHeight < LEAST_ROW
      ? veiledPicture(plan.fabric, strands, look.yarns)
      : { grid: { width, height: rows, cells }, colours: look.yarns, surround: null };
  const scene = {
    ...{ ...shared, side: strands, picture, pens: pensOf(look.yarns, '#d98a1e') },
    ...{ showsFloats: true, showsWraps: true },
  };
  const shown = { scene, spot: null, chosen: null, found: NOTHING_SHOWN };
  return panned(new ChartStage(container, purlLayers(), viewAt(0), shown, VIEW));
}

/** From another view to the pixels, ms. */
export interface PanTimes {
  readonly program: number[];
  readonly bare: number[];
}

/** Both show the same views in turn. */
export function panInTurn(side: Side, from: From, frames: number): PanTimes {
  const host = hostElement();
  const panned = pan(host, side, from);
  const all = new Set(panned.canvases);
  const pictures = Array.from({ length: PLACES }, (_, place) => {
    panned.look(place);
    return recordCalls(panned.redraw, (canvas) => all.has(canvas));
  });
  const canvas = document.createElement('canvas');
  canvas.width = VIEW.width;
  canvas.height = VIEW.height;
  host.append(canvas);
  const bare = contextOf(canvas);
  const draw = {
    program(place: number): void {
      panned.look(place);
      panned.drawNow();
      for (const layer of panned.canvases) readPixel(contextOf(layer), 600, 350);
    },
    bare(place: number): void {
      bare.clearRect(0, 0, VIEW.width, VIEW.height);
      for (const call of pictures[place] as Call[]) call(bare);
      readPixel(bare, 600, 350);
    },
  };
  const times: PanTimes = { program: [], bare: [] };
  for (let frame = -WARM_UP; frame < frames; frame++) {
    const place = (frame + WARM_UP) % PLACES;
    const order = frame % 2 === 0 ? (['program', 'bare'] as const) : (['bare', 'program'] as const);
    for (const name of order) {
      const start = performance.now();
      draw[name](place);
      if (name === 'program') holdUpFrame();
      const ms = performance.now() - start;
      if (frame >= 0) times[name].push(ms);
    }
  }
  panned.destroy();
  canvas.remove();
  return times;
}
