/** Short ways to write the items of a sheet. */
import { plain, type Rich } from '../words/index.ts';
import type { PathItem, Point, RectangleItem, Stroke, TextItem } from './model.ts';
import type { Paint, Tone } from './tones.ts';

interface TextStyle {
  readonly sizePt: number;
  readonly tone?: Tone;
  readonly anchor?: TextItem['anchor'];
  readonly isStrong?: boolean;
}

/** One line of text on the baseline `y`. */
export function textItem(text: string | Rich, x: number, y: number, style: TextStyle): TextItem {
  const given = typeof text === 'string' ? plain(text) : text;
  const spans = style.isStrong ? given.map((span) => ({ ...span, isStrong: true })) : given;
  return {
    kind: 'text',
    x,
    y,
    sizePt: style.sizePt,
    anchor: style.anchor ?? 'start',
    tone: style.tone ?? 'ink',
    spans,
  };
}

export function lineItem(from: Point, to: Point, stroke: Stroke): PathItem {
  return pathItem([[from, to]], stroke);
}

/** Open lines in one stroke. */
export function pathItem(lines: readonly (readonly Point[])[], stroke: Stroke): PathItem {
  return { kind: 'path', lines, isClosed: false, fill: null, stroke };
}

/** A closed shape. */
export function areaItem(outline: readonly Point[], fill: Paint | null, stroke: Stroke | null): PathItem {
  return { kind: 'path', lines: [outline], isClosed: true, fill, stroke };
}

export function rectangleItem(
  x: number,
  y: number,
  width: number,
  height: number,
  fill: Paint | null,
  stroke: Stroke | null = null,
): RectangleItem {
  return { kind: 'rectangle', x, y, width, height, fill, stroke };
}
