import type { CornerFault, Corners } from './corners.ts';
import type { JoinSide } from './join-sides.ts';

/** What can be wrong with a photo, a scan or a drawing that a chart is read out of. */
export interface ReadingProblems {
  /** Shapes used in shapes, or outlines without end. */
  'svg-too-much': Record<string, never>;
  'svg-unsafe': { danger: SvgDanger };
  'picture-interlaced': { width: number; height: number; mostMegapixels: number };
  'photo-unknown-kind': Record<string, never>;
  'photo-only-in-window': { kind: string };
  'photo-too-large': { width: number; height: number; mostMegapixels: number };
  'corners-unusable': { fault: CornerFault };
  'corner-outside-picture': { corner: number; x: number; y: number; width: number; height: number };
  /** In pixels of the picture. */
  'chart-not-found': {
    why: 'too-small' | 'too-dark' | 'blurred' | 'too-faint' | 'no-cells';
    width: number;
    height: number;
  };
  /** Corners clockwise from the top left, in pixels of the picture. */
  'charts-several': { charts: readonly { columns: number; rows: number; corners: Corners }[] };
  /** Its lines go on beyond these sides of the picture. */
  'chart-cut-off': { sides: readonly PhotoSide[] };
  'grid-not-found': { across: boolean; up: boolean };
  /** Nothing tells one cell from another, as it was asked for. */
  'one-yarn-only': { by: 'ink' | 'colours' | 'symbols' };
  /** As many yarns were told apart, but two of them may be one, or one of them two. */
  'yarns-open': { by: 'colours' | 'symbols'; found: number };
  /** `pixels`: how many a cell has across or up, whichever is fewer. */
  'cells-too-fine': {
    columns: number;
    rows: number;
    mostColumns: number;
    mostRows: number;
    pixels: number;
    leastPixels: number;
  };
  /** How light paper is, 0 … 255. */
  'photo-too-dark': { paper: number; least: number };
  /** By how much of 0 … 255 what is drawn stands out. */
  'photo-flat': { contrast: number; least: number };
  /** Grain as a share of what is drawn. */
  'photo-grainy': { noise: number; most: number };
  /** How far edges are smeared, in cells. */
  'photo-blurred': { blur: number; most: number };
  /** The cells that are seen lie so far beside a corner, in cells. */
  'cells-beside-corners': { off: number };
  /** So many of the cells could not be told. */
  'photo-unclear': { doubtful: number; cells: number };
  /** Two photos of one chart: neither columns nor rows agree in number. */
  'charts-differ-in-size': { width: number; height: number; otherWidth: number; otherHeight: number };
  'charts-meet-nowhere': Record<string, never>;
  /** Several ways to join two photos fit; each goes on at a side with so many rows or columns shared. */
  'charts-meet-openly': { ways: readonly { readonly side: JoinSide; readonly shared: number }[] };
  'yarns-out-of-range': { given: number; least: number; most: number };
  'crop-outside-picture': { width: number; height: number };
  /** `yarns`: how many there would be. */
  'palette-full': { yarns: number; most: number };
}

export type PhotoSide = 'left' | 'right' | 'top' | 'bottom';

/** What in an SVG could do more than be drawn. */
export type SvgDanger = 'script' | 'handler' | 'foreign' | 'document-type' | 'outside';
