/** A running order as short lines, to be read in tests. */
import { label, type Run, type Slot } from '@shared/bed/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { runningOrderOf, type Act, type RunningOrder } from '@shared/plan/running-order/index.ts';
import { pieceIn, type ProjectAt } from '@shared/project/index.ts';

export function orderOf(project: ProjectAt): RunningOrder {
  const piece = pieceIn(project);
  const outcome = runningOrderOf(piece, makePlan(piece));
  if (!outcome.isKnittable) throw new Error(outcome.obstacles.map(({ code }) => code).join(', '));
  return outcome.order;
}

export function obstacleCodes(project: ProjectAt): string[] {
  const piece = pieceIn(project);
  const outcome = runningOrderOf(piece, makePlan(piece));
  return outcome.isKnittable ? [] : outcome.obstacles.map(({ code }) => code);
}

/** What is done at a reading, each act a line. */
export function actsAt(project: ProjectAt, reading: number): string[] {
  return orderOf(project).flatMap((item) =>
    item.kind === 'stop' && item.counter === reading ? item.acts.map((act) => lineOf(act, project)) : [],
  );
}

/** The readings at which an act of a kind is done, each as often as it is. */
export function readingsOf(project: ProjectAt, ...kinds: readonly Act['kind'][]): number[] {
  return orderOf(project).flatMap((item) =>
    item.kind === 'stop' ? item.acts.filter(({ kind }) => kinds.includes(kind)).map(() => item.counter) : [],
  );
}

/** All acts of some kinds with their readings: `59: selecting on`. */
export function linesOf(project: ProjectAt, ...kinds: readonly Act['kind'][]): string[] {
  return orderOf(project).flatMap((item) =>
    item.kind === 'stop'
      ? item.acts.filter(({ kind }) => kinds.includes(kind)).map((act) => `${item.counter}: ${lineOf(act, project)}`)
      : [],
  );
}

const run = ({ first, last }: Run): string => (first === last ? label(first) : `${label(first)}–${label(last)}`);
const all = (needles: readonly Slot[]): string => needles.map(label).join(' ');

function lineOf(act: Act, { yarns }: ProjectAt): string {
  const yarn = (index: number): string => yarns[index]?.name ?? '';
  const supply = (of: { readonly yarn: number; readonly ball: number | null }): string =>
    of.ball === null ? yarn(of.yarn) : `${yarn(of.yarn)} of ball ${of.ball}`;
  switch (act.kind) {
    case 'cast-on':
      return `cast on ${run(act.needles)} ${supply(act)} ${act.how}${act.wasteRows > 0 ? `, ${act.wasteRows} rows of waste` : ''}`;
    case 'counter':
      return `counter ${act.reading}`;
    case 'tension':
      return `tension ${typeof act.part === 'string' ? act.part : act.part.section} ${act.text}`.trimEnd();
    case 'thread':
      return `thread ${act.feeder} ${supply(act)}`;
    case 'unthread':
      return `unthread ${act.feeder} ${supply(act)}, ${act.waitsAt === 'cut' ? `cut to ${act.tailMm} mm` : `waits at ${label(act.waitsAt)}`}`;
    case 'carriage':
      return `carriage ${act.set}`;
    case 'selecting':
    case 'end-needles':
      return `${act.kind} ${act.isOn ? 'on' : 'off'}`;
    case 'first-needles':
      return `row ${act.row} from ${act.groups.map(({ needle, last }) => run({ first: needle, last })).join(', ')}`;
    case 'increase':
    case 'decrease':
      return `${act.kind} ${act.edge} ${all(act.needles)}`;
    case 'cast-off':
    case 'cast-on-more':
      return `${act.kind} ${act.edge} ${run(act.needles)}`;
    case 'eyelets':
      return `eyelets ${act.needles.length}, from ${label(act.needles[0] as Slot)}`;
    case 'push-forward':
    case 'push-back':
      return `${act.kind} ${all(act.needles)}`;
    case 'wrap':
      return `wrap ${label(act.needle)} with ${act.strand}`;
    case 'strand':
      return `strand ${act.strand} ${act.at}`;
    case 'lay':
      return `lay ${yarn(act.yarn)} of ball ${act.ball} on ${act.needles.map(run).join(' ')}${act.crosses.map((ball) => `, crossed with ${ball}`).join('')}`;
    case 'cut':
      return `cut ${act.ball === null ? '' : `ball ${act.ball} `}${yarn(act.yarn)} to ${act.tailMm} mm`;
    case 'hang-hem':
      return `hang ${act.loops} loops on ${run(act.needles)}, half loop ${act.edgeLoop}`;
    case 'remove-waste':
      return 'remove waste';
    case 'hook-up':
      return `hook up ${yarn(act.yarn)} on ${label(act.needle)}`;
    case 'latch-up':
      return `latch up ${supply({ ...act, ball: act.ball ?? null })} of rows ${act.first}-${act.last} on ${label(act.needle)}`;
    case 'weights':
      return `weights ${act.do}`;
    case 'check':
      return `check ${act.forward}, ${run(act)}`;
    case 'finish':
      return `finish ${act.how} ${run(act.needles)} from the ${act.startsAt}${act.mm === null ? '' : `, ${act.mm} mm`}`;
  }
}
