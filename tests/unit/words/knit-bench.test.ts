/** What is said aloud beside the machine. */
import { expect, it } from 'vitest';
import { lastReading, stopsOf, weightsDue } from '@shared/knitting/index.ts';
import { knitBenchWords } from '@shared/words/knit-bench.ts';
import { namesIn } from '../../../src-renderer/knit/names.ts';
import { knittingOf, sample, trial } from '../knitting/knitting.ts';

it('says no dash, which a voice passes over, in short and in full', () => {
  const knitting = knittingOf(sample());
  const names = namesIn(knitting, 'cm');
  const said = stopsOf(knitting).flatMap((stop) =>
    [knitBenchWords.said, knitBenchWords.saidShort].map((say) => say.call(knitBenchWords, stop, knitting, names)),
  );
  expect(said.length).toBe(2 * (lastReading(knitting) + 1));
  expect(said.filter((text) => text.includes('–'))).toEqual([]);
  expect(said[0]).toContain('L48 to R48');
});

it('says that the weights are to be moved where it is time to, and nowhere else', () => {
  const knitting = knittingOf(sample());
  const names = namesIn(knitting, 'cm');
  const due = stopsOf(knitting).filter(({ counter }) => weightsDue(knitting, counter) !== null);
  expect(due.length).toBeGreaterThan(0);
  for (const say of [knitBenchWords.said, knitBenchWords.saidShort]) {
    const saying = stopsOf(knitting).filter((stop) => /weights were hung/.test(say(stop, knitting, names)));
    expect(saying).toEqual(due);
  }
});

it('names the yarn that is laid by hand beside what is fed, once for all of its balls', () => {
  const knitting = knittingOf(trial({ copies: [1, 1], stitches: 21, group: { hasOwnBall: true } }));
  const said = stopsOf(knitting).map((stop) => knitBenchWords.feeders(stop, knitting));
  expect(said[4]).toBe('**slate** in the first feeder, the second empty; **chalk** laid by hand');
  expect(said[0]).toBe('**slate** in the first feeder, the second empty');
});
