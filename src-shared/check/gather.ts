/** Findings that a motif brings again with each of its copies, told once. */
import type { Finding } from './finding.ts';

/** Findings that are told as one. */
export interface Found {
  /** The one that speaks for all. */
  readonly finding: Finding;
  /** All of them, at least one. */
  readonly all: readonly Finding[];
}

/** Told by the lowest of them, and all in the order in which they were found. */
export interface GatheredFinding extends Found {
  /** How often the same comes again elsewhere. */
  readonly more: number;
  /** The rows from the first of them to the last. */
  readonly rows: readonly [first: number, last: number];
}

/** Gathers long floats, carries and ways up that differ in place alone; other findings stay as they are. Keeps the order. */
export function gatherFindings(findings: readonly Finding[]): GatheredFinding[] {
  const gathered: Finding[][] = [];
  const known = new Map<string, Finding[]>();
  for (const finding of findings) {
    const key = likeness(finding);
    const same = key === null ? undefined : known.get(key);
    if (same) {
      same.push(finding);
      continue;
    }
    const fresh = [finding];
    gathered.push(fresh);
    if (key !== null) known.set(key, fresh);
  }
  return gathered.map((all) => {
    let [first, last] = (all[0] as Finding).rows;
    for (const { rows } of all) [first, last] = [Math.min(first, rows[0]), Math.max(last, rows[1])];
    return { finding: all[0] as Finding, more: all.length - 1, all, rows: [first, last] };
  });
}

/** The same text for strands that differ in place alone, or null for those that stand for themselves. */
export function likeness(finding: Finding): string | null {
  if (finding.code === 'long-way-up') return [finding.code, finding.yarn, finding.up, finding.count].join(' ');
  if (!('needles' in finding) || !('yarn' in finding)) return null;
  const { code, yarn, longest, count, needles, rows } = finding;
  const isBetween = 'isBetweenGroups' in finding && finding.isBetweenGroups;
  return [code, yarn, longest, count, needles.last - needles.first, rows[1] - rows[0], isBetween].join(' ');
}
