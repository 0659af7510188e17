/** Carries over the limit, warned of in the open and noted where they are covered, and strands that are cut. Long floats: `long-floats.ts`. */
import { sectionAt } from '../piece/index.ts';
import type { Finding } from './finding.ts';
import type { Inspected } from './inspected.ts';
import { Stacks, type Stack, type Strand, type StrandRows } from './stack.ts';

/** `long-carry` and `lined-carry`. */
export function longCarries({ piece, sections, picked }: Inspected): Finding[] {
  const items = new Piles();
  for (const { row, carries } of picked.withLongCarries) {
    for (const carry of carries) {
      const { isOver, strand, toRow } = carry;
      if (!isOver) continue;
      const isLined = sectionAt(sections, row).isLined && sectionAt(sections, toRow).isLined;
      items.add(strand.yarn, isLined, { row, next: toRow, lastRow: toRow }, carry);
    }
  }
  return items.map((yarn, isLined, { rows, needles, longest, count }) => ({
    code: isLined ? 'lined-carry' : 'long-carry',
    role: yarn === piece.mainYarn ? 'main' : 'contrast',
    yarn,
    rows,
    needles,
    longest,
    count,
  }));
}

/** How many floats and carries are over the limit, covered by the lining or in the open: as many as the findings gather. */
export function countLongStrands({ sections, rows }: Pick<Inspected, 'sections' | 'rows'>, isLined: boolean): number {
  let count = 0;
  for (const { row, floats, carries, isOver: isAnyOver } of rows) {
    const isRowLined = sectionAt(sections, row).isLined;
    if (isAnyOver && isRowLined === isLined) for (const { isOver } of floats) if (isOver) count++;
    for (const { isOver, toRow } of carries) {
      if (isOver && (isRowLined && sectionAt(sections, toRow).isLined) === isLined) count++;
    }
  }
  return count;
}

/** `long-way-up`: strands that are cut and joined again, since their next row is too far up. One for each yarn and pair of rows. */
export function longWaysUp({ piece, picked }: Inspected): Finding[] {
  return picked.withCuts.flatMap(({ row, cuts }) => {
    const found = new Map<string, Extract<Finding, { readonly code: 'long-way-up' }>>();
    for (const { strand, because, toRow, rows: up, mm } of cuts) {
      if (because !== 'far-up') continue;
      const { yarn } = strand;
      const key = `${yarn} ${toRow}`;
      const count = (found.get(key)?.count ?? 0) + 1;
      const role = yarn === piece.mainYarn ? 'main' : 'contrast';
      found.set(key, { code: 'long-way-up', rows: [row, toRow], role, yarn, up, upMm: mm, count });
    }
    return [...found.values()];
  });
}

/** `cut-aside`: strands that are cut and joined again, since they would be carried too far aside. One for each yarn. */
export function cutsAside({ piece, picked }: Inspected): Finding[] {
  const found = new Map<number, Extract<Finding, { readonly code: 'cut-aside' }>>();
  for (const { row, cuts } of picked.withCuts) {
    for (const { strand, because, toRow, stitches } of cuts) {
      if (because !== 'far-aside') continue;
      const { yarn } = strand;
      const before = found.get(yarn) ?? { rows: [row, toRow] as const, aside: 0, count: 0 };
      found.set(yarn, {
        code: 'cut-aside',
        role: yarn === piece.mainYarn ? 'main' : 'contrast',
        yarn,
        rows: [before.rows[0], Math.max(before.rows[1], toRow)],
        aside: Math.max(before.aside, stitches),
        count: before.count + 1,
      });
    }
  }
  return [...found.values()];
}

/** `infant-floats`: fingers and toes catch in any float of a piece for an infant. */
export function infantFloats({ piece, rows }: Inspected): Finding[] {
  if (!piece.isInfant) return [];
  const withFloats = rows.filter(({ floats }) => floats.length > 0);
  const count = withFloats.reduce((total, { floats }) => total + floats.length, 0);
  const first = withFloats[0]?.row;
  const last = withFloats.at(-1)?.row;
  return first === undefined || last === undefined ? [] : [{ code: 'infant-floats', rows: [first, last], count }];
}

/** Strands kept apart by yarn and by being covered or not. */
class Piles {
  private readonly piles = new Map<number, Stacks>();

  add(yarn: number, isLined: boolean, where: StrandRows, strand: Strand): void {
    const key = yarn * 2 + Number(isLined);
    let pile = this.piles.get(key);
    if (!pile) this.piles.set(key, (pile = new Stacks()));
    pile.add(where, strand, false);
  }

  map(make: (yarn: number, isLined: boolean, gathered: Stack) => Finding): Finding[] {
    return [...this.piles].flatMap(([key, pile]) =>
      pile.gathered().map((gathered) => make(key >> 1, key % 2 === 1, gathered)),
    );
  }
}
