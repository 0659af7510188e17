/**
 * Amounts of yarn against what the plan says of them, worked out from the
 * fabric of the simulated knitter: casting off and seams, the length of a
 * stitch from wherever it is known, the margin, and sums over a garment.
 */
import { garmentNeed, planFor } from '@shared/plan/index.ts';
import { pieceIn, type ProjectAt } from '@shared/project/index.ts';
import type { Plan } from '@shared/plan/index.ts';
import type { LoopSource } from '@shared/piece/loop-model.ts';
import type { Knitted } from '../reference/knitter/index.ts';
import { END_MM, heightMm, stitchMm, wrappingMm, type GaugeOfRow, type Gauging } from '../reference/knitter/measure.ts';
import { positionOf } from '../reference/knitter/needles.ts';
import { MAIN, type Strand } from './strands.ts';
import { takenBy } from './strands-as-planned.ts';

/** The first amounts that the plan says otherwise; none where they agree. */
export function amountDifferences(
  project: ProjectAt,
  plan: Plan,
  knitted: Knitted,
  strands: readonly Strand[],
  gauging: Gauging,
): string[] {
  const finishing = finishingMm(project, knitted, gauging);
  return [
    ...finishingDiffers(project, plan, finishing),
    ...loopsDiffer(project, strands, gauging),
    ...garmentDiffers(project, plan, knitted, strands, gauging, finishing),
  ];
}

interface FinishingMm {
  readonly castOff: number;
  readonly sewing: number;
}

/** Common practice, no source: 3 to 4 widths to cast off, 1½ to 2 lengths of a seam, the middle of each; an edge is half a seam. */
function finishingMm({ piece }: ProjectAt, { fabric, finish }: Knitted, gauging: Gauging): FinishingMm {
  const last = fabric.at(-1);
  if (!last) return { castOff: 0, sewing: 0 };
  const [left, right] = last.edges.map(positionOf) as [number, number];
  const edges = Number(piece.seamAllowance.left > 0) + Number(piece.seamAllowance.right > 0);
  const width = (right - left + 1) * stitchMm(gauging(last.row));
  return {
    castOff: finish[0]?.how === 'cast-off' ? ((3 + 4) / 2) * width : 0,
    sewing: ((1.5 + 2) / 2) * (edges / 2) * heightMm(gauging, 0, last.row),
  };
}

function isAlike(one: number, other: number): boolean {
  return Math.abs(one - other) <= 1e-6 * Math.max(1, Math.abs(one), Math.abs(other));
}

function finishingDiffers({ mainYarn }: ProjectAt, { yarn }: Plan, { castOff, sewing }: FinishingMm): string[] {
  const spans = [
    ['casting off', castOff, yarn.finishing.castOff?.mm, [3, 4]],
    ['sewing up', sewing, yarn.finishing.sewing?.mm, [1.5, 2]],
  ] as const;
  const told = spans.flatMap(([what, middle, span, [least, most]]) => {
    const should = [least, most].map((times) => (middle * times * 2) / (least + most));
    const said = [span?.least ?? 0, span?.most ?? 0];
    return said.every((mm, at) => isAlike(mm, should[at] as number))
      ? []
      : [`${what}: ${should.join(' to ')} mm, not ${said.join(' to ')}`];
  });
  const inUses = yarn.uses.flatMap((use) => {
    const should = use.yarn === mainYarn ? [castOff, sewing] : [0, 0];
    const said = [use.castOffMm, use.sewingMm];
    return said.every((mm, at) => isAlike(mm, should[at] as number))
      ? []
      : [`casting off and sewing up with yarn ${use.yarn}: ${should.join(', ')} mm, not ${said.join(', ')}`];
  });
  return [...told, ...inUses];
}

/** Stitches in a cm² are ks / l² (Munden, J. Text. Inst. 50 (1959) T448), so that l goes with the root of 1 / S from gauge to gauge. */
function loopAt({ stitches, rows }: GaugeOfRow, ks: number): number {
  return 10 * Math.sqrt(ks / ((stitches * rows) / 100));
}

/** The constant of a fabric of which a stitch takes so much at a gauge. */
function ksOf({ stitches, rows }: GaugeOfRow, mm: number): number {
  return ((stitches * rows) / 100) * (mm / 10) ** 2;
}

/** The same fabric, its stitches known in each of the ways; handbook constants from memory, as in the text books after Munden. */
function loopsToTry({ piece, yarns, mainYarn }: ProjectAt): { readonly loop: LoopSource; readonly ks: number }[] {
  const count = yarns[mainYarn]?.count;
  const tex = count?.system === 'tex' ? count.value * count.plies : null;
  // 500 stitches of a swatch of 20 × 25, 5 g; tex is g in 1000 m (ISO 1144).
  const weighed = tex === null ? 19 : ksOf(piece.gauge, ((5 / tex) * 1e6) / 500);
  return [
    { loop: { from: 'gauge', state: 'wet-relaxed' }, ks: 21.6 },
    { loop: { from: 'gauge', state: 'fully-relaxed' }, ks: 23.1 },
    // At rest 9 tenths as wide and 19 twentieths as long: so many more stitches in a cm².
    { loop: { from: 'machine', width: 0.9, length: 0.95 }, ks: 19 * 0.9 * 0.95 },
    { loop: { from: 'unravelled', stitches: 120, mm: 1500 }, ks: ksOf(piece.gauge, 1500 / 120) },
    // Where another system of counts is said, the plan reads it, and this is not tried.
    ...(count && tex === null
      ? []
      : [{ loop: { from: 'weighed', stitches: 20, rows: 25, grams: 5 } as const, ks: weighed }]),
  ];
}

/** One of the ways for each project, which by the rows that it has. */
function loopsDiffer(project: ProjectAt, strands: readonly Strand[], gauging: Gauging): string[] {
  const rowOf = ({ lengths }: Strand): number => lengths[0]?.way[0]?.row ?? 0;
  const ways = loopsToTry(project);
  const { loop, ks } = ways[
    strands.reduce((sum, strand) => sum + rowOf(strand) + strand.lengths.length, 0) % ways.length
  ] as (typeof ways)[number];
  const made = planFor(pieceIn({ ...project, piece: { ...project.piece, loop } }));
  if (!made.ok) return [`no plan with its stitches from ${loop.from}`];
  return made.value.yarn.uses.flatMap((use) => {
    const named = project.yarns[use.yarn]?.name ?? '';
    const own = strands.filter(({ name }) =>
      use.yarn === project.mainYarn ? name === MAIN : name === named || name.startsWith(`${named} of group`),
    );
    let mm = 0;
    for (const { lengths } of own)
      for (const { way } of lengths)
        for (const { row, does } of way) if (does === 'knit') mm += loopAt(gauging(row), ks);
    return isAlike(mm, use.stitchesMm) ? [] : [`${named}, stitches from ${loop.from}: ${mm} mm, not ${use.stitchesMm}`];
  });
}

/** The piece as often as it is knitted, and two more of it: one after the other, with all that is cut for wrapping. */
function garmentDiffers(
  project: ProjectAt,
  plan: Plan,
  { wrapping }: Knitted,
  strands: readonly Strand[],
  gauging: Gauging,
  finishing: FinishingMm,
): string[] {
  const { knit, mainYarn, yarnMargin } = project;
  const name = project.piece.name;
  const need = garmentNeed(
    [
      { name, knit, plan },
      { name: `${name} again`, knit: 2, plan },
    ],
    pieceIn(project),
  );
  const times = knit + 2;
  const cutMm = wrapping.reduce((mm, { wraps }) => mm + wrappingMm({ wraps }, gauging), 0);
  return need.yarns.flatMap(({ yarn, total, toBuy, pieces }) => {
    const named = project.yarns[yarn]?.name ?? '';
    const isMain = yarn === mainYarn;
    const own = strands.filter(({ name: of }) =>
      isMain ? of === MAIN : of === named || of.startsWith(`${named} of group`),
    );
    const laid = own.length > 0 ? own.reduce((mm, strand) => mm + takenBy(strand).totalMm, 0) : 2 * END_MM;
    const one = laid + (isMain ? finishing.castOff + finishing.sewing : 0);
    const all = times * (one + (isMain ? cutMm : 0));
    const compared = [
      ['for one', one, pieces[0]?.oneMm ?? 0],
      ['for two more', 2 * one, pieces[1]?.all.mm ?? 0],
      ['in all', all, total.mm],
      ['to buy', all * (1 + yarnMargin / 100), toBuy.mm],
    ] as const;
    return compared.flatMap(([what, should, said]) =>
      isAlike(should, said) ? [] : [`${named}, ${what}: ${should} mm, not ${said}`],
    );
  });
}
