/**
 * A project with its past and future.
 *
 * Entries hold changes, not projects: a stroke on a 200 × 1000 motif costs the
 * cells it touched. A gesture (a drag, a spin of a number field) is one entry:
 * changes given with the same gesture mark are squashed. While the gesture goes
 * on they are only collected: to merge tens of thousands of cells with every
 * move of the pointer would hold up the hand.
 */
import { applyChange, carriedOut, type Change, type ChangeName } from './change.ts';
import type { Edit } from './edit.ts';
import { mergeEdits } from './merge-edits.ts';
import type { Project } from './model.ts';

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
  /** What made the project of the one before: the change that was committed, or what took steps back or did them again. */
  readonly made: Change | null;
}

/** A fresh history; `isSaved` false for a project that stands in no file yet. */
export function startHistory(project: Project, isSaved = true): History {
  return { project, past: [], future: [], base: 0, states: 1, saved: isSaved ? 0 : null, made: null };
}

/** Applies a change. Changes of one `gesture` (any text unique to it) make one step. */
export function commit(history: History, change: Change, gesture: string | null = null): History {
  if (change.edits.every(isEmpty)) return history;
  const { past, states } = history;
  const { project, inverse } = carriedOut(history.project, change);
  const last = past.at(-1);
  const isSameGesture = last !== undefined && gesture !== null && last.gesture === gesture;
  const step: Step = { change, inverse };
  const entry: Entry = { steps: isSameGesture ? continued(last.steps, step) : [step], state: states, gesture };
  const earlier = last ? past.slice(0, -1) : [];
  if (last && !isSameGesture) earlier.push(closed(last));
  const kept = [...earlier, entry];
  const dropped = kept.length > MOST_STEPS ? kept.shift() : undefined;
  return {
    ...history,
    project,
    past: kept,
    future: [],
    base: dropped ? dropped.state : history.base,
    states: states + 1,
    made: change,
  };
}

export function undo(history: History): History {
  const last = history.past.at(-1);
  if (!last) return history;
  const entry = closed(last);
  const made = entry.steps[0].inverse;
  return {
    ...history,
    project: applyChange(history.project, made),
    past: history.past.slice(0, -1),
    future: [entry, ...history.future],
    made,
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
  const made = entry.steps[0].change;
  return {
    ...history,
    project: applyChange(history.project, made),
    past: [...history.past, { ...entry, gesture: null }],
    future: history.future.slice(1),
    made,
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

/** Names the state as it is now; no other state of this history ever has that name. */
export function stateNow(history: History): number {
  return history.past.at(-1)?.state ?? history.base;
}

/** The names of all states that can be gone back to, or on to again. */
export function statesAtHand({ base, past, future }: History): ReadonlySet<number> {
  return new Set([base, ...past.map(({ state }) => state), ...future.map(({ state }) => state)]);
}

/** A stroke that changes no cell. */
function isEmpty(edit: Edit): boolean {
  return edit.kind === 'paint' && edit.patch.at.length === 0;
}

/** The steps followed by one more of their gesture. */
function continued(steps: Entry['steps'], step: Step): Entry['steps'] {
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
    change: joined(first.change, second.change),
    inverse: joined(second.inverse, first.inverse),
  };
}

/** One change that does both in turn, called as the first. */
function joined(first: Change, second: Change): Change {
  return { ...first, edits: mergeEdits([...first.edits, ...second.edits]) as [Edit, ...Edit[]] };
}
