/** Changes to the picture that lies behind a motif to be traced. Pure. */
import type { Grid } from '@shared/grid/index.ts';
import { problemError } from '@shared/problem/index.ts';
import { FARTHEST_UNDERLAY, type Motif, type MotifId, type Underlay, LEAST_OPACITY } from '@shared/motif/index.ts';
import {
  changeOf,
  motifOf,
  MOST_UNDERLAY_LETTERS_IN_ALL,
  setMotif,
  setUnderlay,
  type Change,
  type ChangeName,
  type Project,
} from '@shared/project/index.ts';

/** How strongly a new picture shows. */
const START_OPACITY = 0.5;

/** The middle of a picture, in columns and rows from the lower left corner of the chart. */
export interface Middle {
  readonly column: number;
  readonly row: number;
}

/** A picture as it is kept, and its size in pixels. */
export interface KeptPicture {
  readonly picture: string;
  readonly width: number;
  readonly height: number;
}

/**
 * The picture in the middle of the chart, as large as it goes without being cut
 * or pulled out of shape. `aspect`: how many times as wide as tall a cell is.
 */
export function fittedUnderlay({ picture, width, height }: KeptPicture, grid: Grid, aspect: number): Underlay {
  const scale = Math.min((grid.width * aspect) / width, grid.height / height);
  const columns = bounded((width * scale) / aspect, 1);
  const rows = bounded(height * scale, 1);
  const left = (grid.width - columns) / 2;
  const bottom = (grid.height - rows) / 2;
  return { picture, left, bottom, columns, rows, opacity: START_OPACITY, isShown: true, turn: 0 };
}

/**
 * A motif with a picture behind it, or with another one in the same place.
 * Throws `underlays-too-large` where the file could not hold it.
 */
export function layUnderlay(project: Project, id: MotifId, kept: KeptPicture, aspect: number): Change {
  const motif = motifOf(project, id);
  const { underlay, grid } = motif;
  assertUnderlaysFit(project.motifs.map((each) => (each.id === id ? kept : each.underlay)));
  const fitted = fittedUnderlay(kept, grid, aspect);
  const laid = { ...fitted, opacity: underlay?.opacity ?? fitted.opacity };
  return changeOf(underlay ? 'replace-underlay' : 'add-underlay', setMotif(id, { underlay: laid }));
}

/** Throws `underlays-too-large` if all these pictures together are more than a file takes. */
export function assertUnderlaysFit(pictures: readonly ({ readonly picture: string } | null)[]): void {
  const letters = pictures.reduce((sum, each) => sum + (each?.picture.length ?? 0), 0);
  if (letters > MOST_UNDERLAY_LETTERS_IN_ALL) {
    throw problemError('underlays-too-large', { mostMegabytes: MOST_UNDERLAY_LETTERS_IN_ALL / 1e6 });
  }
}

export function removeUnderlay(motif: Motif): Change | null {
  return motif.underlay && changeOf('remove-underlay', setMotif(motif.id, { underlay: null }));
}

/** Shown if it was hidden, and the other way round. */
export function toggleUnderlay(motif: Motif): Change | null {
  const { underlay } = motif;
  if (!underlay) return null;
  const isShown = !underlay.isShown;
  return changed(motif, isShown ? 'show-underlay' : 'hide-underlay', { isShown });
}

/** Moved by columns to the right and rows up, which need not be whole. */
export function moveUnderlay(motif: Motif, columns: number, rows: number): Change | null {
  const { underlay } = motif;
  if (!underlay || (columns === 0 && rows === 0)) return null;
  const left = bounded(underlay.left + columns);
  const bottom = bounded(underlay.bottom + rows);
  return changed(motif, 'move-underlay', { left, bottom });
}

/** `factor` times as large, about its middle. */
export function scaleUnderlay(motif: Motif, factor: number): Change | null {
  const { underlay } = motif;
  if (!underlay) return null;
  return resizeUnderlay(motif, { columns: underlay.columns * factor, rows: underlay.rows * factor });
}

/** Another width or height in cells, about its middle. */
export function resizeUnderlay(motif: Motif, to: Partial<Pick<Underlay, 'columns' | 'rows'>>): Change | null {
  const { underlay } = motif;
  if (!underlay) return null;
  const columns = bounded(to.columns ?? underlay.columns, 1);
  const rows = bounded(to.rows ?? underlay.rows, 1);
  const left = bounded(underlay.left + (underlay.columns - columns) / 2);
  const bottom = bounded(underlay.bottom + (underlay.rows - rows) / 2);
  return changed(motif, 'scale-underlay', { columns, rows, left, bottom });
}

/** Turned so far clockwise about its middle, in degrees; more than half round is counted from the other side. */
export function turnUnderlay(motif: Motif, degrees: number): Change | null {
  const { underlay } = motif;
  if (!underlay) return null;
  const turn = bounded(degrees - 360 * Math.round(degrees / 360));
  return turn === underlay.turn ? null : changed(motif, 'turn-underlay', { turn });
}

/** Another size in place of it, its middle at a column and a row, which need not be whole. */
export function placeUnderlay(motif: Motif, columns: number, rows: number, middle: Middle): Change | null {
  if (!motif.underlay) return null;
  const [width, height] = [bounded(columns, 1), bounded(rows, 1)];
  const left = bounded(middle.column - width / 2);
  const bottom = bounded(middle.row - height / 2);
  return changed(motif, 'scale-underlay', { columns: width, rows: height, left, bottom });
}

/** Shows through more or less strongly, 0.1 … 1. */
export function strengthenUnderlay(motif: Motif, opacity: number): Change | null {
  const { underlay } = motif;
  if (!underlay) return null;
  const within = Math.min(1, Math.max(LEAST_OPACITY, Number(opacity.toFixed(2))));
  return within === underlay.opacity ? null : changed(motif, 'underlay-strength', { opacity: within });
}

function changed({ id }: Motif, name: ChangeName, to: Partial<Underlay>): Change {
  return changeOf(name, setUnderlay(id, to));
}

/** Within what a file takes, to a thousandth of a cell; never -0, which a file does not know. */
function bounded(value: number, least = -FARTHEST_UNDERLAY): number {
  return Number(Math.min(FARTHEST_UNDERLAY, Math.max(least, value)).toFixed(3)) + 0;
}
