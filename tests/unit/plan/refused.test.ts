import { describe, expect, it } from 'vitest';
import { makePlan, planFor } from '@shared/plan/index.ts';
import { problemOf, type Problem } from '@shared/problem/index.ts';
import { pieceIn, type ProjectAt } from '@shared/project/index.ts';
import { bandsOf } from '@shared/pattern/index.ts';
import { words } from '@shared/words/index.ts';
import { projectWith } from '../fabric/pieces.ts';

const PLAIN = { motif: ['XX', 'X.'], copies: [1], stitches: 10, rows: 10 };

function refusal(project: ProjectAt): Problem {
  try {
    makePlan(pieceIn(project));
  } catch (thrown) {
    return problemOf(thrown);
  }
  throw new Error('it was planned');
}

describe('what cannot be knitted as described', () => {
  it.each([
    {
      why: 'a choice that is not there',
      project: projectWith({ ...PLAIN, band: { choice: 8 } }),
      problem: { code: 'choice-unknown', facts: { given: 9, choices: 8 } },
    },
    {
      why: 'a motif that starts too high',
      project: projectWith({ ...PLAIN, band: { position: { kind: 'from-row', row: 10 } } }),
      problem: { code: 'rows-outside-piece', facts: { first: 10, last: 11, rows: 10 } },
    },
    {
      why: 'a motif taller than the front of the hem',
      project: projectWith({ ...PLAIN, group: { up: 2 }, piece: { hemRows: 6 } }),
      problem: { code: 'motif-taller-than-section', facts: { rows: 4, section: 'hem-front', available: 3 } },
    },
    {
      why: 'a hem longer than the piece',
      project: projectWith({ ...PLAIN, piece: { hemRows: 11 } }),
      problem: { code: 'hem-longer-than-piece', facts: { hem: 11, rows: 10 } },
    },
    {
      why: 'a motif without a figure',
      project: projectWith({ ...PLAIN, motif: ['..', '..'] }),
      problem: { code: 'no-figure', facts: { motif: 'trial motif' } },
    },
    {
      why: 'groups wider than the piece',
      project: projectWith({ ...PLAIN, copies: [6] }),
      problem: { code: 'groups-wider-than-piece', facts: { needed: 12 } },
    },
    {
      why: 'a motif that is gone',
      project: { ...projectWith(PLAIN), motifs: [] },
      problem: { code: 'motif-missing', facts: { motif: 'motif' } },
    },
    {
      why: 'more changes than rows to make them on',
      project: projectWith({
        ...PLAIN,
        piece: { shape: { kind: 'tapered', stitches: 10, stitchesAtTop: 40, rows: 10, straightRows: 2 } },
      }),
      // Row 1 is cast on and rows 9 and 10 are straight: rows 2–8.
      problem: { code: 'shaping-impossible', facts: { changes: 15, rows: 7 } },
    },
  ])('$why', ({ project, problem }) => {
    const found = refusal(project);
    expect(found).toMatchObject(problem);
    expect(words.problems.sentence(found)).not.toMatch(/undefined|NaN|\[object/);
  });

  it('two bands on the same needles of the same row', () => {
    const project = projectWith({ ...PLAIN, band: { position: { kind: 'from-row', row: 4 } } });
    const [band] = bandsOf(project);
    if (!band) throw new Error('no band');
    const second = (row: number) => ({
      ...project,
      patterns: [band, { ...band, position: { kind: 'from-row' as const, row } }],
    });
    expect(refusal(second(5))).toMatchObject({ code: 'bands-overlap', facts: { one: 1, other: 2, first: 5, last: 5 } });
    expect(makePlan(pieceIn(second(6))).groups).toHaveLength(2);
  });

  it('bands side by side may share rows', () => {
    const project = projectWith(PLAIN);
    const [band] = bandsOf(project);
    if (!band) throw new Error('no band');
    const byHand = (first: number) => ({ ...band, rule: { kind: 'by-hand' as const, first: [first as never] } });
    expect(makePlan(pieceIn({ ...project, patterns: [byHand(-5), byHand(2)] })).groups).toHaveLength(2);
  });
});

describe('the plan of a project', () => {
  it('is worked out once for one project value', () => {
    const project = projectWith(PLAIN);
    expect(planFor(pieceIn(project))).toBe(planFor(pieceIn(project)));
    expect(planFor(pieceIn({ ...project, name: 'renamed' }))).toBe(planFor(pieceIn(project)));
    const moved = { ...project, piece: { ...project.piece, offset: 1 } };
    expect(planFor(pieceIn(moved))).not.toBe(planFor(pieceIn(project)));
  });

  it('is the problem where there is no plan', () => {
    const project = projectWith({ ...PLAIN, copies: [6] });
    expect(planFor(pieceIn(project))).toMatchObject({ ok: false, problem: { code: 'groups-wider-than-piece' } });
  });
});
