/** Writing the files that are made from a project. */
import { mkdtemp, readdir, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { exportKinds, type Params } from '@shared/host/index.ts';
import { problemOf } from '@shared/problem/index.ts';
import { projectToText, sampleProject } from '@shared/project/index.ts';
import { createServices, nodeFiles, type FileOperations } from '../../../src-main/services/index.ts';
import { platformError } from '../../faults/failing-files.ts';
import { testEnvironment } from './test-environment.ts';

let folder: string;
beforeEach(async () => void (folder = await mkdtemp(join(tmpdir(), 'walewright-exports-'))));
afterEach(() => rm(folder, { recursive: true, force: true }));

function write(given: Partial<Params<'exports.write'>> = {}, files: FileOperations = nodeFiles) {
  const project = projectToText(sampleProject());
  const services = createServices(testEnvironment(folder, { files }));
  return services['exports.write']({ project, folder, kinds: ['rows-csv'], paper: 'a4', ...given });
}
const problem = (answer: Promise<unknown>) => answer.then(() => null, problemOf);

describe('exporting', () => {
  it('writes each kind into the folder and says which files, of which size', async () => {
    const { files } = await write({ kinds: [...exportKinds] });
    expect(files.map(({ path }) => path.split('.').at(-1))).toEqual(['png', 'svg', 'pdf', 'csv']);
    for (const { path, bytes } of files) expect((await stat(path)).size).toBe(bytes);
    expect(await readdir(folder)).toHaveLength(files.length);
  });

  it.each([
    ['is not there', 'nowhere', 'file-missing'],
    ['is a file', 'plain', 'folder-not-writable'],
  ])('into a folder that %s is refused by name', async (_case, name, code) => {
    await writeFile(join(folder, 'plain'), '');
    expect(await problem(write({ folder: name }))).toMatchObject({ code, where: join(folder, name) });
  });

  it('of what is no project is refused, and nothing is written', async () => {
    expect(await problem(write({ project: '{}' }))).toMatchObject({ code: 'project-not-ours' });
    expect(await readdir(folder)).toEqual([]);
  });

  it.each([
    ['ENOSPC', 'disk-full'],
    ['EACCES', 'folder-not-writable'],
  ])('onto a disk that answers %s says so and leaves nothing half-written', async (failure, code) => {
    const failing: FileOperations = {
      ...nodeFiles,
      open: async (path, how, mode) => {
        if (how !== 'new') return nodeFiles.open(path, how, mode);
        if (failure === 'EACCES') throw platformError(failure, 'open');
        const file = await nodeFiles.open(path, how, mode);
        return { ...file, write: async () => Promise.reject(platformError(failure, 'write')) };
      },
    };
    const told = await problem(write({}, failing));
    expect(told).toMatchObject({ code });
    expect(told?.where).toContain(folder);
    expect(await readdir(folder)).toEqual([]);
  });
});
