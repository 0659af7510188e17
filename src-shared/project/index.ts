export * from './model.ts';
export * from './yarn-model.ts';
export * from './file.ts';
export * from './recognise.ts';
export * from './edit.ts';
export * from './edit-makers.ts';
export { mergeEdits } from './merge-edits.ts';
export * from './change.ts';
export { editsFromText, editsToText } from './edit-file.ts';
export {
  editsApart,
  hashesIn,
  picturesApart,
  picturesOf,
  picturesOfEdits,
  picturesPutBack,
  type PictureHashes,
} from './pictures-apart.ts';
export { carryingOutKept } from './migrate-edits.ts';
export * from './history.ts';
export * from './laying.ts';
export * from './start.ts';
export * from './new-project.ts';
export * from './project-at.ts';
export * from './scope.ts';
export * from './sizes.ts';
export { afterChange, changePiece } from './piece-changes.ts';
export * from './number-fields.ts';
export * from './piece-list.ts';
export * from './size-changes.ts';
export * from './section-changes.ts';
export * from './palette-changes.ts';
export * from './colourways.ts';
export * from './yarns-used.ts';
export * from './yarn-names.ts';
export * from './piece-in.ts';
export { FILE_FORMAT, FILE_VERSION } from './migrate.ts';
export type * from './problems.ts';
