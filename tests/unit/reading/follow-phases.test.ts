/** Phases that are known up to whole cells, followed from window to window. */
import { expect, it } from 'vitest';
import { followed, type Window } from '../../../src-shared/reading/follow-phases.ts';

const BANDS = 9;

/** Windows of nine bands: column by column the phase, and in how many bands it is clear. */
function windowsOf(columns: readonly { readonly phase: number; readonly clear: number }[]): Window[][] {
  return Array.from({ length: BANDS }, (_, band) =>
    columns.map(({ phase, clear }, column) => ({
      along: column / (columns.length - 1),
      beside: band / (BANDS - 1),
      clarity: band < clear ? 1 : 0,
      phase,
    })),
  );
}

/** Phases of each column, the first as 0. */
function phasesOf(windows: readonly (readonly Window[])[]): number[] {
  const [first] = followed(windows);
  if (!first) throw new Error('None is clear');
  const [band = []] = windows;
  return band.map(({ phase }) => Number((phase - (band[0] as Window).phase).toFixed(2)));
}

const column = (phase: number, clear = BANDS) => ({ phase, clear });

it('go on as they began where paper rolls up, though a step of more than half a cell looks like one back', () => {
  const places = [0, 0.05, 0.15, 0.35, 0.7, 1.25];
  const seen = places.map((place) => place - Math.round(place));
  expect(phasesOf(windowsOf(seen.map((phase) => column(phase))))).toEqual(places);
});

it('stay where few bands are clear: what those few say is as likely chance', () => {
  const phases = [0, 0.01, 0.3, -0.13, -0.12];
  const clear = [9, 9, 3, 2, 4];
  const windows = windowsOf(phases.map((phase, at) => column(phase, clear[at])));
  expect(phasesOf(windows)).toEqual(phases);
});

it('stay where bands do not agree: signs have edges too, as far from lines as they stand in their cells', () => {
  const apart = [-0.1, -0.05, 0, 0.05, 0.3, 0.55, 0.6, 0.6, 0.62];
  const windows = windowsOf([0, 0, 0.02, 0, -0.1, -0.1].map((phase) => column(phase)));
  for (const [b, band] of windows.entries()) (band[3] as Window).phase = apart[b] as number;
  // By their middle, 0.3, they go on by 0.3 and then back by nearly half a cell.
  expect(phasesOf(windows)).toEqual([0, 0, 0.02, -0.1, -0.1, -0.1]);
});
