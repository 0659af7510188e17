/**
 * What a knitter does, act by act: one short sentence each, with every number
 * and needle in it. They are kept so regular that they can be read back, so
 * what they say is all of the act.
 */
import { label, widthOf, type Run, type Side, type Slot } from '../../bed/index.ts';
import type { Act, ActOf, NeedleActKind, Stop, TensionPart } from '../../plan/index.ts';
import type { LengthUnit } from '../../length/index.ts';
import { lengths } from './lengths.ts';
import { numbers as n } from './numbers.ts';
import { patterns } from './patterns.ts';

/** What yarns and motifs are called. */
export interface ActNames {
  yarn(index: number): string;
  motif(id: string): string;
  /** What lengths are told in. */
  readonly unit: LengthUnit;
}

interface RowSpan {
  readonly first: number;
  readonly last: number;
}

/** Fewer needles than this are named one by one. */
const LEAST_IN_STEPS = 5;

/** Needles from left to right: neighbours as a run, those in even steps together. `L5–L3, R1`; `every 2nd needle from L9 to R10`. */
function needles(slots: readonly Slot[]): string {
  const step = (slots[1] ?? 0) - (slots[0] ?? 0);
  const isEven = step > 1 && slots.every((slot, index) => index === 0 || slot - (slots[index - 1] as Slot) === step);
  if (isEven && slots.length >= LEAST_IN_STEPS) {
    return `every ${n.ordinal(step)} needle from ${label(slots[0] as Slot)} to ${label(slots.at(-1) as Slot)}`;
  }
  const runs: { first: Slot; last: Slot }[] = [];
  for (const slot of slots) {
    const before = runs.at(-1);
    if (before && slot === before.last + 1) before.last = slot;
    else runs.push({ first: slot, last: slot });
  }
  return runs.map(n.run).join(', ');
}

/** `96 stitches, L48–R47`. */
function stitchesOn(run: Run): string {
  return `${n.stitches(widthOf(run))}, ${n.run(run)}`;
}

type NamedPart = Exclude<TensionPart, object>;

const PARTS: { readonly [Part in NamedPart]: string } = {
  main: 'the main part',
  facing: 'the facing',
  turningRow: 'the turning row',
  outside: 'the outside of the hem',
  joiningRow: 'the joining row',
  pattern: 'the pattern',
  lastRow: 'the last row',
};

/** Where nobody wrote a number. */
const UNWRITTEN: { readonly [Part in NamedPart]: string } = {
  main: 'as in your swatch',
  facing: 'tighter',
  turningRow: 'looser',
  outside: 'as in your swatch',
  joiningRow: 'looser',
  pattern: 'as in your swatch',
  lastRow: 'loosest',
};

function tension({ part, text }: ActOf<'tension'>): string {
  const name = typeof part === 'string' ? PARTS[part] : `the section ${part.section}`;
  const unwritten = typeof part === 'string' ? UNWRITTEN[part] : UNWRITTEN.main;
  return `Set the tension for ${name}${text === '' ? `, ${unwritten}` : ` to ${text}`}.`;
}

function castOn({ needles: run, yarn, ball, how, wasteRows, wasteTension }: ActOf<'cast-on'>, names: ActNames): string {
  if (how === 'picked-up') return `Pick up ${stitchesOn(run)}, in ${names.yarn(yarn)}.`;
  if (how === 'closed')
    return `Cast on ${stitchesOn(run)}, closed, ${ball === null ? 'in' : `from ball ${ball},`} ${names.yarn(yarn)}.`;
  const at = wasteTension === '' ? '' : ` at tension ${wasteTension}`;
  return `Cast on ${stitchesOn(run)}, open: ${n.rows(wasteRows)} of waste yarn${at} and the ravel cord, then go on in ${names.yarn(yarn)}.`;
}

function finish({ how, needles: run, startsAt, mm }: ActOf<'finish'>, names: ActNames): string {
  const stitches = stitchesOn(run);
  const what = {
    'cast-off': `Cast off all ${stitches}`,
    'waste-yarn': `Knit all ${stitches}, off on waste yarn`,
    'on-a-thread': `Take all ${stitches}, off on a thread`,
  }[how];
  return `${what}, starting at the ${startsAt}${mm === null ? '' : `: it takes ${lengths.cut(mm, names.unit)} of yarn`}.`;
}

function firstNeedles({ patterns: set, row, groups }: ActOf<'first-needles'>, names: ActNames): string {
  const said = groups.map(
    ({ needle, last, motif, copies, isMirrored }) =>
      `${label(needle)} to ${label(last)}, ${n.copies(copies)} of ${names.motif(motif)}${isMirrored ? ', mirrored' : ''}`,
  );
  return `Set ${set.map(patterns.named).join(' with ')} for row ${row}: ${said.join('; ')}.`;
}

function lay({ ball, yarn, needles: runs, crosses }: ActOf<'lay'>, names: ActNames): string {
  const others = n.list(crosses.map((other) => `ball ${other}`));
  const crossed = crosses.length === 0 ? '' : `, its yarn crossed with that of ${others}`;
  return `Lay ball ${ball}, ${names.yarn(yarn)}, into the hooks of ${runs.map(n.run).join(', ')}${crossed}.`;
}

/** `chalk`; one that has a number with it, `ball 2, chalk,`. */
function threaded(
  { ball = null, yarn }: { readonly ball?: number | null; readonly yarn: number },
  names: ActNames,
): string {
  return ball === null ? names.yarn(yarn) : `ball ${ball}, ${names.yarn(yarn)},`;
}

const WEIGHTS = { hang: 'Hang the weights.', move: 'Move the weights up.', off: 'Take the weights off.' };

/** The act as a sentence. */
function act(said: Act, names: ActNames): string {
  switch (said.kind) {
    case 'cast-on':
      return castOn(said, names);
    case 'counter':
      return `Set the row counter to ${said.reading}.`;
    case 'tension':
      return tension(said);
    case 'thread':
      return `Thread ${threaded(said, names)} into feeder ${said.feeder}.`;
    case 'unthread': {
      const out = `Take ${threaded(said, names)} out of feeder ${said.feeder}`;
      return said.waitsAt === 'cut'
        ? `${out} and cut it, leaving a tail of ${lengths.cut(said.tailMm ?? 0, names.unit)}.`
        : `${out} and let it wait at ${label(said.waitsAt)}.`;
    }
    case 'carriage':
      return said.set === 'plain' ? 'Set the carriage to knit plain.' : 'Set the carriage to knit the pattern.';
    case 'selecting':
      return `Switch needle selection ${said.isOn ? 'on' : 'off'}.`;
    case 'end-needles':
      return `Switch end-needle selection ${said.isOn ? 'on' : 'off'}.`;
    case 'first-needles':
      return firstNeedles(said, names);
    case 'increase':
      return `Increase ${n.stitches(said.needles.length)} at the ${said.edge} edge: ${needles(said.needles)}.`;
    case 'decrease':
      return `Decrease ${n.stitches(said.needles.length)} at the ${said.edge} edge: ${needles(said.needles)}.`;
    case 'cast-off':
      return `Cast off ${stitchesOn(said.needles)}, at the ${said.edge} edge.`;
    case 'cast-on-more':
      return `Cast on ${stitchesOn(said.needles)}, at the ${said.edge} edge.`;
    case 'eyelets':
      return `Make ${n.count(said.needles.length, 'eyelet')}, each loop moved onto its left neighbour and its needle left in work: ${needles(said.needles)}.`;
    case 'push-forward':
      return `Push ${n.needles(said.needles.length)} forward: ${needles(said.needles)}.`;
    case 'push-back':
      return `Put ${n.needles(said.needles.length)} back: ${needles(said.needles)}.`;
    case 'wrap':
      return `Wrap ${label(said.needle)} at the ${said.edge} edge of the figure with strand ${said.strand} of ${names.yarn(said.yarn)}.`;
    case 'strand':
      return said.at === 'start'
        ? `Take up strand ${said.strand}, cut to ${lengths.cut(said.mm, names.unit)}.`
        : `Strand ${said.strand}, ${lengths.cut(said.mm, names.unit)}, ends: work it in.`;
    case 'lay':
      return lay(said, names);
    case 'cut':
      return `Cut ${said.ball === null ? 'the yarn of the cast-on' : `ball ${said.ball}`}, ${names.yarn(said.yarn)}, leaving a tail of ${lengths.cut(said.tailMm, names.unit)}.`;
    case 'hang-hem':
      return `Hang the hem on ${n.run(said.needles)}: ${n.count(said.loops, 'loop')}, one to a needle, with the half loop at the ${said.edgeLoop} edge.`;
    case 'remove-waste':
      return 'Pull out the ravel cord and take off the waste yarn.';
    case 'hook-up':
      return `Hook the float of ${names.yarn(said.yarn)} behind ${n.run(said.float)} up onto ${label(said.needle)}.`;
    case 'latch-up':
      return `Latch up the floats of ${threaded(said, names)} behind ${label(said.needle)} of ${n.rowSpan(said.first, said.last)} into a chain, no tighter than the fabric, and hang its last loop on ${label(said.needle)}.`;
    case 'weights':
      return WEIGHTS[said.do];
    case 'check':
      return `Check that ${said.forward} ${said.forward === 1 ? 'needle stands' : 'needles stand'} forward, from ${label(said.first)} to ${label(said.last)}.`;
    case 'finish':
      return finish(said, names);
  }
}

const ON_NEEDLE: { readonly [Kind in NeedleActKind]: string } = {
  increase: 'made before the row',
  'cast-on-more': 'cast on before the row',
  eyelets: 'its loop moved before the row',
  'push-forward': 'pushed forward before the row',
  'push-back': 'put back before the row',
  wrap: 'wrapped before the row',
  lay: 'laid by hand',
};

/** As knitters write where the carriage is: COL, COR. */
const CARRIAGE: { readonly [At in Side]: string } = { left: 'left (COL)', right: 'right (COR)' };

/** What has to lie ready before the first stitch. */
export type AtHand =
  /** With the share that is wound off more; `grams` null where the yarn's count is not known. */
  | {
      readonly code: 'yarn';
      readonly yarn: number;
      readonly role: 'main' | 'contrast';
      readonly mm: number;
      readonly grams: number | null;
    }
  /** `laid`: how many of them are laid by hand; the carriage feeds the others. */
  | { readonly code: 'balls'; readonly count: number; readonly laid: number }
  | { readonly code: 'strands'; readonly count: number }
  | {
      readonly code:
        'waste-yarn' | 'ravel-cord' | 'transfer-tool' | 'latch-tool' | 'weights' | 'thread' | 'sewing-needle';
    };

const AT_HAND: { readonly [Code in Exclude<AtHand['code'], 'yarn' | 'balls' | 'strands'>]: string } = {
  'waste-yarn': 'Waste yarn of the same thickness, in another colour.',
  'ravel-cord': 'A ravel cord.',
  'transfer-tool': 'A transfer tool.',
  'latch-tool': 'A latch tool.',
  weights: 'Weights.',
  thread: 'A smooth thread to take the last stitches off on.',
  'sewing-needle': 'A blunt sewing needle for the yarn ends.',
};

function atHand(item: AtHand, names: ActNames): string {
  switch (item.code) {
    case 'yarn': {
      const grams = item.grams === null ? '' : `, ${lengths.weight(item.grams, names.unit)}`;
      return `${item.role === 'main' ? 'Main' : 'Contrast'} yarn ${names.yarn(item.yarn)}: ${lengths.yarn(item.mm, names.unit)}${grams}.`;
    }
    case 'balls': {
      const { count, laid } = item;
      const how = laid === 0 ? '' : laid === count ? ', to be laid by hand' : `, ${laid} of them to be laid by hand`;
      return `${n.count(count, 'ball')} of contrast wound beforehand${how}.`;
    }
    case 'strands':
      return `${n.count(item.count, 'strand')} of main cut beforehand, to wrap with.`;
    default:
      return AT_HAND[item.code];
  }
}

export const runningOrder = {
  act,
  atHand,
  titles: { atHand: 'To have at hand', knitting: 'Knitting it', blocked: 'This piece cannot be knitted as it is' },
  blocked: 'There are no steps until this is changed:',
  needles,
  /** `before row 24 · counter reads 23 · carriage at the left (COL)` */
  stop({ row, counter, carriageAt }: Pick<Stop, 'row' | 'counter' | 'carriageAt'>): string {
    const when = row === null ? `after row ${counter}` : `before row ${row}`;
    return `${when} · counter reads ${counter} · carriage at the ${CARRIAGE[carriageAt]}`;
  },
  carriageAt: (side: Side): string => CARRIAGE[side],
  /** `Counter reads 59: Set pattern band 1 for row 61: …` */
  at: (counter: number, sentences: readonly string[]): string => `Counter reads ${counter}: ${sentences.join(' ')}`,
  /** What is done to one needle before its row, beside the needle. */
  onNeedle: (kind: NeedleActKind): string => ON_NEEDLE[kind],
  /** `Rows 33–56: knit them as rows 21–32, beginning when the counter reads 32 and 44.` */
  again: (rows: RowSpan, of: RowSpan, readings: readonly number[]): string =>
    `Rows ${rows.first}–${rows.last}: knit them as ${n.rowSpan(of.first, of.last)}, beginning when the counter reads ${n.list(readings.map(String))}.`,
  /** Rows that are knitted in one go, until the counter reads the last of them. */
  knit: (first: number, last: number): string =>
    first === last ? `Knit row ${first}.` : `Knit rows ${first}–${last}, until the counter reads ${last}.`,
};
