/**
 * What a run of the bench came to, as a file: a later run is held against it.
 *
 * Ratios are compared and not times: these are of one machine and one hour.
 */
import { outcome } from '@shared/problem/index.ts';
import { z } from '@shared/schema/index.ts';
import type { Bar } from './bar.ts';

/** What moved by more than this share is told: less is the noise of a machine. */
const MOVED = 0.2;

const figure = z.object({
  name: z.string(),
  ratio: z.number(),
  limit: z.nullable(z.number()),
  ours: z.number(),
  against: z.number(),
});

const resultsSchema = z.object({
  /** Its name and its processors. */
  machine: z.string(),
  node: z.string(),
  /** What was measured; with `changed` behind it where files had been changed since. */
  commit: z.string(),
  /** When it was begun, ISO 8601. */
  at: z.string(),
  /** Of the machine when it was begun, over a minute. */
  load: z.number(),
  bars: z.array(figure),
});

export interface Results extends z.infer<typeof resultsSchema> {}

export function resultsToText(about: Omit<Results, 'bars'>, bars: readonly Bar[]): string {
  const figures = bars.map(({ name, ratio, limit, ours, against }) => ({ name, ratio, limit, ours, against }));
  return `${JSON.stringify({ ...about, bars: figures }, null, 2)}\n`;
}

/** Throws with what to do where the text is no results of a bench. */
export function resultsFromText(text: string): Results {
  const raw = outcome(() => JSON.parse(text) as unknown);
  const read = resultsSchema.safeParse(raw.ok ? raw.value : null);
  if (!read.success) throw new Error('The file to compare with is not one that a run of the bench has written.');
  return read.data;
}

/**
 * What differs from an earlier run: bars whose ratio went up or down by more
 * than a fifth of what it was, the largest change first, and those that only one
 * of both has. Only what was measured now is looked for where `isPart`.
 */
export function movedLines(before: Results, now: readonly Bar[], isPart: boolean): string[] {
  const then = new Map(before.bars.map((bar) => [bar.name, bar]));
  const moved = now.flatMap((bar) => {
    const old = then.get(bar.name);
    if (!old) return [{ by: Infinity, line: `new       ${bar.name}: ${bar.ratio.toFixed(2)} ×` }];
    const by = bar.ratio / old.ratio;
    if (Math.abs(by - 1) <= MOVED) return [];
    const times = `${old.ratio.toFixed(2)} × before, ${bar.ratio.toFixed(2)} × now`;
    return [{ by: Math.abs(Math.log(by)), line: `${by > 1 ? 'slower' : 'faster'}    ${bar.name}: ${times}` }];
  });
  const measured = new Set(now.map(({ name }) => name));
  const gone = isPart ? [] : before.bars.filter(({ name }) => !measured.has(name));
  return [
    ...moved.sort((a, b) => b.by - a.by).map(({ line }) => line),
    ...gone.map(({ name, ratio }) => `gone      ${name}: ${ratio.toFixed(2)} × before`),
  ];
}
