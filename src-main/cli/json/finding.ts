/** The JSON of what will go wrong or must be known. */
import { BLOCKING_CODES, type Finding } from '@shared/check/index.ts';
import type { Workpiece } from '@shared/project/index.ts';
import { findingWords } from '@shared/words/findings.ts';

export interface FindingJson {
  readonly code: string;
  readonly rows: readonly [first: number, last: number];
  readonly text: string;
  /** Hands cannot knit the piece so: there is no running order. */
  readonly blocks: boolean;
  /** A person leaves it as it is. */
  readonly leftAsIs: boolean;
}

export function findingJson(finding: Finding, project: Workpiece, leftAsIs = false): FindingJson {
  return {
    code: finding.code,
    rows: [finding.rows[0], finding.rows[1]],
    text: findingWords.text(finding, project),
    blocks: BLOCKING_CODES.has(finding.code),
    leftAsIs,
  };
}
