import { describe, expect, it } from 'vitest';
import { makePlan, needlesOf, planFor } from '@shared/knitting/index.ts';
import { label } from '@shared/bed/index.ts';
import { problemOf, type Problem } from '@shared/problem/index.ts';
import type { Project } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { projectWith } from './pieces.ts';

const PLAIN = { motif: ['XX', 'X.'], copies: [1], stitches: 10, rows: 10 };

function refusal(project: Project): Problem {
  try {
    makePlan(project);
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
      why: 'a piece wider than the bed',
      project: projectWith({ ...PLAIN, piece: { bed: { needles: 9, pitchMm: 4.5 } } }),
      problem: { code: 'off-the-bed', facts: { stitches: 10, first: 'L5', last: 'R5', needles: 9 } },
    },
    {
      why: 'a piece pushed off the bed',
      project: projectWith({ ...PLAIN, piece: { bed: { needles: 12, pitchMm: 4.5 }, offset: 2 } }),
      problem: { code: 'off-the-bed', facts: { stitches: 10, first: 'L3', last: 'R7', needles: 12 } },
    },
    {
      why: 'a sleeve that outgrows the bed',
      project: projectWith({
        ...PLAIN,
        piece: {
          bed: { needles: 12, pitchMm: 4.5 },
          shape: { kind: 'tapered', stitches: 10, stitchesAtTop: 16, rows: 10, straightRows: 0 },
        },
      }),
      problem: { code: 'off-the-bed', facts: { stitches: 16, first: 'L8', last: 'R8', needles: 12 } },
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
      problem: { code: 'shaping-impossible', facts: { changes: 15, rows: 8 } },
    },
  ])('$why', ({ project, problem }) => {
    const found = refusal(project);
    expect(found).toMatchObject(problem);
    expect(words.problems.sentence(found)).not.toMatch(/undefined|NaN|\[object/);
  });

  it('two bands on the same needles of the same row', () => {
    const project = projectWith({ ...PLAIN, band: { position: { kind: 'from-row', row: 4 } } });
    const [band] = project.bands;
    if (!band) throw new Error('no band');
    const second = (row: number) => ({
      ...project,
      bands: [band, { ...band, position: { kind: 'from-row' as const, row } }],
    });
    expect(refusal(second(5))).toMatchObject({ code: 'bands-overlap', facts: { one: 1, other: 2, first: 5, last: 5 } });
    expect(makePlan(second(6)).groups).toHaveLength(2);
  });

  it('bands side by side may share rows', () => {
    const project = projectWith(PLAIN);
    const [band] = project.bands;
    if (!band) throw new Error('no band');
    const byHand = (first: number) => ({ ...band, rule: { kind: 'by-hand' as const, first: [first as never] } });
    expect(makePlan({ ...project, bands: [byHand(-5), byHand(2)] }).groups).toHaveLength(2);
  });
});

describe('the needles of a bed', () => {
  // L40 to R40 is 80 stitches: common practice, no source
  it.each([
    [80, 'L40', 'R40'],
    [200, 'L100', 'R100'],
    [115, 'L57', 'R58'],
    [1, 'R1', 'R1'],
  ])('of %i are %s to %s', (needles, first, last) => {
    const run = needlesOf(needles);
    expect([label(run.first), label(run.last)]).toEqual([first, last]);
  });

  it('hold a piece that fits exactly', () => {
    expect(makePlan(projectWith({ ...PLAIN, piece: { bed: { needles: 10, pitchMm: 4.5 } } })).rows).toHaveLength(10);
  });
});

describe('the plan of a project', () => {
  it('is worked out once for one project value', () => {
    const project = projectWith(PLAIN);
    expect(planFor(project)).toBe(planFor(project));
    expect(planFor({ ...project })).not.toBe(planFor(project));
  });

  it('is the problem where there is no plan', () => {
    const project = projectWith({ ...PLAIN, copies: [6] });
    expect(planFor(project)).toMatchObject({ ok: false, problem: { code: 'groups-wider-than-piece' } });
  });
});
