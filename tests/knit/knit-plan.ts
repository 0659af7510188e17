/** A project's plan knitted by the simulated knitter: it is given the running order as JSON, and pictures for its machine. */
import { label, type Slot } from '@shared/bed/index.ts';
import { makeFabric, OUTSIDE, tierOf, type PlacedAllOver, type PlacedGroup } from '@shared/fabric/index.ts';
import { needlesTaken } from '@shared/piece/index.ts';
import { planFor, type Plan } from '@shared/plan/index.ts';
import { allOversOf } from '@shared/pattern/index.ts';
import { motifOf, pieceIn, type ProjectAt } from '@shared/project/index.ts';
import { planJson, type PlanJson } from '../../src-main/cli/json/plan.ts';
import type { StopJson } from '../../src-main/cli/json/running-order.ts';
import {
  designOf,
  differences,
  knit,
  type Knitted,
  type MachineJson,
  type OrderJson,
  type PatternsJson,
  type ToKnitWith,
} from '../reference/knitter/index.ts';
import { gaugeOfRow } from '../property/needle-by-needle.ts';
import type { Gauging } from '../reference/knitter/measure.ts';
import { amountDifferences } from './amounts-as-planned.ts';
import { kindsOf, type Kind } from './kinds.ts';
import { strandDifferences } from './strands-as-planned.ts';
import { strandsOf } from './strands.ts';
import { tailsDiffer } from './tails-as-told.ts';

export type KnittedPlan =
  /** There is no plan at all: groups wider than the piece, and the like. */
  | { readonly outcome: 'unplanned' }
  | { readonly outcome: 'refused'; readonly codes: readonly string[] }
  | { readonly outcome: 'as-designed'; readonly plan: PlanJson; readonly kinds: readonly Kind[] }
  | { readonly outcome: 'wrong'; readonly why: readonly string[]; readonly plan: PlanJson };

/** The project in its current size. */
export function knitPlan(project: ProjectAt): KnittedPlan {
  const made = planFor(pieceIn(project));
  if (!made.ok) return { outcome: 'unplanned' };
  const plan = planJson(project, made.value);
  if (plan.runningOrder === null) {
    return { outcome: 'refused', codes: plan.findings.filter(({ blocks }) => blocks).map(({ code }) => code) };
  }
  const { why, kinds } = followed(project, made.value, plan, plan.runningOrder);
  return why.length > 0 ? { outcome: 'wrong', why, plan } : { outcome: 'as-designed', plan, kinds };
}

/**
 * What does not come out as designed where somebody follows `order`, told in
 * any way; empty where all does. Lengths are told in steps of `toldInMm`, never
 * too short.
 */
export function wrongWith(
  project: ProjectAt,
  plan: Plan,
  json: PlanJson,
  order: NonNullable<PlanJson['runningOrder']>,
  toldInMm = 1,
): string[] {
  return [...followed(project, plan, json, order, toldInMm).why];
}

function followed(
  project: ProjectAt,
  plan: Plan,
  json: PlanJson,
  order: NonNullable<PlanJson['runningOrder']>,
  toldInMm = 1,
): { readonly why: readonly string[]; readonly kinds: readonly Kind[] } {
  const knitted = knit(order, toKnitWith(project, plan, order));
  if (!knitted.ok) return { why: [knitted.why], kinds: [] };
  const gauging: Gauging = (row) => gaugeOfRow(project.piece, row);
  const strands = strandsOf(project, plan, knitted, gauging);
  const why = [
    ...differences(knitted, designOf(json)),
    ...besideTheFabric(project, json, knitted),
    ...strandDifferences(project, plan, knitted, strands, gauging, toldInMm),
    ...tailsDiffer(order as OrderJson, knitted, gauging),
    ...amountDifferences(project, plan, knitted, strands, gauging),
  ];
  return { why, kinds: why.length > 0 ? [] : kindsOf({ project, plan, order: order as OrderJson, knitted, strands }) };
}

/** The order of a project in its current size, as JSON, with the machine and what it reads; null where there is none. */
export function orderedWith(project: ProjectAt): { readonly order: OrderJson; readonly knitWith: ToKnitWith } | null {
  const made = planFor(pieceIn(project));
  if (!made.ok) return null;
  const { runningOrder } = planJson(project, made.value);
  if (runningOrder === null) return null;
  const order = JSON.parse(JSON.stringify(runningOrder)) as OrderJson;
  return { order, knitWith: toKnitWith(project, made.value, runningOrder) };
}

function toKnitWith(project: ProjectAt, plan: Plan, order: NonNullable<PlanJson['runningOrder']>): ToKnitWith {
  const acts = order.flatMap((item) => (item.kind === 'stop' ? item.acts : []));
  return { machine: machineOf(project), patterns: picturesOf(project, plan, acts) };
}

/** What is wrong apart from the stitches: how the piece begins, folds and ends, and what was done for nothing. */
function besideTheFabric({ piece }: ProjectAt, { rows }: PlanJson, knitted: Knitted): string[] {
  const { hemRows, hem, begins, ends } = piece;
  const wrong: string[] = [];
  const compare = (what: string, is: unknown, should: unknown): void => {
    if (JSON.stringify(is) !== JSON.stringify(should)) {
      wrong.push(`${what}: ${JSON.stringify(is)}, not ${JSON.stringify(should)}`);
    }
  };
  const isFolded = hemRows > 1;
  const isOpen = begins === 'open' || (begins === 'usual' && isFolded);
  const start = isOpen ? (isFolded ? 'joined' : 'on waste yarn') : begins === 'picked-up' ? 'picked-up' : 'closed';
  compare('the start', knitted.start, start);
  compare(
    'the hem is hung at',
    knitted.hem.map(({ reading }) => reading),
    isFolded && isOpen ? [hemRows] : [],
  );
  compare('loops hung', knitted.hem[0]?.loops.length, isFolded && isOpen ? stitchesOf(rows[0]) : undefined);
  // Of 11 rows it is the sixth, of 10 the fifth.
  const turningRow = Math.ceil(hemRows / 2);
  const hasEyelets = isFolded && hem.turning === 'eyelets' && stitchesOf(rows[turningRow - 1]) > 2;
  compare(
    'eyelets before row',
    knitted.eyelets.map(({ row }) => row),
    hasEyelets ? [turningRow] : [],
  );
  compare(
    'the end',
    knitted.finish.map(({ how }) => how),
    [ends],
  );
  compare('pushed to where they stood', knitted.needless, []);
  const firsts = knitted.ends.filter(({ end }) => end === 'first').length;
  compare('last ends of yarn', knitted.ends.length - firsts, firsts);
  return wrong;
}

function stitchesOf(row: PlanJson['rows'][number] | undefined): number {
  return row ? needleOf(row.edges[1]) - needleOf(row.edges[0]) + 1 : 0;
}

export function machineOf({ machine }: ProjectAt): MachineJson {
  const { places } = machine;
  return {
    ...machine,
    places: places === 'any-needle' ? places : { repeat: places.repeat, from: label(places.from) },
  };
}

/** What the machine reads for each pattern that it is set for, from its first row in two yarns on. */
export function picturesOf(project: ProjectAt, plan: Plan, acts: readonly StopJson['acts'][number][]): PatternsJson {
  const pictures: PatternsJson = {};
  for (const act of acts) {
    if (act.act !== 'first-needles' || pictures[act.pattern]) continue;
    const parts = act.pattern.split('+').map((name) => name.split('-') as [string, string]);
    const found = parts.flatMap(([kind, number]): readonly (PlacedGroup | PlacedAllOver)[] =>
      kind === 'band'
        ? plan.groups.filter(({ band }) => band === Number(number) - 1)
        : allOversOf(plan).filter((allOver) => allOver.number === Number(number) - 1),
    );
    const lastRow = Math.max(...found.map((one) => one.lastRow));
    const rows = Array.from({ length: lastRow - act.row + 1 }, (_, at) => act.row + at);
    if (rows.some((row) => (plan.rows[row - 1]?.anchors.length ?? 0) > 0)) {
      pictures[act.pattern] = wholeRows(project, plan, act, rows);
      continue;
    }
    pictures[act.pattern] = found.map((one, at) => {
      const motif = motifOf(project, one.motif).name;
      const needle = needleOf((act.groups[at] as (typeof act.groups)[number]).needle);
      if ('band' in one) return { motif, isEverywhere: false, ...groupPicture(one, rows) };
      return { motif, isEverywhere: true, ...fillPicture(project, plan, one, rows, needle) };
    });
  }
  return pictures;
}

type FirstNeedlesJson = Extract<StopJson['acts'][number], { act: 'first-needles' }>;

/** Anchors stand between copies and beside them too, so whoever has them gives the machine whole rows, drawn with them. */
function wholeRows(
  project: ProjectAt,
  plan: Plan,
  { groups, pattern }: FirstNeedlesJson,
  rows: readonly number[],
): PatternsJson[string] {
  const { first } = plan.fabric;
  const width = wholePlaces(project, plan.fabric.width);
  const hasAllOver = pattern.includes('fill-');
  return groups.map((group, at) => {
    const motif = group.motif;
    const needle = needleOf(group.needle);
    if (at > 0) return { motif, isEverywhere: false, width: needleOf(group.last) - needle + 1, rows: [] };
    const isFigureOn = (row: number, one: number): boolean => {
      const { contrast, endNeedles } = plan.rows[row - 1] as Plan['rows'][number];
      return contrast.some((run) => run.first <= one && one <= run.last) && !endNeedles?.needles.includes(one as Slot);
    };
    const figureOn = (row: number): number[] => {
      const isFigure = (one: number): boolean => isFigureOn(row, one);
      return Array.from({ length: width }, (_, column) => first + column)
        .filter(
          (one) => isFigure(one) || (isBeside(plan, row, one) && isLikeOnPlaces(project, isFigure, one, first, width)),
        )
        .map((one) => modulo(one - needle, width))
        .map((column) => (group.mirrored ? width - 1 - column : column));
    };
    if (hasAllOver) return { motif, isEverywhere: true, width, rows: rows.map(figureOn) };
    // Beside the groups and their anchors nothing is chosen.
    const needles = Array.from({ length: width }, (_, column) => first + column);
    const chosen = needles.filter((one) => rows.some((row) => isFigureOn(row, one)));
    const stands = groups.flatMap(({ needle, last }) => [needleOf(needle), needleOf(last)]);
    const reach: [number, number] = [Math.min(...stands, ...chosen), Math.max(...stands, ...chosen)];
    return { motif, isEverywhere: true, reach, width, rows: rows.map(figureOn) };
  });
}

/** On fixed places what is read of a whole row is whole repeats, so that it goes on beside the piece as the machine does. */
function wholePlaces({ machine: { places } }: ProjectAt, across: number): number {
  const period = places === 'any-needle' ? 1 : places.repeat;
  return Math.ceil(across / period) * period;
}

function isBeside(plan: Plan, row: number, needle: number): boolean {
  const { first, last } = (plan.rows[row - 1] as Plan['rows'][number]).edges;
  return needle < first || needle > last;
}

/** On fixed places what lies beside the piece is chosen as its like on the piece is. */
function isLikeOnPlaces(
  { machine: { places } }: ProjectAt,
  isFigure: (needle: number) => boolean,
  needle: number,
  first: number,
  width: number,
): boolean {
  if (places === 'any-needle') return false;
  for (let other = first; other < first + width; other++) {
    if (modulo(other - needle, places.repeat) === 0 && isFigure(other)) return true;
  }
  return false;
}

function modulo(value: number, by: number): number {
  return ((value % by) + by) % by;
}

function needleOf(text: string): number {
  const number = Number(text.slice(1));
  return text.startsWith('L') ? -number : number - 1;
}

interface Drawn {
  readonly width: number;
  readonly rows: number[][];
}

function groupPicture(group: PlacedGroup, rows: readonly number[]): Drawn {
  const { copy, ground, across, without, firstRow, lastRow, isMirrored } = group;
  const width = without.size > 0 ? copy.width * across : copy.width;
  const isFigure = (row: number, column: number): boolean => {
    if (row < firstRow || row > lastRow) return false;
    const at = row - firstRow;
    const up = Math.floor(at / copy.height);
    if (without.get(up)?.has(Math.floor(column / copy.width))) return false;
    return copy.cells[(at % copy.height) * copy.width + (column % copy.width)] !== ground;
  };
  return {
    width,
    rows: rows.map((row) =>
      Array.from({ length: width }, (_, column) => column)
        .filter((column) => isFigure(row, column))
        .map((column) => (isMirrored ? width - 1 - column : column)),
    ),
  };
}

function fillPicture(
  project: ProjectAt,
  plan: Plan,
  fill: PlacedAllOver,
  rows: readonly number[],
  needle: number,
): Drawn {
  const { copy, ground, border, without, isMirrored } = fill;
  const isWhole = border.left === 0 && border.right === 0 && without.size === 0;
  const taken = needlesTaken(plan.outline);
  const { places } = project.machine;
  const width = isWhole ? copy.width : wholePlaces(project, taken.last - taken.first + 1);
  const turned = (column: number): number => (isMirrored ? width - 1 - column : column);
  const main = pieceIn(project).mainYarn;
  const fabric = makeFabric(plan.outline, [fill], main);
  const figureOn = (row: number): number[] => {
    if (row < fill.firstRow || row > fill.lastRow) return [];
    if (!isWhole) {
      const cells = fabric.cells.subarray((row - 1) * fabric.width, row * fabric.width);
      const line = [...cells, ...new Array<number>(width - cells.length).fill(OUTSIDE)];
      const isFigure = (at: number): boolean => line[at] !== main && line[at] !== OUTSIDE;
      // On fixed places what lies beside the piece is chosen as its like on the piece is.
      const isLikeFigure = (at: number): boolean =>
        places !== 'any-needle' && line.some((_, other) => isFigure(other) && modulo(other - at, places.repeat) === 0);
      return line.flatMap((cell, at) =>
        isFigure(at) || (cell === OUTSIDE && isLikeFigure(at)) ? [modulo(fabric.first + at - needle, width)] : [],
      );
    }
    const { copyRow, origin } = tierOf(fill, row);
    return Array.from({ length: width }, (_, column) => column)
      .filter((column) => copy.cells[copyRow * width + column] !== ground)
      .map((column) => modulo(origin + column - needle, width));
  };
  return { width, rows: rows.map((row) => figureOn(row).map(turned)) };
}
