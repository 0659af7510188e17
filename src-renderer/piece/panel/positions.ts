/** What a form offers for placing a band up and down, and what a band's place becomes when its kind is changed. */
import {
  isSameSection,
  movedTo,
  sectionAt,
  type Position,
  type Region,
  type SectionSpan,
  type Sectioned,
  type SectionName,
} from '@shared/piece/index.ts';

export type CentredIn = 'shown' | Region;

/** The sections that a piece has by what is written down, from the bottom up. */
export function sectionNames({ hemRows, parts }: Pick<Sectioned, 'hemRows' | 'parts'>): SectionName[] {
  const hem: SectionName[] = hemRows > 1 ? ['hem-back', 'hem-front'] : hemRows > 0 ? ['hem-front'] : [];
  return [...hem, ...parts.map(({ name }) => ({ part: name })), 'body'];
}

/** The regions to choose from; the one chosen stays among them though the piece may have lost it. */
export function regionsFor<Chosen extends CentredIn>(
  piece: Pick<Sectioned, 'hemRows' | 'parts'>,
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

/** Where a band stands: its rows, and the sections of the piece. */
export interface BandRows {
  readonly firstRow: number;
  readonly height: number;
  readonly sections: readonly SectionSpan[];
}

/** A position of another kind that keeps the band where it stands, as far as the kind can say it. */
export function ofKind(kind: Position['kind'], before: Position, { firstRow, height, sections }: BandRows): Position {
  switch (kind) {
    case 'from-row':
      return { kind, row: firstRow };
    case 'above-hem':
      return { kind };
    case 'centred':
      return { kind, section: before.kind === 'from-edge' ? before.section : 'shown', oddRow: 'below' };
    case 'from-edge': {
      const { name, last } = sectionAt(sections, firstRow);
      const section = firstRow + height - 1 <= last ? name : 'piece';
      return movedTo({ kind, edge: 'lower', section, rows: 0 }, firstRow, height, sections);
    }
  }
}

function isNoSection(region: CentredIn): region is 'shown' | 'piece' {
  return region === 'shown' || region === 'piece';
}
