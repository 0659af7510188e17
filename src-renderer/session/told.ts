/** What the window tells: the line under the pointer, what is said, messages under the bar. */
import type { Problem } from '@shared/problem/index.ts';

/** A message under the top bar, until it is closed or replaced. */
export type Notice =
  { readonly kind: 'problem'; readonly problem: Problem } | { readonly kind: 'done'; readonly text: string };

/** Something that is said once: shown at the foot of the window, and told to assistive technology. */
export interface Announcement {
  readonly text: string;
  /** It is shown elsewhere already: where the cell cursor is has a place of its own. */
  readonly isOnlyHeard?: true;
}

/** What is told in passing, and changes nothing of the work. */
export interface Told {
  readonly notice: Notice | null;
  /** What the pointer is on, for the status line. */
  readonly pointer: string;
  /** What the cell cursor of the keyboard is on, for the status line; empty where there is none. */
  readonly cursor: string;
  /** What was said last: another object each time, also where the same is said again. */
  readonly announcement: Announcement;
  /** Something else was done since it was said: it is not shown any more. */
  readonly isPast: boolean;
}

export const NOTHING_TOLD: Told = { notice: null, pointer: '', cursor: '', announcement: { text: '' }, isPast: false };
