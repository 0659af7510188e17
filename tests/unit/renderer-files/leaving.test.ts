/** Unsaved work before another project takes the table. */
import { expect, it } from 'vitest';
import { patchOfColour } from '@shared/grid/index.ts';
import type { Outcome } from '@shared/problem/index.ts';
import { changeOf, paintCells, sampleProject } from '@shared/project/index.ts';
import { Files, type Asking } from '../../../src-renderer/files/files.ts';
import { Session } from '../../../src-renderer/session/session.ts';

const FILE = { path: '/home/knitter/sleeve.walewright', name: 'sleeve.walewright', stamp: 'first' };

/** Gives the other of two yarns to one cell. */
function paint(session: Session, cell: number): void {
  const { motif } = session;
  const patch = patchOfColour(motif.grid, [cell], motif.grid.cells[cell] === 0 ? 1 : 0);
  session.change(changeOf('draw', paintCells(motif.id, patch)));
}

it('is asked about again if something was drawn while it was saved', async () => {
  const session = new Session(sampleProject(), true);
  session.standsIn(FILE);
  paint(session, 0);
  let writes = 0;
  const host = {
    call: (async (): Promise<Outcome<unknown>> => {
      // The hand goes on while the first save is under way.
      if (writes++ === 0) paint(session, 1);
      return { ok: true, value: { ...FILE, stamp: `version ${writes}` } };
    }) as never,
    listen: () => () => undefined,
  };
  const answers: ('save' | 'stay')[] = ['save', 'stay'];
  let asked = 0;
  const asking = { askUnsaved: async () => answers[asked++] } as unknown as Asking;
  const files = new Files(host, session, asking);

  expect(await files.mayLeave()).toBe(false);
  expect([asked, writes, session.isUnsaved]).toEqual([2, 1, true]);

  answers.push('save');
  expect(await files.mayLeave()).toBe(true);
  expect([asked, writes, session.isUnsaved]).toEqual([3, 2, false]);
});
