/**
 * Strands as the simulated knitter has laid them, needle by needle, against
 * what the plan says of them: floats, carries, cuts, the yarn that each takes,
 * balls to wind and strands to cut.
 */
import { label, type Slot } from '@shared/bed/index.ts';
import { ballsToWind, strandsToCut, type Plan } from '@shared/plan/index.ts';
import { pieceIn, type ProjectAt } from '@shared/project/index.ts';
import {
  END_MM,
  heightMm,
  isNearUp,
  isOverLimit,
  looseOf,
  wrappingMm,
  type Gauging,
  type MeasuredFloat,
  type MeasuredYarn,
} from '../reference/knitter/measure.ts';
import type { Knitted } from '../reference/knitter/index.ts';
import { MAIN, nameOf, type Strand } from './strands.ts';

/** The first things in which the plan says otherwise than what lies in the fabric; none where they agree. */
export function strandDifferences(
  project: ProjectAt,
  plan: Plan,
  knitted: Knitted,
  strands: readonly Strand[],
  gauging: Gauging,
  toldInMm: number,
): string[] {
  return [
    ...floatsDiffer(project, plan, strands, gauging),
    ...waysDiffer(project, plan, strands, gauging),
    ...yarnDiffers(project, plan, strands),
    ...windingDiffers(project, plan, strands),
    ...wrappingDiffers(plan, knitted, gauging, toldInMm),
  ];
}

/** Lines that stand in one list and not in the other. */
function listsDiffer(what: string, measured: readonly string[], planned: readonly string[]): string[] {
  const count = new Map<string, number>();
  for (const line of measured) count.set(line, (count.get(line) ?? 0) + 1);
  for (const line of planned) count.set(line, (count.get(line) ?? 0) - 1);
  return [...count].flatMap(([line, times]) =>
    times === 0
      ? []
      : [`${what} ${line}: ${times > 0 ? 'in the fabric, but not planned' : 'planned, but not in the fabric'}`],
  );
}

/** To a thousandth; what a sum may miss by does not fall between two of them. */
const mmText = (mm: number): string => (mm + 1e-7).toFixed(3);
const at = (needle: number): string => label(needle as Slot);

function floatsDiffer(project: ProjectAt, plan: Plan, strands: readonly Strand[], gauging: Gauging): string[] {
  const { floatLimit } = project.piece;
  const say = (
    name: string,
    { row, first, last, stitches, mm }: Pick<MeasuredFloat, 'row' | 'first' | 'last' | 'stitches' | 'mm'>,
    held: readonly number[],
    isOver: boolean,
  ) =>
    `of ${name} on row ${row}, ${at(first)}–${at(last)}, ${stitches} stitches, ${mmText(mm)} mm` +
    `${held.length > 0 ? `, held on ${held.map(at).join(' ')}` : ''}${isOver ? ', over' : ''}`;
  const isOver = (float: MeasuredFloat): boolean => isOverLimit(looseOf(float), floatLimit, [gauging(float.row)]);
  const lying = strands.flatMap(({ name, lengths }) =>
    lengths.flatMap(({ measured: { floats } }) => floats.map((float) => ({ name, float }))),
  );
  const measured = lying.map(({ name, float }) => say(name, float, float.liftedOn, isOver(float)));
  const planned = plan.rows.flatMap(({ row, floats }) =>
    floats.map((float) => say(nameOf(project, float.strand), { ...float, row }, float.held, float.isOver)),
  );
  const overRows = new Set(lying.flatMap(({ float }) => (isOver(float) ? [`${float.row}`] : [])));
  const overPlanned = plan.rows.flatMap(({ row, isOver }) => (isOver ? [`${row}`] : []));
  return [
    ...listsDiffer('float', measured, planned),
    ...listsDiffer('a float over the limit on row', [...overRows], overPlanned),
  ];
}

function waysDiffer(project: ProjectAt, plan: Plan, strands: readonly Strand[], gauging: Gauging): string[] {
  const { floatLimit } = project.piece;
  const sayCarry = (
    name: string,
    {
      row,
      toRow,
      first,
      last,
      stitches,
      mm,
    }: { row: number; toRow: number; first: number; last: number; stitches: number; mm: number },
    isOver: boolean,
  ) =>
    `of ${name} from row ${row} to ${toRow}, ${at(first)}–${at(last)}, ${stitches} stitches, ${mmText(mm)} mm${isOver ? ', over' : ''}`;
  const sayCut = (name: string, row: number, toRow: number, stitches: number, mm: number, isFarUp: boolean) =>
    `of ${name} after row ${row}, joined again on ${toRow}, ${stitches} stitches aside, ${mmText(mm)} mm up, too far ${isFarUp ? 'up' : 'aside'}`;
  const carries: string[] = [];
  const cuts: string[] = [];
  const against: string[] = [];
  for (const { name, lengths } of strands) {
    for (const { measured } of lengths) {
      for (const carry of measured.carries) {
        const gauges = Array.from({ length: carry.toRow - carry.row + 1 }, (_, up) => gauging(carry.row + up));
        const isOver = isOverLimit(carry.stitches, floatLimit, gauges);
        carries.push(sayCarry(name, carry, isOver));
        if (!isNearUp(gauging, carry.row, carry.toRow))
          against.push(`${name} is carried too far up, from row ${carry.row}`);
        if (isOver && isCutAside(project, plan, carry.row, carry.toRow))
          against.push(`${name} is carried too far aside, from row ${carry.row}`);
      }
    }
    for (const [index, { way, cutAt }] of lengths.entries()) {
      const last = way.at(-1);
      const row = last?.row ?? 0;
      if (cutAt !== row) against.push(`${name} knits row ${row} last and is cut at ${cutAt}`);
      const next = lengths[index + 1]?.way[0];
      if (!last || !next) continue;
      const aside = Math.abs(next.needle - last.needle);
      const isFarUp = !isNearUp(gauging, row, next.row);
      cuts.push(sayCut(name, row, next.row, aside, heightMm(gauging, row, next.row), isFarUp));
      if (isFarUp) continue;
      const gauges = Array.from({ length: next.row - row + 1 }, (_, up) => gauging(row + up));
      if (!isCutAside(project, plan, row, next.row) || !isOverLimit(aside, floatLimit, gauges))
        against.push(`${name} is cut after row ${row}, though row ${next.row} is near`);
    }
  }
  const planned = plan.rows.flatMap(({ row, carries }) =>
    carries.map((carry) => sayCarry(nameOf(project, carry.strand), { ...carry, row }, carry.isOver)),
  );
  const plannedCuts = plan.rows.flatMap(({ row, cuts }) =>
    cuts.map(({ strand, toRow, stitches, mm, because }) =>
      sayCut(nameOf(project, strand), row, toRow, stitches, mm, because === 'far-up'),
    ),
  );
  return [...against, ...listsDiffer('carry', carries, planned), ...listsDiffer('cut', cuts, plannedCuts)];
}

/**
 * Whether a pattern on one of two rows wants yarn cut that goes too far aside
 * between them. The plan is asked where its patterns stand and what is lined.
 */
function isCutAside({ patterns }: ProjectAt, plan: Plan, from: number, to: number): boolean {
  const isLined = (row: number): boolean =>
    plan.sections.some(({ first, last, isLined }) => isLined && row >= first && row <= last);
  const isWished = (row: number): boolean =>
    plan.patterns.some(
      ({ firstRow, lastRow }, index) => row >= firstRow && row <= lastRow && patterns[index]?.longCarries === 'cut',
    );
  return (isWished(from) || isWished(to)) && !(isLined(from) && isLined(to));
}

/** What a strand takes, from the lengths of it. */
export function takenBy({ lengths }: Strand) {
  const sum = (value: (measured: MeasuredYarn) => number): number =>
    lengths.reduce((total, { measured }) => total + value(measured), 0);
  const stitches = sum((measured) => measured.stitches);
  const stitchesMm = sum((measured) => measured.stitchesMm);
  const floatsMm = sum(({ floats }) => floats.reduce((mm, float) => mm + float.mm, 0));
  const carriesMm = sum(({ carries }) => carries.reduce((mm, carry) => mm + carry.mm, 0));
  const tailsMm = 2 * lengths.length * END_MM;
  return { stitches, stitchesMm, floatsMm, carriesMm, tailsMm, totalMm: stitchesMm + floatsMm + carriesMm + tailsMm };
}

type Taken = ReturnType<typeof takenBy>;

function takenText(name: string, taken: Taken): string {
  const { stitches, stitchesMm, floatsMm, carriesMm, tailsMm, totalMm } = taken;
  const parts = [stitchesMm, floatsMm, carriesMm, tailsMm, totalMm].map(mmText);
  return `of ${name}: ${stitches} stitches, mm in stitches ${parts[0]}, floats ${parts[1]}, carries ${parts[2]}, tails ${parts[3]}, in all ${parts[4]}`;
}

function yarnDiffers(project: ProjectAt, plan: Plan, strands: readonly Strand[]): string[] {
  const known = strands.map(({ name }) => name);
  const measured = [
    ...strands.map((strand) => takenText(strand.name, takenBy(strand))),
    // Main that no row knits is told with nothing.
    ...(known.includes(MAIN) ? [] : [takenText(MAIN, { ...NOTHING })]),
  ];
  const planned = plan.yarn.uses.flatMap(({ yarn, balls }) =>
    balls.map((ball) =>
      takenText(nameOf(project, { yarn, group: ball.group }), { ...ball, totalMm: ball.totalMm - finishingMm(ball) }),
    ),
  );
  const wrong = listsDiffer('yarn', measured, planned);
  for (const use of plan.yarn.uses) {
    const own = strands.filter(({ name }) => {
      const of = project.yarns[use.yarn]?.name ?? '';
      return use.yarn === project.mainYarn ? name === MAIN : name === of || name.startsWith(`${of} of group`);
    });
    const lies = own.reduce((sum, strand) => sum + takenBy(strand).totalMm, 0);
    const mm = (own.length > 0 ? lies : 2 * END_MM) + finishingMm(use);
    const count = project.yarns[use.yarn]?.count;
    const tex = count?.system === 'tex' ? count.value * count.plies : null;
    // Tex: grams in 1000 m (ISO 1144).
    const grams = tex === null ? null : (mm / 1e6) * tex;
    const isAlike = grams === null || use.grams === null ? grams === use.grams : Math.abs(grams - use.grams) < 1e-6;
    if (!isAlike) wrong.push(`${project.yarns[use.yarn]?.name}: ${grams} g lie in the fabric, not ${use.grams}`);
    if (Math.abs(use.totalMm - mm) > 1e-3) wrong.push(`${project.yarns[use.yarn]?.name}: ${mm} mm, not ${use.totalMm}`);
  }
  return wrong;
}

/** Casting off and sewing up, which come after the fabric is knitted. */
function finishingMm({ castOffMm, sewingMm }: { readonly castOffMm: number; readonly sewingMm: number }): number {
  return castOffMm + sewingMm;
}

/** Its two ends alone. */
const NOTHING: Taken = {
  stitches: 0,
  stitchesMm: 0,
  floatsMm: 0,
  carriesMm: 0,
  tailsMm: 2 * END_MM,
  totalMm: 2 * END_MM,
};

function windingDiffers(project: ProjectAt, plan: Plan, strands: readonly Strand[]): string[] {
  const say = (name: string, number: string | null, first: number, last: number, mm: number): string =>
    `${name}, ${number === null ? 'fed' : `ball ${number}`}, rows ${first}–${last}, ${mmText(mm)} mm`;
  const measured = strands.map((strand) => {
    const { lengths } = strand;
    const steps = lengths.flatMap(({ way }) => [way[0]?.row ?? 0, way.at(-1)?.row ?? 0]);
    return say(strand.name, lengths[0]?.ball ?? null, Math.min(...steps), Math.max(...steps), takenBy(strand).totalMm);
  });
  const isKnitted = new Set(strands.map(({ name }) => name));
  const planned = ballsToWind(pieceIn(project), plan).flatMap(({ yarn, group, number, firstRow, lastRow, mm }) => {
    const name = nameOf(project, { yarn, group });
    const finishing = plan.yarn.uses.find((use) => use.yarn === yarn);
    const laid = mm - (finishing && group === null ? finishingMm(finishing) : 0);
    return isKnitted.has(name) ? [say(name, number === null ? null : `${number}`, firstRow, lastRow, laid)] : [];
  });
  return listsDiffer('to wind', measured, planned);
}

function wrappingDiffers(plan: Plan, { wrapping }: Knitted, gauging: Gauging, toldInMm: number): string[] {
  const wrong: string[] = [];
  const say = (id: number | string, edge: string, rows: readonly number[], wraps: number, mm: number): string =>
    `${id}, ${edge}, rows ${rows.join('–')}, ${wraps} wraps, ${mmText(mm)} mm`;
  const measured = wrapping.map(({ id, wraps, mm }) => {
    const edges = new Set(wraps.map(({ edge }) => edge));
    const rows = wraps.map(({ row }) => row);
    const lies = wrappingMm({ wraps }, gauging);
    // Told in whole steps, never too short.
    if (mm !== null && mm !== toldInMm * Math.ceil((lies - 1e-6) / toldInMm))
      wrong.push(`strand ${id} was cut to ${mm} mm, and ${lies} lie there`);
    if (lies > 1500 && wraps.length > 1) wrong.push(`strand ${id} is ${lies} mm long, and tangles`);
    const edge = edges.size === 2 ? 'both' : ([...edges][0] as string);
    return say(id, edge, [Math.min(...rows), Math.max(...rows)], wraps.length, lies);
  });
  const planned = plan.wrapStrands.map(({ edge, firstRow, lastRow, wraps, mm }, index) =>
    say(index + 1, edge, [firstRow, lastRow], wraps, mm),
  );
  wrong.push(...listsDiffer('strand', measured, planned));
  const cut = strandsToCut(plan);
  for (const { id, wraps } of wrapping) {
    const lines = cut.filter(({ numbers }) => numbers.includes(Number(id)));
    const mm = wrappingMm({ wraps }, gauging);
    const [line] = lines;
    if (lines.length !== 1 || !line) wrong.push(`strand ${id} stands in ${lines.length} lines of those to cut`);
    // Those alike in whole cm stand in one line, with the longest of them.
    else if (line.mm < mm - 1e-3 || line.mm > mm + 10)
      wrong.push(`strand ${id} takes ${mm} mm and is cut to ${line.mm}`);
  }
  return wrong;
}
