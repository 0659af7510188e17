/** Needles that are kept, and given back to the rule that found them. */
import { describe, expect, it } from 'vitest';
import type { Slot } from '@shared/bed/index.ts';
import { bandsOf } from '@shared/pattern/index.ts';
import { afterChange, type Change, type ProjectAt } from '@shared/project/index.ts';
import { Session } from '../../../src-renderer/session/session.ts';
import {
  freeChange,
  freeNeedles,
  keepChange,
  keepNeedles,
  ruleOf,
  whyNotFree,
  whyNotKeep,
} from '../../../src-renderer/piece/moving/keep.ts';
import { changeTo, groundOf, standingOf } from '../../../src-renderer/piece/moving/standing.ts';
import { planOf, projectOf } from './projects.ts';
import { settled } from '../../written-projects.ts';

/** Two copies of three stitches on 20, the second choice of even spaces. */
const even = (): ProjectAt =>
  projectOf(['###'], [1, 1], {
    piece: { shape: { kind: 'rectangle', stitches: 20, rows: 6 } },
    band: { rule: { kind: 'even' }, choice: 1 },
  });
const stands = (project: ProjectAt): readonly Slot[] => standingOf(planOf(project), 0).first;
const keep = (project: ProjectAt): ProjectAt => afterChange(project, keepChange(project, 0) as Change);
const free = (project: ProjectAt): ProjectAt => afterChange(project, freeChange(project, 0) as Change);
const widened = (project: ProjectAt): ProjectAt =>
  settled(project, { piece: { ...project.piece, shape: { kind: 'rectangle', stitches: 30, rows: 6 } } });

describe('needles that are kept', () => {
  it('stay where the piece gets wider, and follow the rule again when they are given back', () => {
    const kept = keep(even());
    expect(stands(kept)).toEqual(stands(even()));
    expect(stands(widened(kept))).toEqual(stands(even()));
    const freed = free(widened(kept));
    expect(bandsOf(freed)[0]).toMatchObject({ rule: { kind: 'even' }, choice: 1 });
    expect(stands(freed)).toEqual(stands(widened(even())));
  });

  it('go back to the best choice where the one taken is no longer there', () => {
    const kept = keep(even());
    // On six stitches the two groups fill the piece: there is one way.
    const narrow = settled(kept, { piece: { ...kept.piece, shape: { kind: 'rectangle', stitches: 6, rows: 6 } } });
    const freed = free(narrow);
    expect(bandsOf(freed)[0]).toMatchObject({ rule: { kind: 'even' }, choice: 0 });
    expect(stands(freed)).toEqual([-3, 0]);
  });

  it('remember the first rule when they are moved by hand', () => {
    const project = even();
    const from = standingOf(planOf(project), 0);
    const moved = afterChange(
      project,
      changeTo(project, 0, groundOf(planOf(project), 0), { ...from, first: [-9 as Slot, 5 as Slot] }, from),
    );
    const again = afterChange(
      moved,
      changeTo(moved, 0, groundOf(planOf(moved), 0), { ...from, first: [-8 as Slot, 5 as Slot] }, from),
    );
    expect(stands(again)).toEqual([-8, 5]);
    expect(ruleOf(again, 0)).toEqual({ kind: 'even' });
    expect(bandsOf(free(again))[0]).toMatchObject({ rule: { kind: 'even' }, choice: 1 });
  });

  it('cannot be kept or given back where there are none, or no rule that found them', () => {
    const byHand = { ...bandsOf(even())[0], rule: { kind: 'by-hand', first: [-8, 3] }, choice: 0 };
    const project = { ...even(), patterns: [byHand] } as ProjectAt;
    expect([keepChange(project, 0), freeChange(project, 0), ruleOf(project, 0)]).toEqual([null, null, null]);
    expect([whyNotKeep(project, 0), whyNotFree(project, 0)]).toEqual([
      'These needles are kept already.',
      'No rule found these needles. A spacing rule can be chosen.',
    ]);
    expect([keepChange(even(), 1), freeChange(even(), 1), freeChange(even(), 0)]).toEqual([null, null, null]);
    expect([whyNotKeep(even(), 0), whyNotFree(even(), 0)]).toEqual([null, 'The rule places the groups now.']);
    const narrow: ProjectAt = {
      ...even(),
      piece: { ...even().piece, shape: { kind: 'rectangle', stitches: 5, rows: 6 } },
    };
    expect([keepChange(narrow, 0), whyNotKeep(narrow, 0)]).toEqual([
      null,
      'The groups of this band have no needles that could be kept.',
    ]);
  });

  it('are told, and kept and given back by steps of undo with names of their own', () => {
    const session = new Session(settled(even()).whole, true);
    keepNeedles(session, 0);
    expect(session.undoName).toBe('keep-needles');
    expect(session.announced).toMatch(/^Needles [LR]\d+ and [LR]\d+ kept;/);
    keepNeedles(session, 0);
    expect(session.undoName).toBe('keep-needles');
    freeNeedles(session, 0);
    expect(session.undoName).toBe('free-needles');
    expect(session.announced).toMatch(/^The rule places the groups again, at [LR]\d+ and [LR]\d+\.$/);
    session.undo();
    session.undo();
    expect(session.current).toEqual(even());
  });
});
