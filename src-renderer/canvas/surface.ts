/**
 * What assistive technology is told of a chart. A canvas is nothing to it, so a
 * surface lies over the drawing that is one tab stop: a grid with the cell that
 * the keyboard is on in the place where it is drawn, a slider, or a picture that
 * the keys pan and zoom.
 */
import type { PixelBox } from './viewport.ts';

export interface GridSurface {
  readonly role: 'grid';
  readonly label: string;
  readonly rows: number;
  readonly columns: number;
  readonly isReadOnly: boolean;
  /** Where the keyboard is; rows and columns from 1, columns as seen. */
  readonly cursor: { readonly row: number; readonly column: number; readonly label: string; readonly box: PixelBox };
}

export interface SliderSurface {
  readonly role: 'slider';
  readonly label: string;
  readonly least: number;
  readonly most: number;
  readonly value: number;
  /** The value in words. */
  readonly text: string;
}

export interface PictureSurface {
  readonly role: 'group';
  readonly label: string;
}

export type Surface = GridSurface | SliderSurface | PictureSurface;

/** The attributes of the surface's element; `cellId`: the id of the cell that the keyboard is on. */
export function surfaceAttributes(surface: Surface, cellId: string): Record<string, string | number | undefined> {
  const { role, label } = surface;
  if (surface.role === 'group') return { role, 'aria-label': label };
  if (surface.role === 'slider') {
    return {
      role,
      'aria-label': label,
      'aria-valuemin': surface.least,
      'aria-valuemax': surface.most,
      'aria-valuenow': surface.value,
      'aria-valuetext': surface.text,
    };
  }
  return {
    role,
    'aria-label': label,
    'aria-readonly': surface.isReadOnly ? 'true' : undefined,
    'aria-rowcount': surface.rows,
    'aria-colcount': surface.columns,
    'aria-activedescendant': cellId,
  };
}
