/** The part of a picture that is used, moved and stretched in whole pixels; it never leaves the picture. Pure. */
import type { Crop } from '@shared/reading/index.ts';

/** In pixels. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

export interface Corner {
  readonly x: 'left' | 'right';
  readonly y: 'top' | 'bottom';
}

export const CORNERS: readonly Corner[] = [
  { x: 'left', y: 'top' },
  { x: 'right', y: 'top' },
  { x: 'right', y: 'bottom' },
  { x: 'left', y: 'bottom' },
];

export const wholeOf = ({ width, height }: Size): Crop => ({ left: 0, top: 0, width, height });

/** Moved, as far as the picture goes. */
export function movedCrop(crop: Crop, right: number, down: number, picture: Size): Crop {
  return {
    ...crop,
    left: between(0, Math.round(crop.left + right), picture.width - crop.width),
    top: between(0, Math.round(crop.top + down), picture.height - crop.height),
  };
}

/** One corner drawn to a point, the opposite one staying; at least one pixel is left. */
export function stretchedCrop(crop: Crop, corner: Corner, x: number, y: number, picture: Size): Crop {
  const [left, width] = stretched(crop.left, crop.width, corner.x === 'left', Math.round(x), picture.width);
  const [top, height] = stretched(crop.top, crop.height, corner.y === 'top', Math.round(y), picture.height);
  return { left, top, width, height };
}

function stretched(start: number, length: number, isStart: boolean, to: number, most: number): [number, number] {
  const end = start + length;
  if (!isStart) return [start, between(start + 1, to, most) - start];
  const from = between(0, to, end - 1);
  return [from, end - from];
}

function between(least: number, value: number, most: number): number {
  return Math.min(Math.max(value, least), most);
}
