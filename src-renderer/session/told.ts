/** What the window tells: the line under the pointer, what is said, messages under the bar. */
import type { Problem } from '@shared/problem/index.ts';

/** A message under the top bar, until it is closed or replaced. */
export type Notice =
  { readonly kind: 'problem'; readonly problem: Problem } | { readonly kind: 'done'; readonly text: string };

/** Something that is said once. */
export interface Announcement {
  readonly text: string;
}

/** What is told in passing, and changes nothing of the work. */
export interface Told {
  readonly notice: Notice | null;
  /** What the pointer or the cell cursor is on, for the status line. */
  readonly pointer: string;
  /** What is said to assistive technology: another object each time, also where the same is said again. */
  readonly announcement: Announcement;
}

export const NOTHING_TOLD: Told = { notice: null, pointer: '', announcement: { text: '' } };
