/**
 * How the edges of a fill meet, against the picture of the fabric rolled into a
 * tube and looked at stitch by stitch across the seam. Nothing here knows how
 * the program works it out: there are a fabric, a seam, and two edges.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changeFor, seamFits, type Intent } from '@shared/check/index.ts';
import { OUTSIDE, seamMatchingOf, type SeamMeeting } from '@shared/fabric/index.ts';
import { gridFromText, type Grid } from '@shared/grid/index.ts';
import type { Shape } from '@shared/piece/index.ts';
import { makePlan, type Plan } from '@shared/plan/index.ts';
import { outcome } from '@shared/problem/index.ts';
import type { Fill } from '@shared/pattern/index.ts';
import {
  START_MACHINE,
  applyChange,
  pieceIn,
  START_PIECE,
  START_SIZES,
  START_YARNS,
  startFill,
  type Change,
  type Project,
} from '@shared/project/index.ts';

/** The stitches that are seen of a row, left to right on the needles: those that the seam leaves. */
function seenOf({ fabric }: Plan, row: number, allowance: { left: number; right: number }): number[] {
  const cells = Array.from(fabric.cells.subarray((row - 1) * fabric.width, row * fabric.width));
  const stitches = cells.filter((cell) => cell !== OUTSIDE);
  return stitches.slice(allowance.left, stitches.length - allowance.right);
}

/**
 * A row that repeats after `width` stitches, rolled into a tube: walking on
 * from the right edge, each stitch must look like the one a repeat before it,
 * for as long as a repeat; or each like the one as far on the other side.
 */
function goesOn(seen: readonly number[], width: number, left: readonly number[]): boolean {
  // Walk off the right edge, over the seam, into the left.
  const walked = [...seen, ...left];
  return left.every((stitch, at) => stitch === walked[seen.length + at - width]);
}

/**
 * The stitches that would be seen of `row` on the needles of another row: its
 * repeat knitted on, or knitted less far, on either side.
 */
function seenOnNeedlesOf(
  { fabric, outline }: Plan,
  row: number,
  other: number,
  width: number,
  allowance: { left: number; right: number },
): number[] {
  const first = (outline.first[other - 1] as number) + allowance.left;
  const last = (outline.last[other - 1] as number) - allowance.right;
  const own = (outline.first[row - 1] as number) + allowance.left;
  return Array.from({ length: last - first + 1 }, (_, at) => {
    // From the leftmost needle that is seen of the row on: a stitch of the pattern wherever it is plain beyond that.
    const needle = own + ((((first + at - own) % width) + width) % width);
    return fabric.cells[(row - 1) * fabric.width + (needle - fabric.first)] as number;
  });
}

function isMirror(seen: readonly number[], width: number): boolean {
  return Array.from({ length: width }, (_, at) => seen[at] === seen[seen.length - 1 - at]).every(Boolean);
}

/**
 * By the tube alone: what a row shows at the seam. `beside` are the rows right
 * below and above it that do not go on themselves, on the needles of this one:
 * across the seam they must look on with it. Rows narrower than two repeats are
 * not asked.
 */
function meetingByEye(seen: readonly number[], beside: readonly (readonly number[])[], width: number): SeamMeeting {
  // A row of one yarn shows nothing of a seam, whatever stands beside it.
  if (new Set(seen).size === 1) return { kind: 'continues' };
  const rolled = [seen, ...beside];
  if (rolled.every((row) => goesOn(row, width, row.slice(0, width)))) return { kind: 'continues' };
  if (isMirror(seen, width)) return { kind: 'mirrors' };
  // Take stitches away at the right edge, or knit more of the repeat on, until it goes on.
  for (let by = 1; by <= width; by++) {
    const narrower = rolled.every((row) => goesOn(row.slice(0, row.length - by), width, row.slice(0, width)));
    if (narrower) return { kind: 'off', by };
    const wider = rolled.every((row) => {
      const longer = [...row];
      for (let more = 0; more < by; more++) longer.push(longer[longer.length - width] as number);
      return goesOn(longer, width, row.slice(0, width));
    });
    if (wider) return { kind: 'off', by: -by };
  }
  throw new Error('A repeat more or less always goes on');
}

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
    firstRow: count(1, 3),
    border: fc.oneof(
      { arbitrary: fc.constant({ left: 0, right: 0 }), weight: 4 },
      fc.record({ left: count(0, 4), right: count(0, 4) }),
    ),
    centre: fc.constantFrom('column' as const, 'between' as const),
    shift: count(-6, 6),
    step: fc.oneof(fc.constant(0), count(-4, 4)),
  })
  .map((fill): Fill => ({ ...startFill('m', 1), endNeedles: false, ...fill }));

const anyFilled: fc.Arbitrary<Project> = fc
  .tuple(anyRepeat, anyPiece, anyFill)
  .map(([grid, piece, fill]) => projectOf(grid, piece, fill));

function projectOf(grid: Grid, piece: Project['piece'], fill: Fill): Project {
  return {
    name: 'tube',
    notes: '',
    machine: START_MACHINE,
    yarns: START_YARNS,
    motifs: [{ id: 'm', name: 'm', grid, ground: 0, shows: 'needles', isLettering: false, underlay: null }],
    piece,
    sizes: START_SIZES,
    bands: [],
    fills: [fill],
  };
}

/** Rows of a fill and what the tube shows of each, from its first row up. */
function byEye(project: Project, plan: Plan): SeamMeeting[] {
  const [fill] = project.fills as [Fill];
  const { left, right } = project.piece.seamAllowance;
  const width = project.motifs[0]?.grid.width as number;
  return Array.from({ length: plan.outline.rows - fill.firstRow + 1 }, (_, at): SeamMeeting => {
    const plain = Math.max(0, fill.border.left - left) + Math.max(0, fill.border.right - right);
    if (plain > 0) return { kind: 'plain', stitches: plain };
    const row = fill.firstRow + at;
    const beside = [row - 1, row + 1]
      .filter((other) => other >= fill.firstRow && other <= plan.outline.rows)
      .filter((other) => {
        const own = seenOf(plan, other, { left, right });
        return !goesOn(own, width, own.slice(0, width));
      })
      .map((other) => seenOnNeedlesOf(plan, other, row, width, { left, right }));
    return meetingByEye(seenOf(plan, row, { left, right }), beside, width);
  });
}

const isMet = (meetings: readonly SeamMeeting[]): boolean =>
  meetings.every(({ kind }) => kind === 'continues' || kind === 'plain');

describe('the fabric rolled into a tube', () => {
  it('shows at the seam of every row what seam matching says of it', () => {
    const seen = { continues: 0, mirrors: 0, off: 0, plain: 0 };
    fc.assert(
      fc.property(anyFilled, (project) => {
        const plan = makePlan(pieceIn(project));
        const { rows, runs, matching, mirrored, off, plain, uniform } = seamMatchingOf(plan, 0);
        const expected = byEye(project, plan);
        // As near either way: too many is said.
        expect(rows).toEqual(expected);
        for (const { kind } of rows) seen[kind]++;
        // A row of one yarn shows no seam, and goes with the rows around it.
        const firstRow = project.fills[0]?.firstRow as number;
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
        const fits = seamFits(pieceIn(project), plan, 0);
        if (isMet(byEye(project, plan))) {
          expect(fits).toEqual({ fewer: null, more: null });
          return;
        }
        const width = project.motifs[0]?.grid.width as number;
        const metBy = (changed: Project): boolean => {
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
function taken(project: Project, intent: Intent): Project {
  return applyChange(project, changeFor(project, intent) as Change);
}

/** The pattern of every fill `by` needles to the right. */
function shiftedBy(project: Project, by: number): Project {
  return { ...project, fills: project.fills.map((fill) => ({ ...fill, shift: fill.shift + by })) };
}

/** Every row of the shape `by` stitches wider. */
function widerBy(project: Project, by: number): Project {
  const { shape } = project.piece;
  const wider = Object.fromEntries(
    Object.entries(shape).map(([key, value]) => [
      key,
      key.startsWith('stitches') ? (value as number) + by : (value as unknown),
    ]),
  ) as unknown as Shape;
  return { ...project, piece: { ...project.piece, shape: wider } };
}

describe('by hand', () => {
  const rectangle = (stitches: number, seam = 0): Project['piece'] => ({
    ...START_PIECE,
    shape: { kind: 'rectangle', stitches, rows: 3 },
    seamAllowance: { left: seam, right: seam },
  });
  const matching = (rows: readonly string[], piece: Project['piece'], fill: Partial<Fill> = {}) => {
    const project = projectOf(gridFromText(rows, '.X'), piece, {
      ...startFill('m', 1),
      endNeedles: false,
      unit: 'whole',
      ...fill,
    });
    const plan = makePlan(pieceIn(project));
    const seam = seamMatchingOf(plan, 0);
    return { plan, seam, runs: seam.runs, fits: seamFits(pieceIn(project), plan, 0) };
  };
  const TALL: Shape = { kind: 'rectangle', stitches: 22, rows: 4 };
  const CHECKS = ['XX..', 'XX..', '..XX', '..XX'];
  /** On 22 stitches, copies of 4 from the left edge on: 11 stitches left of the middle are 3 copies less 1. */
  const FROM_EDGE = { centre: 'between', shift: 1 } as const;

  it('goes on where the stitches seen are whole repeats', () => {
    // 6 stitches, 24 of them seen: 4 repeats round the tube. XX.X.. has no mirror image in itself.
    expect(matching(['XX.X..'], rectangle(24)).runs).toEqual([{ first: 1, last: 3, meeting: { kind: 'continues' } }]);
    // A stitch at each edge goes into the seam: 26 are to be knitted.
    expect(matching(['XX.X..'], rectangle(26, 1)).runs[0]?.meeting).toEqual({ kind: 'continues' });
  });

  it('is off by the stitches that are over, or missing where that is less', () => {
    // 26 = 4 × 6 + 2; 29 = 5 × 6 - 1; 27 is 3 from either.
    expect(matching(['XX.X..'], rectangle(26)).runs[0]?.meeting).toEqual({ kind: 'off', by: 2 });
    expect(matching(['XX.X..'], rectangle(29)).runs[0]?.meeting).toEqual({ kind: 'off', by: -1 });
    expect(matching(['XX.X..'], rectangle(27)).runs[0]?.meeting).toEqual({ kind: 'off', by: 3 });
  });

  it('is a mirror where both edges cut a figure alike, which is no match', () => {
    // A copy in the middle of 23 stitches: from there outwards both sides are alike, so the two edges are;
    // 23 is no multiple of 5.
    const cut = matching(['.XXX.'], rectangle(23));
    expect(cut.runs[0]?.meeting).toEqual({ kind: 'mirrors' });
    expect(cut.seam).toMatchObject({ matching: 0, mirrored: 3, off: 0 });
    // 20 and 25 are whole repeats.
    expect([cut.fits.fewer?.by, cut.fits.more?.by]).toEqual([-3, 2]);
    // Moved by one stitch it is no mirror, and 23 = 5 × 5 - 2.
    const moved = matching(['.XXX.'], rectangle(23), { shift: 1 });
    expect(moved.runs[0]?.meeting).toEqual({ kind: 'off', by: -2 });
    expect([moved.fits.fewer?.by, moved.fits.more?.by]).toEqual([-3, 2]);
  });

  it('makes a bar of 4 of two bars of 2, which is no match', () => {
    // Common practice, no source. Checks of 2 stitches and 2 rows on 22: each row begins and ends with the same
    // 2 stitches, so the seam shows 4 of one yarn side by side, where the pattern has 2.
    const { plan, seam, fits } = matching(CHECKS, { ...rectangle(22), shape: TALL }, FROM_EDGE);
    for (let row = 1; row <= 4; row++) {
      const seen = seenOf(plan, row, { left: 0, right: 0 });
      expect(new Set([...seen.slice(-2), ...seen.slice(0, 2)]).size).toBe(1);
    }
    expect(seam).toMatchObject({ matching: 0, mirrored: 4, off: 0 });
    expect([fits.fewer?.by, fits.more?.by]).toEqual([-2, 2]);
    // Two stitches fewer and it goes on.
    const shape = { ...TALL, stitches: 20 };
    expect(matching(CHECKS, { ...rectangle(20), shape }).seam).toMatchObject({
      matching: 4,
      mirrored: 0,
      off: 0,
    });
  });

  it('asks a row that repeats sooner to go on together with the rows beside it', () => {
    // On 21 stitches: 6 does not go into it and leaves 3. The row of XX. repeats after 3 and would go on by itself,
    // between rows that jump by 3.
    expect(matching(['XX.X..', 'XX.XX.'], rectangle(21)).runs).toEqual([
      { first: 1, last: 3, meeting: { kind: 'off', by: 3 } },
    ]);
    // Rows of one yarn between them part them: the eye has nothing to hold the one against the other.
    expect(matching(['XX.X..', '......', 'XX.XX.'], rectangle(21)).runs).toEqual([
      { first: 1, last: 2, meeting: { kind: 'continues' } },
      { first: 3, last: 3, meeting: { kind: 'off', by: 3 } },
    ]);
  });

  it('lets a row match that goes on where shaping puts the next one off', () => {
    const shape: Shape = { kind: 'steps', stitches: 24, rows: 3, steps: [{ row: 3, left: 1, right: 0 }] };
    expect(matching(['XX.X..'], { ...START_PIECE, shape }).runs).toEqual([
      { first: 1, last: 2, meeting: { kind: 'continues' } },
      { first: 3, last: 3, meeting: { kind: 'off', by: 1 } },
    ]);
  });

  it('shows nothing on rows of one yarn, which go with those below, or above at the bottom', () => {
    const { runs } = matching(['......', 'XX.X..', '......'], rectangle(26));
    expect(runs).toEqual([{ first: 1, last: 3, meeting: { kind: 'off', by: 2 } }]);
    expect(matching(['XXXXXX', '......'], rectangle(26)).runs).toEqual([
      { first: 1, last: 3, meeting: { kind: 'continues' } },
    ]);
  });

  it('changes row by row on a sleeve, which no stitch count can match', () => {
    const shape: Shape = { kind: 'tapered', stitches: 24, stitchesAtTop: 28, rows: 7, straightRows: 1 };
    // Increases on rows 3 and 6: 24, 24, 26, 26, 26, 28, 28 stitches.
    const { runs, fits } = matching(['XX.X..'], { ...START_PIECE, shape });
    expect(runs).toEqual([
      { first: 1, last: 2, meeting: { kind: 'continues' } },
      { first: 3, last: 5, meeting: { kind: 'off', by: 2 } },
      { first: 6, last: 7, meeting: { kind: 'off', by: -2 } },
    ]);
    expect(fits).toEqual({ fewer: null, more: null });
  });

  it('offers the nearest whole repeats', () => {
    const { fits } = matching(['XX.X..'], rectangle(26));
    expect([fits.fewer?.by, fits.more?.by]).toEqual([-2, 4]);
    expect(fits.fewer?.intent).toEqual({ code: 'widen', by: -2 });
  });

  it('is plain where the border ends short of the seam, by as much as is seen of it', () => {
    // The seam takes 1 of 3 plain stitches at the left and both at the right.
    const piece = { ...rectangle(26), seamAllowance: { left: 1, right: 2 } };
    expect(matching(['XX.X..'], piece, { border: { left: 3, right: 2 } }).runs[0]?.meeting).toEqual({
      kind: 'plain',
      stitches: 2,
    });
    // A border that the seam takes whole shows nothing of itself: 26 - 3 seen stitches are 4 × 6 - 1.
    expect(matching(['XX.X..'], piece, { border: { left: 1, right: 2 } }).runs[0]?.meeting).toEqual({
      kind: 'off',
      by: -1,
    });
  });

  it('is plain where the copies at the edges are left out', () => {
    // 4 whole copies and 1 stitch at each edge, whose copies are left out.
    const { runs } = matching(['XXXXXX'], rectangle(26), { centre: 'between', cutCopies: 'left-out' });
    expect(runs[0]?.meeting).toEqual({ kind: 'plain', stitches: 2 });
  });
});
