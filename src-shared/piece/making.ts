/** How a piece begins, and which of its rows a tension can be said of. */
import type { Piece, Tension } from './model.ts';

/** How the piece begins: on waste yarn where a hem folds, whose open loops are hung, else closed, unless it is said. */
export function beginningOf({ begins, hemRows }: Pick<Piece, 'begins' | 'hemRows'>): Exclude<Piece['begins'], 'usual'> {
  if (begins !== 'usual') return begins;
  return hemRows > 1 ? 'open' : 'closed';
}

/** The rows of the piece that can have a tension, in the order in which they are knitted; `isPatterned`: some are in pattern. */
export function rowsWithTension(
  piece: Pick<Piece, 'begins' | 'ends' | 'hemRows' | 'hem'>,
  isPatterned: boolean,
): (keyof Tension)[] {
  const isFolded = piece.hemRows > 1;
  const isOpen = beginningOf(piece) === 'open';
  const has: { readonly [Part in keyof Tension]: boolean } = {
    waste: isOpen,
    facing: isFolded,
    turningRow: isFolded && piece.hem.turning !== 'none',
    outside: isFolded,
    joiningRow: isFolded && isOpen,
    main: true,
    pattern: isPatterned,
    lastRow: piece.ends === 'cast-off',
  };
  return (Object.keys(has) as (keyof Tension)[]).filter((part) => has[part]);
}
