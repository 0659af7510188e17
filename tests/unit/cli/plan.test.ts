import { afterAll, describe, expect, it } from 'vitest';
import { findingsOf, gathered } from '@shared/check/index.ts';
import { gridFromText } from '@shared/grid/index.ts';
import type { Section } from '@shared/piece/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { pieceIn, projectAt, sampleProject, startAllOver, startBand, type ProjectAt } from '@shared/project/index.ts';
import type { PlanJson, RowJson } from '../../../src-main/cli/json/plan.ts';
import { IN_SECTION, THREE_YARNS } from '../check/mendable.ts';
import { blankColumnMotif, call, callJson, Folder } from './calls.ts';
import { fileTextOf, settled } from '../../written-projects.ts';

const folder = new Folder();
afterAll(() => folder.remove());

const motif = folder.motif('motif.pbm', blankColumnMotif(31));
const sample = folder.file('sample.walewright', fileTextOf(projectAt(sampleProject())));
const plan = (...typed: string[]): Promise<PlanJson> => callJson<PlanJson>('plan', ...typed);
const row = ({ rows }: PlanJson, number: number): RowJson => rows[number - 1] as RowJson;

describe('plan says beside the stitches', () => {
  // 120 stitches at 28 in 10 cm, 100 rows at 40 in 10 cm; 3 to 4 widths, 1½ to 2 seams: common practice, no source.
  const typed = [motif, '--stitches', '120', '--copies', '3', '--gauge', '28x40', '--rows', '100'];

  it('what casting off, sewing up and ends take', async () => {
    const sewn = await plan(...typed, '--seam-allowance', '1');
    expect(sewn.yarn.finishing).toMatchObject({
      castOff: { widthMm: 428.571, leastMetres: 1.286, mostMetres: 1.714 },
      sewing: { seamMm: 250, leastMetres: 0.375, mostMetres: 0.5 },
    });
    // 15 cm at each end of the main yarn and of one contrast.
    expect(sewn.yarn.finishing.tails).toEqual({ metres: 0.6 });
    const neither = await plan(...typed, '--seam-allowance', '0', '--ends', 'on-a-thread');
    expect(neither.yarn.finishing).toMatchObject({ castOff: null, sewing: null });
    const { out } = await call('plan', ...typed, '--seam-allowance', '1');
    expect(out).toContain('Sewing up takes 38 cm to 50 cm');
  });

  it('that a pattern wants a swatch of its own, or what its gauge does to the width', async () => {
    const { swatches } = await plan(...typed);
    expect(swatches).toEqual([
      { pattern: 'band', number: 1, row: 1, stitches: 120, ownGauge: false, widthMm: 428.571, plainWidthMm: 428.571 },
    ]);
    expect((await call('plan', ...typed)).out).toContain('Knit a second swatch in the pattern');
    const [cuff, band] = IN_SECTION.piece.sections as [Section, Section];
    const sections = [cuff, { ...band, gauge: { stitches: 30, rows: 40 } }];
    const own = folder.file(
      'own-gauge.walewright',
      fileTextOf(settled(IN_SECTION, { piece: { ...IN_SECTION.piece, sections } })),
    );
    // 20 stitches at 30 in 10 cm against 28.
    expect((await plan(own)).swatches).toMatchObject([
      { stitches: 20, ownGauge: true, widthMm: 66.667, plainWidthMm: 71.429 },
    ]);
    expect((await call('plan', own)).out).toContain(
      '6.7 cm wide at the gauge of their section, 0.5 cm narrower than plain fabric (7.1 cm)',
    );
  });
});

describe('plan of a piece whose size was given in centimetres', () => {
  it('keeps to it at another gauge, where rows that were counted stay', async () => {
    const { piece, ...others } = projectAt(sampleProject());
    const shape = { kind: 'rectangle', stitches: 126, rows: 140 } as const;
    const project: ProjectAt = { ...others, piece: { ...piece, shape, lengths: { stitches: 450 } } };
    const made = await plan(folder.file('wide.walewright', fileTextOf(project)), '--gauge', '30x50');
    // 45 cm at 30 stitches in 10 cm
    expect(made.piece).toMatchObject({ stitches: 135, rows: 140, widthMm: 450 });
  });
});

describe('plan of a motif on a folded hem', () => {
  const hem = ['--stitches', '120', '--copies', '3,3', '--hem', '100'];

  // Common practice, no source: hem of 100 rows folded, motif of 31: 60 plain,
  // 61–91 pattern, 9 plain; set up with the counter at 59.
  it('knits 60 rows plain, the pattern on rows 61 to 91, and 9 plain', async () => {
    const made = await plan(motif, ...hem);
    // 28 stitches and 40 rows in 10 cm: 120 stitches are 428.571 mm, 100 rows 250 mm.
    expect(made.piece).toMatchObject({
      stitches: 120,
      rows: 100,
      widthMm: 428.571,
      lengthMm: 250,
      sections: [
        { name: 'hem facing', first: 1, last: 50, lengthMm: 125, gauge: { stitches: 28, rows: 40 } },
        { name: 'hem outside', first: 51, last: 100, lengthMm: 125, gauge: { stitches: 28, rows: 40 } },
      ],
    });
    expect(made.setUpAt).toBe(59);
    expect(made.groups).toEqual([
      { first: 'L48', last: 'L13', figureFirst: 'L47', figureLast: 'L13', firstRow: 61, lastRow: 91 },
      { first: 'R12', last: 'R47', figureFirst: 'R13', figureLast: 'R47', firstRow: 61, lastRow: 91 },
    ]);
    const patterned = made.rows.filter(({ contrast }) => contrast.length > 0).map(({ row: number }) => number);
    expect(patterned).toEqual(Array.from({ length: 31 }, (_, i) => 61 + i));
    expect(made.rows.map(({ row: number }) => number)).toEqual(Array.from({ length: 100 }, (_, i) => i + 1));
  });

  it('starts on another row if told so, and is longer if told so', async () => {
    const made = await plan(motif, ...hem, '--first-row', '10', '--rows', '150');
    expect(made.groups[0]).toMatchObject({ firstRow: 10, lastRow: 40 });
    // 50 rows of 2.5 mm
    expect(made.piece.sections.at(-1)).toMatchObject({ name: 'main part', first: 101, last: 150, lengthMm: 125 });
  });

  it('carries on from the side where the carriage stands', async () => {
    const sides = async (...typed: string[]) =>
      (await plan(motif, ...hem, ...typed)).rows.slice(0, 3).map(({ from }) => from);
    expect(await sides()).toEqual(['right', 'left', 'right']);
    expect(await sides('--start-side', 'left')).toEqual(['left', 'right', 'left']);
  });

  it('takes the placing asked for', async () => {
    const placed = await callJson<{ choices: { groups: { first: string }[] }[] }>('place', motif, ...hem.slice(0, 4));
    const made = await plan(motif, ...hem, '--choice', '2');
    expect(made.groups.map(({ first }) => first)).toEqual(placed.choices[1]?.groups.map(({ first }) => first));
  });

  // Worked by hand: one row, contrast on two groups, 24 needles apart.
  it('finds the float between the groups, and none with a ball for each', async () => {
    const between = { yarn: 'contrast', first: 'L12', last: 'R12', stitches: 24, held: [], over: true };
    expect(row(await plan(motif, ...hem), 61).floats).toContainEqual({ ...between, mm: 85.714 });
    expect(row(await plan(motif, ...hem, '--gauge', '24x30'), 61).floats).toContainEqual({ ...between, mm: 100 });
    const ownBalls = await plan(motif, ...hem, '--own-balls');
    expect(row(ownBalls, 61).floats.filter(({ stitches }) => stitches === 24)).toEqual([]);
    expect(row(ownBalls, 61).wraps).toEqual(['L12', 'R48']);
    expect(row(await plan(motif, ...hem), 61).wraps).toEqual(['R48']);
  });

  it('lets longer floats pass if told so', async () => {
    const over = async (...typed: string[]) =>
      (await plan(motif, ...hem, ...typed)).rows.flatMap(({ floats }) => floats).some((float) => float.over);
    expect([await over('--float-limit', '24'), await over('--float-limit', '23')]).toEqual([false, true]);
  });

  it('floats the contrast to the edges with end-needle selection on', async () => {
    const made = await plan(motif, ...hem, '--end-needles', 'on');
    expect(row(made, 61).floats.map(({ first }) => first)).toContain('L60');
    expect(made.findings.map(({ code }) => code)).toContain('contrast-to-edges');
  });
});

describe('plan of a motif without a hem', () => {
  it('begins with the motif and ends with it', async () => {
    const made = await plan(motif, '--stitches', '60', '--copies', '2');
    expect(made.piece).toMatchObject({ rows: 31, sections: [{ name: 'main part', first: 1, last: 31 }] });
    expect(made).toMatchObject({ setUpAt: null, groups: [{ firstRow: 1, lastRow: 31 }] });
    expect(made.findings.filter(({ blocks }) => blocks)).toEqual([]);
    expect(made.runningOrder?.[0]).toMatchObject({ counter: 0, row: 1, carriage: 'pattern', selecting: true });
  });

  it('ends with the motif where it begins later', async () => {
    const made = await plan(motif, '--stitches', '60', '--copies', '2', '--first-row', '3');
    expect(made).toMatchObject({ setUpAt: 1, piece: { rows: 33 }, groups: [{ firstRow: 3, lastRow: 33 }] });
  });

  // Munden 1959 with dry relaxed ks 19.0 (from memory): 28 × 40 in 10 cm is
  // 11.2 stitches a cm², so a loop of √(19.0 / 11.2) = 1.302 cm.
  it('says how much yarn a stitch and the piece take', async () => {
    const made = await plan(motif, '--stitches', '60', '--copies', '2');
    expect(made.yarn.loopMm).toBeCloseTo(13.02, 1);
    const contrastStitches = blankColumnMotif(31).join('').replaceAll('.', '').length * 2;
    expect(made.yarn.contrast.metres).toBeGreaterThan((contrastStitches * 13.02) / 1000);
    expect(made.yarn.main.metres).toBeGreaterThan(((60 * 31 - contrastStitches) * 13.02) / 1000);
    // One of each is wound, and that is all there is.
    expect(made.yarn.balls.map(({ role, group }) => [role, group])).toEqual([
      ['main', null],
      ['contrast', null],
    ]);
    expect(made.yarn.balls.map(({ metres }) => metres)).toEqual([made.yarn.main.metres, made.yarn.contrast.metres]);
  });
});

/** A dot at either end of a drawing of 20 stitches, two rows apart. */
const FAR = folder.file(
  'far.walewright',
  fileTextOf({
    ...projectAt(sampleProject()),
    motifs: [
      {
        id: 'far',
        name: 'far',
        grid: gridFromText([`X${'.'.repeat(19)}`, '.'.repeat(20), `${'.'.repeat(19)}X`], '.X'),
        shows: 'needles',
        isLettering: false,
        underlay: null,
      },
    ],
    patterns: [{ ...startBand('far', [1]), unit: 'whole' }],
  }),
);

describe('plan of a project', () => {
  it('has the piece and the placing of the project', async () => {
    const made = await plan(sample);
    expect(made.piece).toMatchObject({ stitches: 96, rows: 140 });
    expect(made).toMatchObject({ setUpAt: 23, groups: [{ firstRow: 25, lastRow: 42 }, { firstRow: 25 }] });
    expect(made.findings.length).toBeGreaterThan(0);
  });

  it('puts options in front of what the project says', async () => {
    const made = await plan(
      sample,
      '--rows',
      '160',
      '--copies',
      '1,1,1',
      '--first-row',
      '5',
      '--start-side',
      'left',
      '--own-balls',
    );
    expect(made.piece).toMatchObject({ stitches: 96, rows: 160 });
    expect(made.groups.map(({ firstRow }) => firstRow)).toEqual([5, 5, 5]);
    expect(row(made, 1).from).toBe('left');
    expect(row(made, 5).wraps).toHaveLength(3);
  });

  it('centres the motif in a hem that is given', async () => {
    const made = await plan(sample, '--hem', '60');
    expect(made.piece.sections.map(({ name }) => name)).toEqual(['hem facing', 'hem outside', 'main part']);
    expect(made.groups[0]).toMatchObject({ firstRow: 37, lastRow: 54 });
  });

  it('holds long floats up as it is told, and breaks them with anchors', async () => {
    const made = async (...typed: string[]) => {
      const { rows } = await plan(sample, ...typed);
      const over = rows.flatMap(({ floats }) => floats).filter((float) => float.over).length;
      return { over, held: rows.some(({ floats }) => floats.some(({ held }) => held.length > 0)), rows };
    };
    const asIs = await made();
    expect([asIs.over > 0, asIs.held]).toEqual([true, false]);
    expect(await made('--long-floats', 'left')).toEqual(asIs);
    const hooked = await made('--long-floats', 'hooked-up');
    expect([hooked.over, hooked.held]).toEqual([0, true]);
    const latched = await made('--long-floats', 'latched-up');
    expect([latched.over < asIs.over, latched.held]).toEqual([true, true]);
    expect(latched.rows).not.toEqual(hooked.rows);

    const anchored = ({ rows }: typeof asIs): number => rows.flatMap(({ anchors }) => anchors).length;
    const [none, ten, five] = [asIs, await made('--anchors', '10'), await made('--anchors', '5')];
    expect([none, ten, five].map(anchored)).toEqual([0, expect.any(Number), expect.any(Number)]);
    // With a tighter limit never fewer.
    expect(anchored(ten)).toBeGreaterThan(0);
    expect(anchored(five)).toBeGreaterThan(anchored(ten));
    expect(await made('--anchors', '0')).toEqual(asIs);
  });

  it('cuts and joins again what would be carried too far, if told so', async () => {
    // Figure at one end of the bed, and two rows on at the other: common practice, no source.
    const asIs = await plan(FAR);
    expect(asIs.rows.some(({ carries }) => carries.some(({ over }) => over))).toBe(true);
    expect(await plan(FAR, '--long-carries', 'carried')).toEqual(asIs);
    const cut = await plan(FAR, '--long-carries', 'cut');
    expect(cut.rows.flatMap(({ carries }) => carries).filter(({ over }) => over)).toEqual([]);
    expect(cut.rows.flatMap(({ cuts }) => cuts).map(({ because }) => because)).toContain('far-aside');
  });

  it('lays rows of three yarns by hand, or draws their rarest in another, if told so', async () => {
    const rows = folder.file('three-yarns.walewright', fileTextOf(THREE_YARNS));
    const made = async (...options: string[]) => {
      const { findings, rows: knitted } = await plan(rows, ...options);
      const many = findings.filter(({ code }) => code === 'many-yarns');
      return { many: many.map(({ leftAsIs }) => leftAsIs), runs: knitted.map(({ runs }) => runs) };
    };
    const asIs = await made();
    expect(asIs.many).toEqual([false]);
    expect(await made('--third-yarn', 'watched')).toEqual(asIs);
    expect(await made('--third-yarn', 'laid')).toEqual({ ...asIs, many: [true] });
    const redrawn = await made('--third-yarn', 'redrawn');
    expect(redrawn.many).toEqual([]);
    for (const runs of redrawn.runs) expect(new Set(runs.map(({ yarn }) => yarn)).size).toBeLessThanOrEqual(2);
    const { out } = await call('plan', rows, '--third-yarn', 'laid');
    expect(out.split('Left as it is')[1]).toContain('2 rows between');
  });

  it('mends all of its patterns, and adds none', async () => {
    const bars = folder.file('bars-to-mend.walewright', fileTextOf(barsOn(24)));
    const made = await plan(bars, '--float-limit', '1', '--long-floats', 'hooked-up');
    expect([made.groups.length, made.fills.length]).toEqual([0, 1]);
    expect(made.rows.flatMap(({ floats }) => floats).some(({ held }) => held.length > 0)).toBe(true);
  });
});

/** Bars of 2 stitches and 2 rows from edge to edge of 22 stitches, the same bar at both edges; nothing lies in the seam. */
function barsOn(stitches: number): ProjectAt {
  const sample = projectAt(sampleProject());
  const grid = gridFromText(['XX..', 'XX..', '..XX', '..XX'], '.X');
  return {
    ...sample,
    motifs: [{ id: 'bars', name: 'bars', grid, shows: 'needles', isLettering: false, underlay: null }],
    piece: {
      ...sample.piece,
      shape: { kind: 'rectangle', stitches, rows: 9 },
      seamAllowance: { left: 0, right: 0 },
    },
    patterns: [{ ...startAllOver('bars', 2), unit: 'whole', centre: 'between', shift: 1 }],
  };
}

describe('plan of an all-over pattern', () => {
  const project = (stitches: number): string =>
    folder.file(`bars-${stitches}.walewright`, fileTextOf(barsOn(stitches)));

  it('starts it above the hem that is asked for', async () => {
    const hemmed = {
      ...barsOn(22),
      patterns: [{ ...startAllOver('bars', { kind: 'above-hem', rows: 1 }), unit: 'whole' as const }],
    };
    const path = folder.file('above-hem.walewright', fileTextOf({ ...hemmed, piece: { ...hemmed.piece, hemRows: 2 } }));
    expect((await plan(path)).fills).toMatchObject([{ firstRow: 4, lastRow: 9 }]);
    expect((await plan(path, '--hem', '4', '--rows', '12')).fills).toMatchObject([{ firstRow: 6, lastRow: 12 }]);
  });

  it('tells rows that are a mirror image in the seam from those that match', async () => {
    const [fill] = (await plan(project(22))).fills;
    expect(fill?.seam).toEqual({
      matching: 0,
      mirrored: 8,
      off: 0,
      plain: 0,
      uniform: 0,
      rows: [{ first: 2, last: 9, meets: 'mirrored', stitches: 0 }],
    });
    expect((await call('plan', project(22))).out).toContain(
      'It does not match across the seam: a mirror image on all 8 rows.',
    );
    expect((await plan(project(24))).fills[0]?.seam).toMatchObject({ matching: 8, mirrored: 0, off: 0 });
    expect((await call('plan', project(24))).out).toContain('It matches across the seam on all 8 rows.');
    expect((await plan(project(23))).fills[0]?.seam.rows).toEqual([{ first: 2, last: 9, meets: 'off', stitches: -1 }]);
  });
});

describe('plan for people', () => {
  it('names needles, rows, yarn and what to look out for', async () => {
    const { status, out } = await call('plan', motif, '--stitches', '120', '--copies', '3,3', '--hem', '100');
    expect(status).toBe(0);
    for (const sentence of [
      'L48–L13',
      'hem outside',
      'Set pattern band 1 for row 61: L48 to L13, 3 copies of ',
      'Set the carriage to knit the pattern.',
      'R48',
      '93–99',
      'Hang the hem on L60–R60: 120 loops',
    ]) {
      expect(out).toContain(sentence);
    }
    expect(out).toContain('Keep loose sleeves and hair away');
    expect(out).not.toMatch(/[{}]|undefined|null|NaN/);
  });

  it('tells once what comes again in other copies', async () => {
    const { out } = await call('plan', sample);
    const [, found = ''] = /\nTo look out for\n([^]*?)\n\n/.exec(out) ?? [];
    const again = found
      .split('\n')
      .map((line) => /^.*?floats over (?:up to )?(\d+) .*?(?: in (\d+) more places?.*)?$/.exec(line));
    // Four lighthouses of 13 stitches across at the foot, with a gap of 34 between the pairs.
    expect(again.map((parts) => [parts?.[1], parts?.[2] ?? '0'])).toEqual([
      ['13', '3'],
      ['34', '0'],
      ['7', '7'],
      ['11', '1'],
      ['13', '1'],
    ]);
  });
});

describe('plan of a piece of which something is left as it is', () => {
  /** A file in which all of a code is left, and the codes that are. */
  function leaving(name: string, project: ProjectAt, code: string): string {
    const made = makePlan(pieceIn(project));
    const all = gathered(findingsOf(pieceIn(project), made), made.patterns);
    const leftAsIs = all.map(({ kind }) => kind).filter((kind) => kind.startsWith(`${code} `));
    expect(leftAsIs).not.toEqual([]);
    return folder.file(name, fileTextOf({ ...project, piece: { ...project.piece, leftAsIs } }));
  }
  const told = (out: string, title: string): string => new RegExp(`\\n${title}\\n([^]*?)\\n\\n`).exec(out)?.[1] ?? '';
  const own = projectAt(sampleProject());
  // Floats to leave, and letters of a name on two lines that would be seen mirrored.
  const lettered: ProjectAt = {
    ...own,
    motifs: own.motifs.map((one) => ({ ...one, name: 'ahoy\nthere', isLettering: true, shows: 'needles' })),
  };

  it('tells it after what is to be looked out for, and no remedy of it', async () => {
    const { out } = await call('plan', leaving('floats.walewright', lettered, 'long-floats'));
    expect(told(out, 'To look out for')).not.toContain('floats over');
    expect(told(out, 'To look out for')).toContain('has lettering');
    expect(told(out, 'Left as they are')).toMatch(/^( {2}The .* floats over .*\n?){5}$/);
    expect(out.indexOf('Left as they are')).toBeGreaterThan(out.indexOf('To look out for'));
    expect(out).not.toContain('What would help');
  });

  it('knows it though its name has no place on one line', async () => {
    const { out } = await call('plan', leaving('letters.walewright', lettered, 'mirrored-lettering'));
    expect(told(out, 'Left as they are')).toContain('ahoy there in group 1');
    expect(told(out, 'To look out for')).not.toContain('ahoy');
    expect(told(out, 'What would help')).not.toBe('');
  });

  it('marks each of it in JSON, and nothing else', async () => {
    const { findings } = await plan(leaving('marked.walewright', lettered, 'long-floats'));
    expect(findings.some(({ leftAsIs }) => !leftAsIs)).toBe(true);
    for (const { code, leftAsIs } of findings) expect(leftAsIs).toBe(code === 'long-floats');
  });
});

describe('plan of a piece that begins, ends and is knitted otherwise', () => {
  const acts = async (...typed: string[]) =>
    (await plan(sample, ...typed)).runningOrder?.flatMap((part) => ('acts' in part ? part.acts : []));

  it('is told so', async () => {
    expect(await acts()).toContainEqual(expect.objectContaining({ act: 'cast-on', how: 'closed' }));
    const made = await acts('--begins', 'open', '--ends', 'waste-yarn', '--machine', 'by-hand, no-weights');
    expect(made).toContainEqual(expect.objectContaining({ act: 'cast-on', how: 'open' }));
    expect(made).toContainEqual(expect.objectContaining({ act: 'finish', how: 'waste-yarn' }));
    expect(made?.filter(({ act }) => act === 'weights')).toEqual([]);
  });

  it.each([
    ['--begins', 'somehow', 'usual'],
    ['--ends', 'never', 'waste-yarn'],
    ['--machine', 'by-foot', 'by-hand'],
    ['--machine', 'weights,no-weights', 'one word'],
  ])('is refused for %s %s, with what can be said', async (option, value, allowed) => {
    const { status, warned } = await call('plan', sample, option, value);
    expect([status, warned]).toEqual([1, expect.stringContaining(allowed)]);
    expect(warned).toContain(option);
  });
});
