/** When running order, findings and remedies are worked out: at once, or of a large piece once the hand rests. */
import { expect, it, vi } from 'vitest';
import { findingsOf, gathered, isMendable, Remedies, remediesAt } from '@shared/check/index.ts';
import type { Plan } from '@shared/plan/index.ts';
import { pieceIn, type KnitPiece } from '@shared/project/index.ts';
import { lookaheadDebounced, type Lookahead } from '../../../src-renderer/piece/lookahead-debounced.ts';
import { foundAhead } from '../../../src-renderer/worker/jobs/lookahead.ts';
import { planOf, twoGroups } from './projects.ts';

/** Looks ahead for two groups on a piece of so many stitches and rows; there is no worker here, so the window does all in its turn. */
function ask(stitches: number, rows: number) {
  const project = twoGroups({ piece: { shape: { kind: 'rectangle', stitches, rows } } });
  const piece = pieceIn(project);
  const plan = planOf(project);
  const found: Lookahead[] = [];
  const failed = vi.fn();
  let giveUp = (): void => undefined;
  const told = (times: number) =>
    new Promise<void>((resolve) => {
      const done = (ahead: Lookahead): void => void (found.push(ahead) === times && resolve());
      giveUp = lookaheadDebounced(piece, plan, done, failed);
    });
  return { piece, plan, found, failed, told, giveUp: () => giveUp() };
}

/** What would help with each finding that remedies are for. */
function mendedOf(piece: KnitPiece, plan: Plan): Lookahead['remedies'] {
  const remedies = new Remedies(piece, plan);
  const mendable = gathered(findingsOf(piece, plan), plan.patterns).filter(isMendable);
  return new Map(mendable.map((found) => [found.kind, allOf(remediesAt(remedies, found))]));
}

function allOf<T>(steps: Generator<unknown, T, void>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

it('of a small piece is there at once but for the remedies, which come finding by finding', async () => {
  const { piece, plan, found, told } = ask(20, 6);
  const wanted = mendedOf(piece, plan);
  expect(wanted.size).toBeGreaterThan(0);
  const isTold = told(1 + wanted.size);
  expect(found).toEqual([{ ...foundAhead(piece, plan), piece, plan, remedies: new Map() }]);
  await isTold;
  expect(found.at(-1)?.remedies).toEqual(wanted);
});

it('of a large piece comes once for changes that follow each other, the remedies last', async () => {
  const first = ask(200, 201);
  void first.told(1);
  first.giveUp();
  const second = ask(200, 202);
  const { piece, plan } = second;
  const wanted = mendedOf(piece, plan);
  const isTold = second.told(1 + wanted.size);
  expect(second.found).toEqual([]);
  await isTold;
  expect([first.found, second.failed.mock.calls]).toEqual([[], []]);
  const ahead = { ...foundAhead(piece, plan), piece, plan };
  expect([...wanted.values()].flat().length).toBeGreaterThan(0);
  expect(second.found[0]).toEqual({ ...ahead, remedies: new Map() });
  expect(second.found.at(-1)).toEqual({ ...ahead, remedies: wanted });
  // The findings are the same object, so that nothing is shown again.
  expect(second.found[1]?.findings).toBe(second.found[0]?.findings);
});

it('has findings and no running order where the piece cannot be knitted', () => {
  // 20 stitches are cast on on a bed of 10 needles.
  const project = twoGroups({
    bed: { needles: 10, pitchMm: 4.5 },
    piece: { shape: { kind: 'rectangle', stitches: 20, rows: 6 } },
  });
  const found: Lookahead[] = [];
  lookaheadDebounced(pieceIn(project), planOf(project), (ahead) => found.push(ahead), vi.fn());
  expect(found.map(({ order, findings }) => [order, findings[0]?.finding.code])).toEqual([[[], 'wider-than-bed']]);
});
