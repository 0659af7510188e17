/** The picture to trace in hand: dragged by the pointer, nudged by arrow keys, with the tracing tool up. */
import { words } from '@shared/words/index.ts';
import type { Held, Point, Viewport } from '../../canvas/index.ts';
import type { Session } from '../../session/session.ts';
import type { Traced } from './handles.svelte.ts';
import { moveUnderlay } from './placing.ts';

/** Columns and rows that an arrow key moves the picture; with Shift ten times as far. */
const NUDGE = 0.1;
const ARROWS: { readonly [key: string]: readonly [columns: number, rows: number] } = {
  ArrowLeft: [-NUDGE, 0],
  ArrowRight: [NUDGE, 0],
  ArrowUp: [0, NUDGE],
  ArrowDown: [0, -NUDGE],
};

let drags = 0;
let nudges = 0;

export class Tracing {
  constructor(private readonly session: Session) {}

  /** From a press at `from` on, one step of undo; does nothing to a motif without a picture. */
  drag(view: Viewport, from: Point): Held {
    const { session } = this;
    const gesture = `underlay-${drags++}`;
    let last = from;
    return {
      move: (points) => {
        const to = points.at(-1) ?? last;
        const columns = (to.x - last.x) / view.cellWidth;
        const change = moveUnderlay(session.motif, columns, (last.y - to.y) / view.cellHeight);
        last = to;
        if (change) session.change(change, gesture);
      },
      end: () => undefined,
      giveUp: () => session.giveUp(gesture),
    };
  }

  /** What its handles change. */
  get traced(): Traced {
    const { session } = this;
    return {
      get motif() {
        return session.motif;
      },
      change: (change, gesture) => session.change(change, gesture),
      giveUp: (gesture) => session.giveUp(gesture),
      announce: (text) => session.announce(text),
    };
  }

  /** An arrow key nudges the picture; false for another key, or without a picture. A key held down is one step of undo. */
  nudge(event: KeyboardEvent): boolean {
    const { session } = this;
    const arrow = ARROWS[event.key];
    if (!arrow || !session.motif.underlay) return false;
    const times = event.shiftKey ? 10 : 1;
    if (!event.repeat) nudges++;
    const change = moveUnderlay(session.motif, arrow[0] * times, arrow[1] * times);
    if (change) session.change(change, `nudge-${nudges}`);
    const { left = 0, bottom = 0 } = session.motif.underlay;
    session.announce(words.underlay.placeIs(left, bottom));
    return true;
  }
}
