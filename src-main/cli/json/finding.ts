/** The JSON of what will go wrong or must be known. */
import type { Finding } from '@shared/check/index.ts';
import type { Project } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';

export interface FindingJson {
  readonly code: string;
  readonly rows: readonly [first: number, last: number];
  readonly text: string;
}

export function findingJson(finding: Finding, project: Project): FindingJson {
  return {
    code: finding.code,
    rows: [finding.rows[0], finding.rows[1]],
    text: words.findings.text(finding, project),
  };
}
