import { describe, expect, it } from 'vitest';
import { outcome } from '@shared/problem/index.ts';
import { applyChange, changeOf, setMotif } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { expectChangeLaws } from '../../property/change-laws.ts';
import { examples, sample } from './change-examples.ts';

describe('a change', () => {
  it.each(Object.values(examples))('called $name is undone by its inverse and touches no other state', (change) => {
    const after = expectChangeLaws(sample, change);
    expect(after).not.toEqual(sample);
    expect(words.changes.undo(change.name)).not.toBe('Undo');
  });

  it('to a motif that is gone is refused by name', () => {
    const change = changeOf('rename-motif', setMotif('gone', { name: 'x' }));
    expect(outcome(() => applyChange(sample, change))).toMatchObject({ problem: { code: 'motif-missing' } });
  });

  it('to a band that is not there is a mistake of the program', () => {
    expect(() =>
      applyChange(sample, changeOf('judge', { kind: 'set', of: 'band', piece: 'piece-1', pattern: 'gone', to: {} })),
    ).toThrow(RangeError);
  });
});
