/** The JSON of the running order. Needles are labels, runs go from left to right, yarns and motifs are named. */
import { label, type Run, type Side, type Slot } from '@shared/bed/index.ts';
import type { PatternName } from '@shared/pattern/index.ts';
import { motifOf, type Workpiece } from '@shared/project/index.ts';
import type {
  Act,
  Feeder,
  Holding,
  RunningOrder,
  Stop,
  Stretch,
  TensionPart,
  YarnIndex,
} from '@shared/plan/running-order/index.ts';

type RunJson = readonly [first: string, last: string];

/** What holds while a row is knitted. */
interface HoldingJson {
  readonly needles: RunJson;
  readonly carriage: 'plain' | 'pattern';
  readonly selecting: boolean;
  readonly feeders: { readonly 1: string | null; readonly 2: string | null };
}

export interface StopJson extends HoldingJson {
  readonly kind: 'stop';
  readonly id: string;
  readonly counter: number;
  /** The row that follows; null at the end. */
  readonly row: number | null;
  readonly carriageAt: Side;
  readonly acts: readonly ActJson[];
}

export interface StretchJson extends HoldingJson {
  readonly kind: 'stretch';
  readonly first: number;
  readonly last: number;
  readonly carriageAt: Side;
}

export type ActJson =
  | {
      readonly act: 'cast-on';
      readonly needles: RunJson;
      readonly yarn: string;
      /** Where the yarn is fed with a number. */
      readonly ball?: number;
      readonly how: 'closed' | 'open' | 'picked-up';
      readonly wasteRows: number;
      readonly wasteTension: string;
    }
  | { readonly act: 'counter'; readonly reading: number }
  /** `part` of a section with a tension of its own is `section`, and `section` its name. */
  | { readonly act: 'tension'; readonly part: string; readonly section: string | null; readonly text: string }
  /** `ball`: of a yarn that is laid by hand on other rows, or that another length of it waits beside. */
  | { readonly act: 'thread'; readonly feeder: Feeder; readonly yarn: string; readonly ball: number | null }
  /** `waitsAt`: a needle, or `cut`, which leaves a tail of `mm`; null where it waits. */
  | {
      readonly act: 'unthread';
      readonly feeder: Feeder;
      readonly yarn: string;
      readonly ball: number | null;
      readonly waitsAt: string;
      readonly mm: number | null;
    }
  | { readonly act: 'carriage'; readonly set: 'plain' | 'pattern' }
  | { readonly act: 'selecting' | 'end-needles'; readonly on: boolean }
  | {
      readonly act: 'first-needles';
      readonly pattern: string;
      readonly row: number;
      readonly groups: readonly {
        readonly needle: string;
        readonly last: string;
        readonly motif: string;
        readonly copies: number;
        readonly mirrored: boolean;
      }[];
    }
  | { readonly act: 'increase' | 'decrease'; readonly edge: Side; readonly needles: readonly string[] }
  | { readonly act: 'cast-off' | 'cast-on-more'; readonly edge: Side; readonly needles: RunJson }
  | { readonly act: 'eyelets' | 'push-forward' | 'push-back'; readonly needles: readonly string[] }
  | {
      readonly act: 'wrap';
      readonly needle: string;
      readonly edge: Side;
      readonly yarn: string;
      readonly strand: number;
    }
  | { readonly act: 'strand'; readonly id: number; readonly at: 'start' | 'end'; readonly mm: number }
  | {
      readonly act: 'lay';
      readonly ball: number;
      readonly yarn: string;
      readonly needles: readonly RunJson[];
      readonly crosses: readonly number[];
    }
  | { readonly act: 'cut'; readonly ball: number | null; readonly yarn: string; readonly mm: number }
  | { readonly act: 'hang-hem'; readonly needles: RunJson; readonly loops: number; readonly edgeLoop: Side }
  | { readonly act: 'remove-waste' }
  | { readonly act: 'hook-up'; readonly needle: string; readonly yarn: string; readonly float: RunJson }
  /** The floats behind a needle on these rows, in a chain that is hung on it. `ball`: where another of the yarn floats there. */
  | {
      readonly act: 'latch-up';
      readonly needle: string;
      readonly yarn: string;
      readonly ball?: number;
      readonly rows: readonly [number, number];
    }
  | { readonly act: 'weights'; readonly do: 'hang' | 'move' | 'off' }
  | { readonly act: 'check'; readonly forward: number; readonly first: string; readonly last: string }
  | {
      readonly act: 'finish';
      readonly how: 'cast-off' | 'waste-yarn' | 'on-a-thread';
      readonly needles: RunJson;
      readonly startsAt: Side;
      readonly mm: number | null;
    };

export function runningOrderJson(order: RunningOrder, project: Workpiece): (StopJson | StretchJson)[] {
  return order.map((item) => (item.kind === 'stop' ? stopJson(item, project) : stretchJson(item, project)));
}

function stopJson(stop: Stop, project: Workpiece): StopJson {
  const { kind, id, counter, row, carriageAt, acts } = stop;
  const said = acts.map((act) => actJson(act, project));
  return { kind, id, counter, row, carriageAt, ...holdingJson(stop, project), acts: said };
}

function stretchJson(stretch: Stretch, project: Workpiece): StretchJson {
  const { kind, first, last, carriageAt } = stretch;
  return { kind, first, last, carriageAt, ...holdingJson(stretch, project) };
}

function holdingJson({ needles, carriage, isSelecting, feeders }: Holding, project: Workpiece): HoldingJson {
  const held = (feeder: Feeder): string | null => {
    const yarn = feeders[feeder];
    return yarn === null ? null : nameOf(yarn, project);
  };
  return { needles: runJson(needles), carriage, selecting: isSelecting, feeders: { 1: held(1), 2: held(2) } };
}

/** An act as the JSON has it. */
export function actJson(act: Act, project: Workpiece): ActJson {
  const yarn = (index: YarnIndex): string => nameOf(index, project);
  switch (act.kind) {
    case 'cast-on': {
      const { kind, needles, ball, how, wasteRows, wasteTension } = act;
      const told = ball === null ? {} : { ball };
      return { act: kind, needles: runJson(needles), yarn: yarn(act.yarn), ...told, how, wasteRows, wasteTension };
    }
    case 'counter':
      return { act: act.kind, reading: act.reading };
    case 'tension':
      return { act: act.kind, ...partJson(act.part), text: act.text };
    case 'thread':
      return { act: act.kind, feeder: act.feeder, yarn: yarn(act.yarn), ball: act.ball };
    case 'unthread': {
      const waitsAt = act.waitsAt === 'cut' ? act.waitsAt : label(act.waitsAt);
      return { act: act.kind, feeder: act.feeder, yarn: yarn(act.yarn), ball: act.ball, waitsAt, mm: act.tailMm };
    }
    case 'carriage':
      return { act: act.kind, set: act.set };
    case 'selecting':
    case 'end-needles':
      return { act: act.kind, on: act.isOn };
    case 'first-needles':
      return {
        act: act.kind,
        pattern: patternNames(act.patterns),
        row: act.row,
        groups: act.groups.map(({ needle, last, motif, copies, isMirrored }) => ({
          needle: label(needle),
          last: label(last),
          motif: motifOf(project, motif).name,
          copies,
          mirrored: isMirrored,
        })),
      };
    case 'increase':
    case 'decrease':
      return { act: act.kind, edge: act.edge, needles: labels(act.needles) };
    case 'cast-off':
    case 'cast-on-more':
      return { act: act.kind, edge: act.edge, needles: runJson(act.needles) };
    case 'eyelets':
    case 'push-forward':
    case 'push-back':
      return { act: act.kind, needles: labels(act.needles) };
    case 'wrap':
      return {
        act: act.kind,
        needle: label(act.needle),
        edge: act.edge,
        yarn: yarn(act.yarn),
        strand: act.strand,
      };
    case 'strand':
      return { act: act.kind, id: act.strand, at: act.at, mm: Math.ceil(act.mm) };
    case 'lay': {
      const { kind, ball, needles, crosses } = act;
      return { act: kind, ball, yarn: yarn(act.yarn), needles: needles.map(runJson), crosses };
    }
    case 'cut':
      return { act: act.kind, ball: act.ball, yarn: yarn(act.yarn), mm: act.tailMm };
    case 'hang-hem':
      return { act: act.kind, needles: runJson(act.needles), loops: act.loops, edgeLoop: act.edgeLoop };
    case 'remove-waste':
      return { act: act.kind };
    case 'hook-up':
      return { act: act.kind, needle: label(act.needle), yarn: yarn(act.yarn), float: runJson(act.float) };
    case 'latch-up': {
      const ball = act.ball === undefined ? {} : { ball: act.ball };
      return { act: act.kind, needle: label(act.needle), yarn: yarn(act.yarn), ...ball, rows: [act.first, act.last] };
    }
    case 'weights':
      return { act: act.kind, do: act.do };
    case 'check':
      return { act: act.kind, forward: act.forward, first: label(act.first), last: label(act.last) };
    case 'finish': {
      const { kind, how, needles, startsAt, mm } = act;
      return { act: kind, how, needles: runJson(needles), startsAt, mm };
    }
  }
}

function partJson(part: TensionPart): { readonly part: string; readonly section: string | null } {
  return typeof part === 'string' ? { part, section: null } : { part: 'section', section: part.section };
}

/** `band-1`, `fill-2`; patterns that share rows and are set together: `band-1+band-2`. */
function patternNames(patterns: readonly PatternName[]): string {
  return patterns.map(({ kind, number }) => `${kind === 'band' ? 'band' : 'fill'}-${number + 1}`).join('+');
}

function nameOf(yarn: YarnIndex, { yarns }: Workpiece): string {
  return yarns[yarn]?.name ?? '';
}

function runJson({ first, last }: Run): RunJson {
  return [label(first), label(last)];
}

function labels(needles: readonly Slot[]): string[] {
  return needles.map(label);
}
