/** Names of any kind through the command line: every output shows them sensibly, and none is harmed by them. */
import { readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { PNG } from 'pngjs';
import { afterAll, describe, expect, it } from 'vitest';
import { sampleProject, type ProjectAt, projectAt } from '@shared/project/index.ts';
import { readPdf } from '../../pdf.ts';
import { readCsv } from '../../reference/bed-simulated.ts';
import { call, callJson, Folder } from './calls.ts';
import { fileTextOf } from '../../written-projects.ts';

const folder = new Folder();
afterAll(() => folder.remove());

/** Project, piece, motif, both yarns and a section of this name (yarns and sections are told apart by a number). */
function called(name: string): ProjectAt {
  const sample = projectAt(sampleProject());
  return {
    ...sample,
    name,
    yarns: sample.yarns.map((yarn, index) => ({ ...yarn, name: `${name}${index + 1}` })),
    motifs: sample.motifs.map((motif) => ({ ...motif, name })),
    piece: {
      ...sample.piece,
      name,
      tension: { ...sample.piece.tension, main: name.slice(0, 20) },
      sections: [{ name: `${name}1`, rows: 10, isLined: false, gauge: null, tension: '' }],
    },
  };
}

const NAMES: readonly (readonly [what: string, name: string])[] = [
  ['quotes', 'He said "knit", it’s \'done\' `now`'],
  ['markup', '<b>&amp;</b> **strong** $& %s {0}'],
  ['line breaks', 'one\ntwo\r\nthree\u2028four'],
  ['terminal controls', 'red\u001b[31m\u0007 back\u0008'],
  ['a formula', '=HYPERLINK("http://x")'],
  ['plus', '+1+1'],
  ['minus', '-1+1'],
  ['at', '@SUM(A1)'],
  ['tab', '\t=1'],
  ['a full-width formula', '＝1+1'],
  ['words from right to left', 'שלום סוודר'],
  ['directions turned', 'slate\u202Eetalk\u2066 x'],
  ['emoji', 'yarn 🧶👩🏽‍🌾'],
  ['characters that fonts lack', '毛糸 ᚠᛇᚻ \u{10FFFD}'],
  ['half of a pair', 'half \ud83e'],
  ['path and device', '../../CON.*?'],
  ['the most letters', 'w'.repeat(79)],
];

describe('a project called with', () => {
  it.each(NAMES)('%s', async (what, name) => {
    const file = folder.file(`${NAMES.findIndex(([one]) => one === what)}.walewright`, fileTextOf(called(name)));
    for (const command of ['plan', 'follow', 'sizes', 'measure']) {
      const { status, out, warned } = await call(command, file);
      expect([status, warned]).toEqual([0, '']);
      // No control but line ends, nothing that turns the direction.
      expect(out).not.toMatch(/(?!\n)\p{Cc}|\p{Bidi_Control}/u);
      expect(out).not.toMatch(/undefined|\[object/);
    }
    // Each act is a line, with the whole name in it.
    const followed = (await call('follow', file)).out;
    const plain = (await call('follow', folder.file('plain.walewright', fileTextOf(called('plain'))))).out;
    expect(followed.split('\n')).toHaveLength(plain.split('\n').length);
    expect(await callJson('follow', file)).toHaveProperty('runningOrder');

    const into = join(folder.path, `out-${what}`);
    const { files } = await callJson<{ files: { path: string }[] }>('export', file, '--to', into);
    expect(files).toHaveLength(4);
    for (const { path } of files) {
      expect(basename(path)).not.toMatch(/[\p{Cc}\p{Bidi_Control}<>:"/\\|?*]/u);
      expect(Buffer.byteLength(basename(path))).toBeLessThanOrEqual(255);
      const bytes = readFileSync(path);
      if (path.endsWith('.png')) expect(PNG.sync.read(bytes).width).toBeGreaterThan(0);
      if (path.endsWith('.pdf')) {
        const pages = await readPdf(bytes);
        expect(pages.length).toBeGreaterThan(1);
        const said = pages.map(({ squeezed }) => squeezed).join('');
        const seen = name.replaceAll(/[^ -~]/g, '').replaceAll(/\s/g, '');
        // A long name may fold over lines.
        expect(said).toContain(seen.slice(0, 12));
      }
      if (path.endsWith('.svg')) expect(bytes.toString()).not.toContain('<b>');
      if (path.endsWith('.csv')) {
        const rows = readCsv(bytes.toString());
        expect(new Set(rows.map(({ length }) => length)).size).toBe(1);
        expect(rows).toHaveLength(141);
        for (const cell of rows.flat()) expect(cell).not.toMatch(/^[=+\-@\t\r\n＝＋－＠]/);
      }
    }
  });
});

describe('a name of 200 letters', () => {
  const sample = projectAt(sampleProject());
  const long = 'n'.repeat(200);
  it.each<[string, ProjectAt, string]>([
    ['the project', { ...sample, name: long }, 'name (must have at most 120 characters)'],
    [
      'a motif',
      { ...sample, motifs: sample.motifs.map((motif) => ({ ...motif, name: long })) },
      'motifs[1].name (must have at most 80 characters)',
    ],
    [
      'a yarn',
      { ...sample, yarns: sample.yarns.map((yarn) => ({ ...yarn, name: long })) },
      'yarns[1].name (must have at most 80 characters)',
    ],
    [
      'the piece',
      { ...sample, piece: { ...sample.piece, name: long } },
      'pieces[1].name (must have at most 80 characters)',
    ],
  ])('of %s is refused by every command, with what is allowed', async (_, project, why) => {
    const file = folder.file('long.walewright', fileTextOf(project));
    for (const typed of [
      ['plan', file],
      ['follow', file],
      ['sizes', file],
      ['export', file, '--to', folder.path],
    ]) {
      const { status, out, warned } = await call(...typed);
      expect([status, out]).toEqual([1, '']);
      expect(warned).toContain(`The project has a field that cannot be right: ${why}.`);
    }
  });
});
