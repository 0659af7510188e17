import { describe, expect, it } from 'vitest';
import { makePlan, runningOrderOf } from '@shared/plan/index.ts';
import { pieceIn, startAllOver, START_MACHINE, START_PIECE, type ProjectAt } from '@shared/project/index.ts';
import { checkedPlan, FIVE, onlyFindings } from '../check/found.ts';
import { text } from './fabric-text.ts';
import { projectWith } from './pieces.ts';

/** An all-over pattern of a motif, on a piece of so many stitches and rows. */
function allOver(motif: readonly string[], stitches: number, rows: number, given: Partial<ProjectAt> = {}): ProjectAt {
  const project = projectWith({ motif, copies: [1], stitches, rows, piece: FIVE });
  return { ...project, patterns: [{ ...startAllOver('motif', 1), unit: 'whole' }], ...given };
}

// common practice, no source: with end-needle selection on, the edge needles knit contrast on every row of a pattern.
describe('end needles', () => {
  it('knit contrast on every row of an all-over pattern, and main on the rows before it', () => {
    const project = allOver(['.X.'], 9, 4, { patterns: [{ ...startAllOver('motif', 2), unit: 'whole' }] });
    expect(text(checkedPlan(project).fabric)).toEqual(['XX..X..XX', 'XX..X..XX', 'XX..X..XX', '.........']);
  });

  it('keep to the edge of each row where the piece is shaped', () => {
    // One stitch fewer at each edge on row 3, one more on row 5.
    const steps = [
      { row: 3, left: -1, right: -1 },
      { row: 5, left: 1, right: 1 },
    ];
    const project = allOver(['.X.'], 9, 6, {
      piece: { ...START_PIECE, shape: { kind: 'steps', stitches: 9, rows: 6, steps } },
    });
    expect(text(checkedPlan(project).fabric)).toEqual([
      'XX..X..XX',
      'XX..X..XX',
      ' X..X..X ',
      ' X..X..X ',
      'XX..X..XX',
      'XX..X..XX',
    ]);
  });

  it('knit the contrast that is in the feeder on blank rows: that of the row before, else of the next', () => {
    // Each copy from below: blank, X, blank, O, blank.
    const motif = ['.......', '...O...', '.......', '...X...', '.......'];
    expect(text(checkedPlan(allOver(motif, 7, 5)).fabric)).toEqual([
      'O.....O',
      'O..O..O',
      'X.....X',
      'X..X..X',
      'X.....X',
    ]);
  });

  it('stay in main where a pattern has no figure at all', () => {
    // Six stitches narrow to four on the second of two rows, so the only copy is cut there, and left out.
    const steps = [{ row: 4, left: -1, right: -1 }];
    const project = projectWith({
      motif: ['XXXXXX', 'X....X'],
      copies: [1],
      stitches: 6,
      rows: 4,
      piece: { shape: { kind: 'steps', stitches: 6, rows: 4, steps } },
      band: { cutCopies: 'left-out', endNeedles: true, position: { kind: 'from-row', row: 3 }, unit: 'whole' },
    });
    const { fabric, yarn } = checkedPlan(project);
    expect(fabric.cells.includes(1)).toBe(false);
    expect(yarn.uses.map(({ role }) => role)).toEqual(['main']);
  });

  it('take the nearest of two contrasts, and one of them on a blank row', () => {
    expect(text(checkedPlan(allOver(['.........', '..X...O..'], 9, 2)).fabric)).toEqual(['X.......X', 'X.X...O.O']);
  });

  // One yarn is changed for another between rows, and none that goes on above: common practice, no source.
  it.each([
    [['..O...O..', '.........', '..X...O..'], 'O.......O'],
    [['..X...X..', '.........', '..X...O..'], 'X.......X'],
    [['..X...O..', '.........', '..X...O..'], 'X.......X'],
    [['..O...O..', '.........', '.........', '..X...O..'], 'O.......O'],
  ])('knit on blank rows that of two contrasts which goes on above: %j', (drawn, blank) => {
    const project = allOver(drawn, 9, drawn.length);
    const rows = text(checkedPlan(project).fabric);
    expect(rows.slice(1, -1)).toEqual(drawn.slice(1, -1).map(() => blank));
    const running = runningOrderOf(pieceIn(project), makePlan(pieceIn(project)));
    const acts = running.isKnittable ? running.order.flatMap((part) => (part.kind === 'stop' ? part.acts : [])) : [];
    const threaded = acts.filter((act) => act.kind === 'thread' && act.feeder === 2);
    expect(threaded).toHaveLength(1);
  });

  it('are counted in the yarn, floated to and carried from', () => {
    const { yarn, rows } = checkedPlan(allOver(['....X....'], 9, 2));
    expect(yarn.uses.map(({ role, stitches }) => [role, stitches])).toEqual([
      ['main', 12],
      ['contrast', 6],
    ]);
    // Three needles between the figure and each edge, on both rows; the strand goes straight up the edge.
    expect(rows[0]?.floats.filter(({ strand }) => strand.role === 'contrast').map(({ stitches }) => stitches)).toEqual([
      3, 3,
    ]);
    expect(rows[0]?.carries.map(({ stitches, rows: up }) => [stitches, up])).toEqual([[0, 1]]);
    expect(rows.flatMap(({ wraps }) => wraps)).toEqual([]);
  });

  it('are knitted from the ball of the group next to them where the groups have balls of their own', () => {
    const project = projectWith({
      motif: ['X', 'X'],
      copies: [1, 1],
      group: { hasOwnBall: true },
      stitches: 12,
      rows: 2,
      piece: FIVE,
      band: { endNeedles: true, rule: { kind: 'by-hand', first: [-4, 3] as never } },
    });
    const { fabric, rows, yarn } = checkedPlan(project);
    expect(text(fabric)).toEqual(['X.X......X.X', 'X.X......X.X']);
    expect(yarn.uses[1]?.stitches).toBe(8);
    expect(
      rows[0]?.floats
        .filter(({ strand }) => strand.role === 'contrast')
        .map(({ strand, stitches }) => [strand.group, stitches]),
    ).toEqual([
      [0, 1],
      [1, 1],
    ]);
    // Each ball is bound in at its edge of the piece, and wrapped at the other: R1 side from the right, L1 side from the left.
    expect(rows.map(({ wraps }) => wraps.map(({ edge, strand }) => [edge, strand.group]))).toEqual([
      [['right', 0]],
      [['left', 1]],
    ]);
  });
});

describe('end needles and the machine', () => {
  const machine = (endNeedles: 'switch' | 'always' | 'none') => ({ machine: { ...START_MACHINE, endNeedles } });
  const codes = (project: ProjectAt) => checkedPlan(project).findings.map(({ code }) => code);
  const off = { patterns: [{ ...startAllOver('motif', 1), unit: 'whole' as const, endNeedles: false }] };

  it('are as the pattern says where there is a switch', () => {
    expect(text(checkedPlan(allOver(['.X.'], 9, 2)).fabric)[0]).toBe('XX..X..XX');
    expect(text(checkedPlan(allOver(['.X.'], 9, 2, off)).fabric)[0]).toBe('.X..X..X.');
    expect(codes(allOver(['.X.'], 9, 2))).not.toContain('contrast-not-bound-in');
  });

  it('are always on where it always selects them, and the pattern that asks otherwise is told', () => {
    const project = allOver(['.X.'], 9, 2, { ...machine('always'), ...off });
    expect(text(checkedPlan(project).fabric)[0]).toBe('XX..X..XX');
    expect(onlyFindings(checkedPlan(project), 'end-needles-always')).toMatchObject([{ rows: [1, 2], isAllOver: true }]);
    expect(codes(allOver(['.X.'], 9, 2, machine('always')))).not.toContain('end-needles-always');
  });

  it('are never on where there is no selecting of them, and the pattern that asks for it is told', () => {
    const project = allOver(['.X.'], 9, 2, machine('none'));
    expect(text(checkedPlan(project).fabric)[0]).toBe('.X..X..X.');
    expect(onlyFindings(checkedPlan(project), 'end-needles-none')).toMatchObject([{ rows: [1, 2], isAllOver: true }]);
    expect(codes(project)).not.toContain('contrast-not-bound-in');
  });

  it('off beside an all-over pattern leave the contrast unbound and unwrapped, which is told', () => {
    const plan = checkedPlan(allOver(['.X.'], 9, 40, off));
    expect(onlyFindings(plan, 'contrast-not-bound-in')).toMatchObject([{ rows: [1, 40] }]);
    expect(plan.rows.flatMap(({ wraps }) => wraps)).toEqual([]);
    expect(plan.wrapStrands).toEqual([]);
  });

  it('alone on blank rows leave the contrast loose from edge to edge, which is told once a pattern', () => {
    const motif = ['...X...', '.......', '.......', '...X...'];
    const plan = checkedPlan(allOver([...motif, ...motif], 9, 8));
    expect(onlyFindings(plan, 'contrast-loose-across')).toMatchObject([{ rows: [2, 7], count: 4 }]);
    expect(onlyFindings(plan, 'contrast-to-edges')).toEqual([]);
    expect(onlyFindings(plan, 'long-floats').filter(({ role }) => role === 'contrast')).toEqual([]);
    // Under a lining they are floats like others.
    const lined = allOver([...motif, ...motif], 9, 8);
    const covered = checkedPlan({ ...lined, piece: { ...lined.piece, isLined: true } });
    expect(onlyFindings(covered, 'contrast-loose-across')).toEqual([]);
    expect(onlyFindings(covered, 'lined-floats').some(({ role }) => role === 'contrast')).toBe(true);
    // Five stitches between the edges are within the limit.
    expect(codes(allOver(motif, 7, 4))).not.toContain('contrast-loose-across');
  });

  it('inside a seam are no figure that is lost there', () => {
    const project = projectWith({
      motif: ['X......X', '...XX...'],
      copies: [1],
      stitches: 8,
      rows: 2,
      piece: { ...FIVE, seamAllowance: { left: 1, right: 1 } },
      band: { unit: 'whole', endNeedles: true },
    });
    expect(onlyFindings(checkedPlan(project), 'figure-in-seam').map(({ rows }) => rows)).toEqual([
      [2, 2],
      [2, 2],
    ]);
  });
});
