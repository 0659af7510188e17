/** How many copies each group has, as a person writes it: `3, 3`. */
import { parseNeedle, type Slot } from '@shared/bed/index.ts';
import type { MotifId } from '@shared/motif/index.ts';
import type { Group } from '@shared/pattern/index.ts';
import { boundsOf } from '@shared/project/index.ts';

/** `[3, 3]` for `3, 3`; null for a text that is no list of counts from 1 on. */
export function parseCopies(text: string): number[] | null {
  const parts = partsOf(text);
  if (parts.length === 0 || !parts.every((part) => /^[1-9]\d{0,3}$/.test(part))) return null;
  const counts = parts.map(Number);
  return counts.every((count) => count <= boundsOf('copiesAcross').most) ? counts : null;
}

/**
 * The groups with other copies. A group that stays keeps its motif and its
 * copies upwards; a new one takes after the last.
 */
export function withCopies(groups: readonly Group[], copies: readonly number[]): Group[] {
  const last = groups.at(-1) as Group;
  return copies.map((across, index) => ({ ...(groups[index] ?? last), across }));
}

/** The groups with so many copies in one of them. */
export function withAcross(groups: readonly Group[], index: number, across: number): Group[] {
  return groups.map((group, at) => (at === index ? { ...group, across } : group));
}

/** The groups with another motif in one of them. */
export function withMotif(groups: readonly Group[], index: number, motif: MotifId): Group[] {
  return groups.map((group, at) => (at === index ? { ...group, motif } : group));
}

/** First needles as a person writes them, `L48, R12`. Throws `needle-unknown`. */
export function parseFirstNeedles(text: string): Slot[] {
  return partsOf(text).map(parseNeedle);
}

function partsOf(text: string): string[] {
  return text.split(/[\s,;]+/).filter((part) => part !== '');
}
