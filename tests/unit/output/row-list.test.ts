import { describe, expect, it } from 'vitest';
import type { Slot } from '@shared/bed/index.ts';
import type { MotifId } from '@shared/motif/index.ts';
import { csvText, rowList, rowListCsv, runsText, type RowList } from '@shared/output/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { pieceIn, startAllOver, type ProjectAt } from '@shared/project/index.ts';
import { rowLines } from '../../../src-shared/output/row-list-blocks.ts';
import { projectWith } from '../fabric/pieces.ts';

const SMALL = projectWith({
  // Yarn 2 is drawn too, so that each contrast has its column.
  motif: ['O.X', '.XX'],
  copies: [1],
  stitches: 9,
  rows: 8,
  piece: { hemRows: 8 },
});

/** One copy of a single stitch on a piece that grows wider. */
function taperedWith(motif: readonly string[], stitches: number, stitchesAtTop: number, rows: number): ProjectAt {
  const straightRows = Math.ceil(rows / 5);
  const shape = { kind: 'tapered', stitches, stitchesAtTop, rows, straightRows } as const;
  return projectWith({ motif, copies: [1], stitches, rows, piece: { shape } });
}

const TAPERED = taperedWith(['X', '.'], 6, 9, 6);

function listOf(project: ProjectAt): RowList {
  const piece = pieceIn(project);
  return rowList(makePlan(piece), piece);
}

describe('the row list', () => {
  it('says for every row the carriage, the section, the needles, what is done before it and the wraps', () => {
    const { header, rows } = listOf(SMALL);
    expect(header).toEqual([
      'Row',
      'Carriage at',
      'Section',
      'Stitches on',
      'Before the row',
      'Needles in chalk',
      'Needles in kelp',
      'Wrap',
      'After the row',
    ]);
    // 9 stitches, L4–R5; the block on L1–R2; back 1–4, front 5–8, so the motif on rows 6 and 7.
    const told = rows.map((cells) => cells.filter((_, at) => at !== 4 && at !== 8));
    expect(told).toEqual([
      ['1', 'right', 'hem facing', 'L4-R5', '', '', ''],
      ['2', 'left', 'hem facing', 'L4-R5', '', '', ''],
      ['3', 'right', 'hem facing', 'L4-R5', '', '', ''],
      ['4', 'left', 'hem facing', 'L4-R5', '', '', ''],
      ['5', 'right', 'hem outside', 'L4-R5', '', '', ''],
      ['6', 'left', 'hem outside', 'L4-R5', 'R1-R2', '', 'L1'],
      ['7', 'right', 'hem outside', 'L4-R5', 'R2', 'L1', 'R1 R3'],
      ['8', 'left', 'hem outside', 'L4-R5', '', '', ''],
    ]);
    expect(rows[0]?.[4]).toMatch(
      /^Cast on 9 stitches, L4–R5, open: 8 rows of waste yarn and the ravel cord, then go on in /,
    );
    expect(rows[4]?.[4]).toContain('for row 6: ');
    expect(rows[7]?.[8]).toContain('Hang the hem on L4–R5: 9 loops');
    expect(rows[7]?.[8]).toContain('Cast off all 9 stitches, L4–R5');
  });

  it('tells increases at the row that they are done before', () => {
    // 6 to 9 stitches: one at each edge on row 4, and the odd one on the right on a row of its own before it.
    const { rows } = listOf(TAPERED);
    expect(rows.map((cells) => cells[3])).toEqual(['L3-R3', 'L3-R3', 'L3-R4', 'L4-R5', 'L4-R5', 'L4-R5']);
    const shaped = rows.map((cells) => (cells[4] ?? '').match(/(?:Increase|Decrease)[^.]*\./g) ?? []);
    expect(shaped).toEqual([
      [],
      [],
      ['Increase 1 stitch at the right edge: R4.'],
      ['Increase 1 stitch at the left edge: L4.', 'Increase 1 stitch at the right edge: R5.'],
      [],
      [],
    ]);
  });

  it('has no acts for what cannot be knitted, and says why', () => {
    const first = projectWith({
      motif: ['X', 'X'],
      copies: [1],
      stitches: 5,
      rows: 4,
      band: { position: { kind: 'from-row', row: 1 } },
    });
    const { rows } = listOf({ ...first, machine: { ...first.machine, chooses: 'ahead-unseen' } });
    expect(rows[0]?.[4]).toMatch(/^This piece cannot be knitted as it is\. The pattern begins on row 1/);
    expect(rows.slice(1).map((cells) => cells[4] + (cells.at(-1) ?? ''))).toEqual(['', '', '']);
  });

  it('has a column only for contrast yarns in use', () => {
    const plain = projectWith({ motif: ['X', '.'], copies: [1], stitches: 5, rows: 4 });
    expect(listOf(plain).header).toHaveLength(8);
  });

  it('writes runs from left to right', () => {
    const run = (first: number, last: number) => ({ first: first as Slot, last: last as Slot });
    expect(runsText([run(-48, -40), run(-38, -38), run(11, 46)])).toBe('L48-L40 L38 R12-R47');
    expect(runsText([])).toBe('');
  });
});

describe('the row list on paper', () => {
  const spans = (project: ProjectAt): string[] =>
    rowLines(pieceIn(project), makePlan(pieceIn(project))).map(({ kind, first, last }) => `${kind} ${first}–${last}`);

  it('has a line of its own for a row with something to do', () => {
    const plain = { ...taperedWith(['.', 'X'], 20, 24, 30), patterns: [] };
    for (const line of rowLines(pieceIn(plain), makePlan(pieceIn(plain)))) {
      if (line.kind === 'rows' && line.before.length > 0) expect(line.first).toBe(line.last);
    }
    expect(spans(plain)).toContain('rows 2–11');
  });

  it('tells rows that come again once, with the readings at which they begin', () => {
    const fill = projectWith({ motif: ['X.X.', '.X.X', 'XX..', '..XX'], copies: [], stitches: 16, rows: 41 });
    const filled: ProjectAt = { ...fill, patterns: [startAllOver(fill.motifs[0]?.id as MotifId, 3)] };
    const lines = rowLines(pieceIn(filled), makePlan(pieceIn(filled)));
    const again = lines.find(({ kind }) => kind === 'again');
    expect(again).toMatchObject({ first: 8, of: { first: 4, last: 7 } });
    expect(again && 'readings' in again && again.readings.slice(0, 3)).toEqual([7, 11, 15]);
    // Every row is told, once.
    let next = 1;
    for (const { first, last } of lines) {
      expect(first).toBe(next);
      next = last + 1;
    }
    expect(next).toBe(42);
  });
});

describe('comma-separated text', () => {
  // RFC 4180: CRLF after each record, fields with commas, quotes or line ends quoted, quotes doubled
  it.each([
    [
      [
        ['a', 'b'],
        ['c', 'd'],
      ],
      'a,b\r\nc,d\r\n',
    ],
    [[['L4, R4']], '"L4, R4"\r\n'],
    [[['"chalk"']], '"""chalk"""\r\n'],
    [[['two\nlines']], '"two\nlines"\r\n'],
    [[['', '']], ',\r\n'],
  ])('%j', (rows, text) => {
    expect(csvText(rows)).toBe(text);
  });

  it.each(['=1+1', '+1', '-1', '@sum', '\t=1', '\r=1'])('does not let a spreadsheet take %j for a formula', (cell) => {
    expect(csvText([[cell]])).toMatch(/^"?'/);
  });

  it('quotes the name of a yarn', () => {
    const [main, , ...others] = SMALL.yarns;
    const named = {
      ...SMALL,
      yarns: [main, { name: 'chalk, "2-ply"', colour: '#ffffff', count: null, onHand: null }, ...others],
    } as typeof SMALL;
    const [header] = rowListCsv(makePlan(pieceIn(named)), pieceIn(named)).split('\r\n');
    expect(header).toBe(
      'Row,Carriage at,Section,Stitches on,Before the row,"Needles in chalk, ""2-ply""",Needles in kelp,Wrap,After the row',
    );
  });
});
