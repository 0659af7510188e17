/** Rules that hold between the fields of a project, asked once each field is right by itself. */
import { CELL_LETTERS, type Grid } from '../grid/index.ts';
import type { MotifId } from '../motif/index.ts';
import type { ColourOrder, PatternId, PatternInSizes } from '../pattern/index.ts';
import { checkInSizes, type SizeId } from '../piece/index.ts';
import { refuse, type z } from '../schema/index.ts';
import {
  MOST_UNDERLAY_LETTERS_IN_ALL,
  type ColourwayId,
  type PieceId,
  type PieceInSizes,
  type Project,
} from './model.ts';

/** What is being checked, its fields each right by themselves. */
type Checked = z.core.ParsePayload<Project>;

/** Refuses fields that contradict each other. */
export function checkTogether(payload: Checked): void {
  // A motif that is wrong by itself has not become one.
  if (payload.issues.length > 0) return;
  checkMotifs(payload);
  checkColourways(payload);
  checkSizes(payload);
  checkPieces(payload);
}

function checkMotifs(payload: Checked): void {
  const { yarns, mainYarn, motifs } = payload.value;
  const ids = new Set<MotifId>();
  if (mainYarn >= yarns.length) refuse(payload, ['mainYarn'], 'yarn-missing', {});
  const inAll = motifs.reduce((sum, { underlay }) => sum + (underlay?.picture.length ?? 0), 0);
  if (inAll > MOST_UNDERLAY_LETTERS_IN_ALL) refuse(payload, ['motifs'], 'underlays-too-large', {});
  motifs.forEach(({ id, grid }, m) => {
    if (ids.has(id)) refuse(payload, ['motifs', m, 'id'], 'twice', { name: id });
    ids.add(id);
    const at = firstBeyond(grid, yarns.length);
    if (at === null) return;
    const fromTop = grid.height - 1 - Math.floor(at / grid.width);
    const letter = CELL_LETTERS.charAt(grid.cells[at] as number);
    refuse(payload, ['motifs', m, 'rows', fromTop], 'letter-without-yarn', { letter });
  });
}

/** Index of the first cell, in the order in which a file has them, that holds none of so many yarns; null if there is none. */
function firstBeyond({ width, height, cells }: Grid, yarns: number): number | null {
  for (let row = height - 1; row >= 0; row--) {
    for (let at = row * width; at < (row + 1) * width; at++) if ((cells[at] as number) >= yarns) return at;
  }
  return null;
}

function checkColourways(payload: Checked): void {
  const { yarns, colourways } = payload.value;
  const ids = new Set<ColourwayId>();
  const names = new Set<string>();
  const knitted = colourways.filter((one) => one.yarns === null);
  if (knitted.length !== 1) refuse(payload, ['colourways'], 'not-one-knitted', { knitted: knitted.length });
  colourways.forEach(({ id, name, yarns: own }, c) => {
    if (ids.has(id)) refuse(payload, ['colourways', c, 'id'], 'twice', { name: id });
    if (names.has(name)) refuse(payload, ['colourways', c, 'name'], 'twice', { name });
    ids.add(id);
    names.add(name);
    if (own && own.length !== yarns.length) refuse(payload, ['colourways', c, 'yarns'], 'not-each-yarn', {});
  });
}

function checkSizes(payload: Checked): void {
  const ids = new Set<SizeId>();
  const names = new Set<string>();
  payload.value.sizes.forEach(({ id, name }, s) => {
    if (ids.has(id)) refuse(payload, ['sizes', s, 'id'], 'twice', { name: id });
    if (names.has(name)) refuse(payload, ['sizes', s, 'name'], 'twice', { name });
    ids.add(id);
    names.add(name);
  });
}

function checkPieces(payload: Checked): void {
  const ids = new Set<PieceId>();
  const patterns = new Set<PatternId>();
  payload.value.pieces.forEach((piece, p) => {
    if (ids.has(piece.id)) refuse(payload, ['pieces', p, 'id'], 'twice', { name: piece.id });
    ids.add(piece.id);
    checkPerSize(payload, piece, p);
    piece.patterns.forEach((pattern, at) => {
      const path = ['pieces', p, 'patterns', at];
      if (patterns.has(pattern.id)) refuse(payload, [...path, 'id'], 'twice', { name: pattern.id });
      patterns.add(pattern.id);
      checkPattern(payload, pattern, path);
    });
  });
}

function checkPerSize(payload: Checked, { perSize, sections }: PieceInSizes, p: number): void {
  const { sizes } = payload.value;
  const isEach = perSize.length === sizes.length && sizes.every(({ id }, s) => perSize[s]?.size === id);
  if (!isEach) refuse(payload, ['pieces', p, 'perSize'], 'not-each-size', {});
  perSize.forEach(({ sectionRows }, s) => {
    if (sectionRows.length === sections.length) return;
    refuse(payload, ['pieces', p, 'perSize', s, 'sectionRows'], 'not-each-section', {});
  });
}

function checkPattern(payload: Checked, pattern: PatternInSizes, path: readonly (string | number)[]): void {
  const { motifs } = payload.value;
  const sizes = payload.value.sizes.map(({ id }) => id);
  const checkMotif = (motif: MotifId, at: readonly (string | number)[]): void => {
    if (!motifs.some(({ id }) => id === motif)) refuse(payload, [...path, ...at, 'motif'], 'motif-missing', { motif });
  };
  if (pattern.colourOrder) checkColourOrder(payload, pattern.colourOrder, [...path, 'colourOrder']);
  if (pattern.kind === 'all-over') {
    checkMotif(pattern.motif, []);
    return;
  }
  checkInSizes(payload, [...path, 'placed'], pattern.placed, sizes);
  pattern.groups.forEach(({ motif, across }, g) => {
    checkMotif(motif, ['groups', g]);
    checkInSizes(payload, [...path, 'groups', g, 'across'], across, sizes);
  });
}

function checkColourOrder(payload: Checked, { stripes }: ColourOrder, path: readonly (string | number)[]): void {
  const { yarns, mainYarn } = payload.value;
  stripes.forEach((stripe, s) => {
    const drawn = new Set<number>();
    stripe.yarns.forEach((one, y) => {
      const at = [...path, 'stripes', s, 'yarns', y];
      if (drawn.has(one.drawn)) refuse(payload, [...at, 'drawn'], 'yarn-twice', {});
      drawn.add(one.drawn);
      for (const field of ['drawn', 'knitted'] as const) {
        if (one[field] >= yarns.length) refuse(payload, [...at, field], 'yarn-missing', {});
        else if (one[field] === mainYarn) refuse(payload, [...at, field], 'main-in-stripe', {});
      }
    });
  });
}
