/** What edits name and what they leave alone: merged, refused, and seen. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Motif } from '@shared/motif/index.ts';
import {
  applyChange,
  applyEdits,
  changeOf,
  commit,
  editsFromText,
  editsToText,
  insertInto,
  invertChange,
  mergeEdits,
  moveWithin,
  paintCells,
  redo,
  redraw,
  removeFrom,
  sampleProject,
  setBand,
  setFill,
  setMotif,
  setProject,
  setUnderlay,
  startFill,
  startHistory,
  thingsTouched,
  undo,
  type Edit,
  type Project,
} from '@shared/project/index.ts';
import { anyStep, type Step } from './changes.ts';
import { drawing } from './drawings.ts';

const RUNS = { numRuns: 300, seed: 41 };
const steps = fc.array(anyStep, { minLength: 1, maxLength: 8 });

/** The edits of steps that are taken in turn, those that take them back, latest first, and what comes of them. */
function taken(made: readonly Step[]): {
  readonly edits: Edit[];
  readonly back: Edit[];
  readonly after: Project;
} {
  const edits: Edit[] = [];
  const back: Edit[] = [];
  let after = sampleProject();
  for (const step of made) {
    const change = step(after);
    edits.push(...change.edits);
    back.unshift(...invertChange(after, change).edits);
    after = applyChange(after, change);
  }
  return { edits, back, after };
}

describe('edits of any changes in a row', () => {
  it('do merged what they do in turn, forwards and back, and merge no further', () => {
    fc.assert(
      fc.property(steps, (made) => {
        const { edits, back, after } = taken(made);
        const merged = mergeEdits(edits);
        expect(merged.length).toBeLessThanOrEqual(edits.length);
        expect(applyEdits(sampleProject(), merged)).toStrictEqual(after);
        expect(applyEdits(after, mergeEdits(back))).toStrictEqual(sampleProject());
        expect(mergeEdits(merged)).toStrictEqual(merged);
      }),
      RUNS,
    );
  });

  it('may be merged in any halves', () => {
    fc.assert(
      fc.property(steps, fc.nat(), (made, cut) => {
        const { edits, after } = taken(made);
        const at = cut % (edits.length + 1);
        const halves = [...mergeEdits(edits.slice(0, at)), ...mergeEdits(edits.slice(at))];
        expect(applyEdits(sampleProject(), mergeEdits(halves))).toStrictEqual(after);
      }),
      RUNS,
    );
  });

  it('are one step of a gesture, of whatever kinds they are', () => {
    fc.assert(
      fc.property(fc.array(anyStep, { minLength: 1, maxLength: 12 }), (made) => {
        const start = startHistory(sampleProject());
        const history = made.reduce((before, step) => commit(before, step(before.project), 'gesture 1'), start);
        if (history.past.length === 0) return;
        expect(history.past).toHaveLength(1);
        const back = undo(history);
        expect(back.project).toStrictEqual(sampleProject());
        expect(redo(back).project).toStrictEqual(history.project);
      }),
      RUNS,
    );
  });

  it('are told of, so that who follows a history needs to compare nothing', () => {
    fc.assert(
      fc.property(steps, (made) => {
        let history = startHistory(sampleProject());
        let followed = history.project;
        const follow = (next: typeof history): void => {
          if (next !== history) followed = applyChange(followed, next.made as NonNullable<typeof next.made>);
          history = next;
          expect(followed).toStrictEqual(history.project);
        };
        for (const step of made) follow(commit(history, step(history.project)));
        for (const _ of made) follow(undo(history));
        for (const _ of made) follow(redo(history));
      }),
      RUNS,
    );
  });
});

describe('edits as text', () => {
  it('are read as what they were', () => {
    fc.assert(
      fc.property(steps, (made) => {
        const { edits, back } = taken(made);
        for (const each of [edits, back, mergeEdits(edits), mergeEdits(back)]) {
          expect(structuredClone(editsFromText(editsToText(each)))).toStrictEqual(structuredClone(each));
        }
      }),
      RUNS,
    );
  });

  it.each([
    'nothing',
    '{}',
    '[{}]',
    '[{"kind":"paint","motif":"m","patch":[[0,"?"]]}]',
    '[{"kind":"paint","motif":"m","patch":[[5,"X"],[5,"X"]]}]',
    '[{"kind":"paint","motif":"m","patch":[[0,"XX"],[1,"X"]]}]',
    '[{"kind":"paint","motif":"m","patch":[[4000000,"X"]]}]',
    '[{"kind":"set","of":"piece","to":{"hemRows":-1}}]',
    '[{"kind":"set","of":"piece","to":{"other":1}}]',
    '[{"kind":"set","of":"band","band":0,"to":{"gone":["rule"]}}]',
    '[{"kind":"set","of":"motif","motif":"m","to":{"id":"n"}}]',
    '[{"kind":"insert","list":"fills","at":0,"item":{}}]',
    '[{"kind":"remove","list":"sizes","at":0}]',
    '[{"kind":"remove","list":"bands","at":-1}]',
  ])('are none: %s', (text) => expect(editsFromText(text)).toBeNull());
});

describe('neighbouring edits', () => {
  const cell = (index: number) => paintCells('lighthouse', { at: Uint32Array.of(index), to: Uint8Array.of(1) });

  it('of one thing become one, past those of others', () => {
    expect(
      mergeEdits([setMotif('lighthouse', { name: 'a' }), cell(3), setMotif('lighthouse', { name: 'b' }), cell(1)]),
    ).toEqual([
      setMotif('lighthouse', { name: 'b' }),
      paintCells('lighthouse', { at: Uint32Array.of(1, 3), to: Uint8Array.of(1, 1) }),
    ]);
  });

  it('stay apart where a list changes between them, or the whole drawing', () => {
    const { grid } = sampleProject().motifs[0] as Motif;
    const listed = [setBand(0, { choice: 1 }), moveWithin('bands', 0, 1), setBand(0, { choice: 2 })];
    const redrawn = [cell(3), setMotif('lighthouse', { grid }), cell(1)];
    expect(mergeEdits(listed)).toEqual(listed);
    expect(mergeEdits(redrawn)).toEqual(redrawn);
  });
});

describe('an edit that names what is not there', () => {
  const sample = sampleProject();
  const motif = sample.motifs[0] as Motif;
  const band = sample.bands[0] as Project['bands'][number];

  it.each<[string, Edit]>([
    ['a cell beyond the drawing', paintCells(motif.id, { at: Uint32Array.of(14 * 18), to: Uint8Array.of(1) })],
    ['cells of no motif', paintCells('gone', { at: Uint32Array.of(0), to: Uint8Array.of(1) })],
    ['a field of no motif', setMotif('gone', { name: 'x' })],
    ['a picture where none is', setUnderlay(motif.id, { left: 1 })],
    ['a band behind the last', setBand(1, { choice: 0 })],
    ['a band before the first', setBand(-1, { choice: 0 })],
    ['a band between two', setBand(0.5, { choice: 0 })],
    ['a fill', setFill(0, { shift: 1 })],
    ['a place beyond the end', insertInto('bands', 2, band)],
    ['a place before the beginning', insertInto('fills', -1, startFill(motif.id, 1))],
    ['what goes', removeFrom('fills', 0)],
    ['what moves', moveWithin('bands', 1, 0)],
    ['where it moves', moveWithin('bands', 0, 1)],
    ['a motif under the id of another', insertInto('motifs', 1, motif)],
  ])('is refused: %s', (_, edit) => {
    const change = changeOf('yarns', setProject({ name: 'half' }), edit);
    expect(() => applyChange(sample, change)).toThrow();
    expect(sample).toStrictEqual(sampleProject());
  });
});

describe('what a person sees of a change', () => {
  it('is named by its edits, but for what is gone', () => {
    const { motifs, bands } = sampleProject();
    const change = changeOf(
      'yarns',
      setProject({ name: 'x' }),
      insertInto('motifs', 0, { ...(motifs[0] as Motif), id: 'gull' }),
      paintCells('lighthouse', { at: Uint32Array.of(0), to: Uint8Array.of(1) }),
      removeFrom('bands', 0),
      insertInto('bands', 0, bands[0] as Project['bands'][number]),
    );
    expect(thingsTouched(change)).toEqual([
      { of: 'project' },
      { of: 'motif', motif: 'gull' },
      { of: 'motif', motif: 'lighthouse' },
      { of: 'band', band: 0 },
    ]);
  });
});

describe('another drawing in place of one', () => {
  const limits = { mostWidth: 6, mostHeight: 6 };
  const twoDrawings = fc
    .tuple(drawing(limits), drawing(limits), fc.array(fc.nat(), { maxLength: 9 }))
    .chain(([grid, other, changed]) => {
      const cells = grid.cells.slice();
      for (const index of changed) cells[index % cells.length] = (index + 1) % 3;
      return fc.constantFrom([grid, other] as const, [grid, { ...grid, cells }] as const);
    });

  it('comes as the cells that differ, or whole where that is less; the same either way', () => {
    fc.assert(
      fc.property(twoDrawings, ([grid, other]) => {
        const motif: Motif = { ...(sampleProject().motifs[0] as Motif), grid };
        const project = { ...sampleProject(), motifs: [motif] };
        const edit = redraw(motif, other);
        expect(applyEdits(project, [edit]).motifs[0]?.grid).toEqual(other);
        const isOfOneSize = grid.width === other.width && grid.height === other.height;
        const apart = grid.cells.filter((cell, index) => cell !== other.cells[index]).length;
        expect(edit.kind).toBe(isOfOneSize && apart * 3 <= other.cells.length ? 'paint' : 'set');
      }),
      RUNS,
    );
  });
});
