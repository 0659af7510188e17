/** What is said beside the machine, row by row: short, and read from two metres. */
import { label, opposite, type Side } from '../../bed/index.ts';
import {
  weightsDue,
  type DifferingRows,
  type KnittingOrder,
  type KnittingStop,
  type Pace,
  type RowDifference,
} from '../../knitting/index.ts';
import { capitalised } from '../marked.ts';
import { numbers as n } from './numbers.ts';
import { runningOrder, type ActNames } from './running-order.ts';

const DIFFER: { readonly [Difference in RowDifference]: string } = {
  stitches: 'other needles',
  yarns: 'other yarns',
  acts: 'other things to do',
  carriage: 'the carriage at the other side',
  gone: 'not there in both',
};

/** What is in the feeders, and what is laid by hand: `slate in the first feeder, the second empty; chalk laid by hand`. */
function feeders({ row }: KnittingStop, { yarns }: KnittingOrder): string {
  const name = (yarn: number): string => yarns[yarn]?.name ?? '';
  const laid = [...new Set(row?.laid.map(({ yarn }) => yarn))].map((yarn) => `**${name(yarn)}**`);
  return `${fed(row, name)}${laid.length > 0 ? `; ${n.list(laid)} laid by hand` : ''}`;
}

function fed(row: KnittingStop['row'], name: (yarn: number) => string): string {
  const [first, second] = [row?.feeders[1] ?? null, row?.feeders[2] ?? null];
  if (first !== null && second !== null)
    return `**${name(first)}** in the first feeder, **${name(second)}** in the second`;
  if (first !== null) return `**${name(first)}** in the first feeder, the second empty`;
  if (second !== null) return `the first feeder empty, **${name(second)}** in the second`;
  return 'both feeders empty';
}

/** What the needles of a pattern row are said to do, by how they come to be chosen. */
const CHOSEN: { readonly [By in KnittingOrder['chooses']]: string } = {
  'ahead-seen': 'forward',
  'ahead-unseen': 'chosen',
  'by-hand': 'forward, by hand',
};

const SEEN_FROM = { purl: 'purl side to you', knit: 'seen from the knit side' };

/** `42 min`, or from two hours on `2.5 hours`. */
function timeOf(ms: number): string {
  const minutes = Math.max(1, Math.round(ms / 60_000));
  return minutes < 120 ? `${minutes} min` : `${n.plain(minutes / 60, 1)} hours`;
}

function weights(rows: number): string {
  return `${n.rows(rows)} since the weights were hung or moved: move them up.`;
}

/** The same where it is time to, else nothing. */
function weightsAt({ counter }: KnittingStop, knitting: KnittingOrder): string {
  const rows = weightsDue(knitting, counter);
  return rows === null ? '' : weights(rows);
}

/** A voice passes over the dash of `L48–R48`. */
function aloud(text: string): string {
  return text.replaceAll(/(?<=\w)–(?=\w)/gu, ' to ');
}

interface CountedPiece {
  readonly piece: string | null;
  readonly size: string | null;
  readonly copy: number;
  readonly of: number;
  readonly reading: number;
}

export const knitBench = {
  label: 'At the machine',
  help: 'Space, Enter or Page Down: the row is done. Page Up: back a row.',
  which: { piece: 'Piece', size: 'Size', copy: 'Which one' },
  copy: (copy: number, of: number): string => `${copy} of ${of}`,
  counter: 'The counter reads',
  at: (side: Side): string => `at the ${side}`,
  /** What the arrow is, to assistive technology. */
  way: (side: Side): string => `The carriage goes from the ${side} to the ${opposite(side)}.`,
  rowOf: (row: number, rows: number): string => `Row ${row} of ${rows}`,
  allRows: (rows: number): string => `All ${n.rows(rows)} are knitted`,
  /** `About 42 min more at this pace, 120 rows an hour`. */
  pace: ({ rowsAnHour, leftMs, pauses }: Pace): string =>
    `About ${timeOf(leftMs)} more at this pace, ${n.rows(Math.round(rowsAnHour))} an hour${pauses > 0 ? `, ${n.count(pauses, 'pause')} left out` : ''}`,
  /** `Chalk on hand runs out in row 98, in about 40 min.` `inMs`: null where no pace is told. */
  runsOut: (yarn: string, row: number, inMs: number | null, isAtEarliest: boolean): string =>
    `${capitalised(yarn)} on hand ${isAtEarliest ? 'may run out' : 'runs out'} in row ${row}${inMs === null ? '' : `, in about ${timeOf(inMs)}`}.`,
  /** The row in which it would have run out is knitted. */
  hasRunOut: (yarn: string, row: number): string =>
    `${capitalised(yarn)} on hand was to run out in row ${row}: look how much is left.`,
  weights,
  rest: (ms: number): string => `${timeOf(ms)} at one go: let the row wait, and rest hands, shoulders and eyes.`,
  following: 'Another window counts this piece, and this one follows it.',
  before: 'Before the row',
  nothing: 'Nothing to do before this row.',
  atEnd: 'At the end',
  row: (row: number, isPattern: boolean): string => `Row ${row}, ${isPattern ? 'in pattern' : 'plain'}`,
  feeders,
  selected: (count: number, by: KnittingOrder['chooses']): string => `${n.needles(count)} ${CHOSEN[by]}:`,
  stitches: (count: number): string => `${n.stitches(count)} in work`,
  /** A stretch of rows without anything to do. */
  goesOn: (rows: number, to: number, isPattern: boolean): string =>
    rows === 1
      ? ''
      : `${rows} ${isPattern ? 'rows in pattern with nothing else to do' : 'plain rows like this'}, until the counter reads **${to}**`,
  /** What is next to be done, in small. */
  next: (reading: number, sentence: string, more: number): string =>
    `At **${reading}**: ${sentence}${more > 0 ? ` And ${n.count(more, 'more thing')}.` : ''}`,
  done: 'Row done',
  back: 'Back a row',
  offTheNeedles: 'It is off the needles',
  finished: 'This piece is off the needles.',
  notFinished: 'It is not: go back',
  /** `Last counted: sleeve, size M, 2 of 2, to 61.` Of what there is one of, nothing is told. */
  countedLast: ({ piece, size, copy, of, reading }: CountedPiece): string => {
    const named = [piece, size === null ? null : `size ${size}`, of > 1 ? `${copy} of ${of}` : null];
    return `Last counted: ${named.filter((one) => one !== null).join(', ')}, to ${reading}. It is not off the needles yet.`;
  },
  goOnThere: 'Go on with it',
  nextCopy: (copy: number, of: number): string => `Begin ${copy} of ${of}`,
  other: {
    title: 'Another reading',
    hint: 'What your row counter reads, or where you ripped back to.',
    reading: 'Reading',
    goTo: 'The counter reads this',
    ripped: 'I ripped back to this',
    anew: 'Begin this piece anew',
    anewHint: 'To knit it once more, from casting on: what was counted is put aside.',
    anewAsk: 'Begin anew?',
    anewLoses: (reading: number): string => `The count of ${n.rows(reading)} is put aside.`,
    damaged: 'Its journal is damaged. Look at the row counter of the machine, and say what it reads.',
  },
  returning: {
    title: 'Before you go on',
    taken: 'The changed design is taken. Put right, in this order:',
    ripped: (from: number, to: number): string => `Ripped back from ${from} to ${to}. Put back, in this order:`,
    /** Heard, before the list is come to. */
    said: (from: number, to: number, things: number): string =>
      `Ripped back from ${from} to ${to}. ${n.count(things, 'thing')} to put back, in the order of the list.`,
    /** What is put back only where an act at the reading that was left was done without being ticked off. */
    ifBegun: (from: number, sentence: string): string => `If you had done what was asked at ${from}: ${sentence}`,
    /** Once the count has gone on. */
    again: 'What was to be put back',
    ask: 'At which side does the carriage stand?',
    at: (side: Side): string => `At the ${side}`,
  },
  changed: {
    title: 'The design was changed since this piece was begun.',
    knitted: ({ first, last, differ }: DifferingRows): string =>
      `${capitalised(n.rowSpan(first, last))} that you knitted would differ now: ${n.list(differ.map((one) => DIFFER[one]))}.`,
    none: 'What is knitted would be the same.',
    ahead: (row: number): string => `From row ${row} on it is another.`,
    toSet: 'Before you go on with the changed design, put right:',
    goOn: 'Go on as it was begun',
    take: 'Take the changed design',
  },
  /** `line`: from which one on; `entries`: how many before it could be read. */
  damaged: ({ line, entries }: { readonly line: number; readonly entries: number }): string =>
    `The journal of this piece is damaged from line ${line} on: ${entries === 0 ? 'no entry' : n.count(entries, 'entry', 'entries')} before it could be read.`,
  /** Of a reading that stands there large. */
  unsure: (reading: number): string => `${reading} may be too low: it is where the part that could be read ends.`,
  sayReading: 'Say what the row counter reads',
  notKept: 'The place is not kept on disk: the count goes on in this window alone.',
  cannot: 'This piece cannot be knitted as it is.',
  toPiece: 'Go to the Piece bench',
  caution: 'Keep hands and sleeves clear before the carriage moves, and rest now and then.',
  cautionWraps: 'Put the wrapped needles back, and keep hands and sleeves clear before the carriage moves.',
  /** Leads to what lies under the bed. */
  more: 'More below',
  aids: {
    title: 'Voice, sound and key',
    speak: 'Speak rows',
    speaks: { no: 'no', short: 'in short', long: 'in full' },
    sound: 'Sound where hands are needed',
    time: 'Tell the time left',
    see: 'The fabric is seen from',
    sees: { purl: 'the purl side', knit: 'the knit side' },
  },
  /** A key, a pedal or a remote control of the knitter's own. */
  ownKey: {
    is: (key: string | null): string =>
      key === null
        ? 'No key of your own ends a row.'
        : `Your own key that ends a row: ${key.length === 1 ? key.toUpperCase() : key}`,
    teach: 'Teach a key or pedal',
    press: 'Press the key or the pedal. Escape leaves it as it was.',
    taken: 'That key does something else. Press another, or Escape.',
    forget: 'Forget it',
  },
  /** On the fabric, to go to one of its rows. */
  pressFabric: 'Press a row to go to its reading.',
  /** The same, for who knows the piece by now: what is to be done, counted where it is much. */
  saidShort(stop: KnittingStop, knitting: KnittingOrder, names: ActNames): string {
    const { row, acts } = stop;
    const todo =
      acts.length > 2
        ? `${n.count(acts.length, 'thing')} to do first.`
        : acts.map(({ act }) => runningOrder.act(act, names)).join(' ');
    const needles =
      row && row.selectedCount > 0 ? `${n.needles(row.selectedCount)} ${CHOSEN[knitting.chooses]}.` : row && 'Plain.';
    return aloud(
      [row ? `Row ${row.row}.` : `The counter reads ${stop.counter}.`, todo, weightsAt(stop, knitting), needles]
        .filter(Boolean)
        .join(' '),
    );
  },
  /** Said aloud and in the live region, once a row. */
  said(stop: KnittingStop, knitting: KnittingOrder, names: ActNames): string {
    const acts = stop.acts.map(({ act }) => runningOrder.act(act, names)).join(' ');
    const { row } = stop;
    const parts = [
      row ? `Row ${row.row}.` : `The counter reads ${stop.counter}.`,
      `Carriage at the ${stop.carriageAt}.`,
      acts,
      weightsAt(stop, knitting),
      row && row.selectedCount > 0
        ? `${n.needles(row.selectedCount)} ${CHOSEN[knitting.chooses]}: ${row.selected.map((run) => (run.first === run.last ? label(run.first) : `${label(run.first)} to ${label(run.last)}`)).join(', ')}.`
        : row
          ? 'Plain.'
          : '',
    ];
    return aloud(parts.filter((part) => part !== '').join(' '));
  },
  bed: {
    title: 'The bed',
    label: (needles: number, forward: number): string =>
      needles === 0
        ? 'The bed: no needle in work'
        : `The bed: ${n.needles(needles)} in work${forward > 0 ? `, ${forward} forward` : ''}`,
    wrap: 'wrap',
    group: (index: number): string => `group ${index + 1}`,
  },
  fabric: {
    label: (rows: number, of: number, side: 'purl' | 'knit', isOff = false): string =>
      `The fabric${isOff ? '' : ' as it hangs'}, ${SEEN_FROM[side]}: ${rows} of ${n.rows(of)}`,
    note: (side: 'purl' | 'knit', isOff = false): string =>
      isOff ? capitalised(SEEN_FROM[side]) : `As it hangs, ${SEEN_FROM[side]}`,
  },
};
