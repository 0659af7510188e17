/** Commands that forbid an anchor on the stitch that is looked at, or put one there. */
import { chartCellAt, sayingOf, type ChartCell } from '@shared/anchors/index.ts';
import type { Slot } from '@shared/bed/index.ts';
import {
  MOST_ANCHORS_BY_HAND,
  namesOf,
  type AnchorByHand,
  type AnchorWish,
  type PatternName,
} from '@shared/pattern/index.ts';
import { changeOf, setPattern } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import type { ActionsOf } from '../../commands/command.ts';
import type { Session } from '../../session/session.ts';
import { plannedOf } from '../planned.ts';
import type { StitchSpot } from '../stitch-spot.ts';

/** What the commands need of the bench: the stitch that is looked at. */
export interface Spotted {
  readonly spot: StitchSpot | null;
}

interface Meant {
  readonly name: PatternName;
  readonly wish: AnchorWish;
  readonly cell: ChartCell;
  readonly row: number;
  readonly needle: Slot;
}

/** The cell that the stitch is on the chart of its pattern, where that wishes for anchors. */
function meantBy(session: Session, { spot }: Spotted): Meant | null {
  const { current } = session;
  const { plan } = plannedOf(current);
  if (!spot) return null;
  const names = namesOf(current.patterns);
  for (const [index, placed] of plan.patterns.entries()) {
    const wish = current.patterns[index]?.anchors;
    const name = names[index];
    if (!wish || !name || spot.row < placed.firstRow || spot.row > placed.lastRow) continue;
    const needle = spot.needle as Slot;
    const cell = chartCellAt(placed, plan.outline, spot.row, needle);
    if (cell) return { name, wish, cell, row: spot.row, needle };
  }
  return null;
}

export function anchorActions(session: Session, spotted: Spotted): ActionsOf<'anchors'> {
  const whyNot = (): string | null => {
    const meant = meantBy(session, spotted);
    if (!meant) return words.whyNot.noAnchors;
    return meant.wish.byHand.length >= MOST_ANCHORS_BY_HAND ? words.whyNot.mostAnchors : null;
  };
  const say = (is: AnchorByHand['is']): void => {
    const meant = meantBy(session, spotted);
    if (!meant) return;
    const { name, wish, cell, row, needle } = meant;
    const anchors = sayingOf(wish, cell, is);
    session.change(changeOf('anchor-cell', setPattern(session.current, name.kind, name.number, { anchors })));
    const text = words.piece.form.anchorSaid;
    const isThere = plannedOf(session.current).plan.rows[row - 1]?.anchors.includes(needle) === true;
    const isForgotten = anchors.byHand.length < wish.byHand.length;
    session.announce(isForgotten ? text.forgotten : is === 'always' && !isThere ? text.notThere : text[is]);
  };
  return {
    'anchor-never': { whyNot, run: () => say('never') },
    'anchor-always': { whyNot, run: () => say('always') },
  };
}
