import { describe, expect, it } from 'vitest';
import { EXAMPLES, type Example } from './examples/index.ts';
import { bare } from './examples/told.ts';
import { UNCERTAIN } from './harmless.ts';
import { differences, isSameWork, knit, mutations, type Knitted, type Mutation, type OrderJson } from './index.ts';

interface Tried extends Mutation {
  readonly of: string;
  /** What the knitter stops at, or what comes out otherwise in the fabric or beside it; null where it sees nothing. */
  readonly seen: string | null;
  readonly isFabricAsItWas: boolean;
}

function tried(of: string, { order, machine, patterns }: Example, how: (order: OrderJson) => OrderJson): Tried[] {
  const right = knit(how(order), { machine, patterns }) as Knitted;
  return mutations(order, right).map((mutation) => {
    const done = knit(how(mutation.order), { machine, patterns });
    const isFabricAsItWas = done.ok && differences(done, right).length === 0;
    const seen = !done.ok ? done.why : isSameWork(done, right) ? null : 'comes out otherwise';
    return { ...mutation, of, seen, isFabricAsItWas };
  });
}

function triedIn(how: (order: OrderJson) => OrderJson): Tried[] {
  return Object.entries(EXAMPLES).flatMap(([name, example]) => tried(name, example, how));
}

const say = ({ of, reading, act, mistake, seen, harmless }: Tried): string =>
  `${of}: ${act} at ${reading} ${mistake} (${harmless ?? 'not harmless'}; ${seen ?? 'not seen'})`;

describe.each([
  ['as the program gives it', (order: OrderJson) => order],
  ['as its acts alone tell it', bare],
])('a mistake in an order %s', (_, how) => {
  const all = triedIn(how);

  it('is seen, unless it is harmless', () => {
    expect(all.filter(({ seen, harmless }) => seen === null && harmless === null).map(say)).toEqual([]);
  });

  it('is seen for every act in each way that it can be made, but for those that no hands mind', () => {
    const ways = new Map<string, boolean>();
    for (const { act, mistake, seen, harmless } of all) {
      const way = `${act} ${mistake}`;
      ways.set(way, ways.get(way) || (seen !== null && harmless === null));
    }
    expect([...ways].flatMap(([way, isSeen]) => (isSeen ? [] : [way])).sort()).toEqual([
      'carriage doubled',
      'check a row early',
      'check a row late',
      'check doubled',
      'check dropped',
      'counter doubled',
      'end-needles doubled',
      'first-needles doubled',
      'push-back doubled',
      'push-forward doubled',
      'remove-waste a row late',
      'selecting doubled',
      'tension doubled',
    ]);
    expect(new Set(all.map(({ act }) => act)).size).toBe(26);
  });
});

it('a mistake that is called harmless stops nobody, and the fabric is the same', () => {
  const uncertain: readonly string[] = Object.values(UNCERTAIN);
  const called = triedIn(bare).filter(({ harmless }) => harmless !== null && !uncertain.includes(harmless));
  expect(called.length).toBeGreaterThan(50);
  expect(called.filter(({ isFabricAsItWas }) => !isFabricAsItWas).map(say)).toEqual([]);
});
