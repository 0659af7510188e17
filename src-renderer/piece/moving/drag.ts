/** A group that is dragged: taken by the pointer, moved from needle to needle, and put down. */
import type { Plan } from '@shared/plan/index.ts';
import type { ProjectAt } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import type { OnChange } from '../../session/callbacks.ts';
import type { Held, Point } from '../../canvas/index.ts';
import type { LaidView } from '../drawing/laid-view.ts';
import type { StitchSpot } from '../stitch-spot.ts';
import { groupSpots, type GroupSpot } from './actions.ts';
import { readingOf, type Reading } from './reading.ts';
import { sayReading } from './say.ts';
import type { Announcer } from '../../session/announcer.ts';
import { changeTo, groundOf, isSameStanding, standingOf, walk } from './standing.ts';

/** Where the hand leaves what it does. */
export interface Table {
  group: GroupSpot | null;
  spot: StitchSpot | null;
  dragged: Reading | null;
}

export interface Taking {
  /** As it is now: it may be undone or another one under the hand. */
  readonly project: () => ProjectAt;
  readonly table: Table;
  readonly plan: Plan;
  /** The view as it is now; it may scroll under the hand. */
  readonly view: () => LaidView;
  /** Said while it moves, no oftener than can be heard. */
  readonly say: Announcer;
  readonly onchange: OnChange;
}

/**
 * Takes a group by its number in the plan, where the pointer has pressed it;
 * null if there is none. Nothing of the project changes until it is put down;
 * Escape leaves all as it was.
 */
export function takeGroup(
  number: number,
  at: Point,
  { project: now, table, plan, view, say, onchange }: Taking,
): Held | null {
  const spot = view().spotAt(at);
  const placeOf = (point: Point): Place => placeIn(view(), spot.row, point);
  const place = placeOf(at);
  const taken = groupSpots(plan.groups)[number];
  if (!taken) return null;
  const { band, group } = taken;
  const ground = groundOf(plan, band);
  const start = standingOf(plan, band);
  const project = now();
  let standing = start;
  let isOver = false;

  const finish = (): void => {
    isOver = true;
    table.dragged = null;
    window.removeEventListener('keydown', onKey, true);
  };
  const giveUp = (): void => {
    const wasDragged = table.dragged !== null;
    finish();
    if (wasDragged) say(words.moving.givenUp);
  };
  const onKey = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape') return;
    event.preventDefault();
    event.stopPropagation();
    giveUp();
  };
  window.addEventListener('keydown', onKey, true);

  return {
    move(points) {
      const to = points.at(-1);
      if (isOver || !to) return;
      // Undone or opened under the hand: what it holds is no longer there.
      if (now() !== project) return giveUp();
      const there = placeOf(to);
      const walked = walk(ground, standing, group, {
        first: (start.first[group] as number) + Math.round(there.needles - place.needles),
        firstRow: start.firstRow + Math.round(there.rows - place.rows),
      });
      if (table.dragged && isSameStanding(standing, walked.standing) && walked.stop === null) return;
      standing = walked.standing;
      table.dragged = readingOf(plan, band, group, standing);
      // The line at the foot shows it under the pointer.
      say(sayReading(table.dragged, walked.stop), 'heard');
    },
    end() {
      if (isOver) return;
      finish();
      table.group = taken;
      if (isSameStanding(start, standing)) table.spot = spot;
      else if (now() === project) onchange(changeTo(project, band, ground, standing, start));
    },
    giveUp,
  };
}

/** In needles and rows, with fractions. */
interface Place {
  readonly needles: number;
  readonly rows: number;
}

/**
 * The place of a pixel: the row is the one that is there, whatever its gauge;
 * needles are counted as on the row that the group was taken on, so that it
 * keeps its needles as it goes straight up or down to stitches of another width.
 */
function placeIn(laid: LaidView, taken: number, { x, y }: Point): Place {
  const across = laid.at(taken);
  const up = laid.partAtHeight(y).view;
  return { needles: (x - across.x) / across.cellWidth, rows: (up.y - y) / up.cellHeight };
}
