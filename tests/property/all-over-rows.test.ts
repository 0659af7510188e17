/** The rows of all-overs: said as those of bands are, and right wherever hem and sections lie. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  firstRowAt,
  rowsOfExtent,
  sectionsOf,
  type Extent,
  type Piece,
  type Position,
  type SectionSpan,
} from '@shared/piece/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { rowsOfFill } from '../reference/rows-of-fill.ts';
import { allOversOf } from '@shared/pattern/index.ts';
import { anyFilledProject } from './filled-projects.ts';
import { anyPosition, anyProject, count } from './projects.ts';

const anyPlaced: fc.Arbitrary<Position> = fc.oneof(
  { arbitrary: anyPosition, weight: 4 },
  count(1, 20).map((row) => ({ kind: 'from-row' as const, row })),
);

/** Of all-overs where bands say the same of motifs. */
const AS_OF_BANDS: { readonly [code: string]: string } = {
  'all-over-taller-than-section': 'motif-taller-than-section',
  'all-over-leaves-section': 'motif-leaves-section',
};

function firstRow(extent: Extent, sections: readonly SectionSpan[]): number | string {
  const rows = outcome(() => rowsOfExtent(extent, sections));
  if (rows.ok) return rows.value.first;
  return AS_OF_BANDS[rows.problem.code] ?? rows.problem.code;
}

function firstOfBand(position: Position, height: number, sections: readonly SectionSpan[]): number | string {
  const row = outcome(() => firstRowAt(position, height, sections));
  return row.ok ? row.value : row.problem.code;
}

/** The sections of a piece that holds them. */
function laidOut(piece: Piece): SectionSpan[] {
  const sections = outcome(() => sectionsOf(piece.shape.rows, piece));
  fc.pre(sections.ok);
  return sections.value;
}

describe('an all-over', () => {
  it('of so many rows stands at every position where a band of that height does, or is refused as that is', () => {
    const seen = new Map<string, number>();
    fc.assert(
      fc.property(anyProject, anyPlaced, count(1, 30), ({ piece }, at, height) => {
        const sections = laidOut(piece);
        const row = firstOfBand(at, height, sections);
        expect(firstRow({ kind: 'so-high', height, at }, sections)).toBe(row);
        const key = `${at.kind} ${typeof row}`;
        seen.set(key, (seen.get(key) ?? 0) + 1);
      }),
      { numRuns: 500, seed: 61 },
    );
    for (const kind of [
      'centred number',
      'from-edge number',
      'above-hem number',
      'from-row number',
      'centred string',
    ]) {
      expect(seen.get(kind), kind).toBeGreaterThan(20);
    }
  });

  it('stands on the rows that its places say, worked out from the numbers of the piece', () => {
    let laid = 0;
    fc.assert(
      fc.property(anyFilledProject, (project) => {
        const { piece } = project;
        const sections = laidOut(piece);
        for (const allOver of allOversOf(project)) {
          const rows = outcome(() => rowsOfExtent(allOver.position, sections));
          const expected = rowsOfFill(piece, allOver);
          if (!rows.ok) {
            if (rows.problem.code === 'section-missing') expect(expected).toBeNull();
            continue;
          }
          expect([rows.value.first, rows.value.last]).toEqual(expected);
          laid++;
        }
      }),
      { numRuns: 300, seed: 62 },
    );
    expect(laid).toBeGreaterThan(150);
  });

  it('above the hem goes up with it row by row, and its end at the top stays', () => {
    fc.assert(
      fc.property(anyProject, count(1, 12), count(1, 9), count(0, 5), ({ piece }, hemRows, more, rows) => {
        const on = (hem: number): { first: number; last: number } | null => {
          const high = { ...piece, sections: [], hemRows: hem };
          if (hem > piece.shape.rows) return null;
          return rowsOfExtent(
            {
              kind: 'from-to',
              from: { kind: 'above-hem', rows },
              to: { kind: 'from-edge', edge: 'upper', section: 'piece', rows: 0 },
            },
            sectionsOf(piece.shape.rows, high),
          );
        };
        const [lower, higher] = [on(hemRows), on(hemRows + more)];
        fc.pre(lower !== null && higher !== null);
        expect(lower.first).toBe(hemRows + 1 + rows);
        expect(higher).toEqual({ first: lower.first + more, last: piece.shape.rows });
      }),
      { numRuns: 200, seed: 63 },
    );
  });
});
