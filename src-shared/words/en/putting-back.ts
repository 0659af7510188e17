/** What is put back at the machine in the middle of a piece: one short sentence each, with every number and needle in it. */
import { label, type Run } from '../../bed/index.ts';
import type { PutBack, Supply } from '../../knitting/index.ts';
import type { ActOf } from '../../plan/index.ts';
import { numbers as n } from './numbers.ts';
import { patterns } from './patterns.ts';
import { runningOrder, type ActNames } from './running-order.ts';

type Of<Kind extends PutBack['kind']> = Extract<PutBack, { readonly kind: Kind }>;

const runs = (all: readonly Run[]): string => n.list(all.map(n.run));

function supply({ yarn, ball }: Supply, names: ActNames): string {
  return ball === null ? names.yarn(yarn) : `ball ${ball}, ${names.yarn(yarn)},`;
}

function patternsOf({ patterns: set }: ActOf<'first-needles'>): string {
  return set.map(patterns.named).join(' with ');
}

function stitches({ row, needles, back, out }: Of<'stitches'>): string {
  const loops = row === 0 ? 'the loops of the cast-on' : `the loops of row ${row}`;
  // The acts at 0 are told again after this, and casting on is one of them.
  const isCastOn = row === 0 ? ' Do not cast on again.' : '';
  const into = back.length === 0 ? '' : ` ${runs(back)} ${isOne(back) ? 'comes' : 'come'} into work again.`;
  const away = out.length === 0 ? '' : ` Put ${runs(out)} out of work.`;
  return `Hang ${loops} on ${n.run(needles)}, each on its own needle.${into}${away}${isCastOn}`;
}

function isOne(all: readonly Run[]): boolean {
  return all.length === 1 && all[0]?.first === all[0]?.last;
}

function chooseAgain({ row, needles, count, how, pattern }: Of<'choose-again'>): string {
  if (how === 'by-hand')
    return `Push ${n.needles(count)} forward for row ${row}, and all others back: ${needles.map(n.run).join(', ')}.`;
  return `Let the machine choose the needles of row ${row} again: set ${patternsOf(pattern)} to row ${row}, and end with a pass without knitting or counting. ${n.needles(count)} ${count === 1 ? 'is' : 'are'} chosen: ${needles.map(n.run).join(', ')}.`;
}

/** The thing to put back as a sentence. */
function sentence(put: PutBack, names: ActNames): string {
  switch (put.kind) {
    case 'stitches':
      return stitches(put);
    case 'hem-off':
      return put.hasWaste
        ? 'Take the loops of the hem off the needles: they hang on their waste yarn.'
        : 'Take the loops of the hem off the needles, and catch them on a thread: nothing else holds them.';
    case 'carriage-to':
      return put.isThere
        ? `The carriage stands at the ${runningOrder.carriageAt(put.side)}.`
        : `Take the carriage to the ${runningOrder.carriageAt(put.side)} without knitting or counting.`;
    case 'counter':
    case 'carriage':
    case 'selecting':
    case 'end-needles':
    case 'tension':
    case 'weights':
      return runningOrder.act(put, names);
    case 'choose-again':
      return chooseAgain(put);
    case 'pattern-row':
      return `Set ${patternsOf(put.pattern)} so that the next pass chooses row ${put.row}.`;
    case 'yarn-out':
      return `Take ${supply(put, names)} out of feeder ${put.feeder}.`;
    case 'yarn-in':
      return `${put.wasCut ? 'Join' : 'Thread'} ${supply(put, names)} ${put.wasCut ? 'again and thread it ' : ''}into feeder ${put.feeder}.`;
    case 'yarn-waits':
      return `${put.wasCut ? 'Join' : 'Let'} ${supply(put, names)} ${put.wasCut ? 'again and let it ' : ''}wait at ${label(put.needle)}.`;
    case 'strand-waits': {
      if (put.needle === null) return `Leave strand ${put.strand} free: it has not wrapped yet.`;
      return `${put.wasEnded ? `Pull the end of strand ${put.strand} out again, and let it` : `Let strand ${put.strand}`} hang at ${label(put.needle)}.`;
    }
    case 'strand-out':
      return `Take strand ${put.strand} off: a later row takes it up.`;
  }
}

export const puttingBack = { sentence };
