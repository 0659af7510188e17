/**
 * Reading the values of options, strictly: what is not exactly a value of the
 * option is a problem that names the option.
 */
import { parseNeedle, type Machine, type FinishedFace, type Shows, type Side } from '@shared/bed/index.ts';
import { chartSides } from '@shared/host/index.ts';
import type { ChartSides, PaperSize } from '@shared/output/index.ts';
import { MOST_GROUPS, type CarryMending, type FloatMending, type PlacementRule } from '@shared/pattern/index.ts';
import type { Gauge, Piece } from '@shared/piece/index.ts';
import { SOLVED_KINDS, startRule } from '@shared/placement/index.ts';
import type { LengthUnit } from '@shared/length/index.ts';
import { numberFields, type NumberField, type NumberFieldName } from '@shared/project/index.ts';
import { problemError } from '@shared/problem/index.ts';
import { JOIN_SIDES, type Corners, type FigureLevel, type Overlap } from '@shared/reading/index.ts';
import type { CliOptionName } from '@shared/words/en/cli.ts';
import { words } from '@shared/words/index.ts';
import type { Args } from './args.ts';
import { placed } from './placed.ts';
import type { ThirdYarn } from './third-yarn.ts';

/** Runs `read` on the option's text, or gives undefined where it was not given; problems name the option. */
export function value<T>(args: Args, name: CliOptionName, read: (text: string) => T): T | undefined {
  const text = args.values.get(name);
  return text === undefined ? undefined : placed(`--${name}`, () => read(text));
}

/** The same for an option that cannot be left out. Throws `option-missing`. */
export function needed<T>(args: Args, name: CliOptionName, read: (text: string) => T): T {
  const found = value(args, name, read);
  if (found === undefined) throw problemError('option-missing', { option: `--${name}` }, `--${name}`);
  return found;
}

/** Digits only, within the bounds. Throws `not-a-whole-number`. */
export function wholeNumber(text: string, least: number, most: number): number {
  const number = /^\d{1,9}$/.test(text.trim()) ? Number(text) : NaN;
  if (!(number >= least && number <= most)) throw problemError('not-a-whole-number', { text, least, most });
  return number;
}

/** A {@link wholeNumber} within bounds, ready for {@link value}. */
export function from(least: number, most: number): (text: string) => number {
  return (text) => wholeNumber(text, least, most);
}

/** A {@link wholeNumber} within the bounds that the field of that name has in files and forms. */
export function field(name: NumberFieldName): (text: string) => number {
  const { least, most } = numberFields[name];
  return from(least, most);
}

/** The longest float that anchors leave; 0 for none of them. */
export const anchors = from(0, numberFields.anchorsLongest.most);

/** `3,3`: a whole number for each group, left to right. */
export function copies(text: string): number[] {
  const counts = text.split(',').map(field('copiesAcross'));
  if (counts.length > MOST_GROUPS) {
    throw problemError('option-value', {
      option: '--copies',
      text,
      allowed: `copies for at most ${MOST_GROUPS} groups, such as 3,3`,
    });
  }
  return counts;
}

/** `seam`, `even`, `margins:13`, `gaps:24` or `by-hand:L48,R12`. */
export function rule(text: string): PlacementRule {
  const [kind, ...rest] = text.trim().split(':');
  const detail = rest.join(':');
  const hasDetail = rest.length > 0;
  if (kind === 'by-hand' && hasDetail) return { kind, first: detail.split(',').map(parseNeedle) };
  const solved = SOLVED_KINDS.find((known) => known === kind);
  const start = solved && startRule(solved, null);
  if (start && 'stitches' in start && hasDetail) {
    return { ...start, stitches: field('ruleStitches')(detail) };
  }
  if (start && !('stitches' in start) && !hasDetail) return start;
  throw problemError('option-value', { option: '--rule', text, allowed: words.placement.written });
}

/** `28x40`: stitches and rows in 10 cm; tenths may be given. */
export function gauge(text: string): Gauge {
  const match = /^(\d{1,3}(?:\.\d+)?)\s*[x×]\s*(\d{1,3}(?:\.\d+)?)$/i.exec(text.trim());
  const [stitches, rows] = match ? [Number(match[1]), Number(match[2])] : [0, 0];
  const [ofStitches, ofRows] = [numberFields.gaugeStitches, numberFields.gaugeRows];
  const isWithin = (count: number, { least, most }: NumberField): boolean => count >= least && count <= most;
  if (!isWithin(stitches, ofStitches) || !isWithin(rows, ofRows)) {
    throw problemError('option-value', {
      option: '--gauge',
      text,
      allowed: `stitches and rows in 10 cm, such as 28x40 (${ofStitches.least} to ${ofStitches.most} stitches, ${ofRows.least} to ${ofRows.most} rows)`,
    });
  }
  return { stitches, rows };
}

/** The words that say something of the machine by themselves. */
const MACHINE_WORDS: { readonly [word: string]: Partial<Machine> } = {
  'ahead-seen': { chooses: 'ahead-seen' },
  'ahead-unseen': { chooses: 'ahead-unseen' },
  'by-hand': { chooses: 'by-hand' },
  'any-needle': { places: 'any-needle' },
  'end-needles-switch': { endNeedles: 'switch' },
  'end-needles-always': { endNeedles: 'always' },
  'end-needles-none': { endNeedles: 'none' },
  'both-edges': { increases: 'both-edges' },
  'carriage-side': { increases: 'carriage-side' },
  weights: { weights: true },
  'no-weights': { weights: false },
};

/** `by-hand,carriage-side,repeat-24-from-L12`: what is said of the machine. Throws `option-value`. */
export function machine(text: string): Partial<Machine> {
  const said = text.split(',').map((part): Partial<Machine> => {
    const word = part.trim();
    const [, repeat, from] = /^repeat-(\d{1,3})-from-(\w+)$/i.exec(word) ?? [];
    if (repeat !== undefined && from !== undefined) {
      return { places: { repeat: field('machineRepeat')(repeat), from: parseNeedle(from) } };
    }
    const known = MACHINE_WORDS[word.toLowerCase()];
    if (known) return known;
    const allowed = [...Object.keys(MACHINE_WORDS), 'repeat-24-from-L12'].join(', ');
    throw problemError('option-value', { option: '--machine', text: word, allowed });
  });
  const fields = said.flatMap((one) => Object.keys(one));
  if (new Set(fields).size < fields.length) {
    throw problemError('option-value', { option: '--machine', text, allowed: 'one word about each thing' });
  }
  return Object.assign({}, ...said) as Partial<Machine>;
}

/** `12,8,410,15,400,600,5,590`: four corners in pixels, clockwise from the chart's top left; of several photos one after the other. */
export function cornersOfEach(photos: number): (text: string) => Corners[] {
  return (text) => {
    const numbers = text.split(',');
    if (numbers.length !== 8 * photos && photos > 1) {
      const allowed = `eight numbers for each of the ${photos} photos, with commas between all of them`;
      throw problemError('option-value', { option: '--corners', text, allowed });
    }
    if (photos === 1) return [corners(text)];
    return Array.from({ length: photos }, (_, photo) => corners(numbers.slice(photo * 8, photo * 8 + 8).join(',')));
  };
}

/** `20` for all photos, or `20,24`: a value for each. */
export function ofEach<T>(photos: number, read: (text: string) => T): (text: string) => T[] {
  return (text) => {
    const parts = text.split(',');
    if (parts.length === 1 || parts.length !== photos) return Array.from({ length: photos }, () => read(text));
    return parts.map(read);
  };
}

/** `above:6`: where the second photo goes on, and how many rows or columns both show. Throws `option-value`. */
export function overlap(text: string): Overlap {
  const [, side, shared] = /^(\w+):(\d{1,4})$/.exec(text.trim().toLowerCase()) ?? [];
  const known = JOIN_SIDES.find((candidate) => candidate === side);
  if (known === undefined || shared === undefined || Number(shared) < 1) {
    const allowed = `${JOIN_SIDES.join(', ')} with the number of rows or columns that both show, such as above:6`;
    throw problemError('option-value', { option: '--overlap', text, allowed });
  }
  return { side: known, shared: Number(shared) };
}

/** Four corners of one photo. */
export function corners(text: string): Corners {
  const numbers = text.split(',').map((part) => (/^-?\d+(\.\d+)?$/.test(part.trim()) ? Number(part) : NaN));
  if (numbers.length !== 8 || numbers.some((number) => Number.isNaN(number))) {
    throw problemError('option-value', {
      option: '--corners',
      text,
      allowed: 'eight numbers, such as 12,8,410,15,400,600,5,590',
    });
  }
  const point = (corner: number) => ({ x: numbers[2 * corner] as number, y: numbers[2 * corner + 1] as number });
  return [point(0), point(1), point(2), point(3)];
}

/** The name of a PNG file. Throws `option-value`. */
export function pngFile(text: string): string {
  if (!/[^/\\]\.png$/i.test(text.trim())) {
    throw problemError('option-value', { option: '--to', text, allowed: 'the name of a PNG file, such as motif.png' });
  }
  return text;
}

/** A folder's name. Throws `option-empty`. */
export const folder = folderOf('to');
export const collectionFolder = folderOf('collection');

function folderOf(option: CliOptionName): (text: string) => string {
  return (text) => {
    if (text.trim() === '') throw problemError('option-empty', { option: `--${option}` });
    return text;
  };
}

export const shows = oneOf<Shows>('shows', ['worn', 'needles']);
export const finishedFace = oneOf<FinishedFace>('finished-face', ['knit', 'purl']);
export const evenOut = oneOf<'figure' | 'blocks'>('even-out', ['figure', 'blocks']);
export const side = oneOf<Side>('start-side', ['left', 'right']);
export const paper = oneOf<PaperSize>('paper', ['a4', 'letter']);
export const charts = oneOf<ChartSides>('charts', chartSides);
export const unit = oneOf<LengthUnit>('unit', ['cm', 'in']);
export const turn = oneOf<'90' | '180' | '270'>('turn', ['90', '180', '270']);
export const figure = oneOf<FigureLevel>('figure', ['dark', 'light']);
export const begins = oneOf<Piece['begins']>('begins', ['usual', 'closed', 'open', 'picked-up']);
export const ends = oneOf<Piece['ends']>('ends', ['cast-off', 'waste-yarn', 'on-a-thread']);
export const longFloats = oneOf<FloatMending>('long-floats', ['left', 'hooked-up', 'latched-up']);
export const longCarries = oneOf<CarryMending>('long-carries', ['carried', 'cut']);
export const thirdYarn = oneOf<ThirdYarn>('third-yarn', ['watched', 'laid', 'redrawn']);
export const endNeedles = oneOf<'on' | 'off'>('end-needles', ['on', 'off']);

function oneOf<T extends string>(option: CliOptionName, allowed: readonly T[]): (text: string) => T {
  return (text) => {
    const found = allowed.find((candidate) => candidate === text.trim().toLowerCase());
    if (found === undefined) {
      throw problemError('option-value', { option: `--${option}`, text, allowed: allowed.join(' or ') });
    }
    return found;
  };
}
