/** What the sheet says to watch, what has been done about it, and what would help. */
import { describe, expect, it } from 'vitest';
import { hasCharacter } from '@shared/output/font/metrics.ts';
import { placementSheet, sheetFacts } from '@shared/output/index.ts';
import { findingsOf, gathered } from '@shared/check/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { pieceIn, sampleProject, type ProjectAt, projectAt } from '@shared/project/index.ts';
import { bandsOf } from '@shared/pattern/index.ts';
import { sheetWords } from '@shared/words/sheet.ts';
import { TEST_DAY } from '../../day.ts';
import { wordsOn } from './items-of.ts';
import { hemProject, PROJECTS } from './projects.ts';

function said(project: ProjectAt): string {
  const sheet = placementSheet(sheetFacts(project), makePlan(pieceIn(project)), { paper: 'a4', date: TEST_DAY });
  return sheet.pages.map(wordsOn).join('\n').replaceAll(/\s+/g, ' ');
}

const sample = projectAt(sampleProject());

describe('what the sheet says to watch', () => {
  it('says of a lined piece that the lining covers what would be long, and offers nothing more', () => {
    const text = said({ ...sample, piece: { ...sample.piece, isLined: true } });
    expect(text).toContain('Done about it ✓ The piece is lined: the lining covers 60 long floats and carries.');
    expect(text).not.toContain('What would help');
  });

  it('says of groups with balls of their own that nothing is carried between them, and what is left to do', () => {
    const bands = bandsOf(sample).map((band) => ({
      ...band,
      groups: band.groups.map((group) => ({ ...group, hasOwnBall: true })),
    }));
    const text = said({ ...sample, patterns: bands });
    expect(text).toContain('Done about it ✓ Each of 2 groups in pattern band 1 has its own ball');
    expect(text).toMatch(/What would help .*– Line the piece\./);
    expect(text).not.toContain('Use a ball for each group');
  });

  it('says nothing of it where nothing is left to watch', () => {
    const own = hemProject();
    const bands = bandsOf(own).map((band) => ({
      ...band,
      groups: band.groups.map((group) => ({ ...group, hasOwnBall: true })),
    }));
    const text = said({ ...own, patterns: bands, piece: { ...own.piece, hemRows: 0 } });
    expect(text).not.toMatch(/What to watch|Done about it/);
  });

  it('has nothing done about it where nothing has been', () => {
    const text = said(sample);
    expect(text).not.toContain('Done about it');
    // 34 stitches from group to group; 13 within one, where another ball changes nothing.
    expect(text.match(/Use a ball for each group/g)).toHaveLength(1);
    expect(text).toMatch(/floats over up to 34 stitches [^!]*Use a ball for each group/);
  });

  it('tells what is left as it is last, with no warning and no remedy of it', () => {
    const plan = makePlan(pieceIn(sample));
    const all = gathered(findingsOf(pieceIn(sample), plan), plan.patterns).map(({ kind }) => kind);
    const left = (kinds: string[]): string => said({ ...sample, piece: { ...sample.piece, leftAsIs: kinds } });
    const some = left(all.slice(0, 1));
    expect(some).toMatch(/What to watch ! The .* What would help .* Left as it is – The [^!]* up to 34 stitches/);
    const all34 = said(sample).split('up to 34 stitches').length;
    expect(some.split('up to 34 stitches')).toHaveLength(all34);
    expect(some.slice(0, some.indexOf('Left as'))).not.toContain('up to 34 stitches');
    const none = left(all);
    expect(none).toMatch(/What to watch Left as they are –/);
    expect(none).not.toContain('What would help');
    expect(said(sample)).not.toContain('Left as');
  });

  it('has a mark for it in the typeface', () => {
    expect(hasCharacter(sheetWords.findings.doneMark.codePointAt(0) as number)).toBe(true);
  });

  it.each(Object.keys(PROJECTS).filter((name) => name !== 'huge'))(
    'sends nobody from the sheet of the %s project to a screen',
    (name) => {
      expect(said((PROJECTS[name] as () => ProjectAt)())).not.toMatch(
        /\b(program|screen|editor|window|click|button|menu|Walewright)\b/i,
      );
    },
  );
});
