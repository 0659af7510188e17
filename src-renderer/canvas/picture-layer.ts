/** The layer of a picture that is panned and zoomed. */
import type { ChartLayer } from './chart-layer.ts';
import type { PictureView } from './picture-view.ts';

/** A picture as it is drawn: `width` × `height` are those that the view counts in, whatever the image has. */
export interface ShownPicture {
  readonly image: CanvasImageSource;
  readonly width: number;
  readonly height: number;
}

/** Pixels larger than this on the screen are seen as squares. */
const SQUARES_FROM = 6;

/** `of` gives the same object while it is the same picture; null: there is none. */
export function pictureLayer<Scene>(of: (scene: Scene) => ShownPicture | null): ChartLayer<PictureView, Scene> {
  return {
    draw(context, view, scene) {
      const picture = of(scene);
      if (!picture) return;
      const { image, width, height } = picture;
      context.imageSmoothingEnabled = view.scale < SQUARES_FROM;
      context.imageSmoothingQuality = 'medium';
      context.drawImage(image, view.x, view.y, width * view.scale, height * view.scale);
    },
    changed: (before, after) => of(before) !== of(after),
  };
}
