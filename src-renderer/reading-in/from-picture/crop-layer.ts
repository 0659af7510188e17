/** The part of a picture that is used: its frame, its corners, and what is not used veiled. */
import type { Crop } from '@shared/reading/index.ts';
import { handleNode, type HandleState } from '../../canvas/handles.ts';
import { strokeCased, type ChartLayer, type ChartNode, type MarkLook, type PixelBox } from '../../canvas/index.ts';
import type { ShownPicture } from '../../canvas/picture-layer.ts';
import type { PictureView } from '../../canvas/picture-view.ts';
import { CORNERS } from './crop.ts';

export interface CropScene {
  readonly picture: ShownPicture;
  readonly crop: Crop;
  /** The part as a whole has the keyboard. */
  readonly isPartFocused: boolean;
  /** Of the corners, in the order of {@link CORNERS}. */
  readonly corners: readonly HandleState[];
  readonly look: CropLook;
}

export interface CropLook extends MarkLook {
  /** Lies over what is not used. */
  readonly veil: string;
}

/** Key of the part as a whole, beside those of its corners: their numbers. */
export const PART = 'part';

const VEIL_STRENGTH = 0.7;

export const cropLayer: ChartLayer<PictureView, CropScene> = {
  draw(context, view, { picture, crop, isPartFocused, look }) {
    const { left, top, width, height } = boxOf(view, crop);
    const unused = new Path2D();
    unused.rect(view.x, view.y, picture.width * view.scale, picture.height * view.scale);
    unused.rect(left, top, width, height);
    context.globalAlpha = VEIL_STRENGTH;
    context.fillStyle = look.veil;
    context.fill(unused, 'evenodd');
    context.globalAlpha = 1;
    context.beginPath();
    context.rect(left, top, width, height);
    strokeCased(context, look, isPartFocused ? 5 : 2);
  },
  nodes: (view, { crop, corners, look }) => [
    partNode(boxOf(view, crop)),
    ...corners.map((state, index) => handleNode(String(index), cornerAt(view, crop, index), 'square', state, look)),
  ],
  changed: (before, after) =>
    before.crop !== after.crop ||
    before.isPartFocused !== after.isPartFocused ||
    before.corners !== after.corners ||
    before.look !== after.look,
};

/** Where a corner of the part is seen. */
export function cornerAt(view: PictureView, crop: Crop, index: number): { readonly x: number; readonly y: number } {
  const { x, y } = cornerOf(crop, index);
  return view.seen({ x, y });
}

/** A corner of the part, in pixels of the picture. */
export function cornerOf(
  { left, top, width, height }: Crop,
  index: number,
): { readonly x: number; readonly y: number } {
  const corner = CORNERS[index];
  return { x: left + (corner?.x === 'right' ? width : 0), y: top + (corner?.y === 'bottom' ? height : 0) };
}

function boxOf(view: PictureView, crop: Crop): PixelBox {
  const { x, y } = view.seen({ x: crop.left, y: crop.top });
  return { left: x, top: y, width: crop.width * view.scale, height: crop.height * view.scale };
}

/** All of the part is taken hold of; its frame is drawn by the layer. */
function partNode({ left, top, width, height }: PixelBox): ChartNode {
  return {
    key: PART,
    corners: [
      { x: left, y: top },
      { x: left + width, y: top },
      { x: left + width, y: top + height },
      { x: left, y: top + height },
    ],
    draw: () => undefined,
  };
}
