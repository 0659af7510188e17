/** The running order as a knitter would read it aloud. */
import { BLOCKING_CODES, findingsOf } from '@shared/check/index.ts';
import { actNames, atHand, orderFromRow, toldSteps, type Step, type ToldStep } from '@shared/output/index.ts';
import { comingIn, knittingOrderOf } from '@shared/knitting/index.ts';
import type { LengthUnit } from '@shared/length/index.ts';
import { runningOrderOf, type Plan, type RunningOrder } from '@shared/plan/index.ts';
import { pieceIn, sizeName, type KnitPiece, type Workpiece } from '@shared/project/index.ts';
import { capitalised, words } from '@shared/words/index.ts';
import { runningOrderWords as runningOrder } from '@shared/words/running-order.ts';
import { findingWords } from '@shared/words/findings.ts';
import { puttingBackWords } from '@shared/words/putting-back.ts';
import { terminalWords } from '@shared/words/terminal.ts';
import { onLines } from './on-one-line.ts';
import { under } from './table.ts';

/**
 * What to have at hand, then every stop with what is done there; or why there
 * is no order. From a row above the first on, what stands at the machine before
 * it in place of what to have at hand. `plan` is that of `given`. Throws
 * `RangeError` for a row beyond the order.
 */
export function followText(given: Workpiece, planned: Plan, unit: LengthUnit = 'cm', fromRow = 1): string {
  const [project, plan] = onLines(given, planned);
  const piece = pieceIn(project);
  const called = `${project.name}, ${words.knitting.piece(piece, sizeName(project))}`;
  const title = [called, ...words.knitting.knitOften(project)].join('\n');
  const running = runningOrderOf(piece, plan);
  if (!running.isKnittable) {
    const reasons = findingsOf(piece, plan).filter(({ code }) => BLOCKING_CODES.has(code));
    const said = reasons.map((finding) => findingWords.text(finding, { ...project, unit }));
    return [title, runningOrder.titles.blocked, under(runningOrder.blocked, said)].join('\n\n');
  }
  const { order } = running;
  return [
    title,
    fromRow === 1 ? atHandText(piece, plan, order, unit) : goingOnText(piece, plan, order, unit, fromRow),
    runningOrder.titles.knitting,
    ...toldSteps(orderFromRow(order, fromRow)).flatMap((told) => toldText(told, piece, unit)),
  ].join('\n\n');
}

function atHandText(piece: KnitPiece, plan: Plan, order: RunningOrder, unit: LengthUnit): string {
  const names = actNames(piece, unit);
  const ready = atHand(plan, order).map((item) => runningOrder.atHand(item, names));
  return under(runningOrder.titles.atHand, ready);
}

function goingOnText(piece: KnitPiece, plan: Plan, order: RunningOrder, unit: LengthUnit, row: number): string {
  const names = actNames(piece, unit);
  const set = comingIn(knittingOrderOf(piece, plan, order), row - 1);
  return under(
    terminalWords.cli.goingOn(row),
    set.map((put) => puttingBackWords.sentence(put, names)),
  );
}

function toldText(told: ToldStep, piece: KnitPiece, unit: LengthUnit): string[] {
  if (told.kind === 'again') return [runningOrder.again(told.rows, told.of, told.readings)];
  return told.kind === 'shaping'
    ? told.steps.map((step) => stepText(step, piece, unit))
    : [stepText(told.step, piece, unit)];
}

function stepText({ stop, knit }: Step, piece: KnitPiece, unit: LengthUnit): string {
  const names = actNames(piece, unit);
  const heading = runningOrder.stop(stop);
  const lines = stop.acts.map((act) => runningOrder.act(act, names));
  if (knit) lines.push(runningOrder.knit(knit.first, knit.last));
  return under(capitalised(heading), lines);
}
