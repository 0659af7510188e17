/** The acts of a piece put in order, reading by reading, and its rows between them. */
import { opposite } from '../../bed/index.ts';
import { ballNumbers } from './ball-numbers.ts';
import { cutBalls, layBalls } from './balls.ts';
import { feedingOf, setPattern, setPlain } from './carriage.ts';
import { castOn, cutCastOn } from './cast-on.ts';
import { firstRowObstacle, isSelecting, setChoices, stopSelecting } from './choosing.ts';
import { finish, hangWeights, moveWeights } from './ends.ts';
import { mendLongFloats } from './floats.ts';
import { checkNeedles, pushNeedles, unseenObstacles } from './forward-needles.ts';
import { hangHem, hemObstacles, makeEyelets, removeWaste } from './hem.ts';
import type { KnittedRow } from './knitted-rows.ts';
import { nextUses } from './next-uses.ts';
import type { Obstacle } from './obstacles.ts';
import { placeObstacles } from './places.ts';
import { castOffAtEdges, shapeEdges, shapingObstacles } from './shaping.ts';
import { setTensions } from './tensions.ts';
import type { Holding, RunningOrder, Stop, Stretch } from './types.ts';
import type { Work } from './work.ts';
import { endStrands, wrapNeedles } from './wraps.ts';

/** All that hands cannot do. */
export function gatherObstacles(work: Work): readonly Obstacle[] {
  return [placeObstacles, firstRowObstacle, hemObstacles, shapingObstacles, unseenObstacles].flatMap((look) =>
    look(work),
  );
}

/** The running order of a piece without obstacles. */
export function makeOrder(work: Work): RunningOrder {
  gatherActs(work);
  return inOrder(work);
}

/** The order of these lines is the order in which hands do it at one reading. */
function gatherActs(work: Work): void {
  const uses = nextUses(work.rows);
  const numbers = ballNumbers(work, uses);
  const { out, into } = feedingOf(work, uses, numbers);
  castOn(work, numbers);
  // What has ended.
  setPlain(work);
  stopSelecting(work);
  for (const [reading, act] of out) work.do(reading, act);
  cutCastOn(work);
  cutBalls(work, uses, numbers);
  endStrands(work);
  mendLongFloats(work, numbers);
  // The hem, then what is cast off.
  hangHem(work);
  removeWaste(work);
  castOffAtEdges(work);
  setTensions(work);
  hangWeights(work);
  // Shaping, and the needles that it leaves to be put right.
  makeEyelets(work);
  shapeEdges(work);
  pushNeedles(work);
  // What comes next.
  setChoices(work);
  setPattern(work);
  for (const [reading, act] of into) work.do(reading, act);
  checkNeedles(work);
  wrapNeedles(work);
  layBalls(work, numbers);
  finish(work);
  moveWeights(work);
}

function inOrder(work: Work): RunningOrder {
  const order: (Stop | Stretch)[] = [];
  for (const row of work.rows) {
    const { from: carriageAt } = row;
    const counter = row.row - 1;
    const acts = work.actsAt(counter);
    const before = order.at(-1);
    if (acts) {
      order.push({ kind: 'stop', id: idOf(counter), counter, row: row.row, carriageAt, acts, ...holding(work, row) });
    } else if (before?.kind === 'stretch') {
      order[order.length - 1] = { ...before, last: row.row };
    } else {
      order.push({ kind: 'stretch', first: row.row, last: row.row, carriageAt, ...holding(work, row) });
    }
  }
  const [last] = work.rows.slice(-1) as [KnittedRow];
  order.push({
    kind: 'stop',
    id: idOf(last.row),
    counter: last.row,
    row: null,
    carriageAt: opposite(last.from),
    acts: work.actsAt(last.row) ?? [],
    needles: last.edges,
    carriage: 'plain',
    isSelecting: false,
    feeders: { 1: null, 2: null },
  });
  return order;
}

function idOf(counter: number): string {
  return `at-${counter}`;
}

function holding(work: Work, { row, edges, carriage, first, second }: KnittedRow): Holding {
  return {
    needles: edges,
    carriage,
    isSelecting: isSelecting(work, row),
    feeders: { 1: first?.yarn ?? null, 2: second?.yarn ?? null },
  };
}
