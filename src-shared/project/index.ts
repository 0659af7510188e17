export * from './project.ts';
export * from './file.ts';
export * from './recognise.ts';
export * from './edit.ts';
export * from './edit-makers.ts';
export { mergeEdits } from './merge-edits.ts';
export * from './change.ts';
export * from './history.ts';
export * from './laying.ts';
export * from './start.ts';
export { acrossIn, goToSize, hasSeveralSizes, projectInSize, currentSize, sizesOf } from './sizes.ts';
export * from './size-changes.ts';
export * from './part-changes.ts';
export * from './yarns-used.ts';
export {
  CELL_LETTERS,
  FARTHEST_UNDERLAY,
  FILE_FORMAT,
  FILE_VERSION,
  MOST_MOTIFS,
  MOST_NAME_LETTERS,
  MOST_UNDERLAY_LETTERS,
  MOST_UNDERLAY_LETTERS_IN_ALL,
  MOST_PIECE_ROWS,
  MOST_SIZE_LETTERS,
  MOST_SIZES,
  MOST_STITCHES,
} from './schema.ts';
