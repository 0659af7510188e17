/** The bed at a stop, needle by needle. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { bedAt, bedOf, type KnittingOrder } from '@shared/knitting/index.ts';
import type { ProjectAt } from '@shared/project/index.ts';
import { knittingOf, sample, trial } from './knitting.ts';

/** `w` working, `F` forward, `.` out of work, a wrapped one with its loop. */
function drawn(knitting: KnittingOrder, reading: number): string {
  return bedAt(knitting, reading)
    .needles.map(
      ({ state, isWrapped }) => `${{ forward: 'F', working: 'w', 'out-of-work': '.' }[state]}${isWrapped ? 'o' : ''}`,
    )
    .join('');
}

const yarnsAt = (knitting: KnittingOrder, reading: number): string =>
  bedAt(knitting, reading)
    .needles.map(({ yarn }) => yarn ?? '.')
    .join('');

const on = (project: ProjectAt, machine: Partial<ProjectAt['machine']>): ProjectAt => ({
  ...project,
  machine: { ...project.machine, ...machine },
});

describe('the bed', () => {
  const knitting = knittingOf(trial());

  it.each([
    [0, 'wwwwwwwwwww'],
    // The pass of row 4 chooses the needles of row 5.
    [3, 'wwwwwwwwwww'],
    [4, 'wwwwFFFwowww'],
    [5, 'wwwwwoFwwwww'],
    [6, 'wwwwwwwwwww'],
    [12, 'wwwwwwwwwww'],
  ])('before the row at %i stands %s', (reading, wanted) => {
    expect(drawn(knitting, reading)).toBe(wanted);
  });

  it('says in which yarn each needle knits', () => {
    expect(yarnsAt(knitting, 4)).toBe('00001110000');
    expect(yarnsAt(knitting, 6)).toBe('00000000000');
    expect(yarnsAt(knitting, 12)).toBe('...........');
  });

  it('has the needles out of work that a wider row takes', () => {
    const tapered = knittingOf(sample());
    expect(drawn(tapered, 0)).toBe(`${'.'.repeat(14)}${'w'.repeat(96)}${'.'.repeat(14)}`);
    expect(drawn(tapered, 140)).toBe('w'.repeat(124));
  });

  it('shows none forward where the machine hides what it chooses', () => {
    const unseen = knittingOf(on(trial(), { chooses: 'ahead-unseen' }));
    expect(bedAt(unseen, 4).showsForward).toBe(false);
    expect(drawn(unseen, 4)).toBe('wwwwwwwwowww');
    expect(yarnsAt(unseen, 4)).toBe('00001110000');
  });

  it('brackets the groups on their rows alone', () => {
    expect([3, 4, 5, 6].map((reading) => bedAt(knitting, reading).groups.length)).toEqual([0, 1, 1, 0]);
  });

  it.each([-1, 13, 0.5, NaN])('is none at %s', (reading) => {
    expect(() => bedAt(knitting, reading)).toThrow(RangeError);
  });
});

it('is empty once the piece is off the needles, and not before', () => {
  const knitting = knittingOf(trial());
  const inWork = (phase: 'knitting' | 'finished'): number =>
    bedOf(knitting, { phase, reading: 12, ticks: [] }).needles.filter(({ state }) => state !== 'out-of-work').length;
  expect(inWork('knitting')).toBe(11);
  expect(inWork('finished')).toBe(0);
});
