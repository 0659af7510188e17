/** Files that are no project, or one with a field that cannot be right, and what is said of them. */
import { describe, expect, it } from 'vitest';
import { TO_THE_TOP } from '@shared/piece/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { FILE_VERSION, projectFromText, startAllOver } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { fixtureText } from '../../digests/fixtures.ts';
import { SMALL_TEXT, TEXT_OF_VERSION_5, UNDERLAY } from './small-project.ts';
import { onRows } from '../../written-projects.ts';

/** Plain data of a file, to be spoiled. */
// eslint-disable-next-line @typescript-eslint/no-explicit-any -- whatever the file has
type Wrong = any;

const NUMBERS = ['pieces', 0, 'perSize', 0] as const;
const PATTERNS = ['pieces', 0, 'patterns'] as const;
const BAND = [...PATTERNS, 0] as const;
const FILL = { id: 'fill-1', ...startAllOver('motif-1', 9) };
const step = (row: number) => ({ row, left: 1, right: 1 });
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
    const read = outcome(() => projectFromText(fileWith(['version'], 9)));
    expect(read).toMatchObject({ problem: { facts: { version: 9, known: FILE_VERSION } } });
  });
});

describe('a project with a field that cannot be right', () => {
  it.each<[string, readonly (string | number)[], unknown, string]>([
    ['no name', ['name'], undefined, 'name'],
    ['an empty name', ['name'], '', 'name'],
    ['a version that is a word', ['version'], 'one', 'version'],
    ['version 0', ['version'], 0, 'version'],
    ['a field too many', ['colour'], 'red', ''],
    ['no yarns', ['yarns'], [], 'yarns'],
    ['65 yarns', ['yarns'], Array(65).fill({ name: 'a', colour: '#000000', count: null, onHand: null }), 'yarns'],
    ['a colour by name', ['yarns', 1, 'colour'], 'white', 'yarns[2].colour'],
    ['a colour in capitals', ['yarns', 1, 'colour'], '#FBF7EA', 'yarns[2].colour'],
    ['negative tex', ['yarns', 0, 'count'], { system: 'tex', value: -5, plies: 1 }, 'yarns[1].count.value'],
    ['a count of 0', ['yarns', 0, 'count'], { system: 'metric', value: 0, plies: 1 }, 'yarns[1].count.value'],
    ['a count in words', ['yarns', 0, 'count'], { system: 'cotton', value: 'fine', plies: 1 }, 'yarns[1].count.value'],
    [
      'a count in a system of nobody',
      ['yarns', 0, 'count'],
      { system: 'wpi', value: 12, plies: 1 },
      'yarns[1].count.system',
    ],
    ['a yarn of no ply', ['yarns', 0, 'count'], { system: 'worsted', value: 12, plies: 0 }, 'yarns[1].count.plies'],
    ['a ball of 0 g', ['yarns', 1, 'count'], { system: 'ball', metres: 175, grams: 0 }, 'yarns[2].count.grams'],
    ['a ball of 0 m', ['yarns', 1, 'count'], { system: 'ball', metres: 0, grams: 50 }, 'yarns[2].count.metres'],
    ['less than nothing on hand', ['yarns', 1, 'onHand'], { in: 'grams', amount: -1 }, 'yarns[2].onHand.amount'],
    ['a margin of 101 %', ['yarnMargin'], 101, 'yarnMargin'],
    [
      'a swatch of 0 g',
      ['pieces', 0, 'loop'],
      { from: 'weighed', stitches: 40, rows: 40, grams: 0 },
      'pieces[1].loop.grams',
    ],
    [
      'a swatch of half a stitch',
      ['pieces', 0, 'loop'],
      { from: 'unravelled', stitches: 0.5, mm: 6 },
      'pieces[1].loop.stitches',
    ],
    [
      'fabric of no width at rest',
      ['pieces', 0, 'loop'],
      { from: 'machine', width: 0, length: 1 },
      'pieces[1].loop.width',
    ],
    ['no motifs', ['motifs'], [], 'motifs'],
    ['an uneven chart', ['motifs', 0, 'rows', 1], '.X', 'motifs[1].rows[2]'],
    ['a cell of no yarn', ['motifs', 0, 'rows', 0], 'X.2', 'motifs[1].rows[1]'],
    ['a cell of no letter', ['motifs', 0, 'rows', 0], 'X.?', 'motifs[1].rows[1]'],
    ['a chart without rows', ['motifs', 0, 'rows'], [], 'motifs[1].rows'],
    ['a chart of 4001 rows', ['motifs', 0, 'rows'], Array(4001).fill('X'), 'motifs[1].rows'],
    ['a row of 1001 cells', ['motifs', 0, 'rows'], ['.'.repeat(1001)], 'motifs[1].rows[1]'],
    ['a main yarn that is none', ['mainYarn'], 2, 'mainYarn'],
    ['half a main yarn', ['mainYarn'], 0.5, 'mainYarn'],
    ['a ground of a motif', ['motifs', 0, 'ground'], 0, 'motifs[1]'],
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
    ['fractional stitches', [...NUMBERS, 'shape', 'stitches'], 120.5, 'pieces[1].perSize[1].shape.stitches'],
    ['no stitches', [...NUMBERS, 'shape', 'stitches'], 0, 'pieces[1].perSize[1].shape.stitches'],
    ['negative rows', [...NUMBERS, 'shape', 'rows'], -1, 'pieces[1].perSize[1].shape.rows'],
    ['an unknown shape', [...NUMBERS, 'shape', 'kind'], 'round', 'pieces[1].perSize[1].shape.kind'],
    [
      'a row shaped twice',
      [...NUMBERS, 'shape'],
      { kind: 'steps', stitches: 20, rows: 40, steps: [step(12), step(12)] },
      'pieces[1].perSize[1].shape.steps[2].row',
    ],
    [
      'a cast-on that is shaped',
      [...NUMBERS, 'shape'],
      { kind: 'steps', stitches: 20, rows: 40, steps: [step(1)] },
      'pieces[1].perSize[1].shape.steps[1].row',
    ],
    [
      'a body without a waist',
      [...NUMBERS, 'shape'],
      { kind: 'body', stitches: 20, rows: 40 },
      'pieces[1].perSize[1].shape.stitchesAtWaist',
    ],
    ['a gauge of 0', ['pieces', 0, 'gauge', 'rows'], 0, 'pieces[1].gauge.rows'],
    ['a negative hem', [...NUMBERS, 'hemRows'], -2, 'pieces[1].perSize[1].hemRows'],
    ['a side that is none', ['pieces', 0, 'startSide'], 'middle', 'pieces[1].startSide'],
    ['no finished face', ['pieces', 0, 'finishedFace'], undefined, 'pieces[1].finishedFace'],
    ['a negative float limit', ['pieces', 0, 'floatLimit', 'stitches'], -1, 'pieces[1].floatLimit.stitches'],
    ['no sizes', ['sizes'], [], 'sizes'],
    ['a size without a name', ['sizes', 0, 'name'], ' ', 'sizes[1].name'],
    ['two sizes of one name', ['sizes', 1], { id: 'size-2', name: '1' }, 'sizes[2].name'],
    ['two sizes of one id', ['sizes', 1], { id: 'size-1', name: '2' }, 'sizes[2].id'],
    ['21 sizes', ['sizes'], Array.from({ length: 21 }, (_, s) => ({ id: `s${s}`, name: `${s}` })), 'sizes'],
    ['no pieces', ['pieces'], [], 'pieces'],
    ['a piece that is never knitted', ['pieces', 0, 'knit'], 0, 'pieces[1].knit'],
    ['a size without numbers', ['sizes', 1], { id: 'size-2', name: '2' }, 'pieces[1].perSize'],
    ['numbers of no size', [...NUMBERS, 'size'], 'gone', 'pieces[1].perSize'],
    ['rows of no section', [...NUMBERS, 'sectionRows'], [{ rows: 4 }], 'pieces[1].perSize[1].sectionRows'],
    ['a band and a fill of one id', [...PATTERNS, 1], { ...FILL, id: 'band-1' }, 'pieces[1].patterns[2].id'],
    ['a pattern of no kind', [...BAND, 'kind'], 'stripe', 'pieces[1].patterns[1].kind'],
    [
      'copies in a size that is not there',
      [...BAND, 'groups', 0, 'across', 'but'],
      [{ size: 'gone', value: 2 }],
      'pieces[1].patterns[1].groups[1].across.but[1].size',
    ],
    [
      'copies in a size as in all',
      [...BAND, 'groups', 0, 'across', 'but'],
      [{ size: 'size-1', value: 1 }],
      'pieces[1].patterns[1].groups[1].across.but[1].value',
    ],
    [
      'a placing of one size said twice',
      [...BAND, 'placed', 'but'],
      [1, 2].map((choice) => ({ size: 'size-1', value: { by: 'rule', choice } })),
      'pieces[1].patterns[1].placed.but[2].size',
    ],
    [
      'needle 0',
      [...BAND, 'placed', 'all'],
      { by: 'hand', first: ['L0'], before: null },
      'pieces[1].patterns[1].placed.all.first[1]',
    ],
    ['needles by hand as the rule', [...BAND, 'rule'], { kind: 'by-hand' }, 'pieces[1].patterns[1].rule.kind'],
    [
      'a group without copies',
      [...BAND, 'groups', 0, 'across', 'all'],
      0,
      'pieces[1].patterns[1].groups[1].across.all',
    ],
    ['a group of no motif', [...BAND, 'groups', 0, 'motif'], 'gone', 'pieces[1].patterns[1].groups[1].motif'],
    ['a fill of no motif', [...PATTERNS, 1], { ...FILL, motif: 'gone' }, 'pieces[1].patterns[2].motif'],
    [
      'a fill that ends below its first row',
      [...PATTERNS, 1],
      { ...FILL, position: onRows(9, 8) },
      'pieces[1].patterns[2].position.to.row',
    ],
    [
      'a fill with half a stitch kept plain',
      [...PATTERNS, 1],
      { ...FILL, border: { left: 0.5, right: 0 } },
      'pieces[1].patterns[2].border.left',
    ],
    [
      'a fill that starts below an upper edge',
      [...PATTERNS, 1],
      { ...FILL, position: { ...onRows(9), from: { ...TO_THE_TOP } } },
      'pieces[1].patterns[2].position.from.edge',
    ],
    [
      'a fill that ends above a lower edge',
      [...PATTERNS, 1],
      { ...FILL, position: { ...onRows(9), to: { ...TO_THE_TOP, edge: 'lower' } } },
      'pieces[1].patterns[2].position.to.edge',
    ],
    [
      'a centred fill of no rows',
      [...PATTERNS, 1],
      { ...FILL, position: { kind: 'so-high', at: { kind: 'above-hem', rows: 1 } } },
      'pieces[1].patterns[2].position.height',
    ],
    [
      'a fill fewer than no rows above the hem',
      [...PATTERNS, 1],
      { ...FILL, position: { ...onRows(9), from: { kind: 'above-hem', rows: -1 } } },
      'pieces[1].patterns[2].position.from.rows',
    ],
    ['rows of a fill by their numbers', [...PATTERNS, 1], { ...FILL, firstRow: 9 }, 'pieces[1].patterns[2]'],
    ['a machine without a bed', ['machine', 'bed'], undefined, 'machine.bed'],
    ['a bed of half a needle', ['machine', 'bed', 'needles'], 0.5, 'machine.bed.needles'],
    ['a bed of a piece', ['pieces', 0, 'bed'], { needles: 200, pitchMm: 4.5 }, 'pieces[1]'],
    ['row 0', [...BAND, 'position'], { kind: 'from-row', row: 0 }, 'pieces[1].patterns[1].position.row'],
  ])('(%s) is refused and the field named', (_, path, value, named) => {
    const read = outcome(() => projectFromText(fileWith(path, value)));
    expect(read).toMatchObject({ ok: false, problem: { code: 'project-invalid', facts: { path: named } } });
    if (!read.ok) expect(words.problems.say(read.problem).what).toContain(named || 'the whole file');
  });

  it.each<[string, (file: Wrong) => void, string]>([
    ['no sizes', (file) => delete file.sizes, 'sizes'],
    ['sizes that are a word', (file) => (file.sizes = 'M'), 'sizes'],
    ['two sizes of one name', ({ sizes }) => (sizes.larger[0].name = sizes.name), 'sizes[2].name'],
    ['no piece', (file) => (file.piece = null), 'pieces[1]'],
    ['a piece of no stitches', ({ piece }) => (piece.shape.stitches = 0), 'pieces[1].perSize[1].shape.stitches'],
    ['a size of no rows', ({ sizes }) => (sizes.larger[0].shape.rows = 0), 'pieces[1].perSize[2].shape.rows'],
    ['a field of a section that nobody knows', ({ piece }) => (piece.parts[0].colour = 1), 'pieces[1].sections[1]'],
    ['bands that are none', (file) => (file.bands = 'none'), 'pieces[1].patterns'],
    [
      'a group without copies',
      ({ bands }) => (bands[1].groups[0].across = 0),
      'pieces[1].patterns[2].groups[1].across.all',
    ],
    [
      'a choice of no number',
      ({ bands }) => (bands[1].choice = 'x'),
      'pieces[1].patterns[2].placed.but[1].value.choice',
    ],
    [
      'needle 0',
      ({ bands }) => (bands[0].rule = { kind: 'by-hand', first: ['L0'] }),
      'pieces[1].patterns[1].placed.all.first[1]',
    ],
    ['a field too many', (file) => (file.colour = 'red'), ''],
  ])('of version 4 (%s) is refused as one of today is, and the field named where it would stand', (_, spoil, named) => {
    const file = JSON.parse(fixtureText('graded-sleeve-4.walewright')) as Wrong;
    spoil(file);
    const read = outcome(() => projectFromText(JSON.stringify(file)));
    expect(read).toMatchObject({ ok: false, problem: { code: 'project-invalid', facts: { path: named } } });
  });

  it.each<[string, (file: Wrong) => void, string]>([
    ['a ground of no yarn', ({ motifs }) => (motifs[0].ground = 2), 'mainYarn'],
    ['a fractional ground', ({ motifs }) => (motifs[0].ground = 0.5), 'mainYarn'],
    ['no ground', ({ motifs }) => delete motifs[0].ground, 'mainYarn'],
    ['two grounds', ({ motifs }) => motifs.push({ ...motifs[0], id: 'b', ground: 1 }), 'motifs[2]'],
    ['no motifs', (file) => delete file.motifs, 'motifs'],
  ])('of version 5 (%s) is refused, and the field named where it would stand', (_, spoil, named) => {
    const file = JSON.parse(TEXT_OF_VERSION_5) as Wrong;
    spoil(file);
    const read = outcome(() => projectFromText(JSON.stringify(file)));
    expect(read).toMatchObject({ ok: false, problem: { code: 'project-invalid', facts: { path: named } } });
  });

  it.each<[string, (file: Wrong) => void, string]>([
    ['no pieces', (file) => (file.pieces = []), 'pieces'],
    ['pieces that are none', (file) => (file.pieces = 'none'), 'pieces'],
    ['a piece without a bed', ({ pieces }) => pieces.forEach((piece: Wrong) => delete piece.bed), 'machine.bed'],
    ['a bed of half a needle', ({ pieces }) => (pieces[0].bed.needles = 300.5), 'machine.bed.needles'],
    [
      'a fill without a first row',
      ({ pieces }) => delete pieces[0].patterns[2].firstRow,
      'pieces[1].patterns[3].position.from.row',
    ],
    [
      'a fill without a last row',
      ({ pieces }) => delete pieces[0].patterns[2].lastRow,
      'pieces[1].patterns[3].position.to.row',
    ],
    [
      'a fill that ends below its first row',
      ({ pieces }) => (pieces[0].patterns[3].lastRow = 53),
      'pieces[1].patterns[4].position.to.row',
    ],
    [
      'a field of a section that nobody knows',
      ({ pieces }) => (pieces[0].parts[0].colour = 1),
      'pieces[1].sections[1]',
    ],
    [
      'a section of no name where a band stands',
      ({ pieces }) => (pieces[1].patterns[0].position.section = { part: 5 }),
      'pieces[2].patterns[1].position.section',
    ],
    ['a field too many', (file) => (file.colour = 'red'), ''],
  ])('of version 6 (%s) is refused, and the field named where it would stand', (_, spoil, named) => {
    const file = JSON.parse(fixtureText('beds-and-rows-6.walewright')) as Wrong;
    spoil(file);
    const read = outcome(() => projectFromText(JSON.stringify(file)));
    expect(read).toMatchObject({ ok: false, problem: { code: 'project-invalid', facts: { path: named } } });
  });

  it('is refused where two motifs have one id', () => {
    const motif = (JSON.parse(SMALL_TEXT) as { motifs: object[] }).motifs[0];
    const twice = outcome(() => projectFromText(fileWith(['motifs'], [motif, motif])));
    expect(twice).toMatchObject({ problem: { facts: { path: 'motifs[2].id' } } });
  });
});
