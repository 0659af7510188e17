/**
 * Everything that reads what a stranger may have made: for each some good
 * inputs, ways to spoil them, and what must hold of whatever is read.
 */
import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseNeedle, label } from '@shared/bed/index.ts';
import { contract, type Method } from '@shared/host/index.ts';
import { outcome, problemError, ProblemError } from '@shared/problem/index.ts';
import { parseColour, readMotifPicture } from '@shared/picture/index.ts';
import { stepsFromText, stepsToText } from '@shared/piece/index.ts';
import {
  editsToText,
  paintCells,
  projectFromText,
  projectToText,
  sampleProject,
  setBand,
  setProject,
  setUnderlay,
  startFill,
  type Edit,
  setNumbers,
  insertFill,
  projectAt,
} from '@shared/project/index.ts';
import {
  checkPictureFile,
  decodePhoto,
  isSvg,
  MOST_KEPT_MEGAPIXELS,
  MOST_MEGAPIXELS,
  readSvg,
  SVG_SIDE,
} from '@shared/reading/index.ts';
import { readArgs } from '../../src-main/cli/args.ts';
import * as values from '../../src-main/cli/values.ts';
import { dispatch } from '../../src-main/services/dispatch.ts';
import { endOfWhole, keptFileToText } from '../../src-main/services/kept-file.ts';
import { keptWorkFromText, lineOf } from '../../src-main/services/kept-journal.ts';
import { bitRows, rawPng } from '../unit/picture/pictures.ts';
import { changedBytes } from './bytes.ts';
import { changedParts, JPEG_LAYOUT, PNG_LAYOUT, WEBP_LAYOUT, type Layout } from './parts.ts';
import type { Dice } from './random.ts';
import { changedJson, changedText } from './texts.ts';

export interface Reader {
  readonly name: string;
  /** An input that was good once. */
  readonly spoiled: (dice: Dice) => Uint8Array;
  /** Reads it and holds what comes out to its promises. A `ProblemError`, or {@link REFUSED}, is as good. */
  readonly read: (input: Uint8Array) => unknown;
}

/** Given by a reader that has no problem to throw for what it does not take. */
export const REFUSED = Symbol('refused');

const latin = (text: string): Uint8Array => new Uint8Array(Buffer.from(text, 'utf8'));
const textOf = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);

function ofBytes(name: string, seeds: readonly Uint8Array[], layout: Layout | null, read: Reader['read']): Reader {
  return {
    name,
    spoiled(dice) {
      const seed = dice.pick(seeds);
      // In a PNG nearly every changed byte is found by its checksum, and nothing behind it is reached.
      if (layout === null || dice.once(layout === PNG_LAYOUT ? 4 : 2)) return changedBytes(seed, dice);
      const changed = changedParts(seed, layout, dice);
      return dice.once(4) ? changedBytes(changed, dice) : changed;
    },
    read,
  };
}

function ofText(name: string, seeds: readonly string[], read: (text: string) => unknown, change = changedText): Reader {
  return {
    name,
    spoiled: (dice) => latin((dice.once(4) ? changedText : change)(dice.pick(seeds), dice)),
    read: (input) => read(textOf(input)),
  };
}

const samples = (count: number, most: number): number[] =>
  Array.from({ length: count }, (_, at) => (at * 7 + (at >> 2)) % (most + 1));
const png = (depth: number, colourType: number, channels: number, more: object = {}): Uint8Array =>
  new Uint8Array(
    rawPng({
      width: 9,
      height: 6,
      depth,
      colourType,
      rows: Array.from({ length: 6 }, () =>
        bitRows(samples(9 * channels, Math.min(255, 2 ** depth - 1)), Math.min(depth, 8)).concat(
          depth === 16 ? samples(9 * channels, 255) : [],
        ),
      ),
      ...more,
    }),
  );
const palette = Array.from({ length: 6 }, (_, at) => at * 40);
const PNGS = [
  png(1, 0, 1),
  png(8, 0, 1, { transparency: [0, 7] }),
  png(8, 2, 3),
  png(8, 6, 4),
  png(16, 2, 3),
  png(8, 4, 2),
  png(1, 3, 1, { palette }),
  png(8, 2, 3, {
    chunks: [
      ['tEXt', [65, 0, 66]],
      ['zTXt', [65, 0, 0, 1]],
      ['gAMA', [0, 0, 177, 143]],
    ],
  }),
  new Uint8Array(
    rawPng({ width: 3, height: 1, depth: 8, colourType: 0, rows: [[255], [0], [255]], isInterlaced: true }),
  ),
];
const PBMS = ['P1\n# a chart\n5 3\n01010 11111 00100\n', 'P1 3 1 0 1 0', 'P4 9 2\n\u0001\u0002\u0003\u0004'].map(latin);
const jpegs = join(import.meta.dirname, '..', 'unit', 'picture', 'jpegs');
const JPEGS = readdirSync(jpegs)
  .filter((name) => name.endsWith('.jpg'))
  .map((name) => new Uint8Array(readFileSync(join(jpegs, name))));

function riff(...chunks: readonly (readonly [string, readonly number[]])[]): Uint8Array {
  const body = chunks.flatMap(([name, bytes]) => [
    ...latin(name),
    bytes.length,
    0,
    0,
    0,
    ...bytes,
    ...(bytes.length % 2 ? [0] : []),
  ]);
  return Uint8Array.from([...latin('RIFF'), body.length + 4, 0, 0, 0, ...latin('WEBP'), ...body]);
}
const WEBPS = [
  riff(['VP8 ', [0, 0, 0, 0x9d, 0x01, 0x2a, 0x20, 3, 0x58, 2, 1, 2, 3]]),
  riff(['VP8L', [0x2f, 0x1f, 0xc3, 0x95, 0, 1]]),
  riff(['VP8X', [0, 0, 0, 0, 15, 0, 0, 15, 0, 0]], ['ICCP', [1, 2]], ['VP8L', [0x2f, 15, 0xc0, 3, 0, 0]]),
];
function bmp(depth: number, width: number, height: number): Uint8Array {
  const table = depth <= 8 ? 4 * 2 ** depth : 0;
  const bytes = new Uint8Array(54 + table + Math.ceil((width * depth) / 32) * 4 * Math.abs(height));
  const view = new DataView(bytes.buffer);
  bytes.set([0x42, 0x4d]);
  [
    [2, bytes.length],
    [10, 54 + table],
    [14, 40],
    [18, width],
    [22, height],
  ].forEach(([at, value]) => view.setInt32(at as number, value as number, true));
  view.setUint16(26, 1, true);
  view.setUint16(28, depth, true);
  return bytes;
}
const BMPS = [bmp(24, 5, 4), bmp(8, 7, -3), bmp(1, 33, 2)];

const photo = (input: Uint8Array): void => {
  const { picture, scale, width, height } = decodePhoto(input);
  assert.equal(picture.rgba.length, picture.width * picture.height * 4);
  assert(picture.width >= 1 && picture.height >= 1 && picture.width * picture.height <= MOST_KEPT_MEGAPIXELS * 1e6);
  assert.deepEqual([Math.ceil(width / scale), Math.ceil(height / scale)], [picture.width, picture.height]);
};
const motif = (input: Uint8Array): void => {
  const { grid, colours, ground } = readMotifPicture(input);
  assert(grid.width >= 1 && grid.width <= 1000 && grid.height >= 1 && grid.height <= 4000);
  assert.equal(grid.cells.length, grid.width * grid.height);
  assert(colours.every((colour) => /^#[0-9a-f]{6}$/.test(colour)) && new Set(colours).size === colours.length);
  assert(grid.cells.every((cell) => cell < colours.length) && ground === 0);
};
const checked = (input: Uint8Array): void => {
  const file = checkPictureFile(input);
  if (file.kind === 'SVG') return;
  assert(file.width >= 1 && file.height >= 1 && file.width * file.height <= MOST_MEGAPIXELS * 1e6);
  assert(file.orientation >= 1 && file.orientation <= 8);
};

const SVGS = [
  '<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 20"><defs><g id="a"><rect width="1" height="1"/></g></defs><use href="#a" x="3"/><use xlink:href="#a"/></svg>',
  `<svg width="30mm" height="60mm"><style>.k{fill:#123}</style><!-- knit --><path class="k" d="M0 0L10 10"/><text>2 &lt; 3</text><image href="data:image/png;base64,${Buffer.from(PNGS[0] as Uint8Array).toString('base64')}"/></svg>`,
  '<svg><g id="l0"><rect/></g><g id="l1"><use href="#l0"/><use href="#l0"/></g><g id="l2"><use href="#l1"/><use href="#l1"/></g><rect fill="url(#l2)" mask="url(#l1)"/></svg>',
];

const PROJECT = projectToText(sampleProject());
const project = (text: string): void => {
  const read = projectFromText(text);
  const kept = projectToText(read);
  assert.equal(projectToText(projectFromText(kept)), kept);
};

const KEPT = keptFileToText({
  browser: 'b',
  laying: null,
  edition: 3,
  keptAt: '2026-01-02T03:04:05.678Z',
  name: 'Sleeve',
  text: 'a\nb',
  file: { path: '/a', stamp: 's' },
});
const kept = (text: string): unknown => {
  const read = keptWorkFromText(text);
  if (read === null) return REFUSED;
  assert(Number.isInteger(read.edition) && read.edition >= 1);
  // What was written behind the work changed it, and whoever takes it can open it.
  if (!text.includes(read.text)) projectFromText(read.text);
  return read;
};
/** Half of them with the mark that the change asks for, or the mark would be all that is ever looked at. */
const changedKept = (text: string, dice: Dice): string => {
  const changed = changedText(text.slice(0, text.lastIndexOf('\nend ')), dice);
  return `${changed}\nend ${createHash('sha256').update(changed).digest('hex')}\n`;
};

const SAMPLE_AT = projectAt(sampleProject());
/** Work with edits behind it. */
const CHANGED: readonly Edit[] = [
  setProject({ name: 'Cuff' }),
  paintCells('lighthouse', { at: Uint32Array.of(3, 4, 20), to: Uint8Array.of(1, 0, 1) }),
  setBand(SAMPLE_AT, 0, { choice: 1 }),
  setNumbers(SAMPLE_AT.at, { lengths: undefined } as object),
  setUnderlay('lighthouse', { left: 2 }),
  insertFill(SAMPLE_AT, 'fill-1', startFill('lighthouse', 90)),
  { kind: 'move', list: 'patterns', piece: 'piece-1', id: 'fill-1', at: 0 },
  { kind: 'remove', list: 'patterns', piece: 'piece-1', id: 'fill-1' },
];
const WHOLE = keptFileToText({
  browser: 'b',
  laying: null,
  edition: 3,
  keptAt: '2026-01-02T03:04:05.678Z',
  name: 'Sleeve',
  text: PROJECT,
  file: null,
});
const LINES = CHANGED.map((edit, index) => ({
  edition: 4 + index,
  keptAt: '2026-01-02T03:04:06.678Z',
  file: null,
  edits: editsToText([edit]),
  laying: null,
}));
/** The work with lines of which one is spoiled, all with the marks that they ask for. */
const changedLines = (_: string, dice: Dice): string => {
  const spoiled = dice.pick(LINES);
  let mark = endOfWhole(WHOLE)?.mark ?? '';
  return LINES.reduce((text, line) => {
    const edits = line === spoiled ? changedJson(line.edits, dice) : line.edits;
    const next = lineOf({ ...line, edits }, mark);
    mark = next.mark;
    return text + next.line;
  }, WHOLE);
};

const steps = (text: string): void => {
  const read = stepsFromText(text);
  assert.deepEqual(stepsFromText(stepsToText(read)), read);
  assert(read.every(({ row }, at) => row >= 2 && (at === 0 || row > (read[at - 1]?.row ?? 0))));
};

const optionValues: readonly ((text: string) => unknown)[] = [
  values.copies,
  values.rule,
  values.gauge,
  values.corners,
  values.pngFile,
  values.shows,
  values.finishedFace,
  values.evenOut,
  values.side,
  values.paper,
  values.figure,
  values.endNeedles,
  values.from(1, 400),
  (text) => {
    const needle = parseNeedle(text);
    assert.equal(parseNeedle(label(needle)), needle);
  },
  (text) => {
    const colour = parseColour(text);
    if (colour === null) throw problemError('colour-unknown', { text, known: '' });
    assert(/^#[0-9a-f]{6}$/.test(colour));
  },
];
const VALUES = [
  '3,3',
  'by-hand:L48,R12',
  'margins:13',
  'seam',
  '28x40',
  '12,8,410,15,400,600,5,590',
  'motif.png',
  'worn',
  'L48',
  '#a0b1c2',
  'even',
  '120',
  'white',
];

const CALLS = [
  { method: 'documents.read', params: { path: '/home/a.walewright' } },
  { method: 'folders.list', params: { folder: null } },
  {
    method: 'exports.write',
    params: {
      project: '{}',
      folder: '/home',
      kinds: ['chart-png'],
      paper: 'a4',
      date: '2026-01-02',
      there: { kind: 'ask' },
    },
  },
  { method: 'window.setState', params: { title: 'Sleeve', isUnsaved: true, path: null } },
].map((call) => JSON.stringify(call));
/** Services that are never to be reached with what the contract does not let through. */
const services = Object.fromEntries(
  Object.entries(contract).map(([method, { params }]) => [
    method,
    async (given: unknown) => {
      assert(params.safeParse(given).success, `${method} was reached with what its schema refuses`);
      return {};
    },
  ]),
) as unknown as Parameters<typeof dispatch>[0];

/** Each value is read by all; what none of them takes was refused. */
function byAny(text: string): unknown {
  const taken = optionValues.filter((read) => {
    const made = outcome(() => read(text));
    // An error that is none of ours goes on.
    if (!made.ok && made.problem.code === 'unexpected') read(text);
    return made.ok;
  });
  return taken.length === 0 ? REFUSED : taken.length;
}

export const READERS: readonly Reader[] = [
  ofBytes('motif-png', PNGS, PNG_LAYOUT, motif),
  ofBytes('photo-png', PNGS, PNG_LAYOUT, photo),
  ofBytes('jpeg', JPEGS, JPEG_LAYOUT, photo),
  ofBytes('pbm', PBMS, null, (input) => {
    motif(input);
    photo(input);
  }),
  ofBytes('webp', WEBPS, WEBP_LAYOUT, checked),
  ofBytes('bmp', BMPS, null, checked),
  ofText('svg', SVGS, (text) => {
    if (!isSvg(latin(text))) return;
    const { width, height } = readSvg(text);
    assert(Math.max(width, height) === SVG_SIDE && Math.min(width, height) >= 1);
  }),
  ofText('project', [PROJECT], project, changedJson),
  ofText('kept-work', [KEPT], kept, changedKept),
  ofText('kept-since', [WHOLE], kept, changedLines),
  ofText(
    'shaping',
    ['row 12: +1 at each edge\nrow 40: -4 at the left\nrow 44: -2 at the left, -1 at the right'],
    steps,
  ),
  ofText('option-values', VALUES, byAny),
  ofText('command-line', ['--stitches\n120\n--copies\n3,3\nmotif.png\n--json'], (text) =>
    readArgs(text.split('\n'), ['stitches', 'copies', 'rule', 'json', 'help']),
  ),
  ofText(
    'calls',
    CALLS,
    async (text) => {
      const call = outcome(() => JSON.parse(text) as { method?: Method; params?: unknown } | null);
      if (!call.ok) return REFUSED;
      const answered = await dispatch(services, String(call.value?.method), call.value?.params);
      if (answered.ok) return answered.value;
      throw new ProblemError(answered.problem);
    },
    changedJson,
  ),
];
