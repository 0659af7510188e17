import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { projectAt, projectToText, sampleProject, startAllOver } from '@shared/project/index.ts';
import { fileTextOf } from '../../written-projects.ts';
import { pngOf, rawPng } from '../picture/pictures.ts';
import { call, callJson, Folder } from './calls.ts';

const folder = new Folder();
afterAll(() => folder.remove());

const motif = folder.motif('motif.pbm', ['XX.', 'X..']);
const plain = folder.motif('plain.pbm', ['...']);
const text = projectToText(sampleProject());
const sample = folder.file('sample.walewright', text);
mkdirSync(join(folder.path, 'drawer'));
/** The sample covered from its hem of 20 to row 60. */
const SAMPLE = projectAt(sampleProject());
const covered = folder.file(
  'covered.walewright',
  fileTextOf({
    ...SAMPLE,
    piece: { ...SAMPLE.piece, hemRows: 20 },
    patterns: [
      {
        ...startAllOver('lighthouse', 1),
        position: { kind: 'from-to', from: { kind: 'above-hem', rows: 1 }, to: { kind: 'to-row', row: 60 } },
      },
    ],
  }),
);

const place = ['place', motif, '--stitches', '20', '--copies', '2'];
/** `place` with one option more, or another value of one. */
const placeWith = (...more: string[]): string[] => [...place, ...more];

interface Wrong {
  readonly error: { readonly code: string; readonly message: string; readonly where: string | null };
}

describe('a call that cannot be answered', () => {
  it.each<[string, string[], string, string | null]>([
    ['no command but an option', ['--stitches'], 'argument-missing', null],
    ['an unknown command', ['knit', motif], 'command-unknown', null],
    ['an unknown option', placeWith('--colour', 'red'), 'option-unknown', '--colour'],
    ['an unknown short option', placeWith('-q'), 'option-unknown', '-q'],
    ['an option of another command', ['measure', motif, '--stitches', '5'], 'option-unknown', '--stitches'],
    ['no motif', ['place', '--stitches', '20', '--copies', '2'], 'argument-missing', null],
    ['two motifs', placeWith(motif), 'argument-unexpected', null],
    ['no stitches', ['place', motif, '--copies', '2'], 'option-missing', '--stitches'],
    ['no copies', ['place', motif, '--stitches', '20'], 'option-missing', '--copies'],
    ['an option at the end without a value', placeWith('--rule'), 'option-empty', '--rule'],
    ['an option in place of a value', ['place', motif, '--stitches', '--copies', '2'], 'option-empty', '--stitches'],
    ['a value for a switch', placeWith('--whole=yes'), 'switch-value', '--whole'],

    ['negative stitches', placeWith('--stitches', '-5'), 'not-a-whole-number', '--stitches'],
    ['negative stitches, with =', placeWith('--stitches=-5'), 'not-a-whole-number', '--stitches'],
    ['fractional stitches', placeWith('--stitches', '20.5'), 'not-a-whole-number', '--stitches'],
    ['no stitches at all', placeWith('--stitches', '0'), 'not-a-whole-number', '--stitches'],
    ['empty stitches', placeWith('--stitches', ''), 'not-a-whole-number', '--stitches'],
    ['stitches in words', placeWith('--stitches', 'twenty'), 'not-a-whole-number', '--stitches'],
    ['stitches by power', placeWith('--stitches', '1e2'), 'not-a-whole-number', '--stitches'],
    ['stitches in hexadecimal', placeWith('--stitches', '0x14'), 'not-a-whole-number', '--stitches'],
    ['1001 stitches', placeWith('--stitches', '1001'), 'not-a-whole-number', '--stitches'],
    ['a missing number of copies', placeWith('--copies', '3,,3'), 'not-a-whole-number', '--copies'],
    ['a comma at the end', placeWith('--copies', '3,'), 'not-a-whole-number', '--copies'],
    ['a group without copies', placeWith('--copies', '3,0'), 'not-a-whole-number', '--copies'],
    ['101 groups', placeWith('--copies', Array(101).fill('1').join()), 'option-value', '--copies'],
    ['a negative seam allowance', placeWith('--seam-allowance', '-1'), 'not-a-whole-number', '--seam-allowance'],

    ['an unknown rule', placeWith('--rule', 'golden'), 'option-value', '--rule'],
    ['margins without a number', placeWith('--rule', 'margins'), 'option-value', '--rule'],
    ['margins that are no number', placeWith('--rule', 'margins:wide'), 'not-a-whole-number', '--rule'],
    ['a rule with a number too many', placeWith('--rule', 'seam:3'), 'option-value', '--rule'],
    ['needle 0', placeWith('--rule', 'by-hand:L0'), 'needle-unknown', '--rule'],
    ['a needle without a side', placeWith('--rule', 'by-hand:0'), 'needle-unknown', '--rule'],
    ['a needle left out', placeWith('--rule', 'by-hand:'), 'needle-unknown', '--rule'],
    ['a needle beside the piece', placeWith('--rule', 'by-hand:L30'), 'needle-not-on-piece', '--rule'],
    ['too many first needles', placeWith('--rule', 'by-hand:L5,R1'), 'by-hand-count', '--rule'],
    ['overlapping groups', placeWith('--copies', '2,2', '--rule', 'by-hand:L5,L2'), 'groups-overlap', '--rule'],
    ['margins wider than the piece', placeWith('--rule', 'margins:20'), 'rule-cannot-be-met', '--rule'],
    ['gaps wider than the piece', placeWith('--copies', '2,2', '--rule', 'gaps:20'), 'rule-cannot-be-met', '--rule'],
    ['an unknown face', placeWith('--finished-face', 'front'), 'option-value', '--finished-face'],
    ['an unknown chart', placeWith('--shows', 'back'), 'option-value', '--shows'],
    ['an unknown judge', placeWith('--even-out', 'eye'), 'option-value', '--even-out'],
    ['groups wider than the piece', placeWith('--copies', '9'), 'groups-wider-than-piece', '--copies'],
    ['a motif without a figure', ['place', plain, '--stitches', '9', '--copies', '1'], 'no-figure', plain],

    ['gauge of one number', ['plan', ...placeWith('--gauge', '28').slice(1)], 'option-value', '--gauge'],
    ['gauge of 0', ['plan', ...placeWith('--gauge', '0x40').slice(1)], 'option-value', '--gauge'],
    ['negative gauge', ['plan', ...placeWith('--gauge', '28x-40').slice(1)], 'option-value', '--gauge'],
    ['choice 0', ['plan', ...placeWith('--choice', '0').slice(1)], 'not-a-whole-number', '--choice'],
    ['a choice there is not', ['plan', ...placeWith('--choice', '99').slice(1)], 'choice-unknown', '--choice'],
    ['a side there is not', ['plan', ...placeWith('--start-side', 'top').slice(1)], 'option-value', '--start-side'],
    ['end needles half on', ['plan', ...placeWith('--end-needles', 'maybe').slice(1)], 'option-value', '--end-needles'],
    ['row 0', ['plan', ...placeWith('--first-row', '0').slice(1)], 'not-a-whole-number', '--first-row'],
    [
      'a negative float limit',
      ['plan', ...placeWith('--float-limit', '-1').slice(1)],
      'not-a-whole-number',
      '--float-limit',
    ],
    [
      'floats mended as nobody mends them',
      ['plan', ...placeWith('--long-floats', 'cut').slice(1)],
      'option-value',
      '--long-floats',
    ],
    ['carries hooked up', ['plan', sample, '--long-carries', 'hooked-up'], 'option-value', '--long-carries'],
    ['a third yarn left out', ['plan', sample, '--third-yarn', 'none'], 'option-value', '--third-yarn'],
    ['a negative number of anchors', ['plan', sample, '--anchors', '-1'], 'not-a-whole-number', '--anchors'],
    ['anchors in words', ['plan', sample, '--anchors', 'few'], 'not-a-whole-number', '--anchors'],
    ['anchors over 1001 stitches', ['plan', sample, '--anchors', '1001'], 'not-a-whole-number', '--anchors'],
    ['anchors without a number', ['plan', sample, '--anchors', '--anchors-behind'], 'option-empty', '--anchors'],
    ['no anchors behind a figure', ['plan', sample, '--anchors-behind'], 'option-missing', '--anchors-behind'],
    [
      'anchors forgone behind a figure',
      ['plan', sample, '--anchors', '0', '--anchors-behind'],
      'option-missing',
      '--anchors-behind',
    ],
    ['a switch with a value', ['plan', sample, '--anchors-behind=yes'], 'switch-value', '--anchors-behind'],
    ['a hem lower than the motif', ['plan', ...placeWith('--hem', '2').slice(1)], 'motif-taller-than-section', '--hem'],
    [
      'a hem longer than the piece',
      ['plan', ...placeWith('--hem', '9', '--rows', '8').slice(1)],
      'hem-longer-than-piece',
      '--hem',
    ],
    [
      'a motif above the piece',
      ['plan', ...placeWith('--first-row', '9', '--rows', '8').slice(1)],
      'rows-outside-piece',
      '--first-row',
    ],
    ['an all-over that ends below a higher hem', ['plan', covered, '--hem', '60'], 'fill-rows-turned', '--hem'],
    ['an all-over that ends above the piece', ['plan', covered, '--rows', '50'], 'rows-outside-piece', '--rows'],
    ['an all-over above no hem', ['plan', covered, '--hem', '0'], 'section-missing', covered],
    ['a project made too narrow', ['plan', sample, '--stitches', '30'], 'groups-wider-than-piece', '--stitches'],

    ['a ground that is no colour', ['measure', motif, '--ground', 'mauve'], 'colour-unknown', '--ground'],
    ['a ground that is not there', ['measure', sample, '--ground', '#123456'], 'colour-unknown', '--ground'],
    ['nowhere to write', ['export', sample], 'option-missing', '--to'],
    ['an empty name to write to', ['export', sample, '--to', ''], 'option-empty', '--to'],
    ['a paper there is not', ['export', sample, '--to', 'x', '--paper', 'a5'], 'option-value', '--paper'],
    ['a picture to export', ['export', motif, '--to', 'x'], 'project-not-ours', motif],
    ['a file to write into', ['export', sample, '--to', motif], 'folder-not-writable', motif],
  ])('because of %s says so and where', async (_, typed, code, where) => {
    const { error } = await callJson<Wrong>(...typed);
    expect(error).toMatchObject({ code, where });
    const { status, out, warned } = await call(...typed);
    expect([status, out]).toEqual([1, '']);
    expect(warned).toContain(error.message.slice(0, 20));
    // What happened, and then what to do about it.
    expect(error.message).toMatch(/^.+[.:)] \S.+\.$/);
  });
});

describe('a file that cannot be read', () => {
  const picture = pngOf([['#102030', '#405060']]);
  const files: [string, string, string | Uint8Array, string][] = [
    ['that is empty', 'empty.png', '', 'picture-empty'],
    ['that is no picture', 'letter.png', 'Dear knitter', 'picture-unknown-kind'],
    ['that ends too early', 'cut.png', picture.subarray(0, 40), 'picture-truncated'],
    ['that is damaged', 'bad.png', picture.map((byte, at) => (at === 30 ? byte ^ 1 : byte)), 'picture-broken'],
    [
      'of 20,000 × 20,000 pixels',
      'huge.png',
      rawPng({ width: 20000, height: 20000, depth: 1, colourType: 0, rows: [[0]] }),
      'picture-too-large',
    ],
    [
      'of 65 colours',
      'many.png',
      pngOf([Array.from({ length: 65 }, (_, i) => `#0000${(i + 16).toString(16)}`)]),
      'picture-too-many-colours',
    ],
    ['of a newer version', 'new.walewright', text.replace(/"version": \d+/, '"version": 99'), 'project-newer'],
    ['that is invalid JSON', 'torn.walewright', text.slice(0, 300), 'project-not-json'],
    ['with a missing field', 'part.walewright', text.replace('"hemRows": 0,', ''), 'project-invalid'],
    ["that is another program's", 'other.json', '{"rows": []}', 'project-not-ours'],
  ];

  it.each(files)('%s is named with what is wrong', async (_, name, content, code) => {
    const path = folder.file(name, content);
    const { error } = await callJson<Wrong>('measure', path);
    expect(error).toMatchObject({ code, where: path });
    expect((await call('measure', path)).status).toBe(1);
  });

  it('because it is not there, or is a folder, is named', async () => {
    const missing = join(folder.path, 'missing.png');
    expect((await callJson<Wrong>('measure', missing)).error).toMatchObject({ code: 'file-missing', where: missing });
    const drawer = join(folder.path, 'drawer');
    expect((await callJson<Wrong>('measure', drawer)).error).toMatchObject({ code: 'file-is-folder', where: drawer });
  });

  it('with a field that cannot be right names the field', async () => {
    const path = folder.file('field.walewright', text.replace('"gauge": {', '"gauge": {\n"turns": 3,'));
    expect((await callJson<Wrong>('plan', path)).error.message).toContain('pieces[1].gauge');
  });
});

describe('an answer in JSON', () => {
  it.each<[string, string[]]>([
    ['a measure', ['measure', motif]],
    ['a placing', place],
    ['a plan', ['plan', ...place.slice(1)]],
    ['a file that is missing', ['measure', 'missing']],
    ['a command that is none', ['knit']],
    ['no command', []],
  ])('to %s is one document and nothing else', async (_, typed) => {
    const { out } = await call('--json', ...typed);
    expect(out.split('\n')).toHaveLength(1);
    expect(typeof JSON.parse(out)).toBe('object');
    expect((await call(...typed, '--json')).out).toBe(out);
  });
});
