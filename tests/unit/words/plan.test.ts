import { describe, expect, it } from 'vitest';
import type { Slot } from '@shared/bed/index.ts';
import { gatherFindings, type Finding } from '@shared/check/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { pieceIn, sampleProject, startBand, projectAt } from '@shared/project/index.ts';
import { actNames } from '@shared/output/index.ts';
import { words } from '@shared/words/index.ts';
import { runningOrderWords } from '@shared/words/running-order.ts';
import { findingWords } from '@shared/words/findings.ts';
import { checkedPlan } from '../check/found.ts';
import { BLANK_FIRST_12_BY_31, projectWith } from '../fabric/pieces.ts';

const yarns = [
  { name: 'slate', colour: '#5d7591', count: { system: 'tex' as const, value: 278, plies: 1 }, onHand: null },
  { name: 'chalk', colour: '#fbf7ea', count: { system: 'tex' as const, value: 278, plies: 1 }, onHand: null },
];
const run = (first: number, last: number) => ({ first: first as Slot, last: last as Slot });
const needles = run(-12, 10);
/** A piece with two groups beside each other. */
const project = { yarns, patterns: [startBand('gull', [1, 1])] };
const say = (finding: Finding): string => findingWords.text(finding, project);

describe('a finding in words', () => {
  it.each<[Finding, string]>([
    [
      {
        code: 'long-floats',
        rows: [61, 91],
        role: 'contrast',
        yarn: 1,
        needles,
        longest: 23,
        longestMm: 82.14,
        count: 31,
        isBetweenGroups: true,
      },
      'The contrast chalk floats over up to 23 stitches (82 mm) on rows 61–91, needles L12–R11: too long to leave loose. Use a ball for each group, break it with anchor stitches, latch it up or catch it down, or line the piece.',
    ],
    [
      { code: 'lined-floats', rows: [61, 61], role: 'main', yarn: 0, needles, longest: 6, longestMm: 21.4, count: 1 },
      'The main yarn slate floats over 6 stitches (21 mm) on row 61, needles L12–R11; the hem or lining covers it. Keep it slack.',
    ],
    [
      { code: 'long-carry', rows: [3, 5], role: 'contrast', yarn: 1, needles, longest: 9, count: 1 },
      'The contrast chalk is carried 9 stitches sideways on rows 3–5, needles L12–R11. Cut and rejoin it there, or use a second strand.',
    ],
    [
      { code: 'lined-carry', rows: [3, 5], role: 'contrast', yarn: 1, needles, longest: 9, count: 2 },
      'The contrast chalk is carried up to 9 stitches sideways on rows 3–5, needles L12–R11; the hem or lining covers it. Keep it slack.',
    ],
    [
      { code: 'long-way-up', rows: [31, 58], role: 'contrast', yarn: 1, up: 27, upMm: 67.5, count: 1 },
      'The contrast chalk is next used 27 rows (68 mm) up, too far to be carried: cut it after row 31 and join it again on row 58.',
    ],
    [
      { code: 'long-way-up', rows: [31, 58], role: 'contrast', yarn: 1, up: 27, upMm: 67.5, count: 3 },
      'The contrast chalk is next used 27 rows (68 mm) up, too far to be carried: cut it after row 31 and join it again on row 58, all 3 strands of it.',
    ],
    [
      {
        code: 'many-yarns',
        rows: [8, 8],
        yarns: 3,
        count: 1,
        laid: 14,
        change: { stitches: 3, row: 8, yarn: 1, needles: [run(-4, -2)] },
      },
      'Row 8 knits 3 yarns, and one pass of the carriage feeds two. Lay its 14 contrast stitches by hand in one pass, or change 3 stitches to another yarn of the row: chalk at L4–L2.',
    ],
    [
      {
        code: 'many-yarns',
        rows: [8, 12],
        yarns: 4,
        count: 3,
        laid: null,
        change: { stitches: 9, row: 8, yarn: 1, needles: [run(-4, -4), run(0, 0), run(4, 4), run(8, 8)] },
      },
      '3 rows between 8 and 12 knit up to 4 yarns, and one pass of the carriage feeds two. Change 9 stitches; begin on row 8 with chalk at L4, R1, R5 and on.',
    ],
    [
      { code: 'contrast-to-edges', rows: [5, 9], canBeOff: true },
      'End-needle selection is on, so the contrast floats to both edges on rows 5–9. For motifs that stand alone, switch it off.',
    ],
    [
      { code: 'contrast-to-edges', rows: [5, 9], canBeOff: false },
      'This machine always selects the end needles, so the contrast floats to both edges on rows 5–9. Latch it up or catch it down, or let the pattern reach nearer to the edges.',
    ],
    [
      { code: 'contrast-loose-across', rows: [7, 7], count: 1, at: [7] },
      'The pattern is blank on row 7, and with end-needle selection on the contrast knits the edge needles there and lies loose from edge to edge. Latch it up or catch it down, or draw figure on it.',
    ],
    [
      { code: 'contrast-loose-across', rows: [7, 11], count: 2, at: [7, 11] },
      'The pattern is blank on rows 7 and 11, and with end-needle selection on the contrast knits the edge needles there and lies loose from edge to edge. Latch it up or catch it down, or draw figure on them.',
    ],
    [
      { code: 'contrast-not-bound-in', rows: [2, 90] },
      'End-needle selection is off on rows 2–90, so the contrast of the all-over pattern is not bound in where it turns short of an edge, and all-over patterns are not wrapped. Switch it on.',
    ],
    [
      { code: 'end-needles-seen', rows: [2, 90], edge: 'both', count: 80, seam: { left: 1, right: 1 } },
      'End-needle selection knits contrast at both edges on 80 rows from 2 to 90, and no stitch goes into a seam there, so it shows as a line along the edge. Set a seam allowance of 1 stitch at each edge, or cover the edge with a band.',
    ],
    [
      { code: 'end-needles-seen', rows: [2, 2], edge: 'left', count: 1, seam: { left: 1, right: 1 } },
      'End-needle selection knits contrast at the left edge on row 2, and no stitch goes into a seam there, so it shows as a line along the edge. Set a seam allowance of 1 stitch at each edge, or cover the edge with a band.',
    ],
    [
      { code: 'end-needles-always', rows: [5, 9], isAllOver: false },
      'This machine always selects the end needles: on rows 5–9 the edge needles knit contrast, which floats from the groups to both edges, though the pattern asks for end-needle selection off.',
    ],
    [
      { code: 'end-needles-none', rows: [5, 9], isAllOver: true },
      'This machine does not select the end needles, and the pattern on rows 5–9 asks for it: the contrast turns at the edge of the figure and is not bound in there. Let each row have figure near both edges.',
    ],
    [
      { code: 'end-needles-none', rows: [5, 9], isAllOver: false },
      'This machine does not select the end needles, and the pattern on rows 5–9 asks for it: the contrast turns at the edge of the figure, and the needle beside it is wrapped on each row.',
    ],
    [
      { code: 'cut-copies', rows: [20, 22], copies: 2, group: 0 },
      'Shaping cuts 2 copies of group 1 on rows 20–22. Leave out a copy, or move the group inwards.',
    ],
    [
      { code: 'copies-left-out', rows: [20, 22], copies: 1, group: 0 },
      '1 copy of group 1 is left out on rows 20–22, where shaping would cut it.',
    ],
    [
      { code: 'fill-cut', rows: [20, 90], copies: 12, whole: 48, allOver: 0 },
      'The edges cut 12 copies of all-over 1 on rows 20–90; 48 are whole. To knit whole ones only, leave cut copies out.',
    ],
    [
      { code: 'fill-left-out', rows: [20, 90], copies: 1, whole: 1, allOver: 1 },
      '1 copy of all-over 2 is left out on rows 20–90, where the edges would cut it; 1 is whole.',
    ],
    [
      { code: 'mirrored-lettering-in-fill', rows: [2, 90], allOver: 0, motif: 'initials', isMirrored: true },
      'initials in all-over 1 would be seen mirrored when worn, and it has lettering. Do not mirror the all-over.',
    ],
    [
      { code: 'hem-loops', rows: [20, 20], loops: 62, hungOn: 70 },
      'The hem begins with 62 loops, and after row 20 they are to be hung on 70 needles. Shape above the hem, so that each needle takes one loop.',
    ],
    [
      { code: 'odd-shaping', rows: [122, 122], at: 'top', edge: 'right', even: [124, 126] },
      'One stitch is shaped at the right edge alone, on row 122: the stitches at the top differ by an odd number from those below. With 124 or 126 there both edges are shaped alike.',
    ],
    [
      { code: 'figure-in-seam', rows: [2, 3], side: 'left', stitches: 1 },
      'On rows 2–3 the pattern reaches 1 stitch into the left seam, where it will not be seen.',
    ],
    [
      { code: 'faint-contrast', rows: [2, 3], yarn: 1, ratio: 1.234 },
      'The contrast chalk is nearly as light as the main yarn (contrast 1.23 to 1), so the motif will hardly show. Choose a lighter or darker one.',
    ],
  ])('%j', (finding, sentence) => {
    expect(say(finding)).toBe(sentence);
  });

  it('advises no ball for each group where it floats inside one', () => {
    const finding = { code: 'long-floats', role: 'contrast', yarn: 1, needles, longest: 9, longestMm: 32 } as const;
    expect(say({ ...finding, rows: [2, 2], count: 1, isBetweenGroups: false })).toMatch(
      /: too long to leave loose\. Break it with anchor stitches, latch it up or catch it down, or line the piece\.$/,
    );
  });

  it('says once what every copy brings again', () => {
    const finding = {
      code: 'long-carry',
      rows: [3, 4],
      role: 'contrast',
      yarn: 1,
      needles,
      longest: 9,
      count: 1,
    } as const;
    expect(findingWords.gathered({ finding, all: [finding], more: 2, rows: [3, 40] }, project)).toMatch(
      / The same comes in 2 more places, rows 3–40\.$/,
    );
    expect(findingWords.gathered({ finding, all: [finding], more: 0, rows: [3, 4] }, project)).toBe(say(finding));
  });

  it('cautions where fingers and toes can catch', () => {
    const text = say({ code: 'infant-floats', rows: [1, 4], count: 2 });
    expect(text).toContain(findingWords.caution.infant);
    expect(text).toMatch(/fingers and toes/);
  });

  it('cautions at the machine', () => {
    expect(findingWords.caution.machine).toMatch(
      /sleeves.*hooks and latches.*tension mast.*weights.*push a wrapped needle back/is,
    );
  });
});

describe('the plan in words', () => {
  it('is what is planned: piece, sections, groups and their first needles', () => {
    // common practice, no source: 120 stitches, hem of 100, two groups of three copies of 12
    const project = projectWith({
      motif: BLANK_FIRST_12_BY_31,
      copies: [3, 3],
      stitches: 120,
      rows: 100,
      piece: { hemRows: 100, name: 'jacket' },
    });
    const summary = words.knitting.summary(makePlan(pieceIn(project)), project);
    expect(summary).toEqual([
      'jacket: 120 stitches, 100 rows (hem facing rows 1–50, hem outside rows 51–100). Carriage at the right before row 1.',
      'Group 1: needles L48–L13, visible L47–L13, rows 61–91.',
      'Group 2: needles R12–R47, visible R13–R47, rows 61–91.',
    ]);
  });

  it('adds the weight of a yarn that has a count', () => {
    // The worked amount computed twice: 156.3 m at 278 tex (50 g in 180 m) are 43.45 g.
    const use = { code: 'yarn', yarn: 0, role: 'main', mm: 156_300, grams: 43.45 } as const;
    const names = actNames(pieceIn(projectAt(sampleProject())));
    expect(runningOrderWords.atHand(use, names)).toBe('Main yarn slate: 156.3 m, 43 g.');
    expect(runningOrderWords.atHand({ ...use, grams: null }, names)).toBe('Main yarn slate: 156.3 m.');
  });

  it('leaves no hole in the sentences of the sample', () => {
    const project = projectAt(sampleProject());
    const plan = checkedPlan(project);
    const all = [
      ...words.knitting.summary(plan, project),
      ...gatherFindings(plan.findings).map((gathered) => findingWords.gathered(gathered, project)),
    ];
    expect(all.join('\n')).not.toMatch(/undefined|NaN|\[object|  /);
  });
});
