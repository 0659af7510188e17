/**
 * Dragging a group over a piece of 200 × 1000 with floats, wraps, guides and
 * spaces, timed in the page from the pointer event to the pixels.
 *
 * The program does all that the Piece bench does in between: the group walks
 * to where the hand is, what it lines up with is read out and said, and the
 * cells and the marks that go with it are drawn.
 *
 * The bare canvas draws the same picture and finds out nothing: it makes the
 * very calls, one after the other on one canvas, that drew all of this frame,
 * written down while the program drew it. The cells are one bitmap enlarged,
 * into which the group was put beforehand. Measuring texts is left out.
 */
import { makePlan } from '@shared/plan/index.ts';
import { projectAt, pieceIn, sampleProject, START_PIECE, startBand, type ProjectAt } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { pieceDrawingWords } from '@shared/words/piece-drawing.ts';
import { lookOf } from '../../../src-renderer/piece/drawing/look.ts';
import { NOTHING_SHOWN } from '../../../src-renderer/piece/drawing/finding-marks.ts';
import { LaidView } from '../../../src-renderer/piece/drawing/laid-view.ts';
import {
  draggedPicture,
  fittedView,
  pictureOf,
  pieceLayers,
  roomAround,
  type ShownPiece,
} from '../../../src-renderer/piece/drawing/piece-drawing.ts';
import type { PieceScene } from '../../../src-renderer/piece/drawing/scene.ts';
import { takeGroup, type Table } from '../../../src-renderer/piece/moving/drag.ts';
import { sayReading } from '../../../src-renderer/piece/moving/say.ts';
import { Session } from '../../../src-renderer/session/session.ts';
import { ChartStage, Viewport, type Held, type Point } from '../../../src-renderer/canvas/index.ts';
import { holdUpFrame } from './held-up.ts';
import { hostElement, readPixel, VIEW } from './painter.ts';
import { recordCalls, type Call } from './record-calls.ts';
import { settled } from '../../written-projects.ts';

/** Places that the hand goes through again and again. */
const PLACES = 60;
const WARM_UP = 60;
/** Bands up the piece, and rows from one to the next. */
const BANDS = 36;
const APART = 27;
/** The one that is dragged. */
const CARRIED = 17;

export const LOOK_TOKENS: { readonly [name: string]: string } = {
  paper: '#f6f4ee',
  raised: '#ffffff',
  ink: '#1d2330',
  soft: '#5c6472',
  accent: '#2b4a8b',
  warn: '#8a5200',
  control: '#8b8676',
};

/** The sample's lighthouses and gulls, three groups a band, from the cast-on to the top. */
function fullPiece(): ProjectAt {
  const [motif] = projectAt(sampleProject()).motifs;
  if (!motif) throw new Error('The sample has a motif');
  return {
    ...projectAt(sampleProject()),
    piece: { ...START_PIECE, shape: { kind: 'rectangle', stitches: 200, rows: 1000 } },
    patterns: Array.from({ length: BANDS }, (_, band) => ({
      ...startBand(motif.id, [3, 2, 3]),
      position: { kind: 'from-row' as const, row: 10 + band * APART },
    })),
  };
}

export type Distance = 'near' | 'whole';

/** Cells in the proportion of 28 × 40 and ten pixels high around the dragged band, or the piece as a whole. */
function viewOf(distance: Distance, scene: PieceScene): Viewport {
  if (distance === 'whole') return fittedView(scene, roomAround(VIEW.width, VIEW.height, 56, 96));
  const row = 10 + CARRIED * APART + 9;
  return new Viewport((10 * 40) / 28, 10, VIEW.width / 2, VIEW.height / 2 + row * 10);
}

/** Where the hand is, in needles and rows from where it took the group; no place twice in a row. */
function placeAt(frame: number): { needles: number; rows: number } {
  const turn = (frame * 2 * Math.PI) / PLACES;
  return { needles: Math.round(9 * Math.sin(turn)) + (frame % 2), rows: Math.round(3 * Math.sin(3 * turn)) };
}

interface Hand {
  readonly stage: ChartStage<LaidView, ShownPiece>;
  readonly canvases: readonly HTMLCanvasElement[];
  /** All that follows from the pointer being at a place, but the drawing. */
  readonly dragTo: (place: { needles: number; rows: number }) => void;
  readonly letGo: () => void;
}

/** The Piece bench without its page: the middle group of a band in the hand. */
function takeInHand(host: HTMLDivElement, distance: Distance): Hand {
  const project = fullPiece();
  const session = new Session(settled(project).whole, true);
  const plan = makePlan(pieceIn(project));
  const scene: PieceScene = {
    plan,
    project,
    showsFloats: true,
    showsWraps: true,
    feeding: null,
    shows: 'needles',
    showsStitches: false,
    look: lookOf(project, (name) => LOOK_TOKENS[name] ?? '#000000'),
    font: 'sans-serif',
    spaceWords: words.piece.stage.spaces,
    fold: words.piece.stage.fold,
    groupNames: pieceDrawingWords.group,
    profileTitle: pieceDrawingWords.profile.title,
    profileTop: 0,
    stripTop: 0,
    chosen: null,
  };
  const container = document.createElement('div');
  host.append(container);
  const view = viewOf(distance, scene);
  const laid = new LaidView(view, scene);
  const picture = pictureOf(scene);
  const stage = new ChartStage(
    container,
    pieceLayers(),
    laid,
    { scene, picture, dragged: null, spot: null, found: NOTHING_SHOWN },
    VIEW,
  );
  const group = plan.groups.filter(({ band }) => band === CARRIED)[1];
  if (!group) throw new Error('The band has three groups');
  const at: Point = {
    x: view.left(group.block.first) + view.cellWidth * 3.5,
    y: view.top(group.firstRow) + view.cellHeight / 2,
  };
  const table: Table = { group: null, spot: null, dragged: null };
  const say = (text: string): void => session.announce(text);
  const number = plan.groups.indexOf(group);
  const held = takeGroup(number, at, {
    project: () => session.current,
    table,
    plan,
    view: () => laid,
    say,
    onchange: (change) => session.change(change),
  }) as Held;
  return {
    stage,
    canvases: [...container.querySelectorAll('canvas')],
    dragTo({ needles, rows }) {
      held.move([{ x: at.x + needles * view.cellWidth, y: at.y - rows * view.cellHeight }]);
      const { dragged } = table;
      if (!dragged) return;
      session.point(sayReading(dragged));
      stage.show({
        scene,
        picture: draggedPicture(picture, dragged, scene),
        dragged,
        spot: null,
        found: NOTHING_SHOWN,
      });
    },
    letGo() {
      held.giveUp();
      stage.destroy();
    },
  };
}

/** From the pointer event to the pixels, ms. */
export interface DragTimes {
  readonly program: number[];
  readonly bare: number[];
}

/** Both show the same places of the hand in turn. */
export function dragInTurn(distance: Distance, frames: number): DragTimes {
  const host = hostElement();
  const hand = takeInHand(host, distance);
  // The layers that a frame draws: the cells, and what goes with the group.
  const layers = [hand.canvases[0], hand.canvases[2]].map(contextOf);
  const all = new Set(hand.canvases);
  // Where it was taken the group is not in the hand yet.
  hand.dragTo(placeAt(PLACES / 4));
  const pictures = Array.from({ length: PLACES }, (_, place) => {
    hand.dragTo(placeAt(place));
    return recordCalls(
      () => {
        hand.stage.refresh();
        hand.stage.drawNow();
      },
      (canvas) => all.has(canvas),
    );
  });
  const canvas = document.createElement('canvas');
  canvas.width = VIEW.width;
  canvas.height = VIEW.height;
  host.append(canvas);
  const bare = contextOf(canvas);

  const draw = {
    program(place: number): void {
      hand.dragTo(placeAt(place));
      hand.stage.drawNow();
      for (const layer of layers) readPixel(layer, 600, 350);
    },
    bare(place: number): void {
      bare.clearRect(0, 0, VIEW.width, VIEW.height);
      for (const call of pictures[place] as Call[]) call(bare);
      readPixel(bare, 600, 350);
    },
  };
  const times: DragTimes = { program: [], bare: [] };
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
    if (frame === 0) assertAlike(hand.canvases, canvas);
  }
  hand.letGo();
  canvas.remove();
  return times;
}

/** Text is smoothed a little otherwise on a layer that is open; nothing else may differ. */
const MOST_UNLIKE = 0.002;

function assertAlike(layers: readonly HTMLCanvasElement[], bare: HTMLCanvasElement): void {
  const whole = document.createElement('canvas');
  whole.width = bare.width;
  whole.height = bare.height;
  const context = contextOf(whole);
  // A layer that shows nothing has no picture.
  for (const layer of layers) if (layer.width > 0) context.drawImage(layer, 0, 0);
  const [ours, theirs] = [context, contextOf(bare)].map((one) => one.getImageData(0, 0, bare.width, bare.height).data);
  let unlike = 0;
  ours?.forEach((value, at) => (unlike += Number(Math.abs(value - (theirs?.[at] ?? 0)) > 48)));
  const share = unlike / (ours?.length ?? 1);
  if (share > MOST_UNLIKE) throw new Error(`The pictures differ in ${(share * 100).toFixed(2)} % of their values`);
}

export function contextOf(canvas: HTMLCanvasElement | undefined): CanvasRenderingContext2D {
  return canvas?.getContext('2d') as CanvasRenderingContext2D;
}
