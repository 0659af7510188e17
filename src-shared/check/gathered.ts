/**
 * Findings as a person reads them.
 *
 * Stacked floats of neighbouring rows are one finding already; here those of
 * one pattern are told together, and patterns that bring the same are one. The
 * longest speaks for all. What matters most comes first.
 */
import type { Plan } from '../plan/index.ts';
import { severityOf, WARNING_CODES, type Finding, type FindingCode } from './finding.ts';
import { likeness, type Found } from './gather.ts';

export interface Gathered extends Found {
  /** Its code and its place, so that it is another one once it lies elsewhere. */
  readonly kind: string;
  readonly isWarning: boolean;
  /** How many more places there are of it; the drawing shows each. */
  readonly alike: number;
}

/** What weighs alike is told in this order, and what is not named here before it: what is spoilt for good, then what catches, then what may be left. */
const MATTERS: readonly FindingCode[] = [
  'infant-floats',
  'long-floats',
  'long-carry',
  'contrast-loose-across',
  'contrast-to-edges',
  'end-needles-seen',
  'faint-contrast',
  'edges-unseen',
  'lined-floats',
  'lined-carry',
  'long-way-up',
  'odd-shaping',
];

/** One entry for what is told together, that which matters most first; `patterns` are those of the plan. */
export function gathered(findings: readonly Finding[], patterns: Plan['patterns'] = []): Gathered[] {
  const together = new Map<string, Finding[]>();
  for (const finding of findings) put(together, likeIn(finding, patterns), finding);
  const alike = new Map<string, Finding[]>();
  for (const places of together.values()) {
    const [first] = places as [Finding];
    const looks = [...new Set(places.map(looksOf))].sort().join();
    for (const finding of places) put(alike, `${sortOf(first)} ${looks}`, finding);
  }
  return [...alike.values()]
    .map((places): Gathered => {
      const all = places.sort((one, other) => lengthOf(other) - lengthOf(one) || one.rows[0] - other.rows[0]);
      const finding = all[0] as Finding;
      return { kind: keyOf(all), all, finding, isWarning: WARNING_CODES.has(finding.code), alike: all.length - 1 };
    })
    .sort(
      ({ finding: one }, { finding: other }) =>
        severityOf(other) - severityOf(one) ||
        MATTERS.indexOf(one.code) - MATTERS.indexOf(other.code) ||
        lengthOf(other) - lengthOf(one) ||
        one.rows[0] - other.rows[0],
    );
}

function put(lists: Map<string, Finding[]>, key: string, finding: Finding): void {
  const list = lists.get(key);
  if (list) list.push(finding);
  else lists.set(key, [finding]);
}

/** Strands are told apart by their yarn, and by running between groups or not; seams by their side. */
function sortOf(finding: Finding): string {
  const parts = [finding.code, 'role' in finding ? finding.role : '', 'yarn' in finding ? finding.yarn : ''];
  const isBetween = 'isBetweenGroups' in finding && finding.isBetweenGroups;
  return [...parts, 'side' in finding ? finding.side : '', isBetween].join(' ');
}

/** The same for what is told together in one pattern; strands beside all patterns are told together. */
function likeIn(finding: Finding, patterns: Plan['patterns']): string {
  const [first, last] = finding.rows;
  const pattern = patterns.findIndex(({ firstRow, lastRow }) => first <= lastRow && firstRow <= last);
  return `${sortOf(finding)} ${pattern}`;
}

/** The same for places that differ in where they are alone; of findings that are about no strands by their kind. */
function looksOf(finding: Finding): string {
  return likeness(finding) ?? finding.code;
}

/** Its code, the rows from first to last, and a mark of all that is said of it, place by place. */
function keyOf(all: readonly Finding[]): string {
  const rows = all.flatMap(({ rows }) => rows);
  const { code } = all[0] as Finding;
  return `${code} ${Math.min(...rows)}-${Math.max(...rows)} ${markOf(JSON.stringify(all))}`;
}

/** FNV-1a over 32 bits, as eight hexadecimal digits. */
function markOf(text: string): string {
  let hash = 0x811c9dc5;
  for (let at = 0; at < text.length; at++) hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193);
  return (hash >>> 0).toString(16).padStart(8, '0');
}

/** The bed comes before all strands: what it does not hold cannot be knitted at all. */
function lengthOf(finding: Finding): number {
  if (finding.code === 'wider-than-bed') return Infinity;
  return 'longest' in finding ? finding.longest : 0;
}
