/** The closed piece on a canvas: the picture of its tube, and over it the seam and the gaps. Usable without Svelte. */
import type { BrokenRun, PlacedGroup } from '@shared/fabric/index.ts';
import type { Tube } from '@shared/piece/index.ts';
import type { Plan } from '@shared/plan/index.ts';
import type { Look } from '../drawing/look.ts';
import { drawChosenRound, drawGapsRound, drawSilhouette } from './round-marks.ts';
import { drawBrokenRows, drawSeam } from './seam-marks.ts';
import { TubePixels } from './tube-pixels.ts';
import type { TubeView } from './tube-view.ts';

export interface ClosedScene {
  readonly plan: Plan;
  readonly tube: Tube;
  readonly look: Look;
  readonly font: string;
  readonly seam: string;
  /** Rows on which a fill does not match across the seam. */
  readonly broken: readonly BrokenRun[];
  readonly brokenBy: (by: BrokenRun['by']) => string;
  /** The group that the commands move. */
  readonly chosen: PlacedGroup | null;
}

export class ClosedDrawing {
  readonly #context: CanvasRenderingContext2D;
  #scene: ClosedScene;
  #pixels: TubePixels;
  #image: ImageData | null = null;
  #view: TubeView;
  #turn = 0;
  #size = { width: 1, height: 1 };
  #frame: number | null = null;

  constructor(canvas: HTMLCanvasElement, scene: ClosedScene, view: TubeView) {
    const context = canvas.getContext('2d');
    if (!context) throw new Error('No 2D canvas');
    this.#context = context;
    this.#scene = scene;
    this.#view = view;
    this.#pixels = pixelsOf(scene);
  }

  show(scene: ClosedScene): void {
    const before = this.#scene;
    this.#scene = scene;
    if (scene.tube !== before.tube || scene.plan !== before.plan || scene.look !== before.look) {
      this.#pixels = pixelsOf(scene);
    }
    this.#ask();
  }

  /** Looks at the tube with the seam `turn` degrees to the right of the middle. */
  look(view: TubeView, turn: number): void {
    this.#view = view;
    this.#turn = turn;
    this.#ask();
  }

  /** A canvas of another size is blank until drawn; waiting for the next frame would flash. */
  resize(width: number, height: number): void {
    const ratio = window.devicePixelRatio;
    this.#size = { width, height };
    this.#context.canvas.width = Math.ceil(width * ratio);
    this.#context.canvas.height = Math.ceil(height * ratio);
    this.drawNow();
  }

  destroy(): void {
    if (this.#frame !== null) cancelAnimationFrame(this.#frame);
  }

  /** Draws now what is waiting for the next frame. */
  drawNow(): void {
    this.destroy();
    this.#frame = null;
    const context = this.#context;
    const { canvas } = context;
    const ratio = canvas.width / Math.ceil(this.#size.width);
    context.setTransform(1, 0, 0, 1, 0, 0);
    context.clearRect(0, 0, canvas.width, canvas.height);
    this.#drawTube(ratio);
    context.setTransform(ratio, 0, 0, ratio, 0, 0);
    const { tube, look, font, seam, broken, brokenBy, chosen, plan } = this.#scene;
    const round = { context, tube, view: this.#view, turn: this.#turn, look, font };
    drawSilhouette(round);
    drawSeam(round, seam);
    drawBrokenRows(round, broken, brokenBy);
    if (chosen) drawChosenRound(round, chosen);
    drawGapsRound(round, plan);
  }

  #ask(): void {
    this.#frame ??= requestAnimationFrame(() => this.drawNow());
  }

  /** Only the pixels between the sides of the tube are computed. */
  #drawTube(ratio: number): void {
    const { tube } = this.#scene;
    const { canvas } = this.#context;
    const view = this.#view;
    const left = Math.max(0, Math.floor(view.x(-tube.radiusMm) * ratio));
    const right = Math.min(canvas.width, Math.ceil(view.x(tube.radiusMm) * ratio));
    const top = Math.max(0, Math.floor(view.y(tube.tallMm) * ratio));
    const bottom = Math.min(canvas.height, Math.ceil(view.foot * ratio));
    if (right <= left || bottom <= top) return;
    const [width, height] = [right - left, bottom - top];
    if (this.#image?.width !== width || this.#image.height !== height) this.#image = new ImageData(width, height);
    const place = {
      width,
      height,
      axis: view.axis * ratio - left,
      foot: view.foot * ratio - top,
      pixelsPerMm: view.scale * ratio,
    };
    this.#pixels.paint(place, this.#turn, this.#image.data);
    this.#context.putImageData(this.#image, left, top);
  }
}

function pixelsOf({ tube, plan, look }: ClosedScene): TubePixels {
  return new TubePixels(tube, plan.fabric, look.yarns);
}
