import { describe, expect, it } from 'vitest';
import {
  changeOf,
  commit,
  giveUpGesture,
  isUnsaved,
  markSaved,
  MOST_STEPS,
  redo,
  setProject,
  startHistory,
  undo,
  undoName,
} from '@shared/project/index.ts';
import { examples, sample, stroke } from './change-examples.ts';

describe('the saved mark', () => {
  const { gauge, copies, judge } = examples;

  it('goes with the first change and comes back with undoing to what is saved', () => {
    const start = startHistory(sample);
    const changed = commit(start, gauge);
    expect([isUnsaved(start), isUnsaved(changed), isUnsaved(undo(changed))]).toEqual([false, true, false]);
    expect(isUnsaved(redo(undo(changed)))).toBe(true);
  });

  it('stands on the state that was saved, past and future alike', () => {
    const saved = markSaved(commit(startHistory(sample), gauge));
    expect(isUnsaved(saved)).toBe(false);
    expect(isUnsaved(undo(saved))).toBe(true);
    expect(isUnsaved(redo(undo(saved)))).toBe(false);
    expect(isUnsaved(commit(saved, copies))).toBe(true);
  });

  it('does not come back where the saved state was left for another way', () => {
    const saved = markSaved(commit(startHistory(sample), gauge));
    const other = commit(undo(saved), judge);
    expect(isUnsaved(other)).toBe(true);
    expect(isUnsaved(undo(other))).toBe(true);
  });

  it('is missing from a project that stands in no file', () => {
    const start = startHistory(sample, false);
    expect(isUnsaved(start)).toBe(true);
    expect(isUnsaved(markSaved(start))).toBe(false);
  });
});

describe('a gesture', () => {
  it('is one step; the next gesture is another', () => {
    const first = commit(startHistory(sample), stroke('draw', [13, 1]), 'drag 1');
    const longer = commit(first, stroke('draw', [1, 0]), 'drag 1');
    const next = commit(longer, stroke('erase', [2, 0]), 'drag 2');
    expect(longer.past).toHaveLength(1);
    expect(next.past).toHaveLength(2);
    expect(undo(undo(next)).project).toEqual(sample);
  });

  it('undone and done again is closed', () => {
    const drawn = commit(startHistory(sample), stroke('draw', [13, 1]), 'drag 1');
    const again = commit(redo(undo(drawn)), stroke('draw', [1, 0]), 'drag 1');
    expect(again.past).toHaveLength(2);
  });

  it('given up leaves the project as it was, and nothing to redo', () => {
    const before = commit(startHistory(sample), stroke('draw', [1, 0]), 'drag 1');
    const drawn = commit(before, stroke('draw', [13, 1]), 'drag 2');
    const left = giveUpGesture(drawn, 'drag 2');
    expect(left.project).toEqual(before.project);
    expect(left.future).toEqual([]);
    expect(undoName(left)).toBe('draw');
    expect(left.past).toHaveLength(1);
    expect(giveUpGesture(left, 'drag 2')).toBe(left);
  });

  it('of a stroke that changes nothing is no step', () => {
    const start = startHistory(sample);
    expect(commit(start, stroke('draw', [13, 0]))).toBe(start);
  });

  it('may go on with another kind of change, and is one step all the same', () => {
    const drawn = commit(startHistory(sample), stroke('draw', [13, 1]), 'drag 1');
    const more = commit(commit(drawn, examples.gauge, 'drag 1'), examples['add-band'], 'drag 1');
    expect(more.past).toHaveLength(1);
    expect(undo(more).project).toEqual(sample);
    expect(redo(undo(more)).project).toEqual(more.project);
  });
});

describe('a long history', () => {
  it('forgets its oldest steps and stays right', () => {
    let history = startHistory(sample);
    for (let i = 0; i < MOST_STEPS + 5; i++) {
      history = commit(history, changeOf('rename-project', setProject({ name: `step ${i + 1}` })));
    }
    expect(history.past).toHaveLength(MOST_STEPS);
    while (undoName(history) !== null) history = undo(history);
    expect(history.project.name).toBe('step 5');
    expect(isUnsaved(history)).toBe(true);
  });
});
