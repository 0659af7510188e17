/** A window's count while nothing can be written, and while another window counts too. */
import { describe, expect, it } from 'vitest';
import { beginningLine, journalFromText, type Entry, type Journal, type KnittingEvent } from '@shared/journal/index.ts';
import { countedOn, countingFrom, digestOf, orderToText, toldOf, type Counting } from '@shared/knitting/index.ts';
import { knittingOf, trial } from './knitting.ts';

const order = orderToText(knittingOf(trial()));
const named = { id: 'one', name: 'one' };
const begun = {
  of: { project: { name: 'x', path: null }, piece: named, size: named, copy: 1 },
  digest: digestOf(order),
  order,
};
const start = countingFrom(journalFromText(beginningLine(begun).line) as Journal);

const row = (reading: number): KnittingEvent => ({ kind: 'row-done', reading });
const entry = (number: number, id: string, event: KnittingEvent): Entry => ({
  number,
  id,
  at: '2026-01-02T03:04:05.678Z',
  event,
});
const readings = ({ entries, kept, waiting, progress }: Counting) => [
  entries,
  kept.place.reading,
  waiting.length,
  progress.place.reading,
];

describe('a window’s count', () => {
  const two = countedOn(countedOn(start, { id: 'mine-one', event: row(0) }), { id: 'mine-two', event: row(1) });

  it('goes on before anything is written', () => {
    expect(readings(two)).toEqual([0, 0, 2, 2]);
    expect(() => countedOn(two, { id: 'mine-three', event: row(0) })).toThrow('counted-elsewhere');
  });

  it('lets wait no longer what is on the disk', () => {
    const { counting, dropped } = toldOf(two, [entry(1, 'mine-one', row(0))]);
    expect(readings(counting)).toEqual([1, 1, 1, 2]);
    expect(dropped).toEqual([]);
    expect(readings(toldOf(counting, [entry(2, 'mine-two', row(1))]).counting)).toEqual([2, 2, 0, 2]);
  });

  it('takes what another window counted, and lets go what cannot follow it', () => {
    const { counting, dropped } = toldOf(two, [entry(1, 'other-one', row(0))]);
    // Both saw row 1 done; row 2 follows the one that is on the disk.
    expect(readings(counting)).toEqual([1, 1, 1, 2]);
    expect(dropped.map(({ sent, problem }) => [sent.id, problem.code])).toEqual([['mine-one', 'counted-elsewhere']]);
  });
});
