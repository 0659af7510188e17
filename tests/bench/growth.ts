/**
 * How work grows with what there is of it: time as a power of the amount, fitted
 * over amounts a factor of 36 or more apart. Twice as much takes twice as long
 * where the exponent is 1.
 */
import { findingsOf } from '@shared/check/index.ts';
import { remediesFor } from '@shared/check/remedies/index.ts';
import { localDay } from '@shared/day/index.ts';
import type { Grid } from '@shared/grid/index.ts';
import { measure } from '@shared/motif/repeat/index.ts';
import { placementSheet, sheetFacts } from '@shared/output/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { runningOrderOf } from '@shared/plan/running-order/index.ts';
import { pieceIn, projectFromText, projectToText, type ProjectAt } from '@shared/project/index.ts';
import { longBody } from '../long-body.ts';
import { settled } from '../written-projects.ts';
import type { Bar } from './bar.ts';
import { processorTime } from './best.ts';
import { isSlowed, spin } from './slowed.ts';
import { gridOf, numbers } from './timing.ts';

/** Of a power of the amount: a little more than straight. */
const MOST_EXPONENT = 1.1;
/** The best of each counts, which a busy machine has held up least. */
const ROUNDS = 7;
/** What is shorter is done again and again, since the clock ticks in steps. */
const LEAST_MS = 20;

interface Growth {
  /** What is done, over what. */
  readonly name: string;
  readonly amounts: readonly number[];
  /** Makes ready what is timed for an amount. */
  readonly work: (amount: number) => () => number;
}

/** Of the line through the logarithms of amounts and times, by least squares. */
export function exponentOf(amounts: readonly number[], times: readonly number[]): number {
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  const [x, y] = [amounts.map(Math.log), times.map(Math.log)];
  const [meanX, meanY] = [mean(x), mean(y)];
  const above = x.reduce((sum, value, at) => sum + (value - meanX) * ((y[at] as number) - meanY), 0);
  const below = x.reduce((sum, value) => sum + (value - meanX) ** 2, 0);
  return above / below;
}

/** Held up by `heldUpMs` each time, when the bench itself is tested. */
function bestTime(work: () => number, heldUpMs: number): number {
  const timed = (times: number): number => {
    const start = processorTime();
    for (let time = 0; time < times; time++) {
      if (Number.isNaN(work())) throw new Error('Nothing was made');
      if (heldUpMs > 0) spin(heldUpMs);
    }
    return (processorTime() - start) / times;
  };
  const times = Math.max(1, Math.ceil(LEAST_MS / Math.max(0.01, timed(1))));
  return Math.min(...Array.from({ length: ROUNDS }, () => timed(times)));
}

function growthBar({ name, amounts, work }: Growth): Bar {
  const works = amounts.map(work);
  // The compiler learns of all sizes before any is timed.
  for (const one of works) one();
  // As if the work were done once for each amount, for each amount.
  const [least] = amounts;
  const firstMs = isSlowed() ? Math.max(1, bestTime(works[0] as () => number, 0)) : 0;
  const times = works.map((one, at) => bestTime(one, firstMs * ((amounts[at] as number) / (least as number)) ** 1.5));
  const first = times[0] as number;
  const last = times.at(-1) as number;
  return {
    name: `exponent of ${name}, ${amounts.join(', ')}`,
    kind: 'at most',
    limit: MOST_EXPONENT,
    ratio: exponentOf(amounts, times),
    ours: last,
    against: first,
  };
}

const BANDS = [1, 3, 9, 18, 36];
const DATE = localDay(new Date(2026, 0, 2));

function drawing(width: number, height: number): Grid {
  const random = numbers();
  return gridOf(width, height, () => (random() < 0.4 ? 1 : 0));
}

/** A project with so many motifs besides the one that its bands have. */
function withMotifs(motifs: number): ProjectAt {
  const project = longBody(1);
  const [first] = project.motifs;
  if (!first) throw new Error('The body has a motif');
  const others = Array.from({ length: motifs - 1 }, (_, at) => ({ ...first, id: `other-${at}`, name: `other ${at}` }));
  return settled(project, { motifs: [first, ...others] });
}

export function growthBars(): Bar[] {
  // The piece grows with its bands.
  const plannedBands = (bands: number) => {
    const piece = pieceIn(longBody(bands));
    return { piece, plan: makePlan(piece) };
  };
  const growths: readonly Growth[] = [
    {
      name: 'planning over bands',
      amounts: BANDS,
      work: (bands) => {
        const project = longBody(bands);
        // Each time another project: a plan is kept for one that it was made of.
        return () => makePlan({ ...pieceIn(project) }).rows.length;
      },
    },
    {
      name: 'finding what to watch over bands',
      amounts: BANDS,
      work: (bands) => {
        const { piece, plan } = plannedBands(bands);
        return () => findingsOf({ ...piece }, { ...plan }).length;
      },
    },
    {
      name: 'working out what would help over bands',
      amounts: BANDS,
      work: (bands) => {
        const { piece, plan } = plannedBands(bands);
        const findings = findingsOf(piece, plan);
        return () => remediesFor({ ...piece }, { ...plan }, findings).length;
      },
    },
    {
      name: 'the running order over bands',
      amounts: BANDS,
      work: (bands) => {
        const { piece, plan } = plannedBands(bands);
        return () => (runningOrderOf({ ...piece }, { ...plan }).isKnittable ? 1 : 0);
      },
    },
    {
      name: 'laying out the sheet over bands',
      amounts: BANDS,
      work: (bands) => {
        const project = longBody(bands);
        const plan = makePlan(pieceIn(project));
        return () => placementSheet(sheetFacts(project), plan, { paper: 'a4', date: DATE }).pages.length;
      },
    },
    {
      name: 'measuring a drawing 1,000 rows high over its stitches',
      amounts: [5, 25, 50, 100, 200],
      work: (width) => {
        const grid = drawing(width, 1000);
        return () => measure({ ...grid }, 0).repeat.width;
      },
    },
    {
      name: 'measuring a drawing 200 stitches wide over its rows',
      amounts: [25, 100, 250, 500, 1000],
      work: (height) => {
        const grid = drawing(200, height);
        return () => measure({ ...grid }, 0).repeat.height;
      },
    },
    {
      name: 'reading and writing a file over its motifs',
      amounts: [1, 10, 50, 100, 200],
      work: (motifs) => {
        const text = projectToText(withMotifs(motifs).whole);
        return () => projectToText(projectFromText(text)).length;
      },
    },
  ];
  return growths.map(growthBar);
}
