/** Commands that choose a group of the piece and move it needle by needle and row by row. */
import { isMirroredOnNeedles } from '@shared/bed/index.ts';
import type { PlacedGroup } from '@shared/fabric/index.ts';
import { words } from '@shared/words/index.ts';
import { actionsFor, unless, type ActionsOf } from '../../commands/command.ts';
import { gestureOfPress } from '../../commands/keyboard.ts';
import type { Session } from '../../session/session.ts';
import { plannedOf } from '../planned.ts';
import { freeNeedles, keepNeedles, ruleOf, whyNotFree, whyNotKeep } from './keep.ts';
import { readingOf } from './reading.ts';
import { sayReading } from './say.ts';
import {
  changeTo,
  groundOf,
  isSameStanding,
  raised,
  standingOf,
  walk,
  type Ground,
  type Standing,
} from './standing.ts';

/** A group by its band and its number in it, both from 0. */
export interface GroupSpot {
  readonly band: number;
  readonly group: number;
}

/** What the commands need of the bench: the group that is chosen. */
export interface Chosen {
  group: GroupSpot | null;
  /** The band in the form. */
  readonly band: number;
  /** The piece is shown closed, which is as worn. */
  readonly seenAs: 'flat' | 'closed' | 'purl';
}

/** Needles to the right as shown, and rows up. */
const STEPS = { left: [-1, 0], right: [1, 0], up: [0, 1], down: [0, -1] } satisfies {
  readonly [Way in string]: [number, number];
};

/** The groups of the piece, band by band. */
export function groupSpots(groups: readonly PlacedGroup[]): GroupSpot[] {
  return groups.map(({ band }, index) => ({
    band,
    group: index - groups.findIndex((other) => other.band === band),
  }));
}

/** The placed group that is chosen; null once it is gone. */
export function chosenOf(groups: readonly PlacedGroup[], spot: GroupSpot | null): PlacedGroup | null {
  return groups.filter(({ band }) => band === spot?.band)[spot?.group ?? 0] ?? null;
}

export function groupActions(session: Session, chosen: Chosen): ActionsOf<'groups'> {
  const gestureOf = gestureOfPress('move-group');
  const hasGroups = (): boolean => plannedOf(session.current).plan.groups.length > 0;
  const noGroups = unless(hasGroups, words.whyNot.noGroups);
  const isChosen = (): boolean => chosenOf(plannedOf(session.current).plan.groups, chosen.group) !== null;
  const noneChosen = (): string | null => noGroups() ?? (isChosen() ? null : words.whyNot.noGroupChosen);

  function choose(step: 1 | -1): void {
    const { plan } = plannedOf(session.current);
    const spots = groupSpots(plan.groups);
    const now = spots.findIndex(({ band, group }) => band === chosen.group?.band && group === chosen.group.group);
    const next = now < 0 ? (step > 0 ? 0 : spots.length - 1) : (now + step + spots.length) % spots.length;
    const spot = spots[next];
    if (!spot) return;
    chosen.group = spot;
    session.announce(sayReading(readingOf(plan, spot.band, spot.group, standingOf(plan, spot.band))));
  }

  function go(isHeld: boolean, to: (ground: Ground, from: Standing, group: number) => ReturnType<typeof walk>): void {
    const gesture = gestureOf(isHeld);
    const spot = chosen.group;
    if (!spot || !isChosen()) return;
    const { current: project } = session;
    const { plan } = plannedOf(project);
    const from = standingOf(plan, spot.band);
    const ground = groundOf(plan, spot.band);
    const { standing, stop } = to(ground, from, spot.group);
    if (!isSameStanding(from, standing)) {
      session.change(changeTo(project, spot.band, ground, standing, from), `${gesture}-of-${spot.band}`);
    }
    session.announce(sayReading(readingOf(plan, spot.band, spot.group, standing), stop));
  }

  /** `needles` to the right as shown, `rows` up. */
  function move(needles: number, rows: number, isHeld: boolean): void {
    const shown = { flat: session.view.pieceShows, closed: 'worn', purl: 'needles' } as const;
    const isTurned = isMirroredOnNeedles(shown[chosen.seenAs], session.current.piece.finishedFace);
    go(isHeld, (ground, from, group) =>
      walk(ground, from, group, {
        first: (from.first[group] as number) + (isTurned ? -needles : needles),
        firstRow: from.firstRow + rows,
      }),
    );
  }

  return {
    'group-next': { whyNot: noGroups, run: () => choose(1) },
    'group-before': { whyNot: noGroups, run: () => choose(-1) },
    ...actionsFor(
      ['left', 'right', 'up', 'down'],
      (way) => `group-${way}` as const,
      (way) => ({ whyNot: noneChosen, run: (isHeld = false) => move(...STEPS[way], isHeld) }),
    ),
    ...actionsFor(
      ['raise', 'lower'],
      (way) => `group-${way}` as const,
      (way) => ({
        whyNot: noneChosen,
        run: (isHeld = false) =>
          go(isHeld, (ground, from, group) => raised(ground, from, group, way === 'raise' ? 1 : -1)),
      }),
    ),
    'keep-needles': {
      whyNot: () => whyNotKeep(session.current, chosen.band),
      run: () => keepNeedles(session, chosen.band),
    },
    'free-needles': {
      label: () => {
        const rule = ruleOf(session.current, chosen.band);
        return words.commands['free-needles'](rule && words.placement.rules[rule.kind].name);
      },
      whyNot: () => whyNotFree(session.current, chosen.band),
      run: () => freeNeedles(session, chosen.band),
    },
  };
}
