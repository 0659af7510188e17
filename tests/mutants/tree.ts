/** The sources as they stand. */
import { sourceTree } from '../architecture/imports.ts';
import { root } from '../runner/programs.ts';
import type { Sources } from './find.ts';

/** The sources of the core. */
export function coreSources(): Sources {
  const { files, read } = sourceTree(root, ['src-shared']);
  return new Map(files.map((file) => [file, read(file)]));
}
