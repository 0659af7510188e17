/** Phases of edges, each known only up to whole cells, followed from window to window. */

/** A phase at a place in shares of the chart along the direction and across it. */
export interface Window {
  readonly along: number;
  readonly beside: number;
  readonly clarity: number;
  phase: number;
}

/** A window whose edges come back less clearly than this is left out. */
const LEAST_CLARITY = 0.12;

/** Windows of which none are clear in between are followed over so many, and each of those is as bad as so much of a cell. */
const MOST_GAP = 4;
const GAP_COSTS = 0.05;

/** Steps between windows are told to go on by so many before them. */
const STEPS_BEFORE = 2;

/** Bands say together where a place along them lies if half of all do, to this part of a cell. */
const AGREED = 0.2;

/**
 * The clear windows with their phases followed from one to the next. Of all
 * neighbours those that differ least are joined first, so that a jump of nearly
 * half a cell is crossed where it is smallest (as Herráez and others 2002 do
 * for the phases of light). Windows that hang together with few are left out.
 */
export function followed(windows: readonly (readonly Window[])[]): Window[] {
  const groupOf = new Map<Window, Set<Window>>();
  const joins: { readonly one: Window; readonly other: Window; readonly cost: number }[] = [];
  const isClear = (window: Window | undefined): window is Window =>
    window !== undefined && window.clarity >= LEAST_CLARITY;
  windows.forEach((band, b) =>
    band.forEach((window, w) => {
      if (!isClear(window)) return;
      groupOf.set(window, new Set([window]));
      for (const next of [(gap: number) => band[w + gap], (gap: number) => windows[b + gap]?.[w]]) {
        const gap = Array.from({ length: MOST_GAP }, (_, i) => i + 1).find((far) => isClear(next(far)));
        const other = gap === undefined ? undefined : next(gap);
        if (gap === undefined || other === undefined) continue;
        const off = other.phase - window.phase;
        joins.push({ one: window, other, cost: Math.abs(off - Math.round(off)) + GAP_COSTS * gap });
      }
    }),
  );
  for (const { one, other } of joins.sort((a, b) => a.cost - b.cost)) {
    const [here, there] = [groupOf.get(one), groupOf.get(other)];
    if (!here || !there || here === there) continue;
    const turns = Math.round(one.phase - other.phase);
    for (const window of there) {
      window.phase += turns;
      here.add(window);
      groupOf.set(window, here);
    }
  }
  const most = [...groupOf.values()].reduce<Window[]>(
    (most, group) => (group.size > most.length ? [...group] : most),
    [],
  );
  goneOn(windows, new Set(most));
  return most;
}

/**
 * Puts `those` by whole cells where the steps from one to the next go on as
 * they began: paper that rolls up at one side does so ever more, and there a
 * step of more than half a cell looks like a smaller one back. Begun where
 * windows differ least; all bands together say where they lie, and where fewer
 * than half of them are clear and agree, as on a card, they say nothing.
 */
function goneOn(windows: readonly (readonly Window[])[], those: ReadonlySet<Window>): void {
  const columns = (windows[0] ?? []).map((_, w) =>
    windows.flatMap((band) => band[w] ?? []).filter((one) => those.has(one)),
  );
  const places = columns.map((column) => {
    const middle = middleOf(column.map(({ phase }) => phase));
    const agreeing = column.filter(({ phase }) => Math.abs(phase - middle) <= AGREED).length;
    return 2 * agreeing < windows.length ? NaN : middle;
  });
  const steps = places.slice(1).map((place, w) => place - (places[w] as number));
  const known = [...steps.keys()].filter((w) => !Number.isNaN(steps[w]));
  if (known.length === 0) return;
  const first = known.reduce((least, w) =>
    Math.abs(steps[w] as number) < Math.abs(steps[least] as number) ? w : least,
  );
  for (const way of [1, -1]) {
    let turned = 0;
    for (let w = first + way; w >= 0 && w < steps.length; w += way) {
      const before = Array.from({ length: STEPS_BEFORE }, (_, i) => steps[w - way * (i + 1)] ?? NaN);
      const expected = before.reduce((sum, step) => sum + step, 0) / before.length;
      // Beside a gap nothing is known of how steps go on.
      const turns = Math.round(expected - (steps[w] as number));
      if (Number.isFinite(turns) && turns !== 0) {
        steps[w] = (steps[w] as number) + turns;
        turned += way * turns;
      }
      for (const window of columns[way === 1 ? w + 1 : w] as Window[]) window.phase += turned;
    }
  }
}

/** NaN of none. */
function middleOf(values: readonly number[]): number {
  return values.toSorted((one, other) => one - other)[values.length >> 1] ?? NaN;
}
