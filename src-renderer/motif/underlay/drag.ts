/** The pointer drags the picture to trace: one step of undo. */
import type { Session } from '../../session/session.ts';
import type { Held, Point, Viewport } from '../../canvas/index.ts';
import { moveUnderlay } from './placing.ts';

let drags = 0;

/** From a press at `from` on; does nothing to a motif without a picture. */
export function dragUnderlay(session: Session, view: Viewport, from: Point): Held {
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
