/** Two balls of one yarn on a row: which of their floats is hooked or latched up. Worked by hand. */
import { describe, expect, it } from 'vitest';
import { each } from './needles.ts';
import { wayOver } from './way.ts';
import { Yarns } from './yarns.ts';

/** One ball knits needles 0 and 10 of row 2, the other 4 and 6 between them. */
function bothLaid(): Yarns {
  const yarns = new Yarns();
  const lay = (ball: string, ends: readonly [number, number]): void => {
    yarns.layFrom(ball, 'kelp', 1);
    yarns.knittedBall(
      ball,
      wayOver(2, each([...ends]), (needle) => ends.includes(needle)),
    );
  };
  lay('outer', [0, 10]);
  lay('inner', [4, 6]);
  return yarns;
}

/** The needles that hold a float of each ball. */
function liftedOn(yarns: Yarns): Record<string, number[]> {
  return Object.fromEntries(
    yarns
      .laid()
      .map(({ ball, way }) => [ball, way.filter(({ does }) => does === 'lifted').map(({ needle }) => needle)]),
  );
}

describe('of two balls of one yarn', () => {
  it('the float is hooked up that goes from the one needle told to the other', () => {
    const yarns = bothLaid();
    yarns.hook('kelp', 2, 5, [5, 5]);
    expect(liftedOn(yarns)).toEqual({ outer: [], inner: [5] });
    yarns.hook('kelp', 2, 5, [1, 9]);
    yarns.hook('kelp', 2, 8, [1, 9]);
    expect(liftedOn(yarns)).toEqual({ outer: [5, 8], inner: [5] });
  });

  it('the float of the ball told is latched up, and both where none is', () => {
    const yarns = bothLaid();
    yarns.lift('kelp', 'inner', 2, 5);
    expect(liftedOn(yarns)).toEqual({ outer: [], inner: [5] });
    const untold = bothLaid();
    untold.lift('kelp', null, 2, 5);
    expect(liftedOn(untold)).toEqual({ outer: [5], inner: [5] });
  });
});
