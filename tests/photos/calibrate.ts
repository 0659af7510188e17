/**
 * Measures how sure a reading is: reads photographs whose truth is known, and
 * fits the weights of `src-shared/reading/confidence.ts` to which cells come
 * out wrong (logistic regression, by Newton's method in one weight after the
 * other). Facts only ever speak against a cell, so that no weight but the
 * first is below 0.
 */
import { finish, photoOf, sortCells } from '@shared/reading/index.ts';
import { FACTS, factsOf } from '../../src-shared/reading/confidence.ts';
import type { ToldBy } from '../generate/charts/kinds.ts';
import { photographOf, type Photograph } from '../generate/charts/photographs.ts';
import { answered, cornersOff, isRight } from './tried.ts';

/** The cells of a photograph: their facts one after another, and 1 for each that is wrong. */
export interface Calibration {
  readonly toldBy: ToldBy;
  readonly facts: Float64Array;
  readonly wrong: Uint8Array;
}

/** Of a photograph of which more than this is wrong the grid was missed, or a yarn; its cells say nothing. */
const MOST_WRONG = 0.1;

/** Larger charts take long, and would outweigh all others. */
const MOST_CELLS = 6000;

/** Corners are exact, and off by up to so many pixels, as a hand sets them. */
const CORNERS_OFF = [0, 4] as const;

/** What a weight of 1 costs, in cells, so that a fact that hardly occurs gets none. */
const RIDGE = 0.5;

const SWEEPS = 80;

/** What can be learnt from a photograph; nothing of one that is refused. */
export function calibrationsOf(photograph: Photograph): Calibration[] {
  const photo = photoOf(photograph.picture);
  const { grid, toldBy } = photograph;
  if (grid.cells.length > MOST_CELLS) return [];
  return CORNERS_OFF.flatMap((off) => {
    const corners = cornersOff(photograph, off);
    try {
      const { reading } = answered(
        (levels) => finish(sortCells(photo, corners, grid.width, grid.height, levels)),
        photograph,
      );
      const right = isRight(reading.yarns, grid.cells);
      const wrong = right.map((one) => 1 - one);
      const share = wrong.reduce((sum, one) => sum + one, 0) / wrong.length;
      return share > MOST_WRONG ? [] : [{ toldBy, facts: factsOf(reading), wrong }];
    } catch {
      return [];
    }
  });
}

/** The weights, in the order of `FACTS`. */
export function fittedTo(calibrations: readonly Calibration[]): number[] {
  const size = FACTS.length;
  const cells = calibrations.reduce((sum, { wrong }) => sum + wrong.length, 0);
  const facts = new Float64Array(cells * size);
  const wrong = new Uint8Array(cells);
  let first = 0;
  for (const one of calibrations) {
    facts.set(one.facts, first * size);
    wrong.set(one.wrong, first);
    first += one.wrong.length;
  }
  const weights = [-5, ...Array<number>(size - 1).fill(0)];
  const against = new Float64Array(cells).fill(-5);
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    for (let i = 0; i < size; i++) {
      const weight = weights[i] as number;
      let slope = i === 0 ? 0 : RIDGE * weight;
      let bend = i === 0 ? 1e-9 : RIDGE;
      for (let cell = 0; cell < cells; cell++) {
        const fact = facts[cell * size + i] as number;
        if (fact === 0) continue;
        const chance = 1 / (1 + Math.exp(-(against[cell] as number)));
        slope += fact * (chance - (wrong[cell] as number));
        bend += fact * fact * chance * (1 - chance);
      }
      const step = Math.max(-2, Math.min(2, -slope / bend));
      const next = i === 0 ? weight + step : Math.max(0, weight + step);
      weights[i] = next;
      if (next === weight) continue;
      for (let cell = 0; cell < cells; cell++) {
        against[cell] = (against[cell] as number) + (next - weight) * (facts[cell * size + i] as number);
      }
    }
  }
  return weights;
}

/** Photographs `from` … `from + many - 1`: the weights as they stand in the source. */
export function calibrated(from: number, many: number): string {
  const seeds = Array.from({ length: many }, (_, i) => from + i);
  return weightsText(seeds.flatMap((seed) => calibrationsOf(photographOf(seed))));
}

export function weightsText(calibrations: readonly Calibration[]): string {
  const text = (name: string, those: readonly Calibration[]): string => {
    const cells = those.reduce((sum, { wrong }) => sum + wrong.length, 0);
    const wrong = those.reduce((sum, one) => sum + one.wrong.reduce((part, is) => part + is, 0), 0);
    const weights = fittedTo(those).map((weight) => Number(weight.toFixed(2)));
    return `${name} = [${weights.join(', ')}]: ${wrong} wrong of ${cells} cells`;
  };
  return [
    text(
      'BY_COLOUR',
      calibrations.filter(({ toldBy }) => toldBy !== 'symbols'),
    ),
    text(
      'BY_SIGN',
      calibrations.filter(({ toldBy }) => toldBy === 'symbols'),
    ),
  ].join('\n');
}
