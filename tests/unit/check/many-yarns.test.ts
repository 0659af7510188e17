/** What can be done about rows of three yarns or more: the rarest yarn of each is drawn in another. */
import { describe, expect, it } from 'vitest';
import {
  changeFor,
  gathered,
  leaveFinding,
  leftAmong,
  Remedies,
  remediesAt,
  type Gathered,
  type PicturedRemedy,
} from '@shared/check/index.ts';
import { gridToText } from '@shared/grid/index.ts';
import { afterChange, pieceIn, type Change, type ProjectAt } from '@shared/project/index.ts';
import { findingWords } from '@shared/words/findings.ts';
import { settled } from '../../written-projects.ts';
import { projectWith } from '../fabric/pieces.ts';
import { checkedPlan, onlyFindings, type CheckedPlan } from './found.ts';
import { THREE_YARNS } from './mendable.ts';

function manyYarns({ findings, patterns }: CheckedPlan): Gathered {
  const found = gathered(findings, patterns).find(({ finding }) => finding.code === 'many-yarns');
  if (!found) throw new Error('No row has three yarns');
  return found;
}

function helps(project: ProjectAt): PicturedRemedy[] {
  const plan = checkedPlan(project);
  const steps = remediesAt(new Remedies(pieceIn(project), plan), manyYarns(plan));
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

function redrawn(project: ProjectAt): ProjectAt {
  const [helping] = helps(project);
  if (!helping) throw new Error('Nothing helps');
  return afterChange(project, changeFor(project, helping.intent) as Change);
}

const drawing = ({ motifs }: ProjectAt): string[] => motifs.flatMap(({ grid }) => gridToText(grid, '.XO'));

describe('rows of three yarns', () => {
  it('are drawn in the yarn that most of their contrast has', () => {
    const after = redrawn(THREE_YARNS);
    expect(drawing(after)).toEqual(['XXX.', 'X...', 'OOO.', 'X...']);
    expect(onlyFindings(checkedPlan(after), 'many-yarns')).toEqual([]);
  });

  it('say before what comes of it', () => {
    const [remedy] = helps(THREE_YARNS);
    expect(remedy?.effect).toMatchObject({ manyYarns: { before: 2, after: 0 }, cellsChanged: 4 });
    expect(remedy && findingWords.remedy.effect(remedy)).toBe(
      'Leaves no row of three yarns or more. It takes 4 changed stitches. The motif changes in all its copies.',
    );
    const yarnsIn = (strip: PicturedRemedy['before'] | undefined): number[] => [
      ...new Set(
        strip?.stitches
          .filter(({ row }) => row === manyYarns(checkedPlan(THREE_YARNS)).finding.rows[0])
          .map(({ yarn }) => yarn),
      ),
    ];
    expect([yarnsIn(remedy?.before).sort(), yarnsIn(remedy?.after).sort()]).toEqual([
      [0, 1, 2],
      [0, 2],
    ]);
  });

  it('keep a yarn that another stands for up the rows', () => {
    // Upwards O is knitted where X is drawn, and X where O is: what is drawn for the yarn that stays is the other one.
    const [band] = THREE_YARNS.patterns as [ProjectAt['patterns'][number]];
    const exchanged = [
      { drawn: 1, knitted: 2 },
      { drawn: 2, knitted: 1 },
    ];
    const project = settled(THREE_YARNS, {
      patterns: [{ ...band, colourOrder: { stripes: [{ rows: 50, yarns: exchanged }], repeats: false } }],
    });
    const after = redrawn(project);
    expect(drawing(after)).toEqual(['XXX.', 'X...', 'OOO.', 'X...']);
    expect(onlyFindings(checkedPlan(after), 'many-yarns')).toEqual([]);
  });

  it('leave a drawing as it is where its copies would become narrower', () => {
    // All in X the row would repeat every two stitches, and two copies of it take four needles, not eight.
    const narrowing = projectWith({ motif: ['X.O.X.X.'], copies: [2], stitches: 20, rows: 1 });
    expect(manyYarns(checkedPlan(narrowing)).finding.rows).toEqual([1, 1]);
    expect(helps(narrowing)).toEqual([]);
    const whole = projectWith({ motif: ['X.O.X.X.'], copies: [2], stitches: 20, rows: 1, band: { unit: 'whole' } });
    expect(helps(whole)).toHaveLength(1);
  });

  it('are left as they are once they are laid by hand, until they lie elsewhere', () => {
    const plan = checkedPlan(THREE_YARNS);
    const change = leaveFinding(THREE_YARNS, manyYarns(plan), gathered(plan.findings, plan.patterns), 'lay-by-hand');
    expect(change?.name).toBe('lay-by-hand');
    const laid = afterChange(THREE_YARNS, change as Change);
    const left = (project: ProjectAt): string[] => {
      const { findings, patterns } = checkedPlan(project);
      return [...leftAmong(findings, patterns, project.piece.leftAsIs)].map(({ code }) => code);
    };
    expect(left(laid)).toEqual(['many-yarns']);
    const [band] = laid.patterns as [ProjectAt['patterns'][number]];
    const moved = settled(laid, { patterns: [{ ...band, position: { kind: 'from-row', row: 1 } } as typeof band] });
    expect(left(moved)).toEqual([]);
  });
});
