/** What a project is called that nobody has named. */
import { expect, it } from 'vitest';
import type { Outcome } from '@shared/problem/index.ts';
import { changeOf, emptyProject, projectFromText, setProject } from '@shared/project/index.ts';
import { Files, type Asking } from '../../../src-renderer/files/files.ts';
import { Session } from '../../../src-renderer/session/session.ts';

/** A new project, saved to `path`: the session, and what was written. */
async function savedTo(path: string, name: string | null): Promise<{ session: Session; written: string[] }> {
  const session = new Session(emptyProject('Untitled', 'Motif 1'), true);
  if (name !== null) session.change(changeOf('rename-project', setProject({ name })));
  const written: string[] = [];
  const call = async (_method: string, { text }: { text: string }): Promise<Outcome<unknown>> => {
    written.push(projectFromText(text).name);
    return { ok: true, value: { path, name: path, stamp: 'first' } };
  };
  const asking = { fileToSave: async () => ({ path, there: null }) } as unknown as Asking;
  await new Files({ call: call as never, listen: () => () => undefined }, session, asking).save();
  return { session, written };
}

it.each([
  ['/home/knitter/Harbour cuff.walewright', 'Harbour cuff'],
  ['C:\\Patterns\\Harbour cuff.walewright', 'Harbour cuff'],
  ['/home/knitter/cuff', 'cuff'],
  [`/home/knitter/${'a'.repeat(119)}🧶.walewright`, 'a'.repeat(119)],
])('takes the name of its first file, %s', async (path, name) => {
  const { session, written } = await savedTo(path, null);
  expect(written).toEqual([name]);
  expect(session.project.name).toBe(name);
  expect(session.isUnsaved).toBe(false);
  expect(session.undoName).toBe('rename-project');
});

it('stays as it is where somebody has named it', async () => {
  const { session, written } = await savedTo('/home/knitter/draft 3.walewright', 'Harbour cuff');
  expect(written).toEqual(['Harbour cuff']);
  expect(session.project.name).toBe('Harbour cuff');
});
