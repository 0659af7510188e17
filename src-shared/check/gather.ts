/** Findings that a motif brings again with each of its copies, told once. */
import type { Finding } from './finding.ts';

export interface GatheredFinding {
  /** The lowest of them. */
  readonly finding: Finding;
  /** How often the same comes again elsewhere. */
  readonly more: number;
  /** The rows from the first of them to the last. */
  readonly rows: readonly [first: number, last: number];
}

/** Gathers long floats, carries and ways up that differ in place alone; other findings stay as they are. Keeps the order. */
export function gatherFindings(findings: readonly Finding[]): GatheredFinding[] {
  const gathered: { finding: Finding; more: number; rows: [number, number] }[] = [];
  const known = new Map<string, (typeof gathered)[number]>();
  for (const finding of findings) {
    const key = likeness(finding);
    const same = key === null ? undefined : known.get(key);
    if (same) {
      same.more++;
      same.rows = [Math.min(same.rows[0], finding.rows[0]), Math.max(same.rows[1], finding.rows[1])];
      continue;
    }
    const fresh = { finding, more: 0, rows: [...finding.rows] as [number, number] };
    gathered.push(fresh);
    if (key !== null) known.set(key, fresh);
  }
  return gathered;
}

/** The same text for findings that differ in place alone, or null for those that stand for themselves. */
function likeness(finding: Finding): string | null {
  if (finding.code === 'long-way-up') return [finding.code, finding.yarn, finding.up, finding.count].join(' ');
  if (!('needles' in finding)) return null;
  const { code, yarn, longest, count, needles, rows } = finding;
  return [code, yarn, longest, count, needles.last - needles.first, rows[1] - rows[0]].join(' ');
}
