/** What version 5 said of each motif, and version 6 says once. */
import { describe, expect, it } from 'vitest';
import { editsOfVersion6 } from '../../../src-shared/project/version-6.ts';

const setGround = (motif: string, ground: number, more: object = {}) => ({
  kind: 'set',
  of: 'motif',
  motif,
  to: { ...more, ground },
});
const setMainYarn = (mainYarn: number) => ({ kind: 'set', of: 'project', to: { mainYarn } });

describe('edits of version 5', () => {
  it('that set the ground of all motifs are one that sets the main yarn', () => {
    expect(editsOfVersion6(['a', 'b', 'c'].map((motif) => setGround(motif, 2)))).toEqual([setMainYarn(2)]);
  });

  it('that set it twice set it twice', () => {
    const there = ['a', 'b'].map((motif) => setGround(motif, 2));
    const back = ['a', 'b'].map((motif) => setGround(motif, 0));
    expect(editsOfVersion6([...there, ...back])).toEqual([setMainYarn(2), setMainYarn(0)]);
  });

  it('keep what else they say of a motif, before and after', () => {
    const paint = { kind: 'paint', motif: 'b', patch: [[3, 'X.']] };
    const named = { kind: 'set', of: 'motif', motif: 'b', to: { name: 'gull' } };
    expect(editsOfVersion6([paint, setGround('a', 1), setGround('b', 1, { name: 'gull' }), named])).toEqual([
      paint,
      setMainYarn(1),
      named,
      named,
    ]);
  });

  it('that bring a motif bring it without its ground, and all others stay as they are', () => {
    const motif = { id: 'a', name: 'gull', shows: 'worn', rows: ['X'] };
    const moved = { kind: 'move', list: 'motifs', id: 'a', at: 0 };
    const band = { kind: 'insert', list: 'patterns', piece: 'p', at: 0, item: { id: 'b', kind: 'band' } };
    const insert = { kind: 'insert', list: 'motifs', at: 1, item: { ...motif, ground: 1 } };
    expect(editsOfVersion6([insert, moved, band])).toEqual([{ ...insert, item: motif }, moved, band]);
  });
});
