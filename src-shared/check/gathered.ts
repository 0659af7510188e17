/** Findings as a person reads them: one of a kind speaks for all, what must be mended first. */
import { severityOf, WARNING_CODES, type Finding } from './finding.ts';

export interface Gathered {
  /** Names it as long as there is one of its kind. */
  readonly kind: string;
  /** All of its kind, the worst first. */
  readonly all: readonly Finding[];
  /** The worst of its kind. */
  readonly finding: Finding;
  readonly isWarning: boolean;
  /** How many more places there are of the same kind; the drawing shows each. */
  readonly alike: number;
}

/** One entry for each kind: those that block first, then warnings, then notes, and of these the longest strands first. */
export function gathered(findings: readonly Finding[]): Gathered[] {
  const kinds = new Map<string, Finding[]>();
  for (const finding of findings) {
    const kind = kindOf(finding);
    const alike = kinds.get(kind);
    if (alike) alike.push(finding);
    else kinds.set(kind, [finding]);
  }
  return [...kinds]
    .map(([kind, alike]): Gathered => {
      const all = [...alike].sort((one, other) => lengthOf(other) - lengthOf(one));
      const finding = all[0] as Finding;
      return { kind, all, finding, isWarning: WARNING_CODES.has(finding.code), alike: alike.length - 1 };
    })
    .sort(
      (one, other) =>
        severityOf(other.finding) - severityOf(one.finding) || lengthOf(other.finding) - lengthOf(one.finding),
    );
}

/** Strands are told apart by their yarn, seams by their side. */
function kindOf(finding: Finding): string {
  const parts = [finding.code, 'role' in finding ? finding.role : '', 'yarn' in finding ? finding.yarn : ''];
  return [...parts, 'side' in finding ? finding.side : ''].join(' ');
}

/** The bed comes before all strands: what it does not hold cannot be knitted at all. */
function lengthOf(finding: Finding): number {
  if (finding.code === 'wider-than-bed') return Infinity;
  return 'longest' in finding ? finding.longest : 0;
}
