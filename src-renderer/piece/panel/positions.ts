/** What a form offers for placing a pattern up and down, and what its place becomes when its kind is changed. */
import {
  isSameSection,
  movedTo,
  rowsOf,
  sectionAt,
  TO_THE_TOP,
  type End,
  type Extent,
  type Position,
  type Region,
  type SectionSpan,
  type Sectioned,
  type SectionName,
  type Start,
} from '@shared/piece/index.ts';

export type CentredIn = 'shown' | Region;

/** The sections that a piece has by what is written down, from the bottom up. */
export function sectionNames({ hemRows, sections }: Pick<Sectioned, 'hemRows' | 'sections'>): SectionName[] {
  const hem: SectionName[] = hemRows > 1 ? ['hem-back', 'hem-front'] : hemRows > 0 ? ['hem-front'] : [];
  return [...hem, ...sections.map(({ name }) => ({ named: name })), 'body'];
}

/** The regions to choose from; the one chosen stays among them though the piece may have lost it. */
export function regionsFor<Chosen extends CentredIn>(
  piece: Pick<Sectioned, 'hemRows' | 'sections'>,
  others: readonly Chosen[],
  chosen: Chosen,
): (Chosen | Region)[] {
  const regions = [...others, ...sectionNames(piece)];
  return regions.some((one) => isSameRegion(one, chosen)) ? regions : [...regions, chosen];
}

export function isSameRegion(one: CentredIn, other: CentredIn): boolean {
  if (isNoSection(one) || isNoSection(other)) return one === other;
  return isSameSection(one, other);
}

/** The kinds of position; above the hem only where there is one. */
export function kindsFor({ hemRows }: Pick<Sectioned, 'hemRows'>, now: Position['kind']): Position['kind'][] {
  const hem = hemRows > 0 || now === 'above-hem' ? (['above-hem'] as const) : [];
  return ['centred', 'from-edge', ...hem, 'from-row'];
}

/** Where a pattern stands: its rows, and the sections of the piece. */
export interface RowsTaken {
  readonly firstRow: number;
  readonly height: number;
  readonly sections: readonly SectionSpan[];
}

/**
 * Plain rows between a hem and what is put above it. The row after the join is
 * plain, so the second row above the hem is the first that can be in pattern.
 */
export const ROWS_ABOVE_HEM = 1;

/** A position of another kind that keeps the pattern where it stands, as far as the kind can say it. */
export function ofKind(kind: Position['kind'], before: Position, { firstRow, height, sections }: RowsTaken): Position {
  switch (kind) {
    case 'from-row':
      return { kind, row: firstRow };
    case 'above-hem': {
      const above = movedTo({ kind, rows: ROWS_ABOVE_HEM }, firstRow, height, sections);
      return above.kind === kind ? above : { kind, rows: ROWS_ABOVE_HEM };
    }
    case 'centred':
      return { kind, section: before.kind === 'from-edge' ? before.section : 'shown', oddRow: 'below' };
    case 'from-edge': {
      const { name, last } = sectionAt(sections, firstRow);
      const section = firstRow + height - 1 <= last ? name : 'piece';
      return movedTo({ kind, edge: 'lower', section, rows: 0 }, firstRow, height, sections);
    }
  }
}

/** The start of an all-over, of another kind, on the row where it starts now as far as the kind can say it. */
export function startOfKind(kind: Start['kind'], standing: RowsTaken): Start {
  const start = ofKind(kind, { kind: 'from-row', row: standing.firstRow }, { ...standing, height: 1 });
  return asStart(start) ?? { kind: 'from-row', row: standing.firstRow };
}

/** The position, if it says where rows start however many there are. */
export function asStart(position: Position): Start | null {
  switch (position.kind) {
    case 'centred':
      return null;
    case 'from-edge': {
      const { edge, ...rest } = position;
      return edge === 'lower' ? { ...rest, edge } : null;
    }
    default:
      return position;
  }
}

/** The end of an all-over, of another kind, on the row where it ends now as far as the kind can say it. */
export function endOfKind(kind: End['kind'], { firstRow, height, sections }: RowsTaken): End {
  const row = firstRow + height - 1;
  if (kind === 'to-row') return { kind, row };
  const { last } = rowsOf('piece', sections);
  if (row >= last) return TO_THE_TOP;
  const section = sectionAt(sections, row);
  return { kind, edge: 'upper', section: section.name, rows: section.last - row };
}

/** The kinds of start; above the hem only where there is one. */
export function startKindsFor(piece: Pick<Sectioned, 'hemRows'>, now: Start['kind']): Start['kind'][] {
  return kindsFor(piece, now).filter((kind) => kind !== 'centred');
}

/** What the end of an all-over is asked by: the kinds of end, or so many rows. */
export type EndsBy = End['kind'] | 'so-high';

export function endsOf(extent: Extent): EndsBy {
  return extent.kind === 'so-high' ? extent.kind : extent.to.kind;
}

/** An all-over that ends in another way, on the rows where it stands now as far as that can be said. */
export function endingBy(kind: EndsBy, extent: Extent, standing: RowsTaken): Extent {
  if (kind !== 'so-high') {
    const from = extent.kind === 'from-to' ? extent.from : asStart(extent.at);
    return fromTo(from ?? startOfKind('from-row', standing), endOfKind(kind, standing));
  }
  return extent.kind === 'so-high' ? extent : { kind, height: standing.height, at: extent.from };
}

/** From one place to another; a last row that would lie below a first row is that row. */
export function fromTo(from: Start, to: End): Extent {
  const isTurned = from.kind === 'from-row' && to.kind === 'to-row' && to.row < from.row;
  return { kind: 'from-to', from, to: isTurned ? { ...to, row: from.row } : to };
}

function isNoSection(region: CentredIn): region is 'shown' | 'piece' {
  return region === 'shown' || region === 'piece';
}
