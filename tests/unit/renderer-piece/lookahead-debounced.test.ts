/** When running order and findings are worked out: at once, or of a large piece once the hand rests. */
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { pieceIn } from '@shared/project/index.ts';
import { lookaheadDebounced, type Lookahead } from '../../../src-renderer/piece/lookahead-debounced.ts';
import { planOf, twoGroups } from './projects.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

/** Looks ahead for two groups on a piece of so many stitches and rows. */
function ask(stitches: number, rows: number) {
  const project = twoGroups({ piece: { shape: { kind: 'rectangle', stitches, rows } } });
  const plan = planOf(project);
  const found: Lookahead[] = [];
  return { plan, found, giveUp: lookaheadDebounced(pieceIn(project), plan, (ahead) => found.push(ahead)) };
}

it('of a small piece is there at once', () => {
  const { plan, found } = ask(20, 6);
  expect(found.map((ahead) => ahead.plan === plan && ahead.order.length > 0)).toEqual([true]);
});

it('of a large piece comes once for changes that follow each other', () => {
  const first = ask(200, 201);
  vi.advanceTimersByTime(100);
  first.giveUp();
  const second = ask(200, 202);
  vi.advanceTimersByTime(150);
  expect([first.found, second.found]).toEqual([[], []]);
  vi.runAllTimers();
  expect(first.found).toEqual([]);
  expect(second.found.map(({ plan }) => plan === second.plan)).toEqual([true]);
});

it('has findings and no running order where the piece cannot be knitted', () => {
  // 20 stitches are cast on on a bed of 10 needles.
  const project = twoGroups({
    piece: { shape: { kind: 'rectangle', stitches: 20, rows: 6 }, bed: { needles: 10, pitchMm: 4.5 } },
  });
  const found: Lookahead[] = [];
  lookaheadDebounced(pieceIn(project), planOf(project), (ahead) => found.push(ahead));
  expect(found.map(({ order, findings }) => [order, findings[0]?.code])).toEqual([[[], 'wider-than-bed']]);
});
