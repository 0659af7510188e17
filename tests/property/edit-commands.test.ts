import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  commit,
  redo,
  sampleProject,
  startHistory,
  undo,
  undoName,
  type Change,
  type Motif,
} from '@shared/project/index.ts';
import {
  cutAgain,
  cutBox,
  cutChange,
  cutColour,
  layChange,
  type Cutting,
} from '../../src-renderer/motif/editing/cutting.ts';
import { SYMMETRIES } from '../../src-renderer/motif/editing/following.ts';
import { WHOLE, WHOLE_NAMES } from '../../src-renderer/motif/editing/whole.ts';
import { TOOL_NAMES, TOOLS } from '../../src-renderer/motif/tools/index.ts';

type Command = (motif: Motif) => Change | null;

const cell = fc.record({ column: fc.nat(11), row: fc.nat(11) });
const colour = fc.constantFrom(0, 1);
/** A cell of the motif, whatever size it has by now. */
const onto = ({ grid }: Motif, at: { column: number; row: number }) => ({
  column: at.column % grid.width,
  row: at.row % grid.height,
});

const whole: fc.Arbitrary<Command> = fc.tuple(fc.constantFrom(...WHOLE_NAMES), cell, colour).map(
  ([name, at, pen]) =>
    (motif) =>
      WHOLE[name](motif, { cursor: onto(motif, at), colour: pen }),
);

const byTool: fc.Arbitrary<Command> = fc
  .record({
    name: fc.constantFrom(...TOOL_NAMES),
    from: cell,
    to: cell,
    colour,
    isFilled: fc.boolean(),
    fillsEverywhere: fc.boolean(),
    symmetry: fc.constantFrom(...SYMMETRIES),
    tile: fc.option(fc.record({ width: fc.integer({ min: 1, max: 9 }), height: fc.integer({ min: 1, max: 9 }) })),
  })
  .map(({ name, from, to, symmetry, tile, ...rest }) => (motif) => {
    const tool = TOOLS[name];
    const drawing = { ...rest, motif, following: { symmetry, tile } };
    if (tool.kind === 'span') return tool.change(drawing, from, to);
    if (tool.kind === 'stroke') return tool.change(drawing, [from, to]);
    return tool.kind === 'spot' ? tool.change(drawing, onto(motif, from)) : null;
  });

const bySelection: fc.Arbitrary<Command> = fc
  .record({ from: cell, to: cell, at: cell, how: fc.constantFrom('cut', 'copy', 'move'), isBox: fc.boolean(), colour })
  .map(({ from, to, at, how, isBox, colour: wanted }) => (motif) => {
    const { grid } = motif;
    const cutting: Cutting | null = isBox ? cutBox(grid, from, to) : cutColour(grid, wanted);
    if (!cutting) return null;
    expect(cutAgain(grid, cutting)).toEqual(cutting);
    if (how === 'cut') return cutChange(motif, cutting);
    return layChange(
      motif,
      how === 'move' ? { ...cutting, at, name: how, lifted: cutting } : { ...cutting, at, name: 'paste' },
    );
  });

describe('every command that edits a motif', () => {
  it('is one step that undo names and takes back whole, and redo does again', () => {
    fc.assert(
      fc.property(fc.array(fc.oneof(whole, byTool, bySelection), { minLength: 1, maxLength: 20 }), (commands) => {
        let history = startHistory(sampleProject());
        for (const command of commands) {
          const before = history;
          const change = command(history.project.motifs[0] as Motif);
          if (!change) continue;
          const done = commit(history, change);
          expect(done.past).toHaveLength(before.past.length + 1);
          expect(undoName(done)).toBe(change.name);
          const back = undo(done);
          expect(back.project).toEqual(before.project);
          expect(undoName(back)).toBe(undoName(before));
          expect(redo(back).project).toEqual(done.project);
          history = done;
        }
        const steps = history.past.length;
        for (let step = 0; step < steps; step++) history = undo(history);
        expect(history.project).toEqual(sampleProject());
      }),
      { numRuns: 200, seed: 40 },
    );
  });
});
