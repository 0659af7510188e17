/** Files that are asked for one after the other, and come in another order. */
import { expect, it } from 'vitest';
import type { Outcome } from '@shared/problem/index.ts';
import { emptyProject, projectToText } from '@shared/project/index.ts';
import { Files, type Asking } from '../../../src-renderer/files/files.ts';
import { Session } from '../../../src-renderer/session/session.ts';

/** A host that reads projects called as their files are; reading those named in `slow` ends when it is told to. */
function hostWith(slow: readonly string[]) {
  const goOn = new Map<string, () => void>();
  const host = {
    call: (async (_method: string, { path }: { path: string }): Promise<Outcome<unknown>> => {
      if (slow.includes(path)) await new Promise<void>((resolve) => goOn.set(path, resolve));
      const bytes = new TextEncoder().encode(projectToText(emptyProject(path, 'Motif 1')));
      return { ok: true, value: { path, name: `${path}.walewright`, stamp: path, bytes } };
    }) as never,
    listen: () => () => undefined,
  };
  return { host, goOn: (path: string) => goOn.get(path)?.() };
}

it.each([
  ['another file', (files: Files) => files.openPath('quick'), 'quick'],
  ['a new project', (files: Files) => files.start(), 'Untitled'],
] as const)('one that is slow does not take the place of %s that was asked for after it', async (_case, ask, name) => {
  const session = new Session(emptyProject('before', 'Motif 1'), true);
  const { host, goOn } = hostWith(['slow']);
  const made = { project: emptyProject('Untitled', 'Motif 1'), bench: 'motif' };
  const files = new Files(host, session, { newProject: async () => made } as unknown as Asking);
  const slow = files.openPath('slow');
  await ask(files);
  expect(session.project.name).toBe(name);
  goOn('slow');
  await slow;
  expect(session.project.name).toBe(name);
});
