/** `--third-yarn`: what is done about rows that knit more yarns than one pass feeds. */
import { findingsOf, gathered, Remedies, settingOf, type Finding } from '@shared/check/index.ts';
import { applyPatch } from '@shared/grid/index.ts';
import type { Plan } from '@shared/plan/index.ts';
import { pieceIn, type Workpiece } from '@shared/project/index.ts';

export type ThirdYarn = 'watched' | 'laid' | 'redrawn';

/**
 * The project with its rows of three yarns or more laid by hand, so that they
 * are watched no longer, or their rarest yarn drawn in another. The same where
 * it has none, or where that cannot be done. `plan` is that of its piece.
 */
export function withThirdYarn(project: Workpiece, plan: Plan, how: ThirdYarn): Workpiece {
  if (how === 'watched') return project;
  const piece = pieceIn(project);
  const found = gathered(findingsOf(piece, plan), plan.patterns).find(({ finding }) => isOfManyYarns(finding));
  if (!found) return project;
  if (how === 'laid') {
    if (!isLayable(found.finding)) return project;
    return { ...project, piece: { ...project.piece, leftAsIs: [...(project.piece.leftAsIs ?? []), found.kind] } };
  }
  const remedies = new Remedies(piece, plan);
  const remedy = remedies.proposed(found).find((intent) => remedies.tried(found, intent) !== null);
  const cells = new Map((remedy && settingOf(piece, remedy)?.motifs)?.map((each) => [each.motif, each.cells]));
  const motifs = project.motifs.map((motif) => {
    const patch = cells.get(motif.id);
    return patch ? { ...motif, grid: applyPatch(motif.grid, patch) } : motif;
  });
  return { ...project, motifs };
}

function isOfManyYarns(finding: Finding): boolean {
  return finding.code === 'many-yarns';
}

function isLayable(finding: Finding): boolean {
  return finding.code === 'many-yarns' && finding.laid !== null;
}
