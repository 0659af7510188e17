import { describe, expect, it } from 'vitest';
import { gridFromText, CELL_LETTERS } from '@shared/grid/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import { changeOf, paintCells, projectAround, yarnsUsed, type Project } from '@shared/project/index.ts';
import { pairsUsed } from '../../../src-renderer/motif/editing/palette.ts';
import { fillChange } from '../../../src-renderer/motif/editing/strokes.ts';
import { Session } from '../../../src-renderer/session/session.ts';

/** A chart of one row in the first yarns of a palette, two cells of each. */
function inYarns(used: number, palette: number): Project {
  const row = Array.from({ length: used }, (_, index) => (CELL_LETTERS[index] ?? '').repeat(2)).join('');
  const yarns = Array.from({ length: palette }, (_, at) => ({
    name: `yarn ${at}`,
    colour: '#102030',
    count: null,
    onHand: null,
  }));
  return projectAround('p', 'stripes', gridFromText([row], CELL_LETTERS), 0, 'worn', yarns);
}

/** Lays a yarn at a cell of the only row; the yarns the motif has then. */
function painted(project: Project, colour: number, column: number): { session: Session; yarns: number } {
  const session = new Session(project, true);
  const grid = session.motif.grid;
  const patch = { at: Uint32Array.of(column), to: Uint8Array.of(colour) };
  expect(grid.cells[column]).not.toBe(colour);
  session.change(changeOf('draw', paintCells(session.motif.id, patch)));
  return { session, yarns: yarnsUsed(session.motif.grid, 0).length };
}

describe('the yarns of a motif', () => {
  it('are those with a cell, and the ground', () => {
    const { grid } = inYarns(3, 5).motifs[0] as Motif;
    expect(yarnsUsed(grid, 0)).toEqual([0, 1, 2]);
    expect(yarnsUsed(grid, 4)).toEqual([0, 1, 2, 4]);
  });

  it('are 16 at most: the seventeenth is refused with what to do, and nothing is drawn', () => {
    const { session, yarns } = painted(inYarns(16, 20), 16, 1);
    expect(yarns).toBe(16);
    expect(session.undoName).toBeNull();
    expect(session.notice).toMatchObject({
      problem: { code: 'yarns-too-many-in-motif', facts: { motif: 'stripes', yarns: 17, most: 16 } },
    });
  });

  it('are counted of the motif that is painted alone: the others are not looked for among each other', () => {
    const MOTIFS = 200;
    let asked = 0;
    const project = inYarns(3, 20);
    const motifs = Array.from({ length: MOTIFS }, (_, at) => {
      const motif = { ...(project.motifs[0] as Motif) };
      return Object.defineProperty(motif, 'id', { enumerable: true, get: () => (asked++, `motif-${at}`) });
    });
    const session = new Session({ ...project, motifs }, true);
    asked = 0;
    session.change(changeOf('draw', paintCells('motif-0', { at: Uint32Array.of(2), to: Uint8Array.of(0) })));
    expect(session.undoName).toBe('draw');
    // A few times each at most, however many there are.
    expect(asked).toBeLessThan(10 * MOTIFS);
  });

  it('may be 16, in a palette that holds more', () => {
    expect(painted(inYarns(15, 20), 18, 1).yarns).toBe(16);
  });

  it('of a motif that came with more can still be drawn in, and given up one by one', () => {
    expect(painted(inYarns(18, 20), 3, 1)).toMatchObject({ yarns: 18, session: { notice: null } });
    const session = new Session(inYarns(18, 20), true);
    const change = fillChange(session.motif, 0, { column: 35, row: 0 });
    if (change) session.change(change);
    expect(yarnsUsed(session.motif.grid, 0)).toHaveLength(17);
  });

  it('are compared two and two, those told apart least first', () => {
    const yarns = ['#000000', '#ffffff', '#0a0a0a'].map((colour) => ({
      name: colour,
      colour,
      count: null,
      onHand: null,
    }));
    const pairs = pairsUsed([0, 1, 2], yarns);
    expect(pairs.map(({ one, other }) => [one, other])).toEqual([
      [0, 2],
      [1, 2],
      [0, 1],
    ]);
    // Black on white is 21 to 1 (WCAG 2.2).
    expect(pairs[2]?.ratio).toBeCloseTo(21, 6);
  });
});
