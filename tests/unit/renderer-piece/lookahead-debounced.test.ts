/** When running order, findings and remedies are worked out: at once, or of a large piece once the hand rests. */
import { expect, it, vi } from 'vitest';
import { findingsOf, gathered, isMendable, Remedies, remediesAt } from '@shared/check/index.ts';
import type { Plan } from '@shared/plan/index.ts';
import { pieceIn, type KnitPiece } from '@shared/project/index.ts';
import { lookaheadDebounced, type Lookahead } from '../../../src-renderer/piece/lookahead-debounced.ts';
import { foundAhead } from '../../../src-renderer/worker/jobs/lookahead.ts';
import { planOf, twoGroups } from './projects.ts';

/** Looks ahead for two groups on a piece of so many stitches and rows; there is no worker here, so the window does all in its turn. */
function look(stitches: number, rows: number) {
  const project = twoGroups({ piece: { shape: { kind: 'rectangle', stitches, rows } } });
  const piece = pieceIn(project);
  const plan = planOf(project);
  const found: Lookahead[] = [];
  const failed = vi.fn();
  const looking = lookaheadDebounced(piece, plan, (ahead) => found.push(ahead), failed);
  return { piece, plan, found, failed, looking };
}

/** What would help with each finding that remedies are for. */
function mendedOf(piece: KnitPiece, plan: Plan): Lookahead['remedies'] {
  const mendable = gathered(findingsOf(piece, plan), plan.patterns).filter(isMendable);
  return new Map(mendable.map((found) => [found.kind, allOf(remediesAt(new Remedies(piece, plan), found))]));
}

function allOf<T>(steps: Generator<unknown, T, void>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

it('of a small piece is there at once but for the remedies, which come when they are asked for', async () => {
  const { piece, plan, found, looking } = look(20, 6);
  const wanted = mendedOf(piece, plan);
  const [kind] = wanted.keys();
  if (kind === undefined) throw new Error('There is nothing to mend');
  expect(found).toEqual([{ ...foundAhead(piece, plan), piece, plan, remedies: new Map() }]);
  looking.mend('of another plan');
  looking.mend(kind);
  await vi.waitFor(() => expect(found.length).toBe(2));
  expect(found[1]?.remedies).toEqual(new Map([[kind, wanted.get(kind)]]));
  // The findings are the same object, so that nothing is shown again.
  expect(found[1]?.findings).toBe(found[0]?.findings);
  // They are known, and not worked out again; what is asked for after them comes.
  looking.mend(kind);
  for (const each of wanted.keys()) looking.mend(each);
  await vi.waitFor(() => expect(found.at(-1)?.remedies).toEqual(wanted));
  expect(found.length).toBe(1 + wanted.size);
});

it('of a large piece comes once for changes that follow each other', async () => {
  const first = look(200, 201);
  first.looking.stop();
  const { piece, plan, found, failed, looking } = look(200, 202);
  expect(found).toEqual([]);
  // Asked for before it is known what is found.
  const wanted = mendedOf(piece, plan);
  for (const kind of wanted.keys()) looking.mend(kind);
  await vi.waitFor(() => expect(found.at(-1)?.remedies).toEqual(wanted), { timeout: 20_000 });
  expect([first.found, first.failed.mock.calls, failed.mock.calls]).toEqual([[], [], []]);
  expect([...wanted.values()].flat().length).toBeGreaterThan(0);
  expect(found[0]).toEqual({ ...foundAhead(piece, plan), piece, plan, remedies: new Map() });
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
