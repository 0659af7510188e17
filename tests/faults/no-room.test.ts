/** Folders that cannot be written to, and disks without room. */
import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { existsSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Params } from '@shared/host/index.ts';
import { ProblemError } from '@shared/problem/index.ts';
import { projectToText, sampleProject } from '@shared/project/index.ts';
import { createServices, nodeFiles, type FileOperations } from '../../src-main/services/index.ts';
import { testEnvironment } from '../unit/services/test-environment.ts';
import { platformError } from './failing-files.ts';

const OLD = projectToText(sampleProject());
const NEW = projectToText({ ...sampleProject(), name: 'new' });

let folder: string;
let document: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'walewright-room-'));
  document = join(folder, 'skerry.walewright');
  await writeFile(document, OLD);
});
afterEach(() => rm(folder, { recursive: true, force: true }));

async function problemOfWriting(path: string, files: FileOperations): Promise<unknown> {
  const services = createServices(testEnvironment(folder, { files }));
  try {
    const there = path === document ? await services['documents.read']({ path }) : null;
    const expect: Params<'documents.write'>['expect'] = there
      ? { kind: 'version', stamp: there.stamp }
      : { kind: 'nothing' };
    await services['documents.write']({ path, text: NEW, expect });
    return null;
  } catch (thrown) {
    if (thrown instanceof ProblemError) return thrown.problem;
    throw thrown;
  }
}

/** Files whose new ones cannot be made, as in a folder of somebody else. */
function withoutNewFiles(code: string): FileOperations {
  return {
    ...nodeFiles,
    open: async (path, how, mode) => {
      if (how === 'new') throw platformError(code, 'open');
      return nodeFiles.open(path, how, mode);
    },
  };
}

describe('saving into a folder that cannot be written to', () => {
  it.each(['EACCES', 'EPERM', 'EROFS'])('says so after %s, and the old document stays', async (code) => {
    expect(await problemOfWriting(document, withoutNewFiles(code))).toMatchObject({
      code: 'folder-not-writable',
      where: document,
    });
    expect(await readFile(document, 'utf8')).toBe(OLD);
  });

  it('says so where the folder is a file', async () => {
    const inside = join(document, 'inside.walewright');
    expect(await problemOfWriting(inside, nodeFiles)).toMatchObject({ code: 'folder-not-writable', where: inside });
  });

  it('says that there is no such folder', async () => {
    const path = join(folder, 'nowhere', 'skerry.walewright');
    expect(await problemOfWriting(path, nodeFiles)).toMatchObject({ code: 'file-missing', where: path });
  });

  it('says that a folder stands in place of the document', async () => {
    const path = join(folder, 'sleeve.walewright');
    await mkdir(path);
    expect(await problemOfWriting(path, nodeFiles)).toMatchObject({ code: 'file-is-folder', where: path });
  });

  it.each(['EACCES', 'EPERM'])('does not replace a document that is write-protected (%s)', async (code) => {
    const files: FileOperations = {
      ...nodeFiles,
      open: async (path, how, mode) => {
        if (how === 'change') throw platformError(code, 'open');
        return nodeFiles.open(path, how, mode);
      },
    };
    expect(await problemOfWriting(document, files)).toMatchObject({ code: 'file-not-written', where: document });
    expect(await readFile(document, 'utf8')).toBe(OLD);
  });
});

describe('saving onto a disk without room', () => {
  it.each(['ENOSPC', 'EDQUOT'])('says so after %s, keeps the old document and leaves nothing aside', async (code) => {
    const files: FileOperations = {
      ...nodeFiles,
      async open(path, how, mode) {
        const file = await nodeFiles.open(path, how, mode);
        const full = async (): Promise<number> => Promise.reject(platformError(code, 'write'));
        return how === 'new' ? { ...file, write: full } : file;
      },
    };
    expect(await problemOfWriting(document, files)).toMatchObject({ code: 'disk-full', where: document });
    expect(await readFile(document, 'utf8')).toBe(OLD);
    expect((await readdir(folder)).filter((name) => name.endsWith('.tmp'))).toEqual([]);
  });

  // Linux's /dev/full answers every write as a full disk does (full(4)).
  it.skipIf(!existsSync('/dev/full'))('says so when the kernel itself refuses the bytes', async () => {
    const files: FileOperations = {
      ...nodeFiles,
      async open(path, how, mode) {
        if (how !== 'new') return nodeFiles.open(path, how, mode);
        const aside = await nodeFiles.open(path, how, mode);
        const full = await nodeFiles.open('/dev/full', 'change');
        return {
          ...aside,
          write: full.write,
          close: () => Promise.all([aside.close(), full.close()]).then(() => undefined),
        };
      },
    };
    expect(await problemOfWriting(document, files)).toMatchObject({ code: 'disk-full', where: document });
    expect(await readFile(document, 'utf8')).toBe(OLD);
    expect((await readdir(folder)).filter((name) => name.endsWith('.tmp'))).toEqual([]);
  });
});
