/** What is found on a piece before its bench is gone to is what the bench would find. */
import { beforeEach, expect, it, vi } from 'vitest';
import { pieceIn } from '@shared/project/index.ts';
import { foundAtOnce, prepareFound } from '../../../src-renderer/piece/found-at-once.ts';
import { plannedOf } from '../../../src-renderer/piece/planned.ts';
import * as lookahead from '../../../src-renderer/worker/jobs/lookahead.ts';
import { twoGroups } from './projects.ts';

vi.mock('../../../src-renderer/worker/jobs/lookahead.ts', { spy: true });
beforeEach(() => void vi.clearAllMocks());

/** Two groups on a piece of so many stitches and rows. */
const project = (stitches: number, rows: number) =>
  twoGroups({ piece: { shape: { kind: 'rectangle', stitches, rows } } });

it('is worked out once, a step at a time, and then at hand', () => {
  const prepared = project(20, 6);
  const { plan } = plannedOf(prepared);
  const piece = pieceIn(prepared);
  const steps = [...prepareFound(prepared)];
  expect(steps.length).toBeGreaterThan(1);
  const found = foundAtOnce(piece, plan);
  expect(lookahead.foundAhead).not.toHaveBeenCalled();
  expect(found).toEqual(lookahead.foundAhead(piece, plan));
  expect(foundAtOnce(piece, plan)).toBe(found);
  expect([...prepareFound(prepared)].length).toBe(1);
});

it('is worked out at once where nothing was prepared, and kept', () => {
  const fresh = project(20, 8);
  const { plan } = plannedOf(fresh);
  const found = foundAtOnce(pieceIn(fresh), plan);
  expect(found).toEqual(lookahead.foundAhead(pieceIn(fresh), plan));
  expect(foundAtOnce(pieceIn(fresh), plan)).toBe(found);
});

it('is left to the worker for a large piece, and so is its plan', () => {
  const large = project(200, 300);
  expect([...prepareFound(large)]).toEqual([]);
  expect(foundAtOnce(pieceIn(large), plannedOf(large).plan)).toBe(null);
});
