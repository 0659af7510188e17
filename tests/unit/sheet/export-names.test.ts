import { describe, expect, it } from 'vitest';
import { problemError, ProblemError } from '@shared/problem/index.ts';
import { sampleProject, startBand } from '@shared/project/index.ts';
import {
  safeFileName,
  writeExports,
  type ExportKind,
  type WrittenFile,
} from '../../../src-main/services/export/index.ts';

const KINDS: readonly ExportKind[] = ['chart-png', 'chart-svg', 'sheet-pdf', 'rows-csv'];

describe('file names from project names', () => {
  it.each([
    ['Skerry sleeve', 'Skerry sleeve'],
    ['front/back: 1', 'front back 1'],
    ['../../etc/passwd', 'etc passwd'],
    ['..', 'project'],
    ['<>:"/\\|?*', 'project'],
    ['con', '_con'],
    ['LPT1.old', '_LPT1.old'],
    ['.hidden', 'hidden'],
    ['ends with dots...', 'ends with dots'],
    ['two\nlines', 'two lines'],
    ['  wide   blanks ', 'wide blanks'],
    ['raglan\u202egnp.', 'raglan gnp'],
    ['編み物', '編み物'],
  ])('%j gives %j', (name, safe) => {
    expect(safeFileName(name, 'project')).toBe(safe);
  });

  it('cuts a long name at a whole character, so that the whole stays under 255 bytes', () => {
    const name = safeFileName('編'.repeat(120), 'project');
    expect(Buffer.byteLength(`${name} - placement.pdf`)).toBeLessThan(255);
    expect(name).toMatch(/^編+$/);
  });
});

describe('files made from a project', () => {
  async function made(kinds: readonly ExportKind[], project = sampleProject()): Promise<[WrittenFile[], string[]]> {
    const paths: string[] = [];
    const writeFile = async (path: string): Promise<void> => void paths.push(path);
    return [await writeExports({ project, folder: '/out', kinds, paper: 'a4', writeFile }), paths];
  }

  it('are named after it, each with its kind', async () => {
    const [written, paths] = await made(KINDS);
    expect(paths).toEqual([
      '/out/Skerry sleeve - chart.png',
      '/out/Skerry sleeve - chart.svg',
      '/out/Skerry sleeve - placement.pdf',
      '/out/Skerry sleeve - rows.csv',
    ]);
    expect(written.map(({ path }) => path)).toEqual(paths);
    for (const { bytes } of written) expect(bytes).toBeGreaterThan(500);
  });

  it('are made once, though asked for twice', async () => {
    expect((await made(['rows-csv', 'rows-csv']))[1]).toHaveLength(1);
  });

  it('have a chart for each motif that is placed', async () => {
    const sample = sampleProject();
    const [motif] = sample.motifs;
    if (!motif) throw new RangeError('The sample has a motif');
    const project = {
      ...sample,
      motifs: [motif, { ...motif, id: 'second' }, { ...motif, id: 'unused' }],
      bands: [...sample.bands, { ...startBand('second', [1]), position: { kind: 'from-row' as const, row: 80 } }],
    };
    const [, paths] = await made(['chart-svg'], project);
    expect(paths).toEqual(['/out/Skerry sleeve - chart.svg', '/out/Skerry sleeve - chart 2.svg']);
  });

  it('are not written at all if one of them cannot be made', async () => {
    const paths: string[] = [];
    const project = { ...sampleProject(), bands: [{ ...startBand('lighthouse', [9, 9]) }] };
    const request = { project, folder: '/out', kinds: KINDS, paper: 'a4' as const };
    await expect(writeExports({ ...request, writeFile: async (path) => void paths.push(path) })).rejects.toThrow(
      ProblemError,
    );
    expect(paths).toEqual([]);
  });

  it('say which could not be written', async () => {
    const writeFile = async (): Promise<void> => {
      throw problemError('disk-full', {});
    };
    const request = { project: sampleProject(), folder: '/out', kinds: KINDS, paper: 'a4' as const };
    await expect(writeExports({ ...request, writeFile })).rejects.toThrow('disk-full');
  });
});
