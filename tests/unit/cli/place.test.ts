import { afterAll, describe, expect, it } from 'vitest';
import { projectAt, sampleProject } from '@shared/project/index.ts';
import type { PlacementJson } from '../../../src-main/cli/json/placement.ts';
import { blankColumnMotif, call, callJson, Folder } from './calls.ts';
import { fileTextOf } from '../../written-projects.ts';

const folder = new Folder();
afterAll(() => folder.remove());

const motif = folder.motif('motif.pbm', blankColumnMotif(31));
const square = folder.motif('square.pbm', ['XX', 'XX', 'X.']);
const place = (...typed: string[]): Promise<PlacementJson> => callJson<PlacementJson>('place', ...typed);
const firsts = ({ choices }: PlacementJson): string[][] =>
  choices.map(({ groups }) => groups.map(({ first }) => first));

describe('place', () => {
  // Common practice, no source: piece of 120, two groups of three 12-stitch
  // copies whose first column on the needles is blank.
  it('evens out the figure: 13, 24, 13 to the eye where the blocks leave 12, 23, 13', async () => {
    const { choices } = await place(motif, '--stitches', '120', '--copies', '3,3');
    expect(choices[0]).toMatchObject({
      groups: [
        { first: 'L48', last: 'L13', figureFirst: 'L47', figureLast: 'L13' },
        { first: 'R12', last: 'R47', figureFirst: 'R13', figureLast: 'R47' },
      ],
      blocks: { margins: [12, 13], gaps: [23] },
      figure: { margins: [13, 13], gaps: [24] },
      acrossSeam: 26,
      imbalance: 0,
      fromRule: 2,
    });
    expect(choices.length).toBeLessThanOrEqual(8);
  });

  // Common practice, no source: the same by the pattern blocks.
  it('evens out the blocks: 12, 24, 12', async () => {
    const { choices } = await place(motif, '--stitches', '120', '--copies', '3,3', '--even-out', 'blocks');
    expect(choices[0]).toMatchObject({ blocks: { margins: [12, 12], gaps: [24] }, acrossSeam: 24, fromRule: 0 });
  });

  // Common practice, no source.
  it('starts one group of 36 centred by blocks at L18', async () => {
    const placed = await place(motif, '--stitches', '120', '--copies', '3', '--even-out', 'blocks');
    expect(firsts(placed)[0]).toEqual(['L18']);
  });

  it('lets the seam take its allowance of each margin', async () => {
    const { choices } = await place(motif, '--stitches', '122', '--copies', '3,3', '--seam-allowance', '1');
    expect(choices[0]).toMatchObject({ figure: { margins: [14, 14], gaps: [24] }, acrossSeam: 26 });
  });

  it.each([
    ['--rule', 'margins:10', { margins: [10, 10], gaps: [30] }],
    ['--rule', 'gaps:20', { margins: [15, 15], gaps: [20] }],
    ['--rule', 'by-hand:L50,R10', { margins: [11, 15], gaps: [24] }],
  ])('follows %s %s', async (option, rule, figure) => {
    const { choices } = await place(motif, '--stitches', '120', '--copies', '3,3', option, rule);
    expect(choices[0]).toMatchObject({ figure });
  });

  it('says where the piece leaves the bed, and places as if it did not', async () => {
    const wide = [motif, '--stitches', '120', '--copies', '3,3', '--bed', '100'];
    const placed = await place(...wide);
    expect(firsts(placed)[0]).toEqual(['L48', 'R12']);
    // 61 and 61 of 120 and two seam stitches, parted in the gap between the groups.
    expect(placed.findings).toMatchObject([{ code: 'wider-than-bed', rows: [1, 31] }]);
    expect(placed.findings[0]?.text).toContain(
      '2 parts of 61 stitches each, parted after needle L1, where no copy is cut',
    );
    const { status, out } = await call('place', ...wide);
    expect([status, out.includes('L60–R60, and there are 100 needles, L50–R50')]).toEqual([0, true]);
    expect((await place(motif, '--stitches', '120', '--copies', '3,3', '--bed', '120')).findings).toEqual([]);
  });

  it('makes all spaces alike by the rule "even"', async () => {
    const { choices } = await place(square, '--stitches', '13', '--copies', '2,1', '--rule', 'even', '--whole');
    expect(choices[0]?.figure).toEqual({ margins: [2, 2], gaps: [3] });
  });

  it('puts the blank column where the face and the drawing have it', async () => {
    const figureOf = async (...typed: string[]) =>
      (await place(motif, '--stitches', '20', '--copies', '1', '--even-out', 'blocks', ...typed)).choices[0]?.groups[0];
    const blankLeft = { first: 'L6', last: 'R6', figureFirst: 'L5', figureLast: 'R6' };
    const blankRight = { first: 'L6', last: 'R6', figureFirst: 'L6', figureLast: 'R5' };
    expect(await figureOf()).toEqual(blankLeft);
    expect(await figureOf('--shows', 'needles')).toEqual(blankRight);
    expect(await figureOf('--finished-face', 'purl')).toEqual(blankRight);
    expect(await figureOf('--finished-face', 'purl', '--shows', 'needles')).toEqual(blankRight);
  });

  it('takes the true repeat for a copy, or all drawn columns with --whole', async () => {
    const tiled = folder.motif('tiled.pbm', ['.X.X.X', '.X.X.X']);
    const width = async (...typed: string[]) => {
      const [choice] = (await place(tiled, '--stitches', '30', '--copies', '1', ...typed)).choices;
      const { margins } = choice?.blocks ?? { margins: [0, 0] };
      return 30 - margins[0] - margins[1];
    };
    expect([await width(), await width('--whole')]).toEqual([2, 6]);
  });

  it('stands one stitch more of an odd piece on the right', async () => {
    const { choices } = await place(square, '--stitches', '5', '--copies', '1', '--rule', 'by-hand:L2', '--whole');
    expect(choices[0]?.blocks).toEqual({ margins: [0, 3], gaps: [] });
  });

  it('takes the face and the chart of a project unless told otherwise', async () => {
    const project = projectAt(sampleProject());
    const turned = { ...project, piece: { ...project.piece, finishedFace: 'purl' as const } };
    const file = folder.file('purl.walewright', fileTextOf(turned));
    const group = async (...typed: string[]) =>
      (await place(file, '--stitches', '20', '--copies', '1', '--even-out', 'blocks', ...typed)).choices[0]?.groups[0];
    expect(await group()).toMatchObject({ first: 'L7', figureFirst: 'L7' });
    expect(await group('--finished-face', 'knit')).toMatchObject({ first: 'L7', figureFirst: 'L6' });
  });

  it('shows people a table and why', async () => {
    const { status, out } = await call('place', motif, '--stitches', '120', '--copies', '3,3');
    expect(status).toBe(0);
    expect(out).toContain('L48–L13  R12–R47');
    expect(out).toContain('13 / 24 / 13');
    expect(out).not.toMatch(/[{}]/);
    const { choices } = await place(motif, '--stitches', '120', '--copies', '3,3');
    for (const { why } of choices) expect(out).toContain(why);
  });
});
