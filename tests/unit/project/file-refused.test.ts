/** Files that are no project, or one with a field that cannot be right, and what is said of them. */
import { describe, expect, it } from 'vitest';
import { outcome } from '@shared/problem/index.ts';
import { FILE_VERSION, projectFromText, startFill } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { SMALL_TEXT } from './small-project.ts';

const SIZE = { name: 'S', shape: { kind: 'rectangle', stitches: 96, rows: 90 }, hemRows: 0 };
const step = (row: number) => ({ row, left: 1, right: 1 });
const UNDERLAY = {
  picture: 'data:image/png;base64,iVBORw0KGgo=',
  left: -0.5,
  bottom: 2.25,
  columns: 12,
  rows: 9.5,
  opacity: 0.6,
  isShown: true,
};

/** The small project's file with one field set, or taken away (undefined). */
function fileWith(path: readonly (string | number)[], value: unknown): string {
  const file = JSON.parse(SMALL_TEXT) as Record<string, unknown>;
  let holder = file as Record<string | number, unknown>;
  for (const part of path.slice(0, -1)) holder = holder[part] as Record<string | number, unknown>;
  holder[path.at(-1) as string | number] = value;
  return JSON.stringify(file);
}

describe('a file that is no project', () => {
  it.each([
    ['empty', '', 'project-not-json'],
    ['cut off', SMALL_TEXT.slice(0, 500), 'project-not-json'],
    ['not JSON', '{"format": walewright}', 'project-not-json'],
    ['JSON of something else', '{"name": "shopping", "items": []}', 'project-not-ours'],
    ['a list', '[1, 2]', 'project-not-ours'],
    ['a number', '5', 'project-not-ours'],
    ['nothing', 'null', 'project-not-ours'],
    ['of another program', fileWith(['format'], 'other'), 'project-not-ours'],
    ['of a newer version', fileWith(['version'], FILE_VERSION + 1), 'project-newer'],
  ])('because it is %s is refused', (_, text, code) => {
    expect(outcome(() => projectFromText(text))).toMatchObject({ ok: false, problem: { code } });
  });

  it('of a newer version names both versions', () => {
    const read = outcome(() => projectFromText(fileWith(['version'], 7)));
    expect(read).toMatchObject({ problem: { facts: { version: 7, known: FILE_VERSION } } });
  });
});

describe('a project with a field that cannot be right', () => {
  it.each<[string, (string | number)[], unknown, string]>([
    ['no name', ['name'], undefined, 'name'],
    ['an empty name', ['name'], '', 'name'],
    ['a version that is a word', ['version'], 'one', 'version'],
    ['version 0', ['version'], 0, 'version'],
    ['a field too many', ['colour'], 'red', ''],
    ['no yarns', ['yarns'], [], 'yarns'],
    ['65 yarns', ['yarns'], Array(65).fill({ name: 'a', colour: '#000000', tex: null }), 'yarns'],
    ['a colour by name', ['yarns', 1, 'colour'], 'white', 'yarns[2].colour'],
    ['a colour in capitals', ['yarns', 1, 'colour'], '#FBF7EA', 'yarns[2].colour'],
    ['negative tex', ['yarns', 0, 'tex'], -5, 'yarns[1].tex'],
    ['no motifs', ['motifs'], [], 'motifs'],
    ['an uneven chart', ['motifs', 0, 'rows', 1], '.X', 'motifs[1].rows[2]'],
    ['a cell of no yarn', ['motifs', 0, 'rows', 0], 'X.2', 'motifs[1].rows[1]'],
    ['a cell of no letter', ['motifs', 0, 'rows', 0], 'X.?', 'motifs[1].rows[1]'],
    ['a chart without rows', ['motifs', 0, 'rows'], [], 'motifs[1].rows'],
    ['a chart of 4001 rows', ['motifs', 0, 'rows'], Array(4001).fill('X'), 'motifs[1].rows'],
    ['a row of 1001 cells', ['motifs', 0, 'rows'], ['.'.repeat(1001)], 'motifs[1].rows[1]'],
    ['a ground of no yarn', ['motifs', 0, 'ground'], 2, 'motifs[1].ground'],
    ['a fractional ground', ['motifs', 0, 'ground'], 0.5, 'motifs[1].ground'],
    [
      'a picture by address',
      ['motifs', 0, 'underlay'],
      { ...UNDERLAY, picture: 'https://x.y/z.png' },
      'motifs[1].underlay.picture',
    ],
    [
      'a picture that may act',
      ['motifs', 0, 'underlay'],
      { ...UNDERLAY, picture: 'data:image/svg+xml;base64,AA==' },
      'motifs[1].underlay.picture',
    ],
    [
      'a picture of 4 MB',
      ['motifs', 0, 'underlay'],
      { ...UNDERLAY, picture: `data:image/png;base64,${'A'.repeat(4e6)}` },
      'motifs[1].underlay.picture',
    ],
    ['a picture of no size', ['motifs', 0, 'underlay'], { ...UNDERLAY, rows: 0 }, 'motifs[1].underlay.rows'],
    ['no word on a picture to trace', ['motifs', 0, 'underlay'], undefined, 'motifs[1].underlay'],
    ['fractional stitches', ['piece', 'shape', 'stitches'], 120.5, 'piece.shape.stitches'],
    ['no stitches', ['piece', 'shape', 'stitches'], 0, 'piece.shape.stitches'],
    ['negative rows', ['piece', 'shape', 'rows'], -1, 'piece.shape.rows'],
    ['an unknown shape', ['piece', 'shape', 'kind'], 'round', 'piece.shape.kind'],
    [
      'a row shaped twice',
      ['piece', 'shape'],
      { kind: 'steps', stitches: 20, rows: 40, steps: [step(12), step(12)] },
      'piece.shape.steps[2].row',
    ],
    [
      'a cast-on that is shaped',
      ['piece', 'shape'],
      { kind: 'steps', stitches: 20, rows: 40, steps: [step(1)] },
      'piece.shape.steps[1].row',
    ],
    [
      'a body without a waist',
      ['piece', 'shape'],
      { kind: 'body', stitches: 20, rows: 40 },
      'piece.shape.stitchesAtWaist',
    ],
    ['a gauge of 0', ['piece', 'gauge', 'rows'], 0, 'piece.gauge.rows'],
    ['a negative hem', ['piece', 'hemRows'], -2, 'piece.hemRows'],
    ['a side that is none', ['piece', 'startSide'], 'middle', 'piece.startSide'],
    ['no finished face', ['piece', 'finishedFace'], undefined, 'piece.finishedFace'],
    ['a negative float limit', ['piece', 'floatLimit', 'stitches'], -1, 'piece.floatLimit.stitches'],
    ['no sizes', ['sizes'], undefined, 'sizes'],
    ['a size without a name', ['sizes', 'name'], ' ', 'sizes.name'],
    [
      'a size of no rows',
      ['sizes', 'larger'],
      [{ ...SIZE, shape: { ...SIZE.shape, rows: 0 } }],
      'sizes.larger[1].shape.rows',
    ],
    ['two sizes of one name', ['sizes', 'larger'], [{ ...SIZE, name: '1' }], 'sizes.larger[1].name'],
    [
      '21 sizes',
      ['sizes', 'smaller'],
      Array.from({ length: 20 }, (_, s) => ({ ...SIZE, name: `S${s}` })),
      'sizes.smaller',
    ],
    [
      '21 sizes on both sides',
      ['sizes'],
      {
        name: 'M',
        smaller: [SIZE],
        larger: Array.from({ length: 19 }, (_, s) => ({ ...SIZE, name: `L${s}` })),
      },
      'sizes',
    ],
    [
      'a group without copies in a size',
      ['bands', 0, 'groups', 0, 'acrossInSizes'],
      [{ size: 'L', across: 0 }],
      'bands[1].groups[1].acrossInSizes[1].across',
    ],
    ['needle 0', ['bands', 0, 'rule'], { kind: 'by-hand', first: ['L0'] }, 'bands[1].rule.first[1]'],
    [
      'needles found by hand before they were kept',
      ['bands', 0, 'rule'],
      { kind: 'by-hand', first: ['L1'], before: { rule: { kind: 'by-hand', first: ['L1'] }, choice: 0 } },
      'bands[1].rule.before.rule.kind',
    ],
    ['a group without copies', ['bands', 0, 'groups', 0, 'across'], 0, 'bands[1].groups[1].across'],
    ['a group of no motif', ['bands', 0, 'groups', 0, 'motif'], 'gone', 'bands[1].groups[1].motif'],
    ['a fill of no motif', ['fills'], [{ ...startFill('gone', 1) }], 'fills[1].motif'],
    [
      'a fill that ends below its first row',
      ['fills'],
      [{ ...startFill('motif-1', 9), lastRow: 8 }],
      'fills[1].lastRow',
    ],
    [
      'a fill with half a stitch kept plain',
      ['fills'],
      [{ ...startFill('motif-1', 9), border: { left: 0.5, right: 0 } }],
      'fills[1].border.left',
    ],
    ['row 0', ['bands', 0, 'position'], { kind: 'from-row', row: 0 }, 'bands[1].position.row'],
  ])('(%s) is refused and the field named', (_, path, value, named) => {
    const read = outcome(() => projectFromText(fileWith(path, value)));
    expect(read).toMatchObject({ ok: false, problem: { code: 'project-invalid', facts: { path: named } } });
    if (!read.ok) expect(words.problems.say(read.problem).what).toContain(named || 'the whole file');
  });

  it('is refused where two motifs have one id, or two grounds', () => {
    const motif = (JSON.parse(SMALL_TEXT) as { motifs: object[] }).motifs[0];
    const twice = outcome(() => projectFromText(fileWith(['motifs'], [motif, motif])));
    expect(twice).toMatchObject({ problem: { facts: { path: 'motifs[2].id' } } });
    const grounds = outcome(() => projectFromText(fileWith(['motifs'], [motif, { ...motif, id: 'b', ground: 1 }])));
    expect(grounds).toMatchObject({ problem: { facts: { path: 'motifs[2].ground' } } });
  });
});
