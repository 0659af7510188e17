/** What edits name and what they leave alone: merged, refused, and seen. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Motif } from '@shared/motif/index.ts';
import { bandsOf, type Band, type BandInSizes } from '@shared/pattern/index.ts';
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
  setPattern,
  setMotif,
  setProject,
  setUnderlay,
  startHistory,
  thingsTouched,
  undo,
  type Edit,
  type Project,
  setNumbers,
  insertPattern,
  removePattern,
  projectAt,
  pieceOf,
  setPieceInSizes,
  type PieceInSizes,
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
    '[{"kind":"set","of":"numbers","piece":"p","size":"s","to":{"hemRows":-1}}]',
    '[{"kind":"set","of":"piece","piece":"p","to":{"other":1}}]',
    '[{"kind":"set","of":"piece","piece":"p","to":{"id":"q"}}]',
    '[{"kind":"set","of":"piece","to":{"name":"front"}}]',
    '[{"kind":"set","of":"numbers","piece":"p","size":"s","to":{"gone":["shape"]}}]',
    '[{"kind":"set","of":"all-over","piece":"p","pattern":"f","to":{"judge":"figure"}}]',
    '[{"kind":"set","of":"motif","motif":"m","to":{"id":"n"}}]',
    '[{"kind":"insert","list":"patterns","piece":"p","at":0,"item":{}}]',
    '[{"kind":"remove","list":"sizes","id":"s"}]',
    '[{"kind":"remove","list":"patterns","id":"b"}]',
    '[{"kind":"move","list":"pieces","id":"p","at":-1}]',
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
    const at = projectAt(sampleProject());
    const piece = pieceOf(at.whole, at.at.piece);
    const listed = [
      setPattern(at, 'band', 0, { judge: 'blocks' }),
      insertInto('pieces', 1, { ...piece, id: 'front', patterns: [] }),
      setPattern(at, 'band', 0, { judge: 'figure' }),
    ];
    const redrawn = [cell(3), setMotif('lighthouse', { grid }), cell(1)];
    expect(mergeEdits(listed)).toEqual(listed);
    expect(mergeEdits(redrawn)).toEqual(redrawn);
  });

  it('stay apart where ids look like ways to other things', () => {
    const bands = [
      { piece: 'a', pattern: 'b/patterns/c' },
      { piece: 'a/patterns/b', pattern: 'c' },
    ].map((which): Edit => ({ kind: 'set', of: 'band', ...which, to: { judge: 'blocks' } }));
    expect(mergeEdits(bands)).toEqual(bands);
  });
});

describe('an edit that names what is not there', () => {
  const sample = sampleProject();
  const motif = sample.motifs[0] as Motif;

  const piece = sample.pieces[0] as PieceInSizes;
  const [band] = piece.patterns as [BandInSizes];
  const named = { piece: piece.id, pattern: band.id };

  it.each<[string, Edit]>([
    ['a cell beyond the drawing', paintCells(motif.id, { at: Uint32Array.of(14 * 18), to: Uint8Array.of(1) })],
    ['cells of no motif', paintCells('gone', { at: Uint32Array.of(0), to: Uint8Array.of(1) })],
    ['a field of no motif', setMotif('gone', { name: 'x' })],
    ['a picture where none is', setUnderlay(motif.id, { left: 1 })],
    ['a field of no piece', setPieceInSizes('gone', { name: 'x' })],
    ['numbers of no size', setNumbers({ piece: piece.id, size: 'gone' }, { hemRows: 2 })],
    ['a band that is none', { kind: 'set', of: 'band', ...named, pattern: 'gone', to: {} }],
    ['a band of another piece', { kind: 'set', of: 'band', ...named, piece: 'gone', to: {} }],
    ['a band as an all-over', { kind: 'set', of: 'all-over', ...named, to: {} }],
    [
      'a place beyond the end',
      { kind: 'insert', list: 'patterns', piece: piece.id, at: 2, item: { ...band, id: 'new' } },
    ],
    ['a place before the beginning', insertInto('pieces', -1, { ...piece, id: 'new' })],
    ['what goes', removeFrom('pieces', 'gone')],
    ['what moves', moveWithin('motifs', 'gone', 0)],
    ['where it moves', moveWithin('motifs', motif.id, 1)],
    ['a motif under the id of another', insertInto('motifs', 1, motif)],
    ['a piece under the id of another', insertInto('pieces', 1, piece)],
    ['a pattern under the id of another', { kind: 'insert', list: 'patterns', piece: piece.id, at: 1, item: band }],
  ])('is refused: %s', (_, edit) => {
    const change = changeOf('yarns', setProject({ name: 'half' }), edit);
    expect(() => applyChange(sample, change)).toThrow();
    expect(sample).toStrictEqual(sampleProject());
  });
});

describe('what a person sees of a change', () => {
  it('is named by its edits, but for what is gone', () => {
    const at = projectAt(sampleProject());
    const { motifs } = at.whole;
    const change = changeOf(
      'yarns',
      setProject({ name: 'x' }),
      insertInto('motifs', 0, { ...(motifs[0] as Motif), id: 'gull' }),
      paintCells('lighthouse', { at: Uint32Array.of(0), to: Uint8Array.of(1) }),
      removePattern(at, 'band', 0),
      insertPattern(at, 'new', bandsOf(at)[0] as Band),
      setNumbers(at.at, { hemRows: 4 }),
      moveWithin('motifs', 'lighthouse', 0),
      moveWithin('pieces', 'piece-1', 0),
      removeFrom('motifs', 'gull'),
    );
    expect(thingsTouched(change)).toEqual([
      { of: 'project' },
      { of: 'motif', motif: 'gull' },
      { of: 'motif', motif: 'lighthouse' },
      { of: 'piece', piece: 'piece-1' },
      { of: 'band', piece: 'piece-1', pattern: 'new' },
      { of: 'numbers', piece: 'piece-1', size: 'size-1' },
      { of: 'motif', motif: 'lighthouse' },
      { of: 'piece', piece: 'piece-1' },
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
