import { describe, expect, it } from 'vitest';
import type { Problem, ProblemCode, ProblemFacts } from '@shared/problem/index.ts';
import { rectangle } from '@shared/reading/index.ts';
import { plainText, segments, words } from '@shared/words/index.ts';

/** One example a problem; the compiler asks for one when a code is added. */
const examples: { readonly [Code in ProblemCode]: ProblemFacts[Code] } = {
  'needle-unknown': { text: 'L0' },
  'needle-not-on-piece': { needle: 'L70', first: 'L60', last: 'R60' },
  'groups-wider-than-piece': { needed: 130, available: 120, stitches: 120 },
  'groups-overlap': { left: 1, right: 2, stitches: 4 },
  'groups-out-of-order': { left: 1, right: 2 },
  'rule-cannot-be-met': { rule: 'gaps', given: 60, least: 1, needed: 150, available: 120 },
  'motifs-several': { motifs: 3 },
  'collected-several': { files: ['gull.walewright', 'gull (2).walewright'] },
  'by-hand-count': { given: 1, groups: 2 },
  'no-figure': { motif: 'gull' },
  'motif-taller-than-section': { rows: 60, section: 'hem-front', available: 50 },
  'motif-leaves-section': { rows: 31, section: { named: 'rib' }, plain: 12, left: 9, edge: 'lower' },
  'all-over-taller-than-section': { rows: 60, section: 'hem-front', available: 50 },
  'all-over-leaves-section': { section: { named: 'rib' }, plain: 12, left: 9, edge: 'upper' },
  'section-missing': { section: { named: 'rib' } },
  'rows-outside-piece': { first: 90, last: 120, rows: 100 },
  'bands-overlap': { one: 1, other: 2, first: 20, last: 25 },
  'fill-overlaps-band': { allOver: 1, band: 2, first: 20, last: 25 },
  'fills-overlap': { one: 1, other: 2, first: 20, last: 20 },
  'fill-without-room': { allOver: 1 },
  'fill-rows-turned': { allOver: 1, first: 40, last: 30 },
  'hem-longer-than-piece': { hem: 120, rows: 100 },
  'sections-longer-than-piece': { hem: 20, parts: [{ name: 'rib', rows: 90 }], rows: 100 },
  'shaping-impossible': { changes: 40, rows: 30 },
  'shaping-outside-piece': { row: 300, rows: 240 },
  'shaping-leaves-nothing': { row: 40, taken: 12, before: 10 },
  'shaping-too-wide': { row: 40, needles: 1200, most: 1000 },
  'gauge-absurd': { of: 'rows', count: 400, mm: 1, inTenCm: 40000, least: 1, most: 300 },
  'steps-line-unclear': { line: 'row 12 plus one' },
  'steps-line-divides': { line: 'row 60: -20 in the middle' },
  'steps-row-is-cast-on': { row: 1 },
  'steps-row-twice': { row: 12 },
  'steps-edge-twice': { row: 12, side: 'left' },
  'reading-unknown': { text: 'row 5', last: 140 },
  'counted-elsewhere': { thought: 41, reads: 42 },
  'rows-all-knitted': { last: 140 },
  'no-row-knitted': {},
  'not-ripped-back': { to: 42, reading: 41 },
  'not-at-end': { reading: 41, last: 140 },
  'piece-finished': {},
  'act-unknown': { reading: 41, act: 3 },
  'carriage-not-seen': { reading: 41 },
  'carriage-elsewhere': { reading: 41, seen: 'right', expected: 'left' },
  'order-too-short': { reading: 41, last: 40 },
  'order-unreadable': {},
  'journal-missing': {},
  'journal-not-ours': {},
  'journal-newer': { version: 2, known: 1 },
  'journal-damaged': { line: 12 },
  'not-a-whole-number': { text: '1.5', least: 1, most: 1000 },
  'not-a-number': { text: 'many' },
  'not-a-date': { text: '2026-02-30' },
  'epoch-unusable': { text: 'yesterday', most: 253402300799 },
  'option-unknown': { option: '--colour' },
  'option-value': { option: '--even-out', text: 'eye', allowed: 'figure or blocks' },
  'option-missing': { option: '--stitches' },
  'option-empty': { option: '--stitches' },
  'switch-value': { option: '--whole', text: 'yes' },
  'argument-missing': { argument: 'MOTIF' },
  'argument-unexpected': { text: 'gull.png' },
  'command-unknown': { text: 'knit' },
  'choice-unknown': { given: 9, choices: 8 },
  'colour-unknown': { text: 'mauve', known: '#ffffff, #000000' },
  'picture-unknown-kind': {},
  'picture-empty': {},
  'picture-truncated': { kind: 'PNG' },
  'picture-broken': { kind: 'PNG', damage: 'checksum' },
  'picture-animated': { kind: 'WebP' },
  'svg-too-much': {},
  'svg-unsafe': { danger: 'outside' },
  'picture-interlaced': { width: 6000, height: 4000, mostMegapixels: 16 },
  'picture-too-large': { width: 20000, height: 20000, mostWidth: 1000, mostHeight: 4000 },
  'image-too-large': { width: 70000, height: 10, mostPixels: 268435456, mostSide: 65535 },
  'picture-too-many-colours': { colours: 65, most: 64 },
  'palette-full': { yarns: 66, most: 64 },
  'photo-only-in-window': { kind: 'WebP' },
  'photo-unknown-kind': {},
  'photo-in-passes': { width: 6000, height: 4000, mostMegapixels: 16 },
  'photo-too-large': { width: 20000, height: 20000, mostMegapixels: 100 },
  'corners-unusable': { fault: 'crossed' },
  'corner-outside-picture': { corner: 1, x: -4, y: 10, width: 800, height: 600 },
  'chart-not-found': { why: 'no-cells', width: 800, height: 600 },
  'charts-several': {
    charts: [
      { columns: 12, rows: 8, corners: rectangle(120, 80) },
      { columns: 20, rows: 30, corners: rectangle(200, 300) },
    ],
  },
  'chart-cut-off': { sides: ['left', 'top'] },
  'charts-differ-in-size': { width: 20, height: 24, otherWidth: 22, otherHeight: 30 },
  'charts-meet-nowhere': {},
  'charts-meet-openly': {
    ways: [
      { side: 'above', shared: 6 },
      { side: 'right', shared: 1 },
    ],
  },
  'grid-not-found': { across: true, up: false },
  'one-yarn-only': { by: 'colours' },
  'yarns-open': { by: 'symbols', found: 4 },
  'cells-too-fine': { columns: 900, rows: 900, mostColumns: 400, mostRows: 300, pixels: 1.3, leastPixels: 3 },
  'photo-too-dark': { paper: 20, least: 30 },
  'photo-flat': { contrast: 4, least: 10 },
  'photo-grainy': { noise: 0.1, most: 0.062 },
  'photo-blurred': { blur: 0.3, most: 0.185 },
  'cells-beside-corners': { off: 1.24 },
  'photo-unclear': { doubtful: 300, cells: 720 },
  'yarns-out-of-range': { given: 70, least: 2, most: 64 },
  'crop-outside-picture': { width: 800, height: 600 },
  'project-not-json': { detail: 'Unexpected end' },
  'project-newer': { version: 2, known: 1 },
  'project-invalid': {
    path: 'piece.gauge',
    fault: { code: 'type', facts: { expected: 'number', received: 'string' } },
  },
  'project-not-ours': {},
  'project-not-savable': { path: 'yarns[2].colour', fault: { code: 'pattern', facts: { pattern: '/^#/' } } },
  'motif-too-large': { width: 2000, height: 10, mostWidth: 1000, mostHeight: 4000 },
  'motif-missing': { motif: 'gull' },
  'motif-in-use': {
    motif: 'gull',
    piece: null,
    patterns: [
      { kind: 'band', number: 0 },
      { kind: 'all-over', number: 1 },
      { kind: 'band', number: 2 },
    ],
  },
  'motif-last': {},
  'motifs-too-many': { most: 200 },
  'pieces-too-many': { most: 40 },
  'yarns-too-many-in-motif': { motif: 'gull', yarns: 17, most: 16 },
  'sizes-too-many': { most: 20 },
  'size-last': {},
  'size-name-unusable': { text: ' M', most: 24 },
  'size-name-taken': { name: 'M' },
  'colourways-too-many': { most: 24 },
  'colourway-last': {},
  'colourway-name-unusable': { text: '', most: 80 },
  'colourway-name-taken': { name: 'storm' },
  'colourway-unknown': { given: 'gale', known: ['1', 'storm'] },
  'piece-unknown': { given: 'slevee', known: ['sleeve', 'front'] },
  'options-exclude': { options: ['--piece', '--all-pieces'] },
  'piece-name-taken': { name: 'sleeve' },
  'piece-name-shared': { name: 'sleeve', places: [2, 3] },
  'size-unknown': { given: 'XL', known: ['S', 'M'] },
  'underlays-too-large': { mostMegabytes: 24 },
  'file-missing': {},
  'file-is-folder': {},
  'file-too-large': { bytes: 90_000_000, most: 64_000_000 },
  'file-not-readable': { detail: 'permission denied' },
  'file-changed-elsewhere': {},
  'file-exists': {},
  'file-of-other-kind': {},
  'file-busy': {},
  'file-name-unusable': { text: 'sub/' },
  'path-closed': { why: 'hidden' },
  'files-not-from-here': { names: ['Skerry - chart.png', 'Skerry - rows.csv'] },
  'not-printed': { detail: 'Print job failed' },
  'files-there': { names: ['Skerry - chart.png'] },
  'folder-not-writable': { detail: 'permission denied' },
  'disk-full': {},
  'file-not-written': { detail: 'input/output error' },
  'request-invalid': { method: 'documents.read', wrong: { path: ['path'], fault: { code: 'other', facts: {} } } },
  'request-refused': { detail: 'another origin' },
  'kept-work-unreadable': {},
  'host-busy': {},
  'host-unreachable': {},
  'work-stopped': { work: 'picture', limit: 'time', amount: 5 },
  unexpected: { detail: 'a bug' },
};

describe('what is said of a problem', () => {
  it.each(Object.entries(examples))('%s: what happened, where, and what to do', (code, facts) => {
    const problem = { code, facts, where: 'sleeve.walewright' } as Problem;
    const { what, mend } = words.problems.say(problem);
    for (const sentence of [what, mend]) {
      expect(sentence).toMatch(/^\S.*\.$/);
      expect(sentence).not.toMatch(/undefined|null|NaN|\[object| {2}/);
    }
    expect(words.problems.sentence(problem)).toBe(`sleeve.walewright: ${what} ${mend}`);
  });

  it('names the place once', () => {
    const problem: Problem = { code: 'option-unknown', facts: { option: '--colour' }, where: '--colour' };
    expect(words.problems.sentence(problem)).toMatch(/^--colour is no option here\./);
  });
});

/** Every text of the catalogue that needs no facts, with where it stands. */
function textsOf(node: unknown, path: string): [string, string][] {
  if (typeof node === 'string') return [[path, node]];
  if (typeof node !== 'object' || node === null) return [];
  return Object.entries(node).flatMap(([key, value]) => textsOf(value, `${path}.${key}`));
}

describe('the catalogue', () => {
  it('has no empty or torn text', () => {
    const texts = textsOf(words, 'words');
    expect(texts.length).toBeGreaterThan(100);
    for (const [path, text] of texts) {
      expect(text.trim(), path).not.toBe('');
      expect(text.split('**').length % 2, `marks of ${path}`).toBe(1);
    }
  });
});

describe('a sentence with strong numbers', () => {
  it('is set in segments, and read as plain text without its marks', () => {
    const marked = 'The repeat is **14 stitches × 18 rows**.';
    expect(segments(marked)).toEqual([
      { text: 'The repeat is ', isStrong: false },
      { text: '14 stitches × 18 rows', isStrong: true },
      { text: '.', isStrong: false },
    ]);
    expect(plainText(marked)).toBe('The repeat is 14 stitches × 18 rows.');
  });

  it('may begin or end strong, or be plain', () => {
    expect(segments('**Two** or **three**').map(({ isStrong }) => isStrong)).toEqual([true, false, true]);
    expect(segments('plain')).toEqual([{ text: 'plain', isStrong: false }]);
    expect(segments('')).toEqual([]);
  });
});
