/**
 * A project with its past and future.
 *
 * Entries hold changes, not projects: a stroke on a 200 × 1000 motif costs the
 * cells it touched. A gesture (a drag, a spin of a number field) is one entry:
 * changes given with the same gesture mark are squashed.
 */
import { composePatches } from '../grid/index.ts';
import { applyChange, invertChange, type Change, type ChangeName } from './change.ts';
import type { Project } from './project.ts';

/** Steps that can be undone. */
export const MOST_STEPS = 1000;

interface Entry {
  /** Names the state after this entry. */
  readonly state: number;
  readonly change: Change;
  readonly inverse: Change;
  readonly gesture: string | null;
}

export interface History {
  readonly project: Project;
  /** Oldest first. */
  readonly past: readonly Entry[];
  /** Next to redo first. */
  readonly future: readonly Entry[];
  /** Names the state before the oldest entry. */
  readonly base: number;
  /** Names given so far. */
  readonly states: number;
  /** The state that stands in the file, or null if none does. */
  readonly saved: number | null;
}

/** A fresh history; `isSaved` false for a project that stands in no file yet. */
export function startHistory(project: Project, isSaved = true): History {
  return { project, past: [], future: [], base: 0, states: 1, saved: isSaved ? 0 : null };
}

/** Applies a change. Changes of one `gesture` (any text unique to it) make one step. */
export function commit(history: History, change: Change, gesture: string | null = null): History {
  if (change.kind === 'paint' && change.patch.at.length === 0) return history;
  const { project, past, states } = history;
  const next = applyChange(project, change);
  const last = past.at(-1);
  const isSameGesture = last !== undefined && gesture !== null && last.gesture === gesture;
  const entry: Entry = isSameGesture
    ? { ...squash(last, change, project), state: states, gesture }
    : { change, inverse: invertChange(project, change), state: states, gesture };
  const kept = [...(isSameGesture ? past.slice(0, -1) : past), entry];
  const dropped = kept.length > MOST_STEPS ? kept.shift() : undefined;
  return {
    ...history,
    project: next,
    past: kept,
    future: [],
    base: dropped ? dropped.state : history.base,
    states: states + 1,
  };
}

export function undo(history: History): History {
  const entry = history.past.at(-1);
  if (!entry) return history;
  return {
    ...history,
    project: applyChange(history.project, entry.inverse),
    past: history.past.slice(0, -1),
    future: [entry, ...history.future],
  };
}

/** Takes back a gesture that was given up, if it was the last step; it leaves nothing to redo. */
export function giveUpGesture(history: History, gesture: string): History {
  if (history.past.at(-1)?.gesture !== gesture) return history;
  return { ...undo(history), future: [] };
}

export function redo(history: History): History {
  const entry = history.future[0];
  if (!entry) return history;
  return {
    ...history,
    project: applyChange(history.project, entry.change),
    past: [...history.past, { ...entry, gesture: null }],
    future: history.future.slice(1),
  };
}

/** The step that undo would take back, or null. */
export function undoName(history: History): ChangeName | null {
  return history.past.at(-1)?.change.name ?? null;
}

export function redoName(history: History): ChangeName | null {
  return history.future[0]?.change.name ?? null;
}

/** The state as it is now stands in the file. */
export function markSaved(history: History): History {
  return { ...history, saved: stateNow(history) };
}

/** True if the file, as last written or read, holds something else. */
export function isUnsaved(history: History): boolean {
  return history.saved !== stateNow(history);
}

function stateNow(history: History): number {
  return history.past.at(-1)?.state ?? history.base;
}

/**
 * One entry for `last` followed by `change`. `between` is the project between
 * them. The inverse undoes the later change first.
 */
function squash(last: Entry, change: Change, between: Project): Pick<Entry, 'change' | 'inverse'> {
  const inverse = invertChange(between, change);
  const merged = mergeChanges(last.change, change);
  const mergedInverse = mergeChanges(inverse, last.inverse);
  if (!merged || !mergedInverse)
    throw new RangeError(`"${change.kind}" cannot continue a gesture of "${last.change.kind}"`);
  return { change: merged, inverse: mergedInverse };
}

/** One change that does `first`, then `second`; null where they touch different things. */
function mergeChanges(first: Change, second: Change): Change | null {
  if (first.kind === 'paint' && second.kind === 'paint' && first.motif === second.motif) {
    return { ...first, patch: composePatches(first.patch, second.patch) };
  }
  if (first.kind === 'motif' && second.kind === 'motif' && first.motif === second.motif) {
    return { ...first, to: { ...first.to, ...second.to } };
  }
  if (first.kind === 'piece' && second.kind === 'piece') return { ...first, to: { ...first.to, ...second.to } };
  if (first.kind === 'band' && second.kind === 'band' && first.band === second.band) {
    return { ...first, to: { ...first.to, ...second.to } };
  }
  if (first.kind === 'project' && second.kind === 'project') return { ...first, to: { ...first.to, ...second.to } };
  if (first.kind === 'bands' && second.kind === 'bands') return second;
  if (first.kind === 'palette' && second.kind === 'palette') return second;
  if (first.kind === 'motifs' && second.kind === 'motifs') return second;
  return null;
}
