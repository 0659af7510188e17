import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxBetween, type Cell } from '@shared/grid/index.ts';
import { outcome } from '@shared/problem/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import {
  commit,
  projectFromText,
  projectToText,
  redo,
  redoName,
  sampleProject,
  startHistory,
  undo,
  undoName,
  type Change,
  type ChangeName,
  type Project,
} from '@shared/project/index.ts';
import {
  cutAgain,
  cutBox,
  cutChange,
  cutColour,
  layChange,
  type Cutting,
  type LiftedSelection,
} from '../../src-renderer/motif/editing/cutting.ts';
import { SYMMETRIES } from '../../src-renderer/motif/editing/following.ts';
import { addMotif, deleteMotif, duplicateMotif } from '../../src-renderer/motif/editing/motifs.ts';
import {
  addYarnChange,
  groundChange,
  isUnused,
  removeYarnChange,
  yarnChange,
} from '../../src-renderer/motif/editing/palette.ts';
import { resizeChange } from '../../src-renderer/motif/editing/size.ts';
import { centredOn, stampOf } from '../../src-renderer/motif/editing/stamp.ts';
import { WHOLE, WHOLE_NAMES, type WholeName } from '../../src-renderer/motif/editing/whole.ts';
import { TOOL_NAMES, TOOLS } from '../../src-renderer/motif/tools/index.ts';
import {
  layUnderlay,
  moveUnderlay,
  removeUnderlay,
  scaleUnderlay,
  strengthenUnderlay,
  toggleUnderlay,
} from '../../src-renderer/motif/underlay/placing.ts';

/** A command used on a motif of the project, and the name that Undo must say; a null change does nothing. */
type Command = (project: Project, motif: Motif) => { readonly change: Change | null; readonly name: ChangeName };

const cell = fc.record({ column: fc.nat(11), row: fc.nat(11) });
const colour = fc.constantFrom(0, 1);
/** A cell of the motif, whatever size it has by now. */
const onto = ({ grid }: Motif, at: Cell): Cell => ({ column: at.column % grid.width, row: at.row % grid.height });

/** Commands whose step is not called after them. */
const STEP_NAMES: { readonly [Name in WholeName]?: ChangeName } = {
  'shift-left': 'shift',
  'shift-right': 'shift',
  'shift-up': 'shift',
  'shift-down': 'shift',
  'crop-blank-first': 'crop',
  'crop-blank-last': 'crop',
  'trim-blank': 'trim',
};

const whole: fc.Arbitrary<Command> = fc
  .record({
    name: fc.constantFrom(...WHOLE_NAMES),
    at: cell,
    corners: fc.option(fc.tuple(cell, cell)),
    colour,
  })
  .map(({ name, at, corners, colour: pen }) => ({ mainYarn }, motif) => {
    const selected = corners && boxBetween(onto(motif, corners[0]), onto(motif, corners[1]));
    const change = WHOLE[name](motif, { cursor: onto(motif, at), selected, colour: pen, ground: mainYarn });
    return { change, name: STEP_NAMES[name] ?? (name as ChangeName) };
  });

const byTool: fc.Arbitrary<Command> = fc
  .record({
    name: fc.constantFrom(...TOOL_NAMES),
    from: cell,
    to: cell,
    colour,
    isFilled: fc.boolean(),
    fillsEverywhere: fc.boolean(),
    symmetry: fc.constantFrom(...SYMMETRIES),
    tile: fc.option(
      fc.record({
        laid: fc.constantFrom('straight' as const, 'courses' as const, 'columns' as const),
        width: fc.integer({ min: 1, max: 9 }),
        height: fc.integer({ min: 1, max: 9 }),
        step: fc.nat(8),
      }),
    ),
  })
  .map(({ name, from, to, symmetry, tile, ...rest }) => ({ mainYarn }, motif) => {
    const tool = TOOLS[name];
    const drawing = { ...rest, motif, ground: mainYarn, following: { symmetry, tile } };
    const changeName = name as ChangeName;
    if (tool.kind === 'span') return { change: tool.change(drawing, from, to), name: changeName };
    if (tool.kind === 'stroke') return { change: tool.change(drawing, [from, to]), name: changeName };
    return { change: tool.kind === 'spot' ? tool.change(drawing, onto(motif, from)) : null, name: changeName };
  });

const bySelection: fc.Arbitrary<Command> = fc
  .record({
    from: cell,
    to: cell,
    at: cell,
    how: fc.constantFrom('cut' as const, 'copy' as const, 'move' as const),
    isBox: fc.boolean(),
    colour,
  })
  .map(({ from, to, at, how, isBox, colour: wanted }) => ({ mainYarn }, motif) => {
    const { grid } = motif;
    const name = how === 'copy' ? 'paste' : how;
    const cutting: Cutting | null = isBox ? cutBox(grid, from, to) : cutColour(grid, wanted);
    if (!cutting) return { change: null, name };
    expect(cutAgain(grid, cutting)).toEqual(cutting);
    if (how === 'cut') return { change: cutChange(motif, mainYarn, cutting), name };
    const lifted: LiftedSelection =
      how === 'move' ? { ...cutting, at, name: how, from: cutting } : { ...cutting, at, name: 'paste' };
    return { change: layChange(motif, mainYarn, lifted), name };
  });

const byStamp: fc.Arbitrary<Command> = fc
  .record({ which: fc.nat(), middle: cell, isFigureOnly: fc.boolean() })
  .map(({ which, middle, isFigureOnly }) => ({ motifs, mainYarn }, motif) => {
    const { grid } = motifs[which % motifs.length] as Motif;
    const cells = stampOf(grid, mainYarn, isFigureOnly);
    return {
      change: layChange(motif, mainYarn, { name: 'stamp', cells, at: centredOn(cells, middle) }),
      name: 'stamp',
    };
  });

/** Commands that may be refused: no change then. */
const refusable = (step: () => Change): Change | null => {
  const taken = outcome(step);
  return taken.ok ? taken.value : null;
};

/** An id that no motif has. */
function freeId({ motifs }: Project): string {
  let number = 1;
  while (motifs.some(({ id }) => id === `motif-${number}`)) number++;
  return `motif-${number}`;
}

const onTheList: fc.Arbitrary<Command> = fc.constantFrom<Command>(
  (project, { id }) => ({ change: addMotif(project, id, 'another', freeId(project)).change, name: 'add-motif' }),
  (project, { id }) => ({
    change: duplicateMotif(project, id, 'a copy', freeId(project)).change,
    name: 'duplicate-motif',
  }),
  (project, { id }) => ({ change: refusable(() => deleteMotif(project, id).change), name: 'delete-motif' }),
);

const onYarns: fc.Arbitrary<Command> = fc.nat().chain((which) =>
  fc.constantFrom<Command>(
    (project) => ({ change: addYarnChange(project, 'kelp'), name: 'yarns' }),
    (project) => ({
      change: yarnChange(project, which % project.yarns.length, { colour: '#123456' }),
      name: 'yarns',
    }),
    (project) => ({ change: groundChange(project, which % project.yarns.length), name: 'set-ground' }),
    (project) => {
      const index = which % project.yarns.length;
      const canGo = project.yarns.length > 2 && isUnused(project, index);
      return { change: canGo ? removeYarnChange(project, index) : null, name: 'yarns' };
    },
  ),
);

const ofSize: fc.Arbitrary<Command> = fc
  .record({
    width: fc.integer({ min: 1, max: 20 }),
    height: fc.integer({ min: 1, max: 20 }),
    columns: fc.constantFrom('left' as const, 'right' as const),
    rows: fc.constantFrom('top' as const, 'bottom' as const),
  })
  .map(({ width, height, ...sides }) => ({ mainYarn }, motif) => ({
    change: resizeChange(motif, motif.grid, mainYarn, width, height, sides),
    name: 'resize-motif',
  }));

const KEPT = { picture: 'data:image/png;base64,iVBORw0KGgo=', width: 40, height: 30 };

const onUnderlay: fc.Arbitrary<Command> = fc.double({ min: -2, max: 2, noNaN: true }).chain((by) =>
  fc.constantFrom<Command>(
    (project, { id, underlay }) => ({
      change: layUnderlay(project, id, KEPT, 1.4),
      name: underlay ? 'replace-underlay' : 'add-underlay',
    }),
    (_, motif) => ({ change: removeUnderlay(motif), name: 'remove-underlay' }),
    (_, motif) => ({
      change: toggleUnderlay(motif),
      name: motif.underlay?.isShown ? 'hide-underlay' : 'show-underlay',
    }),
    (_, motif) => ({ change: moveUnderlay(motif, by, -by), name: 'move-underlay' }),
    (_, motif) => ({ change: scaleUnderlay(motif, 1 + by / 4), name: 'scale-underlay' }),
    (_, motif) => ({ change: strengthenUnderlay(motif, Math.abs(by)), name: 'underlay-strength' }),
  ),
);

const anyCommand = fc.oneof(whole, byTool, bySelection, byStamp, onTheList, onYarns, ofSize, onUnderlay);

describe('every command that edits a motif', () => {
  it('is one step that undo names and takes back whole, and redo does again', () => {
    const used = fc.array(fc.tuple(anyCommand, fc.nat()), { minLength: 1, maxLength: 20 });
    fc.assert(
      fc.property(used, (commands) => {
        let history = startHistory(sampleProject());
        for (const [command, which] of commands) {
          const before = history;
          const { project } = history;
          const { change, name } = command(project, project.motifs[which % project.motifs.length] as Motif);
          if (!change) continue;
          const done = commit(history, change);
          expect(done.past).toHaveLength(before.past.length + 1);
          expect(undoName(done)).toBe(name);
          expect(projectFromText(projectToText(done.project))).toEqual(done.project);
          const back = undo(done);
          expect(back.project).toEqual(before.project);
          expect(undoName(back)).toBe(undoName(before));
          expect(redoName(back)).toBe(name);
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
