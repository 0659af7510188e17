/** A size that is proposed: the project stays as it is until it is taken, as one step. */
import { describe, expect, it } from 'vitest';
import { bandsOf } from '@shared/pattern/index.ts';
import {
  addPiece,
  addSize,
  afterChange,
  applyChange,
  changeCopies,
  changeSize,
  projectAt,
  sampleProject,
  sizesOf,
  type ProjectAt,
} from '@shared/project/index.ts';
import {
  changedDraft,
  movedDraft,
  takingOf,
  withDraft,
  type DraftSize,
} from '../../../src-renderer/piece/sizes/draft-size.ts';
import { expectChangeLaws } from '../../property/change-laws.ts';

const widths = (project: ProjectAt): number[] => sizesOf(project).map(({ shape }) => shape.stitches);

/** A rectangle of 96 stitches in size 1, and of 108 in L. */
function twoSizes(): ProjectAt {
  const rectangle = (stitches: number) => ({ shape: { kind: 'rectangle', stitches, rows: 140 } }) as const;
  return [
    (project: ProjectAt) => addSize(project, 1, 'L', 'large'),
    (project: ProjectAt) => changeSize(project, 0, rectangle(96)),
    (project: ProjectAt) => changeSize(project, 1, rectangle(108)),
  ].reduce((project, change) => afterChange(project, change(project)), projectAt(sampleProject()));
}

const draft: DraftSize = { id: 'new', name: 'M', at: 1, edits: [] };

describe('a size that is proposed', () => {
  it('is shown with the numbers that it would have, where one looks', () => {
    const project = twoSizes();
    const shown = withDraft(project, draft);
    expect([widths(shown), shown.at]).toEqual([[96, 102, 108], project.at]);
    expect(widths(project)).toEqual([96, 108]);
  });

  it('is taken with what was changed of it, as one step', () => {
    const project = twoSizes();
    const shape = { kind: 'rectangle', stitches: 100, rows: 144 } as const;
    const wider = changedDraft(draft, changeSize(withDraft(project, draft), 1, { shape }));
    const fuller = changedDraft(wider, changeCopies(withDraft(project, wider), 1, 0, 0, 1));
    const taken = expectChangeLaws(project, takingOf(project, { ...fuller, name: 'medium' }));
    expect(taken.whole).toEqual(withDraft(project, { ...fuller, name: 'medium' }).whole);
    expect([widths(taken), taken.sizes[1], takingOf(project, fuller).name]).toEqual([
      [96, 100, 108],
      { id: 'new', name: 'medium' },
      'add-size',
    ]);
    expect(bandsOf(projectAt(taken.whole, { size: 'new' }))[0]?.groups[0]?.across).toBe(1);
  });

  it('is proposed anew where it is moved to', () => {
    const project = twoSizes();
    const changed = changedDraft(draft, changeSize(withDraft(project, draft), 1, { hemRows: 30 }));
    const moved = movedDraft(changed, 2);
    expect([widths(withDraft(project, moved)), sizesOf(withDraft(project, moved))[2]?.hemRows]).toEqual([
      [96, 108, 120],
      sizesOf(project)[1]?.hemRows,
    ]);
  });

  it('may be changed in several pieces before it is taken', () => {
    const one = twoSizes();
    const { change, shown } = addPiece(one, 'back', 'back');
    const project = projectAt(applyChange(one.whole, change), { piece: shown });
    const before = withDraft(project, draft);
    const back = changedDraft(draft, changeSize(before, 1, { hemRows: 12 }));
    const sleeve = projectAt(withDraft(project, back).whole, one.at);
    const both = changedDraft(back, changeSize(sleeve, 1, { hemRows: 24 }));
    const { whole } = afterChange(project, takingOf(project, both));
    expect(whole.pieces.map(({ perSize }) => perSize[1]?.hemRows)).toEqual([24, 12]);
  });
});
