/** Which needles a pattern can stand on where a machine chooses every so many needles alike. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { parseNeedle, type Slot } from '@shared/bed/index.ts';
import { allOversOf, bandsOf, type AllOver, type Band } from '@shared/pattern/index.ts';
import { startBand, startAllOver, type ProjectAt } from '@shared/project/index.ts';
import { settled } from '../../written-projects.ts';
import { checkedPlan, onlyFindings } from '../check/found.ts';
import { projectWith } from '../fabric/pieces.ts';

const onPlaces = (project: ProjectAt, repeat: number): ProjectAt => ({
  ...project,
  machine: { ...project.machine, places: { repeat, from: 0 as Slot } },
});

/** Copies of two stitches, of which both knit contrast on the first row, and the left one on the second. */
const groupsAt = (...first: readonly string[]): ProjectAt =>
  projectWith({
    motif: ['X.', 'XX'],
    copies: first.map(() => 1),
    stitches: 40,
    rows: 10,
    band: {
      rule: { kind: 'by-hand', first: first.map(parseNeedle) },
      position: { kind: 'from-row', row: 3 },
    },
  });

const found = (project: ProjectAt) =>
  onlyFindings(checkedPlan(project), 'off-fixed-places').map(({ rows, one, other }) => [
    rows[0],
    ...[one, other].map((at) => (at < 0 ? `L${-at}` : `R${at + 1}`)),
  ]);

describe('groups on a machine that chooses every 6 needles alike', () => {
  it.each([
    { groups: ['L6'], why: 'one alone', clash: [] },
    { groups: ['L6', 'R1'], why: '6 apart', clash: [] },
    { groups: ['L12', 'L6', 'R1'], why: 'each 6 after the one before', clash: [] },
    // R3 would be chosen, and L4 with it, which is plain between the groups.
    { groups: ['L6', 'R2'], why: '7 apart', clash: [[3, 'R3', 'L4']] },
    {
      groups: ['L6', 'R7'],
      why: '12 apart, with plain needles where a group would be between them',
      clash: [[3, 'L6', 'R1']],
    },
    { groups: ['L6', 'L3'], why: '3 apart, in one repeat', clash: [] },
  ])('$why ($groups)', ({ groups, clash }) => {
    expect(found(onPlaces(groupsAt(...groups), 6))).toEqual(clash);
  });

  it('of two bands that share rows are judged together', () => {
    const project = groupsAt('L6');
    const second = (first: string) => ({
      ...startBand('motif', [1]),
      rule: { kind: 'by-hand' as const, first: [parseNeedle(first)] },
      position: { kind: 'from-row' as const, row: 4 },
    });
    const [band] = bandsOf(project) as [Band];
    const both = (first: string): ProjectAt => onPlaces({ ...project, patterns: [band, second(first)] }, 6);
    // Row 3 is the lower band's alone: the upper one's needles stay back there, though they are whole repeats away.
    expect(found(both('R1'))).toEqual([[3, 'L6', 'R1']]);
    expect(found(both('L3'))).toEqual([]);
  });
});

describe('anchors on a machine that chooses every 6 needles alike', () => {
  const wishing = (project: ProjectAt, longest: number, wished: Partial<Band>): ProjectAt => {
    const [band] = bandsOf(project) as [Band];
    const anchors = { longest, isBehindFigure: true, byHand: [] };
    return onPlaces(settled(project, { patterns: [{ ...band, anchors, ...wished }] }), 6);
  };

  it('are chosen beside a group too, where contrast floats to the edge needles', () => {
    // From L20 to L6 it floats behind 13 stitches: with two anchors on a row, others are whole repeats away from them.
    expect(found(wishing(groupsAt('L6'), 5, { endNeedles: true }))).toHaveLength(1);
    expect(found(wishing(groupsAt('L6'), 5, { endNeedles: false }))).toEqual([]);
  });

  it('of main stay back, and so do their like', () => {
    const motif = Array.from({ length: 9 }, () => 'XXXXXXXXXXXXX');
    const wide = projectWith({ motif, copies: [1], stitches: 40, rows: 20 });
    expect(found(wishing(wide, 8, { endNeedles: false, unit: 'whole' }))).toHaveLength(1);
    expect(found(wishing(wide, 20, { endNeedles: false, unit: 'whole' }))).toEqual([]);
  });
});

describe('an all-over on such a machine', () => {
  const filled = (motif: readonly string[]): ProjectAt => ({
    ...projectWith({ motif, copies: [1], stitches: 20, rows: 10 }),
    patterns: [startAllOver('motif', 3)],
  });

  it.each([
    { motif: ['X..'], repeat: 6, fits: true },
    { motif: ['X.....'], repeat: 6, fits: true },
    { motif: ['X...'], repeat: 6, fits: false },
    { motif: ['X...........'], repeat: 6, fits: false },
  ])('of $motif.0 in a repeat of $repeat: $fits', ({ motif, repeat, fits }) => {
    expect(found(onPlaces(filled(motif), repeat)).length === 0).toBe(fits);
  });

  it('whose plain stitches at the edges would be chosen with their like is found', () => {
    const project = filled(['X..']);
    const [fill] = allOversOf(project) as [AllOver];
    const bordered = { ...project, patterns: [{ ...fill, border: { left: 3, right: 0 } }] };
    expect(found(onPlaces(bordered, 6))).toHaveLength(1);
  });
});
