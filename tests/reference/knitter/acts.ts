/** What hands do for each act. Each refuses what cannot be done. */
import { each, labelOf, type Side, type Span } from './needles.ts';
import { OpenStart } from './open-start.ts';
import type { Act, ActName, ActOf } from './order.ts';
import { refuse } from './refusal.ts';
import { floatsBehind, liesBehind } from './row.ts';
import type { Workplace } from './workplace.ts';

type Hands = { readonly [Name in ActName]: (place: Workplace, act: ActOf<Name>) => void };

export const HANDS: Hands = {
  'cast-on': castOn,
  counter: (place, { reading }) => {
    place.counter = reading;
  },
  tension: (place, { part, section, text }) => {
    place.tension = { part, text, ...(section ? { section } : {}) };
  },
  thread: ({ yarns, counter }, { feeder, yarn, ball }) => yarns.thread(feeder, yarn, ball ?? null, counter),
  unthread: (place, { feeder, yarn, ball, waitsAt, mm }) => {
    const { bed, side, yarns, counter } = place;
    const edge = bed.isEmpty ? null : bed.edges[side === 'left' ? 0 : 1];
    yarns.unthread(feeder, { yarn, ball: ball ?? null }, waitsAt, { edge, reading: counter, tailMm: mm ?? null });
  },
  carriage: (place, { set }) => {
    place.carriage = set;
  },
  selecting: (place, { on }) => {
    place.choosing.select(on);
    chooseFirstRow(place);
  },
  'end-needles': (place, { on }) => {
    place.choosing.setEndNeedles(on);
    chooseFirstRow(place);
  },
  'first-needles': (place, act) => {
    place.choosing.set(act);
    chooseFirstRow(place);
  },
  increase: (place, { edge, needles }) => {
    mayShape(place);
    if (place.machine.increases === 'carriage-side' && edge !== place.side) {
      refuse(`this machine increases at the carriage's side, which is the ${place.side}`);
    }
    const [needle] = one(needles);
    place.bed.widen(edge, [needle, needle], { of: 'increase', yarn: place.yarns.in(1) ?? '' });
    place.fresh.add(needle);
  },
  decrease: (place, { edge, needles }) => {
    mayShape(place);
    const [needle] = one(needles);
    place.bed.decrease(edge, needle);
  },
  'cast-off': (place, { edge, needles }) => {
    mayShape(place);
    atCarriage(place, edge, 'cast off');
    place.bed.castOff(edge, needles);
  },
  'cast-on-more': (place, { edge, needles }) => {
    mayShape(place);
    atCarriage(place, edge, 'cast on');
    place.bed.widen(edge, needles, { of: 'cast-on', yarn: place.yarns.in(1) ?? '' });
    for (const needle of each(needles)) place.fresh.add(needle);
  },
  eyelets: (place, { needles }) => {
    mayShape(place);
    for (const needle of needles) place.bed.empty(needle, needles);
    place.notes.eyelets.push({ row: place.counter + 1, needles: needles.map(labelOf) });
  },
  'push-forward': (place, { needles }) => {
    push(place, needles, 'push-forward');
    // Needles chosen by hand are chosen; what a machine did above a pattern's end is not known for that.
    if (place.choice === 'none') place.choice = 'made';
  },
  'push-back': (place, { needles }) => push(place, needles, 'push-back'),
  wrap,
  strand: ({ strands, counter }, { id, at, mm }) => {
    if (at === 'start') strands.start(id, counter, mm ?? null);
    else strands.end(id, counter);
  },
  lay: (place, { ball, yarn, needles, crosses }) => {
    if (place.machine.chooses === 'ahead-unseen') refuse('no needle stands forward to lay a yarn into its hook');
    const { bed, yarns, strands, counter } = place;
    if (yarns.in(2) !== null) refuse(`feeder 2 holds ${yarns.in(2)}: its yarn would go into the same hooks`);
    const hooks = needles.flatMap(each);
    const back = hooks.find((needle) => !bed.isForward(needle));
    if (back !== undefined) refuse(`${labelOf(back)} does not stand forward`);
    yarns.layFrom(ball, yarn, counter);
    strands.lay(ball, yarn, hooks, crosses);
  },
  cut: ({ yarns, strands, counter }, { ball, yarn }) => {
    if (ball === null) return yarns.cutWaiting(yarn, counter);
    if (strands.isLaid(ball)) refuse(`ball ${ball} lies in the hooks of the coming row`);
    yarns.cutBall(ball, yarn, counter);
  },
  'hang-hem': hangHem,
  'remove-waste': ({ open }) => (open ?? refuse('there is no waste yarn')).removeWaste(),
  'hook-up': hookUp,
  'latch-up': latchUp,
  weights: (place, { do: what }) => {
    if (!place.machine.weights) refuse('this machine has no weights');
    const shouldHang = what !== 'hang';
    if (place.hasWeights !== shouldHang) refuse(shouldHang ? 'no weights hang' : 'the weights hang already');
    place.hasWeights = what !== 'off';
  },
  check: (place, { forward, first, last }) => {
    if (place.machine.chooses === 'ahead-unseen') refuse('which needles are chosen cannot be seen on this machine');
    if (place.choice === 'unknown') refuse('the pattern has ended: nobody knows which needles stand forward');
    // The outermost of them, or the needles among which they are counted: both are read.
    const counted = place.bed.forward.filter((needle) => needle >= (first ?? needle) && needle <= (last ?? needle));
    if (counted.length !== forward) refuse(`${counted.length} needles stand forward, not ${forward}`);
  },
  finish: (place, act) => {
    const { bed, side, yarns, counter, notes } = place;
    const start = bed.edges[side === 'left' ? 0 : 1];
    if (act.startsAt !== side && act.startsAt !== start) refuse(`the carriage and its yarn stand at the ${side}`);
    bed.takeOff(act.needles);
    yarns.finishWith(counter, act.how === 'cast-off' ? (act.mm ?? 0) : null);
    place.isFinished = true;
    notes.finish.push(act);
  },
};

/** Does an act, whichever it is. */
export function perform(place: Workplace, act: Act): void {
  (HANDS[act.act] as (place: Workplace, act: Act) => void)(place, act);
}

function castOn(place: Workplace, { needles, yarn, ball, how, wasteRows }: ActOf<'cast-on'>): void {
  if (!place.hasNothingCastOn) refuse('the piece has been cast on');
  const { bed, yarns } = place;
  bed.castOn(needles, yarn);
  place.start = how;
  if (how === 'open') {
    if (yarns.in(1) !== null) refuse(`feeder 1 holds ${yarns.in(1)}, and the waste yarn goes there first`);
    const rows = wasteRows ?? 0;
    if (rows < 1) refuse('an open start needs rows of waste yarn');
    // The first of them leaves the side from which the last one ends where the piece starts.
    place.counter += rows;
    place.open = new OpenStart(needles);
  } else if (how === 'closed') yarns.castOn(yarn, ball ?? null, place.counter);
}

/**
 * The last pass of the waste yarn chooses the first row of the piece, if all
 * is set by then: these acts are told at the reading where that row begins,
 * so what is set there last counts.
 */
function chooseFirstRow(place: Workplace): void {
  const isAtStart = place.notes.fabric.length === 0 && place.start === 'open';
  if (!isAtStart || !place.choosing.startsWithPattern) return;
  for (const needle of place.bed.forward) place.bed.push(needle, 'work');
  place.choice = place.choosing.choose(1, place.bed);
}

function one(needles: readonly number[]): [number] {
  const [needle, ...more] = needles as [number];
  if (more.length > 0) refuse('one stitch is shaped at an edge at a time: more are cast on or off');
  return [needle];
}

function mayShape({ isJoining }: Workplace): void {
  if (isJoining) refuse('the row that joins the hem is not shaped');
}

function atCarriage({ side }: Workplace, edge: Side, what: string): void {
  if (edge !== side) refuse(`the carriage and its yarn stand at the ${side}: stitches are ${what} there`);
}

function push(
  { machine, bed, notes, counter }: Workplace,
  needles: readonly number[],
  act: 'push-forward' | 'push-back',
): void {
  if (machine.chooses === 'ahead-unseen') refuse('no needle can be pushed on this machine');
  const away = needles.find((needle) => !bed.isInWork(needle));
  if (away !== undefined) refuse(`${labelOf(away)} is not in work`);
  const isForward = act === 'push-forward';
  if (needles.every((needle) => bed.isForward(needle) === isForward)) notes.needless.push({ reading: counter, act });
  for (const needle of needles) bed.push(needle, isForward ? 'forward' : 'work');
}

function wrap(place: Workplace, { needle, edge, yarn, strand }: ActOf<'wrap'>): void {
  const { bed, strands, side, notes, counter } = place;
  const name = labelOf(needle);
  if (edge !== side) refuse(`the carriage stands at the ${side}, and only that side is wrapped`);
  if (place.choice !== 'made') refuse('no needles have been chosen for the coming row');
  if (!bed.isInWork(needle)) refuse(`${name} is not in work`);
  if (place.fresh.has(needle)) refuse(`${name} came into work for this row`);
  if (bed.isForward(needle)) refuse(`${name} stands forward`);
  const inward = edge === 'left' ? needle + 1 : needle - 1;
  if (!bed.isForward(inward)) refuse(`${name} is not beside the figure: ${labelOf(inward)} does not stand forward`);
  strands.wrap(strand, yarn, { row: counter + 1, needle, edge });
  notes.wraps.push({ row: counter + 1, needle: name, yarn, strand });
}

function hangHem(place: Workplace, { needles, loops, edgeLoop }: ActOf<'hang-hem'>): void {
  const { bed, open, counter, notes } = place;
  if (!open) refuse('the start is not open: it has no loops to hang');
  if (place.hasWeights) refuse('the weights still pull the hem down');
  const [first, last]: Span = bed.edges;
  if (needles[0] !== first || needles[1] !== last) {
    refuse(`the stitches are on ${labelOf(first)}–${labelOf(last)}, not on ${needles.map(labelOf).join('–')}`);
  }
  if (counter === 0) refuse('nothing has been knitted that could be folded');
  const hung = open.hang(needles, loops, edgeLoop);
  for (const needle of each(needles)) bed.hang(needle, { of: 'hem', yarn: '' });
  place.isJoining = true;
  notes.hem.push({ reading: counter, loops: hung });
}

function hookUp(place: Workplace, { needle, yarn, float }: ActOf<'hook-up'>): void {
  const { bed, yarns, notes, counter } = place;
  const name = labelOf(needle);
  if (!liesBehind(place, yarn, float)) refuse(`no float of ${yarn} lies behind ${float.map(labelOf).join('–')}`);
  if (needle < float[0] || needle > float[1]) refuse(`${name} is not above the float`);
  if (!bed.isInWork(needle)) refuse(`${name} is not in work`);
  if (bed.holds(needle, 'float')) refuse(`a float hangs on ${name} already`);
  bed.hang(needle, { of: 'float', yarn });
  yarns.hook(yarn, counter, needle, float);
  notes.hooked.push({ row: counter, needle: name, yarn });
}

/** Floats taken through each other, from the lowest up, and the last hung where it is knitted in its own yarn next. */
function latchUp(place: Workplace, { needle, yarn, ball: told, rows }: ActOf<'latch-up'>): void {
  const { bed, yarns, notes, counter } = place;
  const name = labelOf(needle);
  const ball = told ?? null;
  const [first, last] = rows;
  if (first > last) refuse(`rows ${first}–${last} are none`);
  if (last !== counter) refuse(`row ${last} is not the one just knitted: its float cannot be hung`);
  for (let row = first; row <= last; row++) {
    if (!floatsBehind(place.rows[row - 1], { yarn, ball }, needle))
      refuse(`no float of ${yarn} lies behind ${name} on row ${row}`);
    const isIn = notes.latched.some(
      (chain) =>
        chain.yarn === yarn &&
        (chain.ball === ball || chain.ball === null || ball === null) &&
        chain.needle === name &&
        row <= chain.rows[1] &&
        row >= chain.rows[0],
    );
    if (isIn) refuse(`the float of ${yarn} behind ${name} on row ${row} is in a chain already`);
  }
  if (!bed.isInWork(needle)) refuse(`${name} is not in work`);
  if (bed.holds(needle, 'float')) refuse(`a float hangs on ${name} already`);
  bed.hang(needle, { of: 'float', yarn });
  place.chained.set(needle, yarn);
  for (let row = first; row <= last; row++) yarns.lift(yarn, ball, row, needle);
  notes.latched.push({ rows: [first, last], needle: name, yarn, ball });
}
