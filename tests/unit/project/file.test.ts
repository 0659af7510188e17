import { describe, expect, it } from 'vitest';
import { gridFromText } from '@shared/grid/index.ts';
import type { Slot } from '@shared/bed/index.ts';
import { outcome } from '@shared/problem/index.ts';
import {
  CELL_LETTERS,
  FILE_VERSION,
  projectAround,
  projectFromText,
  projectToText,
  sampleProject,
  START_YARNS,
  startFill,
  type Fill,
  type Project,
} from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';

const small: Project = {
  ...projectAround('two gulls', 'gull', gridFromText(['X.X', '.X.'], '.X'), 0, 'worn', START_YARNS),
};

/** The text of a small project as version 1 wrote it: files out there hold it, so it never changes. */
const TEXT_OF_VERSION_1 = `{
  "format": "walewright",
  "version": 1,
  "name": "two gulls",
  "yarns": [
    {
      "name": "slate",
      "colour": "#5d7591",
      "tex": 278
    },
    {
      "name": "chalk",
      "colour": "#fbf7ea",
      "tex": 278
    }
  ],
  "motifs": [
    {
      "id": "motif-1",
      "name": "gull",
      "ground": 0,
      "shows": "worn",
      "rows": [
        "X.X",
        ".X."
      ]
    }
  ],
  "piece": {
    "name": "piece",
    "shape": {
      "kind": "rectangle",
      "stitches": 120,
      "rows": 100
    },
    "oddStitch": "right",
    "offset": 0,
    "hemRows": 0,
    "gauge": {
      "stitches": 28,
      "rows": 40
    },
    "bed": {
      "needles": 200,
      "pitchMm": 4.5
    },
    "seamAllowance": {
      "left": 0,
      "right": 0
    },
    "finishedFace": "knit",
    "isInfant": false,
    "isLined": false,
    "startSide": "right",
    "endNeedleSelection": false,
    "floatLimit": {
      "stitches": 5,
      "mm": 25
    }
  },
  "bands": [
    {
      "groups": [
        {
          "motif": "motif-1",
          "across": 1,
          "up": 1
        }
      ],
      "unit": "repeat",
      "rule": {
        "kind": "seam"
      },
      "judge": "figure",
      "choice": 0,
      "position": {
        "kind": "centred",
        "oddRow": "below"
      },
      "ownBalls": false
    }
  ]
}
`;

const SECTIONS_TEXT = `    "hem": {
      "hasTurningRow": false,
      "gauge": null
    },
    "parts": [],
`;

/** The same project as version 2 wrote it. */
const TEXT_OF_VERSION_2 = TEXT_OF_VERSION_1.replace('"version": 1', '"version": 2')
  .replace('      "shows": "worn",\n', '      "shows": "worn",\n      "isLettering": false,\n      "underlay": null,\n')
  .replace('    "hemRows": 0,\n', `    "hemRows": 0,\n${SECTIONS_TEXT}`)
  .replace('        "kind": "centred",\n', '        "kind": "centred",\n        "section": "shown",\n')
  .replace('  "bands"', '  "sizes": {\n    "name": "1",\n    "smaller": [],\n    "larger": []\n  },\n  "bands"')
  .replace('      "ownBalls": false', '      "cutCopies": "kept"')
  .replace(
    '          "up": 1\n',
    '          "up": 1,\n          "isMirrored": false,\n          "rise": 0,\n          "hasOwnBall": false\n',
  )
  .replace(/\]\n}\n$/, '],\n  "fills": []\n}\n');

/** The same project as it is written now. A change here needs a new file version. */
const SMALL_TEXT = TEXT_OF_VERSION_2.replace('"version": 2', '"version": 3').replaceAll('"tex": 278', '"tex": null');

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

describe('a project file', () => {
  it('is written as files out there are', () => {
    expect(projectToText(small)).toBe(SMALL_TEXT);
    expect(projectFromText(SMALL_TEXT)).toEqual(small);
  });

  it.each([
    [1, TEXT_OF_VERSION_1],
    [2, TEXT_OF_VERSION_2],
  ])('of version %i opens, and is written as version 3', (_, text) => {
    expect(projectFromText(text)).toEqual(small);
    expect(projectToText(projectFromText(text))).toBe(SMALL_TEXT);
  });

  it('of version 2 loses the yarn count that the program made up, and keeps one that a person wrote', () => {
    const [written, madeUp] = projectFromText(TEXT_OF_VERSION_2.replace('"tex": 278', '"tex": 250')).yarns;
    expect([written?.tex, madeUp?.tex]).toEqual([250, null]);
    const now = projectFromText(SMALL_TEXT.replace('"tex": null', '"tex": 278'));
    expect(now.yarns.map(({ tex }) => tex)).toEqual([278, null]);
  });

  it('of version 1 with a wrong field is refused as one of version 3 is', () => {
    const text = TEXT_OF_VERSION_1.replace('"shows": "worn"', '"shows": "sideways"');
    expect(outcome(() => projectFromText(text))).toMatchObject({ problem: { facts: { path: 'motifs[1].shows' } } });
    const listless = TEXT_OF_VERSION_1.replace(/"motifs": \[[^]*?\],\n {2}"piece"/, '"motifs": "none",\n  "piece"');
    expect(outcome(() => projectFromText(listless))).toMatchObject({ problem: { facts: { path: 'motifs' } } });
  });

  it('keeps the picture to trace with its motif', () => {
    const motifs = small.motifs.map((motif) => ({ ...motif, underlay: UNDERLAY }));
    const project = { ...small, motifs };
    expect(projectFromText(projectToText(project))).toEqual(project);
  });

  it('keeps its fills, and says them in one order', () => {
    const fill = { ...startFill('motif-1', 4), lastRow: 30, border: { left: 2, right: 0 }, step: -3 };
    const project = { ...small, fills: [fill] };
    expect(projectFromText(projectToText(project))).toEqual(project);
    const turned = Object.fromEntries(Object.entries(fill).reverse()) as unknown as Fill;
    expect(projectToText({ ...small, fills: [turned] })).toBe(projectToText(project));
  });

  it('has the same text whatever order its fields were made in', () => {
    const turned = (value: unknown): unknown =>
      value instanceof Uint8Array || Array.isArray(value) || typeof value !== 'object' || value === null
        ? value
        : Object.fromEntries(Object.entries(value).reverse());
    const piece = turned({ ...small.piece, gauge: turned(small.piece.gauge), shape: turned(small.piece.shape) });
    const project = turned({ ...small, piece, bands: small.bands.map(turned) }) as Project;
    expect(projectToText(project)).toBe(SMALL_TEXT);
  });

  it('says first needles by their labels', () => {
    const project = { ...small, bands: small.bands.map((band) => ({ ...band, rule: byHand([-48, 11]) })) };
    const text = projectToText(project);
    expect(JSON.parse(text)).toMatchObject({ bands: [{ rule: { kind: 'by-hand', first: ['L48', 'R12'] } }] });
    expect(projectFromText(text)).toEqual(project);
  });

  it('keeps with first needles the rule that found them', () => {
    const before = { rule: { kind: 'gaps', stitches: 24 }, choice: 3 } as const;
    const rule = { kind: 'by-hand', first: [-48 as Slot, 11 as Slot], before } as const;
    const project = { ...small, bands: small.bands.map((band) => ({ ...band, rule })) };
    expect(projectFromText(projectToText(project))).toEqual(project);
  });

  it('has a letter of its own for each of 64 colours', () => {
    expect(new Set(CELL_LETTERS)).toHaveProperty('size', 64);
    const yarns = Array.from({ length: 64 }, (_, i) => ({ name: `yarn ${i}`, colour: '#102030', tex: null }));
    const grid = { width: 64, height: 1, cells: Uint8Array.from({ length: 64 }, (_, i) => i) };
    const project = projectAround('many', 'many', grid, 0, 'worn', yarns);
    expect(projectFromText(projectToText(project))).toEqual(project);
  });

  it('holds the sample project', () => {
    expect(projectFromText(projectToText(sampleProject()))).toEqual(sampleProject());
  });
});

function byHand(first: number[]): Project['bands'][number]['rule'] {
  return { kind: 'by-hand', first: first as Slot[] };
}

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
