import { describe, expect, it } from 'vitest';
import type { Slot } from '@shared/bed/index.ts';
import { csvText, rowList, rowListCsv, runsText } from '@shared/output/index.ts';
import { makePlan, rowNotes } from '@shared/plan/index.ts';
import { pieceIn } from '@shared/project/index.ts';
import { projectWith } from '../fabric/pieces.ts';

const SMALL = projectWith({
  // Yarn 2 is drawn too, so that each contrast has its column.
  motif: ['O.X', '.XX'],
  copies: [1],
  stitches: 9,
  rows: 8,
  piece: { hemRows: 8 },
});

describe('the row list', () => {
  it('says for every row the carriage, the section, the needles of each contrast, the wraps and the notes', () => {
    const { header, rows } = rowList(makePlan(pieceIn(SMALL)), SMALL);
    expect(header).toEqual([
      'Row counter',
      'Carriage from',
      'Section',
      'Needles in chalk',
      'Needles in kelp',
      'Wrap',
      'Notes',
    ]);
    // 9 stitches, L4–R5; the block on L1–R2; hem back 1–4, front 5–8, so the motif on rows 6 and 7.
    expect(rows).toEqual([
      ['1', 'right', 'hem back', '', '', '', 'Cast on 9 stitches, L4–R5'],
      ['2', 'left', 'hem back', '', '', '', ''],
      ['3', 'right', 'hem back', '', '', '', ''],
      ['4', 'left', 'hem back', '', '', '', 'The hem folds after this row'],
      ['5', 'right', 'hem front', '', '', '', 'Knit this row plain while the needles of row 6 are selected'],
      ['6', 'left', 'hem front', 'R1-R2', '', 'L1', 'Pattern begins'],
      ['7', 'right', 'hem front', 'R2', 'L1', 'R1 R3', 'Pattern ends'],
      [
        '8',
        'left',
        'hem front',
        '',
        '',
        '',
        'Last row of the hem: hang the cast-on loops on their needles and cast off both together',
      ],
    ]);
  });

  it('has a column only for contrast yarns in use', () => {
    const plain = projectWith({ motif: ['X', '.'], copies: [1], stitches: 5, rows: 4 });
    expect(rowList(makePlan(pieceIn(plain)), plain).header).toHaveLength(6);
  });

  it('writes runs from left to right', () => {
    const run = (first: number, last: number) => ({ first: first as Slot, last: last as Slot });
    expect(runsText([run(-48, -40), run(-38, -38), run(11, 46)])).toBe('L48-L40 L38 R12-R47');
    expect(runsText([])).toBe('');
  });
});

describe('notes at a row', () => {
  it('say what happens at the edges of a shaped piece', () => {
    const tapered = projectWith({
      motif: ['X', '.'],
      copies: [1],
      stitches: 6,
      rows: 6,
      // 6 to 9 stitches: one at each edge on row 4, and the odd one on the right on a row of its own before it.
      piece: { shape: { kind: 'tapered', stitches: 6, stitchesAtTop: 9, rows: 6, straightRows: 2 } },
    });
    const { rows } = rowList(makePlan(pieceIn(tapered)), tapered);
    expect(rows.map((cells) => cells.at(-1))).toEqual([
      'Cast on 6 stitches, L3–R3',
      'Knit this row plain while the needles of row 3 are selected',
      'Increase 1 on the right, to L3–R4; Pattern begins',
      'Increase 1 on the left and 1 on the right, to L4–R5; Pattern ends',
      '',
      '',
    ]);
  });

  it('have no set-up row before row 1', () => {
    const first = projectWith({
      motif: ['X', '.'],
      copies: [1],
      stitches: 5,
      rows: 4,
      band: { position: { kind: 'from-row', row: 1 } },
    });
    const codes = rowNotes(makePlan(pieceIn(first))).map((notes) => notes.map(({ code }) => code));
    expect(codes).toEqual([['cast-on', 'pattern-begins'], ['pattern-ends'], [], []]);
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
      yarns: [main, { name: 'chalk, "2-ply"', colour: '#ffffff', tex: null }, ...others],
    } as typeof SMALL;
    const [header] = rowListCsv(makePlan(pieceIn(named)), named).split('\r\n');
    expect(header).toBe('Row counter,Carriage from,Section,"Needles in chalk, ""2-ply""",Needles in kelp,Wrap,Notes');
  });
});
