import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { label } from '@shared/bed/index.ts';
import { rowListCsv } from '@shared/output/index.ts';
import { makePlan, type Plan } from '@shared/plan/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { allOversOf, bandsOf } from '@shared/pattern/index.ts';
import { projectAt, pieceIn, inSize, sampleProject, sizesOf, type ProjectAt } from '@shared/project/index.ts';
import { anyFilledProject } from '../property/filled-projects.ts';
import { anyProject } from '../property/projects.ts';
import { knit, MAIN, readCsv, type Picture } from './bed-simulated.ts';
import { placedDesign } from './placed-design.ts';

const asText = (picture: Picture): string[] =>
  picture
    .map((row) => row.map((yarn) => (yarn === null ? ' ' : yarn === MAIN ? '.' : yarn.charAt(0))).join(''))
    .reverse();

/** The plan of a project that can be knitted; what cannot must have been refused by name. */
function planned(project: ProjectAt): Plan {
  const made = outcome(() => makePlan(pieceIn(project)));
  if (!made.ok) expect(made.problem.code).not.toBe('unexpected');
  fc.pre(made.ok);
  return (made as { value: Plan }).value;
}

/** Knits the row list, and finds the picture and the wraps that were planned. Returns how many wraps there were. */
function knitAsPlaced(project: ProjectAt, plan: Plan): number {
  const { picture, wraps } = knit(rowListCsv(plan, pieceIn(project)), project.piece.finishedFace);
  expect(asText(picture)).toEqual(asText(placedDesign(project, plan)));
  expect(wraps).toEqual(plan.rows.map((row) => row.wraps.map(({ needle }) => label(needle))));
  return wraps.flat().length;
}

describe('a knitter with the row list', () => {
  it('knits the sample sleeve as it was placed', () => {
    const project = projectAt(sampleProject());
    const plan = makePlan(pieceIn(project));
    const { picture, wraps } = knit(rowListCsv(plan, pieceIn(project)), project.piece.finishedFace);
    expect(asText(picture)).toEqual(asText(placedDesign(project, plan)));
    // The lighthouse stands upright: its lamp is narrower than its rock.
    const seen = (row: number): number => (picture[row - 1] as string[]).filter((yarn) => yarn === 'chalk').length;
    expect([seen(25), seen(42)]).toEqual([4 * 13, 4 * 1]);
    expect(wraps.flat().length).toBeGreaterThan(0);
  });

  it('knits any piece as it was placed, and wraps only beside selected needles on the carriage side', () => {
    let knitted = 0;
    let wrapped = 0;
    fc.assert(
      fc.property(anyProject, (project) => {
        wrapped += knitAsPlaced(project, planned(project));
        knitted++;
      }),
      { numRuns: 300, seed: 60 },
    );
    expect(knitted).toBeGreaterThanOrEqual(300);
    expect(wrapped).toBeGreaterThan(300);
  });

  it('knits any fill as it was laid: clipped, stepped, mirrored, cut copies left out', () => {
    const seen = { leftOut: 0, cut: 0, stepped: 0, mirrored: 0, tapered: 0, withGroups: 0, knitted: 0 };
    fc.assert(
      fc.property(anyFilledProject, (project) => {
        const plan = planned(project);
        knitAsPlaced(project, plan);
        seen.knitted++;
        seen.leftOut += Number(allOversOf(plan).some(({ leftOut }) => leftOut.length > 0));
        seen.cut += Number(allOversOf(plan).some(({ clipped }) => clipped.length > 0));
        seen.stepped += Number(allOversOf(plan).some(({ step }) => step !== 0));
        seen.mirrored += Number(allOversOf(project).some(({ isMirrored }) => isMirrored));
        seen.tapered += Number(project.piece.shape.kind !== 'rectangle');
        seen.withGroups += Number(bandsOf(project).length > 0);
      }),
      { numRuns: 300, seed: 62, maxSkipsPerRun: 2000 },
    );
    for (const count of Object.values(seen)) expect(count).toBeGreaterThan(5);
  });

  it('knits every size of a project as that size was placed', () => {
    let knitted = 0;
    fc.assert(
      fc.property(anyProject, (project) => {
        const several = sizesOf(project).length;
        fc.pre(several > 1);
        for (let index = 0; index < several; index++) {
          const there = inSize(project, index);
          const made = outcome(() => makePlan(pieceIn(there)));
          if (!made.ok) {
            expect(made.problem.code).not.toBe('unexpected');
            continue;
          }
          const { picture } = knit(rowListCsv(made.value, pieceIn(there)), there.piece.finishedFace);
          expect(asText(picture)).toEqual(asText(placedDesign(there, made.value)));
          expect(picture).toHaveLength(there.piece.shape.rows);
          knitted++;
        }
      }),
      { numRuns: 80, seed: 62 },
    );
    expect(knitted).toBeGreaterThan(60);
  });

  it('wraps the needle beside every isolated figure that has one, once a row for one ball', () => {
    fc.assert(
      fc.property(anyProject, (any) => {
        const project: ProjectAt = {
          ...any,
          machine: { ...any.machine, endNeedles: 'switch' },
          patterns: bandsOf(any).map((band) => ({
            ...band,
            endNeedles: false,
            groups: band.groups.map((group) => ({ ...group, hasOwnBall: false })),
          })),
        };
        const plan = planned(project);
        const csv = rowListCsv(plan, pieceIn(project));
        const { wraps } = knit(csv, project.piece.finishedFace);
        expect(wraps.map((row) => [...row].sort())).toEqual(wrapsByEye(csv, project.piece.seamAllowance));
      }),
      { numRuns: 150, seed: 61 },
    );
  });
});

/**
 * The needle outward of each contrast yarn's outermost one on the carriage side, if it knits main, was in work before
 * this row, and is not taken by the seam.
 */
function wrapsByEye(csv: string, seam: { readonly left: number; readonly right: number }): string[][] {
  const [header = [], ...lines] = readCsv(csv);
  const position = (name: string): number =>
    name.startsWith('L') ? -Number(name.slice(1)) : Number(name.slice(1)) - 1;
  const name = (at: number): string => (at < 0 ? `L${-at}` : `R${at + 1}`);
  const edgesOf = (cells: readonly string[]): readonly [number, number] => {
    const [first = '', last = first] = (cells[header.indexOf('Stitches on')] ?? '').split('-');
    return [position(first), position(last)];
  };
  return lines.map((cells, index) => {
    const cell = (title: string): string => cells[header.indexOf(title)] ?? '';
    const edges = edgesOf(cells);
    const before = index === 0 ? edges : edgesOf(lines[index - 1] ?? []);
    const runs = header
      .filter((title) => title.startsWith('Needles in '))
      .map((title) => cell(title).split(' ').filter(Boolean))
      .filter((found) => found.length > 0)
      .map((found) => found.map((run) => run.split('-').map(position) as [number, number?]));
    const isSelected = (at: number): boolean => runs.flat().some(([first, last = first]) => at >= first && at <= last);
    const outward = runs.map((found) => {
      const ends = found.flat() as number[];
      return cell('Carriage at') === 'left' ? Math.min(...ends) - 1 : Math.max(...ends) + 1;
    });
    return [...new Set(outward)]
      .filter((at) => at >= edges[0] + seam.left && at <= edges[1] - seam.right && !isSelected(at))
      .filter((at) => at >= before[0] && at <= before[1])
      .map(name)
      .sort();
  });
}

describe('the simulated bed', () => {
  const list = (...lines: string[]): string =>
    ['Row,Carriage at,Section,Stitches on,Needles in chalk,Wrap', ...lines].map((line) => `${line}\r\n`).join('');
  const castOn = '1,right,body,L3-R3,,';

  it('shows the knit side mirrored and the purl side as it hangs', () => {
    const csv = list(castOn, '2,left,body,L3-R3,L3-L2 R2,');
    expect(asText(knit(csv, 'purl').picture)).toEqual(['cc..c.', '......']);
    expect(asText(knit(csv, 'knit').picture)).toEqual(['.c..cc', '......']);
  });

  it.each([
    [
      'a carriage that starts from where it is not',
      [castOn, '2,right,body,L3-R3,,'],
      'the carriage stands at the left',
    ],
    ['a row counter that jumps', [castOn, '3,left,body,L3-R3,,'], 'the row counter stands at 1'],
    ['a needle that is not in work', [castOn, '2,left,body,L3-R3,L4,'], 'L4 is not in work'],
    ['a needle 0', [castOn, '2,left,body,L3-R3,L0,'], '"L0" is no needle'],
    ['a wrap on a selected needle', [castOn, '2,left,body,L3-R3,L2,L2'], 'L2 is selected'],
    ['a wrap away from the figure', [castOn, '2,left,body,L3-R3,R1,L2'], 'L2 has no selected needle beyond it'],
    ['a wrap on the far side', [castOn, '2,left,body,L3-R3,R1,R2'], 'R2 has no selected needle beyond it'],
    ['a wrap beside the piece', [castOn, '2,left,body,L3-R3,L3,L4'], 'L4 is not in work'],
    ['a piece that was not cast on', ['1,right,body,,,'], 'nothing is cast on'],
  ])('stops at %s', (_, lines, what) => {
    expect(() => knit(list(...lines), 'knit')).toThrow(what);
  });

  it('reads quoted fields as RFC 4180 has them', () => {
    expect(readCsv('a,"b ""c"", d",\r\n"e\r\nf",g,h')).toEqual([
      ['a', 'b "c", d', ''],
      ['e\r\nf', 'g', 'h'],
    ]);
  });
});
