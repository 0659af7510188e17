/**
 * Everything that reads what a stranger may have made: for each some good
 * inputs, ways to spoil them, and what must hold of whatever is read.
 */
import assert from 'node:assert/strict';
import { parseNeedle, label } from '@shared/bed/index.ts';
import { contract, type Method } from '@shared/host/index.ts';
import { outcome, problemError, ProblemError } from '@shared/problem/index.ts';
import { parseColour } from '@shared/picture/index.ts';
import { stepsFromText, stepsToText } from '@shared/piece/index.ts';
import { readArgs } from '../../src-main/cli/args.ts';
import * as values from '../../src-main/cli/values.ts';
import { dispatch } from '../../src-main/services/dispatch.ts';
import { PICTURE_READERS } from './picture-readers.ts';
import { KNITTING_READERS } from './knitting-readers.ts';
import { PROJECT_READERS } from './project-readers.ts';
import { ofText, REFUSED, type Reader } from './reader.ts';
import { changedJson } from './texts.ts';

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
  ...PICTURE_READERS,
  ...PROJECT_READERS,
  ...KNITTING_READERS,
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
