/**
 * The one way a project changes.
 *
 * A `Change` is plain data: it can be kept in the undo history, sent, and
 * inverted given the project before it. Applying never touches its input.
 */
import { applyPatch, invertPatch, type Patch } from '../grid/index.ts';
import type { Part } from '../piece/index.ts';
import { problemError } from '../problem/index.ts';
import {
  motifOf,
  type Band,
  type Fill,
  type Motif,
  type MotifId,
  type Piece,
  type Project,
  type SizeNumbers,
  type Sizes,
  type Yarn,
} from './project.ts';

/** What a step is called in Undo; `words/` has the text. */
export type ChangeName =
  | 'draw'
  | 'erase'
  | 'line'
  | 'rectangle'
  | 'ellipse'
  | 'fill'
  | 'move'
  | 'cut'
  | 'paste'
  | 'lettering'
  | 'mirror-across'
  | 'mirror-up'
  | 'quarter-turn'
  | 'shift'
  | 'insert-column'
  | 'delete-column'
  | 'insert-row'
  | 'delete-row'
  | 'exchange-yarns'
  | 'invert'
  | 'outline'
  | 'mend-slips'
  | 'crop'
  | 'crop-at-cursor'
  | 'trim'
  | 'resize-motif'
  | 'rename-motif'
  | 'import-motif'
  | 'read-chart'
  | 'add-motif'
  | 'duplicate-motif'
  | 'delete-motif'
  | 'read-picture'
  | 'set-ground'
  | 'set-shows'
  | 'set-lettering'
  | 'add-underlay'
  | 'replace-underlay'
  | 'remove-underlay'
  | 'move-underlay'
  | 'scale-underlay'
  | 'underlay-strength'
  | 'show-underlay'
  | 'hide-underlay'
  | 'stamp'
  | 'yarns'
  | 'rename-project'
  | 'piece-size'
  | 'piece-hem'
  | 'gauge'
  | 'turning-row'
  | 'hem-gauge'
  | 'add-section'
  | 'remove-section'
  | 'move-section'
  | 'rename-section'
  | 'section-rows'
  | 'section-gauge'
  | 'section-lining'
  | 'seam-allowance'
  | 'finished-face'
  | 'start-side'
  | 'end-needles'
  | 'float-limit'
  | 'piece-details'
  | 'copies'
  | 'group-motif'
  | 'rule'
  | 'judge'
  | 'choose-placement'
  | 'first-row'
  | 'own-balls'
  | 'cut-copies'
  | 'mirror-group'
  | 'raise-group'
  | 'add-group'
  | 'remove-group'
  | 'add-band'
  | 'remove-band'
  | 'add-fill'
  | 'remove-fill'
  | 'fill-motif'
  | 'fill-rows'
  | 'fill-border'
  | 'fill-lie'
  | 'match-seam'
  | 'move-group'
  | 'keep-needles'
  | 'free-needles'
  | 'unit'
  | 'add-size'
  | 'remove-size'
  | 'rename-size'
  | 'go-to-size'
  | 'size-numbers'
  | 'size-copies';

export type Change = { readonly name: ChangeName } & (
  | { readonly kind: 'paint'; readonly motif: MotifId; readonly patch: Patch }
  | { readonly kind: 'motif'; readonly motif: MotifId; readonly to: Partial<Omit<Motif, 'id'>> }
  | { readonly kind: 'piece'; readonly to: Partial<Piece> }
  | { readonly kind: 'band'; readonly band: number; readonly to: Partial<Band> }
  | { readonly kind: 'bands'; readonly bands: readonly Band[] }
  | {
      /**
       * Sizes that come, go, change or change places with the current one. Going
       * to another size is a change like any other: a step that was made in one
       * size can only be taken back in that size.
       */
      readonly kind: 'sizes';
      readonly sizes: Sizes;
      readonly numbers: SizeNumbers;
      readonly bands: readonly Band[];
    }
  | { readonly kind: 'parts'; readonly parts: readonly Part[]; readonly bands: readonly Band[] }
  | { readonly kind: 'fills'; readonly fills: readonly Fill[] }
  | { readonly kind: 'project'; readonly to: Partial<Pick<Project, 'name'>> }
  | { readonly kind: 'palette'; readonly yarns: readonly Yarn[]; readonly motifs: readonly Motif[] }
  | { readonly kind: 'motifs'; readonly motifs: readonly Motif[] }
);

/** The project after the change. Throws `motif-missing`, or `RangeError` for a band that is not there. */
export function applyChange(project: Project, change: Change): Project {
  switch (change.kind) {
    case 'paint':
      return withMotif(project, change.motif, (motif) => ({ ...motif, grid: applyPatch(motif.grid, change.patch) }));
    case 'motif':
      return withMotif(project, change.motif, (motif) => ({ ...motif, ...change.to }));
    case 'piece':
      return { ...project, piece: { ...project.piece, ...change.to } };
    case 'band':
      bandAt(project, change.band);
      return {
        ...project,
        bands: project.bands.map((band, index) => (index === change.band ? { ...band, ...change.to } : band)),
      };
    case 'bands':
      return { ...project, bands: change.bands };
    case 'sizes':
      return {
        ...project,
        piece: { ...project.piece, ...change.numbers },
        sizes: change.sizes,
        bands: change.bands,
      };
    case 'parts':
      return { ...project, piece: { ...project.piece, parts: change.parts }, bands: change.bands };
    case 'fills':
      return { ...project, fills: change.fills };
    case 'project':
      return { ...project, ...change.to };
    case 'palette':
      return { ...project, yarns: change.yarns, motifs: change.motifs };
    case 'motifs':
      return { ...project, motifs: change.motifs };
  }
}

/** The change that brings back `before`, the project this change is applied to. */
export function invertChange(before: Project, change: Change): Change {
  switch (change.kind) {
    case 'paint':
      return { ...change, patch: invertPatch(motifOf(before, change.motif).grid, change.patch) };
    case 'motif':
      return { ...change, to: pick(motifOf(before, change.motif), change.to) };
    case 'piece':
      return { ...change, to: pick(before.piece, change.to) };
    case 'band':
      return { ...change, to: pick(bandAt(before, change.band), change.to) };
    case 'bands':
      return { ...change, bands: before.bands };
    case 'sizes':
      return { ...change, sizes: before.sizes, numbers: numbersOf(before.piece), bands: before.bands };
    case 'parts':
      return { ...change, parts: before.piece.parts, bands: before.bands };
    case 'fills':
      return { ...change, fills: before.fills };
    case 'project':
      return { ...change, to: pick(before, change.to) };
    case 'palette':
      return { ...change, yarns: before.yarns, motifs: before.motifs };
    case 'motifs':
      return { ...change, motifs: before.motifs };
  }
}

/** The numbers of the current size. */
export function numbersOf({ shape, hemRows }: SizeNumbers): SizeNumbers {
  return { shape, hemRows };
}

function withMotif(project: Project, id: MotifId, edit: (motif: Motif) => Motif): Project {
  if (!project.motifs.some((motif) => motif.id === id)) throw problemError('motif-missing', { motif: id });
  return { ...project, motifs: project.motifs.map((motif) => (motif.id === id ? edit(motif) : motif)) };
}

function bandAt(project: Project, index: number): Band {
  const band = project.bands[index];
  if (!band) throw new RangeError(`Band ${index} of ${project.bands.length}`);
  return band;
}

/** The values `from` holds under the keys of `like`. */
function pick<T extends object>(from: T, like: Partial<T>): Partial<T> {
  const result: Partial<T> = {};
  for (const key of Object.keys(like) as (keyof T)[]) result[key] = from[key];
  return result;
}
