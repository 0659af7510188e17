/** How the edges of a fill meet, against the picture of the fabric rolled into a tube, on random pieces. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changeFor, seamFits, type Intent } from '@shared/check/index.ts';
import { seamMatchingOf, type SeamMeeting, type PlacedAllOver } from '@shared/fabric/index.ts';
import type { Grid } from '@shared/grid/index.ts';
import type { Shape } from '@shared/piece/index.ts';
import { makePlan, type Plan } from '@shared/plan/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { allOversOf, type AllOver } from '@shared/pattern/index.ts';
import { afterChange, pieceIn, START_PIECE, startAllOver, type Change, type ProjectAt } from '@shared/project/index.ts';
import { byEye, isMet, projectOf, seenOf } from './seam-tube.ts';
import { onRows, settled } from '../written-projects.ts';

const count = (least: number, most: number) => fc.integer({ min: least, max: most });

/** Small repeats, many of them with rows that repeat sooner or are their own mirror image. */
const anyRepeat: fc.Arbitrary<Grid> = fc
  .record({ width: count(2, 9), height: count(1, 4), bits: fc.array(fc.nat(1), { minLength: 36, maxLength: 36 }) })
  .chain(({ width, height, bits }) =>
    fc.array(fc.constantFrom('any', 'half', 'mirror'), { minLength: height, maxLength: height }).map((kinds) => {
      const cells = new Uint8Array(width * height);
      kinds.forEach((kind, row) => {
        for (let column = 0; column < width; column++) {
          const half = width % 2 === 0 ? width / 2 : width;
          const at =
            kind === 'half' ? column % half : kind === 'mirror' ? Math.min(column, width - 1 - column) : column;
          cells[row * width + column] = bits[row * 9 + at] as number;
        }
      });
      if (cells.every((cell) => cell === 0)) cells[0] = 1;
      return { width, height, cells };
    }),
  );

const anyPiece = fc
  .record({
    stitches: count(22, 50),
    rows: count(3, 24),
    kind: fc.constantFrom('rectangle' as const, 'tapered' as const, 'body' as const),
    by: count(-4, 9),
    oddStitch: fc.constantFrom('left' as const, 'right' as const),
    left: count(0, 3),
    right: count(0, 3),
    face: fc.constantFrom('knit' as const, 'purl' as const),
  })
  .map(({ stitches, rows, kind, by, oddStitch, left, right, face }) => {
    const shape: Shape =
      kind === 'rectangle'
        ? { kind, stitches, rows }
        : kind === 'tapered'
          ? { kind, stitches, stitchesAtTop: stitches + by, rows: rows + 6, straightRows: 2 }
          : {
              kind,
              stitches,
              stitchesAtWaist: stitches - 2,
              stitchesAtChest: stitches + 1,
              rowsToWaist: 2,
              rowsToChest: 3,
              rows: rows + 4,
            };
    return { ...START_PIECE, shape, oddStitch, finishedFace: face, seamAllowance: { left, right } };
  });

const anyFill = fc
  .record({
    unit: fc.constant('whole' as const),
    isMirrored: fc.boolean(),
    position: count(1, 3).map((first) => onRows(first)),
    border: fc.oneof(
      { arbitrary: fc.constant({ left: 0, right: 0 }), weight: 4 },
      fc.record({ left: count(0, 4), right: count(0, 4) }),
    ),
    centre: fc.constantFrom('column' as const, 'between' as const),
    shift: count(-6, 6),
    step: fc.oneof(fc.constant(0), count(-4, 4)),
  })
  .map((fill): AllOver => ({ ...startAllOver('m', 1), endNeedles: false, ...fill }));

const anyFilled: fc.Arbitrary<ProjectAt> = fc
  .tuple(anyRepeat, anyPiece, anyFill)
  .map(([grid, piece, fill]) => projectOf(grid, piece, fill));

const placedIn = (plan: Plan): PlacedAllOver => allOversOf(plan)[0] as PlacedAllOver;

describe('the fabric rolled into a tube', () => {
  it('shows at the seam of every row what seam matching says of it', () => {
    const seen = { continues: 0, mirrors: 0, off: 0, plain: 0 };
    fc.assert(
      fc.property(anyFilled, (project) => {
        const plan = makePlan(pieceIn(project));
        const { rows, runs, matching, mirrored, off, plain, uniform } = seamMatchingOf(placedIn(plan), plan.outline);
        const expected = byEye(project, plan);
        // As near either way: too many is said.
        expect(rows).toEqual(expected);
        for (const { kind } of rows) seen[kind]++;
        // A row of one yarn shows no seam, and goes with the rows around it.
        const { firstRow } = placedIn(plan);
        const isOfOneYarn = rows.map(
          ({ kind }, at) =>
            kind !== 'plain' && new Set(seenOf(plan, firstRow + at, project.piece.seamAllowance)).size === 1,
        );
        const ofKind = (wanted: SeamMeeting['kind']): number =>
          expected.filter(({ kind }, at) => kind === wanted && !isOfOneYarn[at]).length;
        expect([matching, mirrored, off, plain, uniform]).toEqual([
          ofKind('continues'),
          ofKind('mirrors'),
          ofKind('off'),
          ofKind('plain'),
          isOfOneYarn.filter(Boolean).length,
        ]);
        const spread = runs.flatMap(({ first, last, meeting }) => Array<SeamMeeting>(last - first + 1).fill(meeting));
        expect(spread).toHaveLength(rows.length);
        expect(runs[0]?.first).toBe(firstRow);
        rows.forEach((meeting, at) => {
          if (!isOfOneYarn[at]) expect(spread[at]).toEqual(meeting);
        });
        expect(runs.every(({ meeting }, at) => JSON.stringify(meeting) !== JSON.stringify(runs[at + 1]?.meeting))).toBe(
          true,
        );
      }),
      { numRuns: 400, seed: 71 },
    );
    for (const kind of Object.values(seen)) expect(kind).toBeGreaterThan(150);
  });

  it('matches on every row once a stitch count that is offered is taken, and at none that is nearer', () => {
    const seen = { fewer: 0, more: 0, none: 0 };
    fc.assert(
      fc.property(anyFilled, (project) => {
        const plan = makePlan(pieceIn(project));
        const fits = seamFits(pieceIn(project), plan, placedIn(plan));
        if (isMet(byEye(project, plan))) {
          expect(fits).toEqual({ fewer: null, more: null });
          return;
        }
        const width = project.motifs[0]?.grid.width as number;
        const metBy = (changed: ProjectAt): boolean => {
          const made = outcome(() => makePlan(pieceIn(changed)));
          return made.ok && isMet(byEye(changed, made.value));
        };
        for (const way of ['fewer', 'more'] as const) {
          const fit = fits[way];
          const sign = way === 'more' ? 1 : -1;
          for (let by = 1; by < (fit ? Math.abs(fit.by) : width + 1); by++) {
            expect(metBy(widerBy(project, sign * by))).toBe(false);
          }
          if (!fit) continue;
          expect(Math.sign(fit.by)).toBe(sign);
          expect(taken(project, fit.intent)).toEqual(widerBy(project, fit.by));
          expect(metBy(taken(project, fit.intent))).toBe(true);
          seen[way]++;
        }
        // Where the pattern lies changes nothing: what is beyond the seam is moved by the stitches of the row.
        for (let by = 1; by < width; by++) expect(metBy(shiftedBy(project, by))).toBe(false);
        if (!fits.fewer && !fits.more) seen.none++;
      }),
      { numRuns: 150, seed: 72 },
    );
    for (const kind of Object.values(seen)) expect(kind).toBeGreaterThan(8);
  });
});

/** The project with what is intended done. */
function taken(project: ProjectAt, intent: Intent): ProjectAt {
  return afterChange(project, changeFor(project, intent) as Change);
}

/** The pattern of every fill `by` needles to the right. */
function shiftedBy(project: ProjectAt, by: number): ProjectAt {
  return { ...project, patterns: allOversOf(project).map((fill) => ({ ...fill, shift: fill.shift + by })) };
}

/** Every row of the shape `by` stitches wider. */
function widerBy(project: ProjectAt, by: number): ProjectAt {
  const { shape } = project.piece;
  const wider = Object.fromEntries(
    Object.entries(shape).map(([key, value]) => [
      key,
      key.startsWith('stitches') ? (value as number) + by : (value as unknown),
    ]),
  ) as unknown as Shape;
  return settled(project, { piece: { ...project.piece, shape: wider } });
}
