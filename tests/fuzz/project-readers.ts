/** The readers of projects, and of work that was kept. */
import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import {
  editsToText,
  insertPattern,
  paintCells,
  projectAt,
  projectFromText,
  projectToText,
  sampleProject,
  setPattern,
  setNumbers,
  setProject,
  setUnderlay,
  startAllOver,
  type Edit,
} from '@shared/project/index.ts';
import { fixtureText } from '../digests/fixtures.ts';
import { endOfWhole, keptFileToText } from '../../src-main/services/kept-file.ts';
import { keptWorkFromText, lineOf } from '../../src-main/services/kept-journal.ts';
import type { Dice } from './random.ts';
import { ofText, REFUSED, type Reader } from './reader.ts';
import { changedJson, changedText } from './texts.ts';

const PROJECT = projectToText(sampleProject());
/** With all-overs, sections and several sizes, as it was written before and as it is written now. */
const FILLED_6 = fixtureText('beds-and-rows-6.walewright');
const FILLED = projectToText(projectFromText(FILLED_6));
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
  setPattern(SAMPLE_AT, 'band', 0, { choice: 1 }),
  setNumbers(SAMPLE_AT.at, { lengths: undefined } as object),
  setUnderlay('lighthouse', { left: 2 }),
  insertPattern(SAMPLE_AT, 'fill-1', startAllOver('lighthouse', 90)),
  {
    kind: 'set',
    of: 'all-over',
    piece: 'piece-1',
    pattern: 'fill-1',
    to: { position: { kind: 'from-to', from: { kind: 'from-row', row: 80 }, to: { kind: 'to-row', row: 99 } } },
  },
  setProject({ machine: { ...sampleProject().machine, bed: { needles: 150, pitchMm: 4.5 } } }),
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

export const PROJECT_READERS: readonly Reader[] = [
  ofText('project', [PROJECT, FILLED, FILLED_6], project, changedJson),
  ofText('kept-work', [KEPT], kept, changedKept),
  ofText('kept-since', [WHOLE], kept, changedLines),
];
