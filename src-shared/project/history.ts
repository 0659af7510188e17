/**
 * A project with its past and future.
 *
 * Entries hold changes, not projects: a stroke on a 200 × 1000 motif costs the
 * cells it touched. A gesture (a drag, a spin of a number field) is one entry:
 * changes given with the same gesture mark are squashed. While the gesture goes
 * on they are only collected: to merge tens of thousands of cells with every
 * move of the pointer would hold up the hand.
 */
import { composePatches } from '../grid/index.ts';
import { applyChange, invertChange, type Change, type ChangeName } from './change.ts';
import type { Project } from './project.ts';

/** Steps that can be undone. */
export const MOST_STEPS = 1000;

/** Changes of a gesture that are collected before they are merged, so that a drag without end stays short. */
const MOST_COLLECTED = 64;

interface Step {
  readonly change: Change;
  readonly inverse: Change;
}

interface Entry {
  /** Names the state after this entry. */
  readonly state: number;
  /** What was changed, oldest first; more than one only in the last entry of the past, while its gesture may go on. */
  readonly steps: readonly [Step, ...Step[]];
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
  const step: Step = { change, inverse: invertChange(project, change) };
  const entry: Entry = { steps: isSameGesture ? continued(last, step) : [step], state: states, gesture };
  const earlier = last ? past.slice(0, -1) : [];
  if (last && !isSameGesture) earlier.push(closed(last));
  const kept = [...earlier, entry];
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
  const last = history.past.at(-1);
  if (!last) return history;
  const entry = closed(last);
  return {
    ...history,
    project: applyChange(history.project, entry.steps[0].inverse),
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
    project: applyChange(history.project, entry.steps[0].change),
    past: [...history.past, { ...entry, gesture: null }],
    future: history.future.slice(1),
  };
}

/** The step that undo would take back, or null. */
export function undoName(history: History): ChangeName | null {
  return history.past.at(-1)?.steps[0].change.name ?? null;
}

export function redoName(history: History): ChangeName | null {
  return history.future[0]?.steps[0].change.name ?? null;
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

/** The steps of `last` followed by one more of its gesture. Throws `RangeError` for one that changes something else. */
function continued({ steps }: Entry, step: Step): Entry['steps'] {
  const [{ change }] = steps;
  if (!isOfOneKind(change, step.change)) {
    throw new RangeError(`"${step.change.kind}" cannot continue a gesture of "${change.kind}"`);
  }
  return steps.length < MOST_COLLECTED ? [...steps, step] : [merged(steps), step];
}

/** The entry with one step. */
function closed(entry: Entry): Entry {
  return entry.steps.length === 1 ? entry : { ...entry, steps: [merged(entry.steps)] };
}

/** One step that does what all do. In halves, so that a cell is moved as often as halves are made. */
function merged(steps: readonly Step[]): Step {
  const [only] = steps;
  if (only && steps.length === 1) return only;
  const half = steps.length >> 1;
  const first = merged(steps.slice(0, half));
  const second = merged(steps.slice(half));
  // The inverse undoes the later change first.
  return {
    change: mergeChanges(first.change, second.change),
    inverse: mergeChanges(second.inverse, first.inverse),
  };
}

/** True if two changes touch the same thing, so that one change can do what both do. */
function isOfOneKind(first: Change, second: Change): boolean {
  if (first.kind === 'paint' || first.kind === 'motif') {
    return second.kind === first.kind && second.motif === first.motif;
  }
  if (first.kind === 'band') return second.kind === 'band' && second.band === first.band;
  return first.kind === second.kind;
}

/** One change that does `first`, then `second`, which must be {@link isOfOneKind}. */
function mergeChanges(first: Change, second: Change): Change {
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
  if (first.kind === 'sizes' && second.kind === 'sizes') return second;
  if (first.kind === 'parts' && second.kind === 'parts') return second;
  if (first.kind === 'fills' && second.kind === 'fills') return second;
  if (first.kind === 'palette' && second.kind === 'palette') return second;
  if (first.kind === 'motifs' && second.kind === 'motifs') return second;
  throw new RangeError(`"${second.kind}" does not go on from "${first.kind}"`);
}
