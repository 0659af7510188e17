import { describe, expect, it } from 'vitest';
import { parseNeedle } from '@shared/bed/index.ts';
import { stitchAt } from '@shared/plan/index.ts';
import { pieceDrawingWords } from '@shared/words/piece-drawing.ts';
import { pieceIn } from '@shared/project/index.ts';
import { lookaheadDebounced, type Lookahead } from '../../../src-renderer/piece/lookahead-debounced.ts';
import { sayStitch } from '../../../src-renderer/piece/say-stitch.ts';
import { planOf, twoGroups } from './projects.ts';

const project = twoGroups();
const plan = planOf(project);
const orders: Lookahead[] = [];
lookaheadDebounced(
  pieceIn(project),
  plan,
  (ahead) => orders.push(ahead),
  () => undefined,
);
const [ahead = null] = orders;
const said = (row: number, needle: string, of = ahead): string | null =>
  sayStitch(project, plan, of, row, parseNeedle(needle));
const at = (row: number, needle: string) => stitchAt(plan, row, parseNeedle(needle));

describe('what is known of one stitch', () => {
  // Row 3 knits # . # on L8–L6 and R4–R6: L8, L6, R4 and R6 in contrast.
  it.each([
    { needle: 'L8', role: 'contrast', place: 'first' },
    { needle: 'L6', role: 'contrast', place: 'last-before-gap' },
    { needle: 'R4', role: 'contrast', place: 'first-after-gap' },
    { needle: 'R6', role: 'contrast', place: 'last' },
    { needle: 'L7', role: 'main', place: null },
    { needle: 'L1', role: 'main', place: null },
    { needle: 'L10', role: 'main', place: 'edge' },
    { needle: 'R10', role: 'main', place: 'edge' },
  ])('tells that $needle of row 3 knits $role, $place', ({ needle, role, place }) => {
    expect(at(3, needle)).toMatchObject({ row: 3, role, place });
  });

  it('finds the float of the contrast between the groups from both its ends and across it', () => {
    // From L5 to R3 there are eight needles.
    const float = { role: 'contrast', stitches: 8, isOver: true, loose: null };
    expect(at(3, 'L6')?.floats[0]).toEqual({ ...float, where: 'right' });
    expect(at(3, 'R4')?.floats[0]).toEqual({ ...float, where: 'left' });
    expect(at(3, 'L1')?.floats).toEqual([{ ...float, where: 'across' }]);
  });

  it('counts the float of main behind a contrast stitch as lying across it', () => {
    expect(at(3, 'L8')?.floats).toContainEqual({
      where: 'across',
      role: 'main',
      stitches: 1,
      isOver: false,
      loose: null,
    });
  });

  it('alternates the side the carriage comes from, the start side first', () => {
    expect([1, 2, 3, 4].map((row) => at(row, 'R1')?.from)).toEqual(['right', 'left', 'right', 'left']);
  });

  it('knows the needle that is wrapped before the row, on the carriage side alone', () => {
    // Row 3 is knitted from the right; the needle outward of R6 is R7.
    expect(said(3, 'R7')).toMatch(/ · wrapped before the row$/);
    expect(said(3, 'L9')).not.toContain('wrapped');
  });

  it.each([
    { row: 0, needle: 'L1' },
    { row: 7, needle: 'L1' },
    { row: 3, needle: 'L11' },
    { row: 3, needle: 'R11' },
  ])('has nothing at row $row, needle $needle beside the piece', ({ row, needle }) => {
    expect(at(row, needle)).toBeNull();
  });
});

describe('saying what is under the pointer', () => {
  it.each([
    {
      row: 3,
      needle: 'L6',
      sentence:
        'Row 3 · needle L6 · contrast, last before the gap · carriage at the right · float of 8, too long, to the right',
    },
    { row: 1, needle: 'R10', sentence: 'Row 1 · needle R10 · main, edge stitch · carriage at the right' },
    {
      row: 3,
      needle: 'R7',
      sentence: 'Row 3 · needle R7 · main · carriage at the right · float of 1 to the left · wrapped before the row',
    },
    {
      row: 3,
      needle: 'R1',
      sentence: 'Row 3 · needle R1 · main · carriage at the right · contrast float of 8, too long, across it',
    },
  ])('says row $row, needle $needle', ({ row, needle, sentence }) => {
    expect(said(row, needle)).toBe(sentence);
  });

  it('says nothing of acts before the running order of this plan is there', () => {
    const sentence = 'Row 3 · needle R7 · main · carriage at the right · float of 1 to the left';
    expect(said(3, 'R7', null)).toBe(sentence);
    expect(said(3, 'R7', ahead && { ...ahead, plan: { ...plan } })).toBe(sentence);
  });

  it('says of a float that is hooked up how much of it lies loose', () => {
    const hooked = planOf(twoGroups({ band: { longFloats: 'hooked-up' } }));
    const facts = stitchAt(hooked, 3, parseNeedle('R1'));
    // Eight needles, held at one: at most five may lie loose.
    expect(facts && pieceDrawingWords.stitch(facts, [], 'chalk', 2)).toMatch(
      /contrast float of 8 across it \(held: [45] lie loose\)/,
    );
  });

  it('names the contrast yarn where there is more than one', () => {
    const facts = at(3, 'R6');
    expect(facts && pieceDrawingWords.stitch(facts, [], 'rust', 3)).toContain('contrast rust, last of the pattern');
  });
});
