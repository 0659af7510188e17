/** Surroundings for the services in tests: real files in a folder of the test, a clock that stands. */
import { join } from 'node:path';
import { projectAt, projectFromText } from '@shared/project/index.ts';
import { makeExports } from '../../../src-main/services/export/index.ts';
import { nodeFiles, type Environment, type Shell } from '../../../src-main/services/index.ts';

export const silentShell: Shell = {
  kind: 'browser',
  openAtStart: null,
  isNamed: () => false,
  dialogs: null,
  print: null,
  setWindowState: () => undefined,
  noteDocument: () => undefined,
  noteProblem: () => undefined,
};

/** `folder` becomes the home folder, with the data folder hidden in it. */
export function testEnvironment(folder: string, given: Partial<Environment> = {}): Environment {
  return {
    files: nodeFiles,
    now: () => new Date('2026-01-02T03:04:05.678Z'),
    // In this thread: a test of the services waits for no other to start.
    makeExports: async ({ project, at, ...wanted }, { further } = {}) =>
      makeExports({ ...wanted, project: projectAt(projectFromText(project), at) }, further),
    wait: async () => undefined,
    presence: { instance: 'this-run', isRunning: async () => false },
    shell: silentShell,
    dataFolder: join(folder, '.data'),
    homeFolder: folder,
    version: '0.0.0',
    ...given,
  };
}
