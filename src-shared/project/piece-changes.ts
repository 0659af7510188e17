/** Changes of the piece that counts given as lengths follow, in every size. */
import { fitted, fittedPosition, type Piece, type Size } from '../piece/index.ts';
import { changeOf, type Change, type ChangeName } from './change.ts';
import type { Edit } from './edit.ts';
import { setBands, setPiece, setPieceFields, setProject } from './edit-makers.ts';
import type { Project } from './model.ts';
import { numbersOf } from './sizes.ts';

/** The piece with other fields. */
export function changePiece(project: Project, name: ChangeName, to: Partial<Piece>): Change {
  const [first = setPiece(to), ...others] = pieceEdits(project, to);
  return changeOf(name, first, ...others);
}

/** What makes the piece have other fields; nothing where it has them. */
export function pieceEdits(project: Project, to: Partial<Piece>): Edit[] {
  const { piece, sizes } = project;
  const changed = fitted(piece, { ...piece, ...to });
  const fit = (size: Size): Size => {
    const numbers = numbersOf(fitted({ ...piece, ...allNumbersOf(size) }, { ...changed, ...allNumbersOf(size) }));
    return { name: size.name, ...numbers };
  };
  const [smaller, larger] = [sizes.smaller.map(fit), sizes.larger.map(fit)];
  const bands = project.bands.map((band) => ({ ...band, position: fittedPosition(piece, changed, band.position) }));
  const isSame = JSON.stringify([smaller, larger]) === JSON.stringify([sizes.smaller, sizes.larger]);
  return [
    ...setPieceFields(project, changed),
    ...setBands(project, bands),
    ...(isSame ? [] : [setProject({ sizes: { ...sizes, smaller, larger } })]),
  ];
}

/** The numbers of a size, to stand over those of another: without lengths where it has none. */
export function allNumbersOf({ shape, hemRows, lengths }: Size): Pick<Piece, 'shape' | 'hemRows' | 'lengths'> {
  return { shape, hemRows, lengths };
}
