/**
 * What a knitter is told to do, sentence by sentence: each becomes an act. It
 * shares nothing with the words that the program says; a sentence that it does
 * not know is an error.
 */
import { each, labelOf, positionOf } from '../knitter/needles.ts';

type SpanJson = [string, string];

/** What `plan --json` says of an act. */
export type ReadAct = Readonly<Record<string, unknown>> & { readonly act: string };

const NEEDLE = '[LR][1-9]\\d*';
const SPAN = `(?:${NEEDLE})(?:–(?:${NEEDLE}))?`;
const EVERY = `every (?:\\d+)(?:st|nd|rd|th) needle from (?:${NEEDLE}) to (?:${NEEDLE})`;
const SPANS = `(?:${SPAN}(?:, ${SPAN})*|${EVERY})`;
const STEPS = new RegExp(`^every (\\d+)\\w\\w needle from (${NEEDLE}) to (${NEEDLE})$`);

function span(text: string): SpanJson {
  const [first = '', last = first] = text.split('–');
  return [first, last];
}

function spans(text: string): SpanJson[] {
  return text.split(', ').map(span);
}

/** `L5–L3, R1`, `every 2nd needle from L9 to R10`: each of them. */
export function labels(text: string): string[] {
  const [, every = '', first = '', last = ''] = STEPS.exec(text) ?? [];
  if (every !== '') {
    const [from, to] = [positionOf(first), positionOf(last)];
    const step = Number(every);
    return Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, at) => labelOf(from + at * step));
  }
  return spans(text).flatMap(([first, last]) => each([positionOf(first), positionOf(last)]).map(labelOf));
}

/** The count that is said beside the needles has to be theirs. */
function counted(count: string, on: string): string[] {
  const found = labels(on);
  if (found.length !== Number(count)) throw new Error(`${on} are ${found.length}, not ${count}`);
  return found;
}

function stitches(count: string, on: string): SpanJson {
  counted(count, on);
  return span(on);
}

const NO_WASTE = { wasteRows: 0, wasteTension: '' };

const isOn = (word: string): boolean => word === 'on';
const millimetres = (cm: string | undefined): number | null => (cm === undefined ? null : Number(cm) * 10);
const edgeOf = (word: string): 'left' | 'right' => (word === 'left' ? 'left' : 'right');
const feederOf = (word: string): 1 | 2 => (word === '1' ? 1 : 2);

/** Patterns are told as people call them. */
function patternId(called: string): string {
  const one = (text: string): string => text.replace('pattern band ', 'band-').replace('all-over ', 'fill-');
  return called.split(' with ').map(one).join('+');
}

/** The rows that a tension belongs to, and what is said where nobody wrote a number. */
const PARTS: Readonly<Record<string, readonly [part: string, unwritten: string]>> = {
  'the main part': ['main', 'as in your swatch'],
  'the facing': ['facing', 'tighter'],
  'the turning row': ['turningRow', 'looser'],
  'the outside of the hem': ['outside', 'as in your swatch'],
  'the joining row': ['joiningRow', 'looser'],
  'the pattern': ['pattern', 'as in your swatch'],
  'the last row': ['lastRow', 'loosest'],
};

function tension(said: string): ReadAct {
  for (const [called, [part, unwritten]] of Object.entries(PARTS)) {
    if (said === `${called}, ${unwritten}`) return { act: 'tension', part, section: null, text: '' };
    if (said.startsWith(`${called} to `)) {
      return { act: 'tension', part, section: null, text: said.slice(called.length + 4) };
    }
  }
  const [, section = '', text = ''] = /^the section (.+?)(?: to (.+)|, as in your swatch)$/.exec(said) ?? [];
  return { act: 'tension', part: 'section', section, text };
}

function groups(text: string) {
  const starts = [...text.matchAll(new RegExp(`(?:^|; )(${NEEDLE}) to (${NEEDLE}), ([\\d.]+) cop(?:y|ies) of `, 'g'))];
  return starts.map((start, index) => {
    const [whole, needle = '', last = '', copies] = start;
    const rest = text.slice(start.index + whole.length, starts[index + 1]?.index ?? text.length);
    const mirrored = rest.endsWith(', mirrored');
    return { needle, last, motif: mirrored ? rest.slice(0, -10) : rest, copies: Number(copies), mirrored };
  });
}

/** `chalk`, or `ball 2, chalk,` of one that is laid by hand on other rows. */
function supply(called: string): { readonly yarn: string; readonly ball: number | null } {
  const [, ball, yarn = called] = /^ball (\d+), (.+),$/.exec(called) ?? [];
  return { yarn, ball: ball === undefined ? null : Number(ball) };
}

const START = `, starting at the (left|right)(?:: it takes (\\d+) cm of yarn)?`;

type Reading = (...parts: string[]) => ReadAct;

const SENTENCES: readonly (readonly [pattern: string, reading: Reading])[] = [
  [
    `Cast on (\\d+) stitch(?:es)?, (${SPAN}), closed, (?:in|from ball (\\d+),) (.+)`,
    (count, on, ball, yarn) => ({
      act: 'cast-on',
      needles: stitches(count, on),
      yarn,
      ...(ball === undefined ? {} : { ball: Number(ball) }),
      how: 'closed',
      ...NO_WASTE,
    }),
  ],
  [
    `Pick up (\\d+) stitch(?:es)?, (${SPAN}), in (.+)`,
    (count, on, yarn) => ({ act: 'cast-on', needles: stitches(count, on), yarn, how: 'picked-up', ...NO_WASTE }),
  ],
  [
    `Cast on (\\d+) stitch(?:es)?, (${SPAN}), open: (\\d+) rows? of waste yarn(?: at tension (.+))? and the ravel cord, then go on in (.+)`,
    (count, on, rows, wasteTension = '', yarn) => ({
      act: 'cast-on',
      needles: stitches(count, on),
      yarn,
      how: 'open',
      wasteRows: Number(rows),
      wasteTension,
    }),
  ],
  ['Set the row counter to (\\d+)', (reading) => ({ act: 'counter', reading: Number(reading) })],
  ['Set the tension for (.+)', tension],
  [
    'Thread (.+) into feeder ([12])',
    (called, feeder) => ({ act: 'thread', feeder: feederOf(feeder), ...supply(called) }),
  ],
  [
    'Take (.+) out of feeder ([12]) and cut it, leaving a tail of (\\d+) cm',
    (called, feeder, cm) => ({
      act: 'unthread',
      feeder: feederOf(feeder),
      ...supply(called),
      waitsAt: 'cut',
      mm: Number(cm) * 10,
    }),
  ],
  [
    `Take (.+) out of feeder ([12]) and let it wait at (${NEEDLE})`,
    (called, feeder, waitsAt) => ({ act: 'unthread', feeder: feederOf(feeder), ...supply(called), waitsAt, mm: null }),
  ],
  ['Set the carriage to knit plain', () => ({ act: 'carriage', set: 'plain' })],
  ['Set the carriage to knit the pattern', () => ({ act: 'carriage', set: 'pattern' })],
  ['Switch needle selection (on|off)', (on) => ({ act: 'selecting', on: isOn(on) })],
  ['Switch end-needle selection (on|off)', (on) => ({ act: 'end-needles', on: isOn(on) })],
  [
    `Set ([^:]+) for row (\\d+): (${NEEDLE} to .+)`,
    (called, row, said) => ({
      act: 'first-needles',
      pattern: patternId(called),
      row: Number(row),
      groups: groups(said),
    }),
  ],
  [
    `Increase (\\d+) stitch(?:es)? at the (left|right) edge: (${SPANS})`,
    (count, edge, on) => ({ act: 'increase', edge: edgeOf(edge), needles: counted(count, on) }),
  ],
  [
    `Decrease (\\d+) stitch(?:es)? at the (left|right) edge: (${SPANS})`,
    (count, edge, on) => ({ act: 'decrease', edge: edgeOf(edge), needles: counted(count, on) }),
  ],
  [
    `Cast off (\\d+) stitch(?:es)?, (${SPAN}), at the (left|right) edge`,
    (count, on, edge) => ({ act: 'cast-off', edge: edgeOf(edge), needles: stitches(count, on) }),
  ],
  [
    `Cast on (\\d+) stitch(?:es)?, (${SPAN}), at the (left|right) edge`,
    (count, on, edge) => ({ act: 'cast-on-more', edge: edgeOf(edge), needles: stitches(count, on) }),
  ],
  [`Push (\\d+) needles? forward: (${SPANS})`, (count, on) => ({ act: 'push-forward', needles: counted(count, on) })],
  [
    `Make (\\d+) eyelets?, each loop moved onto its left neighbour and its needle left in work: (${SPANS})`,
    (count, on) => ({ act: 'eyelets', needles: counted(count, on) }),
  ],
  [`Put (\\d+) needles? back: (${SPANS})`, (count, on) => ({ act: 'push-back', needles: counted(count, on) })],
  [
    `Wrap (${NEEDLE}) at the (left|right) edge of the figure with strand (\\d+) of (.+)`,
    (needle, edge, strand, yarn) => ({ act: 'wrap', needle, edge: edgeOf(edge), strand: Number(strand), yarn }),
  ],
  [
    'Take up strand (\\d+), cut to (\\d+) cm',
    (id, cm) => ({ act: 'strand', id: Number(id), at: 'start', mm: millimetres(cm) }),
  ],
  [
    'Strand (\\d+), (\\d+) cm, ends: work it in',
    (id, cm) => ({ act: 'strand', id: Number(id), at: 'end', mm: millimetres(cm) }),
  ],
  [
    `Lay ball (\\d+), (.+), into the hooks of (${SPANS})(?:, its yarn crossed with that of (ball \\d+(?: and ball \\d+)?))?`,
    (ball, yarn, on, others = '') => ({
      act: 'lay',
      ball: Number(ball),
      yarn,
      needles: spans(on),
      crosses: [...others.matchAll(/\d+/g)].map(Number),
    }),
  ],
  [
    'Cut ball (\\d+), (.+), leaving a tail of (\\d+) cm',
    (ball, yarn, cm) => ({ act: 'cut', ball: Number(ball), yarn, mm: Number(cm) * 10 }),
  ],
  [
    'Cut the yarn of the cast-on, (.+), leaving a tail of (\\d+) cm',
    (yarn, cm) => ({ act: 'cut', ball: null, yarn, mm: Number(cm) * 10 }),
  ],
  [
    `Hang the hem on (${SPAN}): (\\d+) loops?, one to a needle, with the half loop at the (left|right) edge`,
    (on, loops, edge) => ({ act: 'hang-hem', needles: span(on), loops: Number(loops), edgeLoop: edgeOf(edge) }),
  ],
  ['Pull out the ravel cord and take off the waste yarn', () => ({ act: 'remove-waste' })],
  [
    `Hook the float of (.+) behind (${SPAN}) up onto (${NEEDLE})`,
    (yarn, float, needle) => ({ act: 'hook-up', needle, yarn, float: span(float) }),
  ],
  [
    `Latch up the floats of (.+) behind (${NEEDLE}) of rows? (\\d+)(?:–(\\d+))? into a chain, no tighter than the fabric, and hang its last loop on (${NEEDLE})`,
    (called, needle, first, last = first) => {
      const { yarn, ball } = supply(called);
      return { act: 'latch-up', needle, yarn, ...(ball === null ? {} : { ball }), rows: [Number(first), Number(last)] };
    },
  ],
  ['Hang the weights', () => ({ act: 'weights', do: 'hang' })],
  ['Move the weights up', () => ({ act: 'weights', do: 'move' })],
  ['Take the weights off', () => ({ act: 'weights', do: 'off' })],
  [
    `Check that (\\d+) needles? stands? forward, from (${NEEDLE}) to (${NEEDLE})`,
    (forward, first, last) => ({ act: 'check', forward: Number(forward), first, last }),
  ],
  [
    `Cast off all (\\d+) stitch(?:es)?, (${SPAN})${START}`,
    (count, on, startsAt, cm) => ({
      act: 'finish',
      how: 'cast-off',
      needles: stitches(count, on),
      startsAt,
      mm: millimetres(cm),
    }),
  ],
  [
    `Knit all (\\d+) stitch(?:es)?, (${SPAN}), off on waste yarn${START}`,
    (count, on, startsAt, cm) => ({
      act: 'finish',
      how: 'waste-yarn',
      needles: stitches(count, on),
      startsAt,
      mm: millimetres(cm),
    }),
  ],
  [
    `Take all (\\d+) stitch(?:es)?, (${SPAN}), off on a thread${START}`,
    (count, on, startsAt, cm) => ({
      act: 'finish',
      how: 'on-a-thread',
      needles: stitches(count, on),
      startsAt,
      mm: millimetres(cm),
    }),
  ],
];

const READERS = SENTENCES.map(([pattern, reading]) => [new RegExp(`^${pattern}\\.$`, 'u'), reading] as const);

/** The act that a sentence tells. Throws for a sentence that tells none, or more than one. */
export function actRead(sentence: string): ReadAct {
  const found = READERS.flatMap(([pattern, reading]) => {
    const match = pattern.exec(sentence);
    return match ? [reading(...(match.slice(1) as string[]))] : [];
  });
  if (found.length !== 1) throw new Error(`${found.length} ways to read: ${sentence}`);
  return found[0] as ReadAct;
}
