/** Pieces to knit, as a knitter follows them, and what is told in short lines. */
import { label, type Run } from '@shared/bed/index.ts';
import { knittingOrderOf, type KnittingOrder, type PutBack } from '@shared/knitting/index.ts';
import { makePlan, runningOrderOf } from '@shared/plan/index.ts';
import { pieceIn, projectAt, sampleProject, type ProjectAt } from '@shared/project/index.ts';
import { projectWith } from '../fabric/pieces.ts';

export function knittingOf(project: ProjectAt): KnittingOrder {
  const piece = pieceIn(project);
  const plan = makePlan(piece);
  const running = runningOrderOf(piece, plan);
  if (!running.isKnittable) throw new Error(running.obstacles.map(({ code }) => code).join(', '));
  return knittingOrderOf(piece, plan, running.order);
}

/** 11 stitches, 12 rows; a figure of three stitches and then one on rows 5 and 6. */
export const trial = (given: Partial<Parameters<typeof projectWith>[0]> = {}): ProjectAt =>
  projectWith({
    motif: ['.X.', 'XXX'],
    copies: [1],
    stitches: 11,
    rows: 12,
    band: { position: { kind: 'from-row', row: 5 } },
    ...given,
  });

export const sample = (): ProjectAt => projectAt(sampleProject());

export const run = ({ first, last }: Run): string => (first === last ? label(first) : `${label(first)}–${label(last)}`);

/** One thing to put back as a short line. */
export function putBackLine(put: PutBack, { yarns }: KnittingOrder): string {
  const named = (yarn: number): string => yarns[yarn]?.name ?? 'unknown';
  switch (put.kind) {
    case 'stitches':
      return [
        `stitches ${run(put.needles)}`,
        ...put.back.map((one) => `back ${run(one)}`),
        ...put.out.map((one) => `out ${run(one)}`),
      ].join(', ');
    case 'hem-off':
      return `hem off${put.hasWaste ? ', on waste' : ''}`;
    case 'carriage-to':
      return `carriage to ${put.side}${put.isThere ? ', there' : ''}`;
    case 'counter':
      return `counter ${put.reading}`;
    case 'carriage':
      return `carriage ${put.set}`;
    case 'selecting':
    case 'end-needles':
      return `${put.kind} ${put.isOn ? 'on' : 'off'}`;
    case 'tension':
      return `tension ${typeof put.part === 'string' ? put.part : put.part.section} ${put.text}`.trimEnd();
    case 'weights':
      return `weights ${put.do}`;
    case 'choose-again':
      return `row ${put.row}: ${put.count} ${put.how}, ${put.needles.map(run).join(' ')}`;
    case 'pattern-row':
      return `next chooses row ${put.row}`;
    case 'yarn-out':
      return `out of ${put.feeder}: ${named(put.yarn)}`;
    case 'yarn-in':
      return `into ${put.feeder}: ${named(put.yarn)}${put.wasCut ? ', was cut' : ''}`;
    case 'yarn-waits':
      return `${put.ball === null ? '' : `ball ${put.ball} `}${named(put.yarn)} waits at ${label(put.needle)}${put.wasCut ? ', was cut' : ''}`;
    case 'strand-waits':
      return `strand ${put.strand} at ${put.needle === null ? 'none' : label(put.needle)}${put.wasEnded ? ', was ended' : ''}`;
    case 'strand-out':
      return `strand ${put.strand} out`;
  }
}
