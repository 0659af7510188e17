/**
 * The rows of an all-over, worked out from the numbers of the piece: its
 * sections are laid one on the other and looked up by name. Shares nothing
 * with how the program does it.
 */
import type { AllOver } from '@shared/pattern/index.ts';
import type { Piece } from '@shared/piece/index.ts';

type Rows = readonly [first: number, last: number];

/** Null where a place is said by a section that the piece has not. */
export function rowsOfFill(piece: Piece, { position }: Pick<AllOver, 'position'>): Rows | null {
  const rowsIn = regionsOf(piece);
  const startOf = (at: Extract<AllOver['position'], { kind: 'so-high' }>['at'], high: number): number | null => {
    switch (at.kind) {
      case 'from-row':
        return at.row;
      case 'above-hem':
        return piece.hemRows > 0 ? piece.hemRows + at.rows + 1 : null;
      case 'from-edge': {
        const rows = rowsIn(at.section);
        return rows && (at.edge === 'lower' ? rows[0] + at.rows : rows[1] - at.rows - high + 1);
      }
      case 'centred': {
        const rows = rowsIn(at.section === 'shown' ? (piece.hemRows > 0 ? 'hem-front' : 'body') : at.section);
        if (!rows) return null;
        const left = rows[1] - rows[0] + 1 - high;
        return rows[0] + (left + (left % 2 === 0 ? 0 : at.oddRow === 'below' ? 1 : -1)) / 2;
      }
    }
  };
  if (position.kind === 'so-high') {
    const first = startOf(position.at, position.height);
    return first === null ? null : [first, first + position.height - 1];
  }
  const { from, to } = position;
  const first = startOf(from, 1);
  const last = to.kind === 'to-row' ? to.row : startOf(to, 1);
  return first === null || last === null ? null : [first, last];
}

/** Looks up the rows of a section; null for one that has none. */
function regionsOf({ shape, hemRows, hem, sections }: Piece): (region: unknown) => Rows | null {
  const folds = hemRows > 1 ? (hem.turning === 'none' ? hemRows >> 1 : (hemRows + 1) >> 1) : 0;
  const known = new Map<string, Rows>([['"piece"', [1, shape.rows]]]);
  let below = 0;
  const lay = (region: unknown, high: number): void => {
    if (high > 0) known.set(JSON.stringify(region), [below + 1, below + high]);
    below += high;
  };
  lay('hem-back', folds);
  lay('hem-front', hemRows - folds);
  for (const { name, rows } of sections) lay({ named: name }, rows);
  lay('body', shape.rows - below);
  return (region) => known.get(JSON.stringify(region)) ?? null;
}
