import { describe, expect, it } from 'vitest';
import { ProblemError } from '@shared/problem/index.ts';
import { bandsOf } from '@shared/pattern/index.ts';
import { projectAt, sampleProject, startBand, type PieceInSizes } from '@shared/project/index.ts';
import { TEST_DAY } from '../../day.ts';
import { garment } from '../../garment.ts';
import {
  safeFileName,
  exportFileNames,
  makeExports,
  type ExportKind,
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
  /** Their names, which are said before any of them is made. */
  async function made(kinds: readonly ExportKind[], project = projectAt(sampleProject())): Promise<string[]> {
    const files = await makeExports({ project, kinds, paper: 'a4', date: TEST_DAY });
    for (const { content } of files) expect(content.byteLength).toBeGreaterThan(500);
    const names = files.map(({ name }) => name);
    expect(exportFileNames(project, kinds)).toEqual(names);
    return names;
  }

  it('are named after it, each with its kind', async () => {
    expect(await made(KINDS)).toEqual([
      'Skerry sleeve - chart.png',
      'Skerry sleeve - chart.svg',
      'Skerry sleeve - placement.pdf',
      'Skerry sleeve - rows.csv',
    ]);
  });

  it('are made once, though asked for twice', async () => {
    expect(await made(['rows-csv', 'rows-csv'])).toHaveLength(1);
  });

  it('have a chart for each motif that is placed', async () => {
    const sample = projectAt(sampleProject());
    const [motif] = sample.motifs;
    if (!motif) throw new RangeError('The sample has a motif');
    const project = {
      ...sample,
      motifs: [motif, { ...motif, id: 'second' }, { ...motif, id: 'unused' }],
      patterns: [...bandsOf(sample), { ...startBand('second', [1]), position: { kind: 'from-row' as const, row: 80 } }],
    };
    expect(await made(['chart-svg'], project)).toEqual(['Skerry sleeve - chart.svg', 'Skerry sleeve - chart 2.svg']);
  });

  it('begin otherwise for each piece and size, though their names differ in what file names cannot tell', () => {
    const names = ['front/left', 'front:left', 'Front left', '編'.repeat(30), `${'編'.repeat(30)}?`];
    const sizes = ['S/M', 'S:M', 's m', '編'.repeat(24)].map((name, at) => ({ id: `s${at}`, name }));
    const sample = sampleProject();
    const pieces = names.map((name, at) => {
      const [piece] = sample.pieces as [PieceInSizes];
      const [numbers] = piece.perSize as [PieceInSizes['perSize'][number]];
      return { ...piece, id: `p${at}`, name, perSize: sizes.map(({ id }) => ({ ...numbers, size: id })) };
    });
    const project = { ...sample, name: '編'.repeat(120), sizes, pieces };
    const places = pieces.flatMap((piece) => sizes.map((size) => ({ piece: piece.id, size: size.id })));
    const all = places.map((place) => exportFileNames(projectAt(project, place), KINDS));
    // Windows and macOS take large and small letters for the same.
    expect(new Set(all.flat().map((name) => name.toLowerCase())).size).toBe(places.length * KINDS.length);
    for (const name of all.flat()) {
      // ext4, APFS and NTFS hold names of 255 bytes or letters; " (99)" may come where one is there.
      expect(Buffer.byteLength(name)).toBeLessThanOrEqual(250);
      expect(name).not.toMatch(/[<>:"/\\|?*]/);
    }
    const [, second] = places;
    const ofTwo = { ...sample, sizes: sizes.slice(0, 2), pieces: pieces.slice(0, 2) };
    expect(exportFileNames(projectAt(ofTwo, second), ['chart-png', 'rows-csv'])).toEqual([
      'Skerry sleeve, front left, size S M (2) - chart.png',
      'Skerry sleeve, front left, size S M (2) - rows.csv',
    ]);
  });

  it('of all pieces have a name of their own, whatever a piece is called', () => {
    const { pieces, ...others } = garment();
    const named = pieces.map((piece, at) => ({ ...piece, name: at === 0 ? 'all pieces' : 'All  pieces' }));
    const project = { ...others, pieces: named };
    const ofEach = { pieces: 'this', sizes: 'all' } as const;
    const all = exportFileNames(projectAt(project), ['sheet-pdf'], { pieces: 'all', sizes: 'all' });
    const ofPieces = named.flatMap(({ id }) =>
      exportFileNames(projectAt(project, { piece: id }), ['sheet-pdf'], ofEach),
    );
    const names = [...all, ...ofPieces].map((name) => name.toLowerCase());
    expect(names).toHaveLength(6);
    expect(new Set(names).size).toBe(6);
    expect(all).toEqual([
      'Skerry, all pieces, size S (3) - placement.pdf',
      'Skerry, all pieces, size M (3) - placement.pdf',
    ]);
  });

  it('are not made at all if one of them cannot be', async () => {
    const project = { ...projectAt(sampleProject()), patterns: [{ ...startBand('lighthouse', [9, 9]) }] };
    await expect(makeExports({ project, kinds: KINDS, paper: 'a4', date: TEST_DAY })).rejects.toThrow(ProblemError);
  });
});
