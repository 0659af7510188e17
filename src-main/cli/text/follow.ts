/** The running order as a knitter would read it aloud. */
import { BLOCKING_CODES, findingsOf } from '@shared/check/index.ts';
import { actNames, atHand, toldSteps, type Step, type ToldStep } from '@shared/output/index.ts';
import type { LengthUnit } from '@shared/length/index.ts';
import { runningOrderOf, type Plan } from '@shared/plan/index.ts';
import { pieceIn, sizeName, type KnitPiece, type Workpiece } from '@shared/project/index.ts';
import { capitalised, words } from '@shared/words/index.ts';
import { findingWords } from '@shared/words/findings.ts';
import { onLines } from './on-one-line.ts';
import { under } from './table.ts';

const { runningOrder } = words;

/** What to have at hand, then every stop with what is done there; or why there is no order. `plan` is that of `given`. */
export function followText(given: Workpiece, planned: Plan, unit: LengthUnit = 'cm'): string {
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
  const names = actNames(piece, unit);
  const ready = atHand(plan, running.order).map((item) => runningOrder.atHand(item, names));
  return [
    title,
    under(runningOrder.titles.atHand, ready),
    runningOrder.titles.knitting,
    ...toldSteps(running.order).flatMap((told) => toldText(told, piece, unit)),
  ].join('\n\n');
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
