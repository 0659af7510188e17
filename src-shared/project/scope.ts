/** What of a project is printed and exported: the piece and the size that are looked at, or all. */
import { projectAt, type ProjectAt } from './project-at.ts';

export interface Scope {
  readonly pieces: 'this' | 'all';
  readonly sizes: 'this' | 'all';
}

export const LOOKED_AT: Scope = { pieces: 'this', sizes: 'this' };

/** The project at every place of the scope: a list for each size, with the pieces in their order. */
export function placesIn(project: ProjectAt, { pieces, sizes }: Scope): readonly (readonly ProjectAt[])[] {
  const { whole, at } = project;
  const inSizes = sizes === 'all' ? whole.sizes.map(({ id }) => id) : [at.size];
  const ofPieces = pieces === 'all' ? whole.pieces.map(({ id }) => id) : [at.piece];
  return inSizes.map((size) =>
    ofPieces.map((piece) => (piece === at.piece && size === at.size ? project : projectAt(whole, { piece, size }))),
  );
}
