/** A project written to a file comes back as it was, from the files of every version. */
import { describe, expect, it } from 'vitest';
import type { Slot } from '@shared/bed/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { CELL_LETTERS } from '@shared/grid/index.ts';
import { bandsOf, type AllOverInSizes, type Band } from '@shared/pattern/index.ts';
import {
  carryingOutKept,
  projectAround,
  projectFromText,
  projectToText,
  sampleProject,
  startAllOver,
  type Project,
  projectAt,
  type PieceInSizes,
} from '@shared/project/index.ts';
import { fixtureText } from '../../digests/fixtures.ts';
import { onRows, settled, fileTextOf } from '../../written-projects.ts';
import {
  small,
  SMALL_TEXT,
  TEXT_OF_VERSION_1,
  TEXT_OF_VERSION_2,
  TEXT_OF_VERSION_3,
  TEXT_OF_VERSION_4,
  TEXT_OF_VERSION_5,
  TEXT_OF_VERSION_6,
  TEXT_OF_VERSION_7,
  UNDERLAY,
} from './small-project.ts';

function byHand(first: number[]): Band['rule'] {
  return { kind: 'by-hand', first: first as Slot[] };
}

describe('a project file', () => {
  it('is written as files out there are', () => {
    expect(projectToText(small)).toBe(SMALL_TEXT);
    expect(projectFromText(SMALL_TEXT)).toEqual(small);
  });

  it.each([
    [1, TEXT_OF_VERSION_1],
    [2, TEXT_OF_VERSION_2],
    [3, TEXT_OF_VERSION_3],
    [4, TEXT_OF_VERSION_4],
    [5, TEXT_OF_VERSION_5],
    [6, TEXT_OF_VERSION_6],
    [7, TEXT_OF_VERSION_7],
  ])('of version %i opens, and is written as version 8', (_, text) => {
    expect(projectFromText(text)).toEqual(small);
    expect(projectToText(projectFromText(text))).toBe(SMALL_TEXT);
  });

  it('of version 3 with end-needle selection on has it on for each of its patterns, and a turning row stays looser', () => {
    const text = TEXT_OF_VERSION_3.replace('"endNeedleSelection": false', '"endNeedleSelection": true').replace(
      '"hasTurningRow": false',
      '"hasTurningRow": true',
    );
    const { patterns, piece } = projectAt(projectFromText(text));
    expect(patterns.map(({ endNeedles }) => endNeedles)).toEqual(patterns.map(() => true));
    expect(patterns).not.toEqual([]);
    expect(piece.hem.turning).toBe('loose');
  });

  it('of version 2 loses the yarn count that the program made up, and keeps one that a person wrote', () => {
    const [written, madeUp] = projectFromText(TEXT_OF_VERSION_2.replace('"tex": 278', '"tex": 250')).yarns;
    // 250 tex are 200 m in 50 g, as the form of that version asked.
    expect([written?.count, madeUp?.count]).toEqual([{ system: 'ball', metres: 200, grams: 50 }, null]);
    const later = projectFromText(TEXT_OF_VERSION_7.replace('"tex": null', '"tex": 278'));
    expect(later.yarns.map(({ count }) => count)).toEqual([{ system: 'tex', value: 278, plies: 1 }, null]);
  });

  it.each([180, 175, 42.5, 0.5, 20_000])('of version 7 with a ball of 50 g of %d m says that again', (metres) => {
    const text = TEXT_OF_VERSION_7.replace('"tex": null', `"tex": ${(50 * 1000) / metres}`);
    expect(projectFromText(text).yarns[0]?.count).toEqual({ system: 'ball', metres, grams: 50 });
  });

  it('of version 7 has its stitches from the gauge, a tenth for a margin, and nothing on hand', () => {
    const { yarnMargin, yarns, pieces } = projectFromText(TEXT_OF_VERSION_7);
    expect(yarnMargin).toBe(10);
    expect(yarns.map(({ onHand }) => onHand)).toEqual([null, null]);
    expect(pieces.map(({ loop }) => loop)).toEqual([{ from: 'gauge', state: 'dry-relaxed' }]);
  });

  it('of version 7 has edits kept behind it that set yarns and add pieces, in the words of that version', () => {
    const [first] = (JSON.parse(TEXT_OF_VERSION_7) as { pieces: readonly object[] }).pieces;
    const yarns = [
      { name: 'slate', colour: '#5d7591', tex: 278 },
      { name: 'chalk', colour: '#fbf7ea', tex: null },
    ];
    const after = carryingOutKept(TEXT_OF_VERSION_7)(
      JSON.stringify([
        { kind: 'set', of: 'project', to: { yarns } },
        { kind: 'insert', list: 'pieces', at: 1, item: { ...first, id: 'piece-2', name: 'back', patterns: [] } },
      ]),
    )();
    expect(after.yarns.map(({ count }) => count)).toEqual([{ system: 'tex', value: 278, plies: 1 }, null]);
    expect(after.pieces.map(({ name, loop }) => [name, loop.from])).toEqual([
      [small.pieces[0]?.name, 'gauge'],
      ['back', 'gauge'],
    ]);
  });

  it('of version 1 with a wrong field is refused as one of today is', () => {
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
    const fill = { ...startAllOver('motif-1', 4), position: onRows(4, 30), border: { left: 2, right: 0 }, step: -3 };
    const at = projectAt(small);
    const project = settled(at, { patterns: [...at.patterns, fill] }).whole;
    expect(projectFromText(projectToText(project))).toEqual(project);
    const [piece] = project.pieces as [PieceInSizes];
    const turned = piece.patterns.map(
      (one) => Object.fromEntries(Object.entries(one).reverse()) as unknown as AllOverInSizes,
    );
    expect(projectToText({ ...project, pieces: [{ ...piece, patterns: turned }] })).toBe(projectToText(project));
  });

  it('has the same text whatever order its fields were made in', () => {
    const turned = (value: unknown): unknown =>
      value instanceof Uint8Array || Array.isArray(value) || typeof value !== 'object' || value === null
        ? value
        : Object.fromEntries(Object.entries(value).reverse());
    const [own] = small.pieces as [PieceInSizes];
    const piece = turned({
      ...own,
      gauge: turned(own.gauge),
      perSize: own.perSize.map(turned),
      patterns: own.patterns.map(turned),
    });
    const project = turned({ ...small, pieces: [piece] }) as Project;
    expect(projectToText(project)).toBe(SMALL_TEXT);
  });

  it('says first needles by their labels', () => {
    const at = projectAt(small);
    const project = { ...at, patterns: bandsOf(at).map((band) => ({ ...band, rule: byHand([-48, 11]) })) };
    const text = fileTextOf(project);
    const placed = { all: { by: 'hand', first: ['L48', 'R12'], before: null }, but: [] };
    expect(JSON.parse(text)).toMatchObject({ pieces: [{ patterns: [{ placed }] }] });
    expect(projectAt(projectFromText(text)).patterns).toEqual(project.patterns);
  });

  it('keeps with first needles the rule that found them', () => {
    const before = { rule: { kind: 'gaps', stitches: 24 }, choice: 3 } as const;
    const rule = { kind: 'by-hand', first: [-48 as Slot, 11 as Slot], before } as const;
    const at = projectAt(small);
    const project = { ...at, patterns: bandsOf(at).map((band) => ({ ...band, rule })) };
    expect(projectAt(projectFromText(fileTextOf(project))).patterns).toEqual(project.patterns);
  });

  it('of version 4 in several sizes opens with each as it was: numbers, copies, placings', () => {
    const project = projectFromText(fixtureText('graded-sleeve-4.walewright'));
    const inSizes = project.sizes.map(({ id }) => projectAt(project, { size: id }));
    expect(project.sizes).toEqual(['S', 'M', 'L'].map((name, at) => ({ id: `size-${at + 1}`, name })));
    expect(inSizes.map(({ piece }) => piece.shape.stitches)).toEqual([96, 96, 104]);
    expect(inSizes.map((at) => bandsOf(at)[0]?.groups.map(({ across }) => across))).toEqual([
      [2, 2],
      [2, 2],
      [2, 3],
    ]);
    const before = { rule: { kind: 'even' }, choice: 2 };
    // By hand in the smallest, the best of the rule in the middle one, the second in the largest.
    expect(inSizes.map((at) => [bandsOf(at)[0]?.rule, bandsOf(at)[0]?.choice])).toEqual([
      [{ kind: 'by-hand', first: [-40, 4], before }, 0],
      [{ kind: 'even' }, 0],
      [{ kind: 'even' }, 1],
    ]);
    expect(inSizes.map(({ piece }) => piece.sections.map(({ rows, lengthMm }) => [rows, lengthMm]))).toEqual(
      inSizes.map(() => [[24, 60]]),
    );
  });

  it('of version 6 opens with its all-overs on their rows, its sections by their trade name, and one bed that holds all', () => {
    const project = projectFromText(fixtureText('beds-and-rows-6.walewright'));
    const [front, sleeve] = project.pieces as [PieceInSizes, PieceInSizes];
    // On 200 needles and on 110, further apart.
    expect(project.machine.bed).toEqual({ needles: 200, pitchMm: 4.5 });
    expect(front.patterns.map(({ position }) => position)).toEqual([
      { kind: 'above-hem', rows: 0 },
      { kind: 'from-edge', edge: 'upper', section: 'body', rows: 6, lengthMm: 15 },
      onRows(62),
      onRows(54, 60),
    ]);
    expect(sleeve.sections).toMatchObject([{ name: 'rib', tension: '7' }]);
    expect(sleeve.patterns[0]?.position).toEqual({ kind: 'centred', section: { named: 'rib' }, oddRow: 'below' });
  });

  it.each([
    ['the largest', [110, 200, 60], 200],
    ['one of which nothing was said, since it holds all', [200, null, 60], null],
    ['theirs where all have it', [150, 150, 150], 150],
  ])('of version 6 has of the beds of its pieces %s', (_, needles, expected) => {
    const file = JSON.parse(TEXT_OF_VERSION_6) as { pieces: { bed: object; patterns: object[] }[] };
    const [piece] = file.pieces as [(typeof file.pieces)[number]];
    file.pieces = needles.map((own, at) => ({
      ...piece,
      id: `p${at}`,
      bed: { needles: own, pitchMm: 4.5 },
      patterns: [],
    }));
    expect(projectFromText(JSON.stringify(file)).machine.bed).toEqual({ needles: expected, pitchMm: 4.5 });
  });

  it('has a letter of its own for each of 64 colours', () => {
    expect(new Set(CELL_LETTERS)).toHaveProperty('size', 64);
    const yarns = Array.from({ length: 64 }, (_, i) => ({
      name: `yarn ${i}`,
      colour: '#102030',
      count: null,
      onHand: null,
    }));
    const grid = { width: 64, height: 1, cells: Uint8Array.from({ length: 64 }, (_, i) => i) };
    const project = projectAround('many', 'many', grid, 0, 'worn', yarns);
    expect(projectFromText(projectToText(project))).toEqual(project);
  });

  it('holds the sample project', () => {
    expect(projectFromText(projectToText(sampleProject()))).toEqual(sampleProject());
  });
});
