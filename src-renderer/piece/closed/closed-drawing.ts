/** The layer of the closed piece: the picture of its tube, and over it the seam and the gaps. */
import type { BrokenRun, PlacedGroup } from '@shared/fabric/index.ts';
import type { Tube } from '@shared/piece/index.ts';
import type { Plan } from '@shared/plan/index.ts';
import type { ChartLayer } from '../../canvas/index.ts';
import type { Look } from '../drawing/look.ts';
import { drawChosenRound, drawGapsRound, drawSilhouette } from './round-marks.ts';
import { drawBrokenRows, drawSeam } from './seam-marks.ts';
import { TubePixels } from './tube-pixels.ts';
import type { TubeView } from './tube-view.ts';

export interface ClosedScene {
  readonly plan: Plan;
  readonly tube: Tube;
  /** Degrees that the seam stands to the right of the middle. */
  readonly turn: number;
  readonly look: Look;
  readonly font: string;
  readonly seam: string;
  /** Rows on which a fill does not match across the seam. */
  readonly broken: readonly BrokenRun[];
  readonly brokenBy: (by: BrokenRun['by']) => string;
  /** The group that the commands move. */
  readonly chosen: PlacedGroup | null;
}

/** The layer of one stage. */
export function closedLayers(): readonly ChartLayer<TubeView, ClosedScene>[] {
  const picture = new TubePicture();
  return [
    {
      draw(context, view, scene, { ratio }) {
        picture.draw(context, view, scene, ratio);
        const { tube, turn, look, font, seam, broken, brokenBy, chosen, plan } = scene;
        const round = { context, tube, view, turn, look, font };
        drawSilhouette(round);
        drawSeam(round, seam);
        drawBrokenRows(round, broken, brokenBy);
        if (chosen) drawChosenRound(round, chosen);
        drawGapsRound(round, plan);
      },
      changed: () => true,
    },
  ];
}

/** The picture of the tube, and what is kept of it from one turn to the next. */
class TubePicture {
  #of: Pick<ClosedScene, 'tube' | 'plan' | 'look'> | null = null;
  #pixels: TubePixels | null = null;
  #image: ImageData | null = null;

  /** Only the pixels between the sides of the tube are computed. */
  draw(context: CanvasRenderingContext2D, view: TubeView, scene: ClosedScene, ratio: number): void {
    const { tube, turn } = scene;
    const { canvas } = context;
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
    this.#pixelsOf(scene).paint(place, turn, this.#image.data);
    context.putImageData(this.#image, left, top);
  }

  #pixelsOf({ tube, plan, look }: ClosedScene): TubePixels {
    const before = this.#of;
    if (!this.#pixels || before?.tube !== tube || before.plan !== plan || before.look !== look) {
      this.#of = { tube, plan, look };
      this.#pixels = new TubePixels(tube, plan.fabric, look.yarns);
    }
    return this.#pixels;
  }
}
