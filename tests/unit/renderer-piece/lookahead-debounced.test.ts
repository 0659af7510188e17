/** When running order, findings and remedies are worked out: at once, or of a large piece once the hand rests. */
import { expect, it, vi } from 'vitest';
import { findingsOf, remediesFor } from '@shared/check/index.ts';
import { pieceIn } from '@shared/project/index.ts';
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

it('of a small piece is there at once', () => {
  const { piece, plan, found, told } = ask(20, 6);
  void told(1);
  expect(found).toEqual([
    { ...foundAhead(piece, plan), piece, plan, remedies: remediesFor(piece, plan, findingsOf(piece, plan)) },
  ]);
});

it('of a large piece comes once for changes that follow each other, the remedies last', async () => {
  const first = ask(200, 201);
  void first.told(1);
  first.giveUp();
  const second = ask(200, 202);
  const isTold = second.told(2);
  expect(second.found).toEqual([]);
  await isTold;
  expect([first.found, second.failed.mock.calls]).toEqual([[], []]);
  const { piece, plan } = second;
  const ahead = { ...foundAhead(piece, plan), piece, plan };
  const remedies = remediesFor(piece, plan, findingsOf(piece, plan));
  expect(remedies.length).toBeGreaterThan(0);
  expect(second.found).toEqual([
    { ...ahead, remedies: [] },
    { ...ahead, remedies },
  ]);
  // The findings are the same object, so that nothing is shown again.
  expect(second.found[1]?.findings).toBe(second.found[0]?.findings);
});

it('of a piece between them is there at once but for the remedies', async () => {
  const { piece, plan, found, told } = ask(120, 200);
  const isTold = told(2);
  expect(found).toEqual([{ ...foundAhead(piece, plan), piece, plan, remedies: [] }]);
  await isTold;
  expect(found[1]?.remedies).toEqual(remediesFor(piece, plan, findingsOf(piece, plan)));
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
