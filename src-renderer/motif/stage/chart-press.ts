/** A press on the chart, from where it begins to draw until it is let go. */
import type { Cell } from '@shared/grid/index.ts';
import type { Held, Point } from '../../canvas/index.ts';
import type { Press } from '../stamping.ts';

interface ChartPress {
  /** The cell under a pixel. */
  under(at: Point): Cell;
  /** Takes the press to the tool at a cell; null where there is nothing to draw on: it begins where it comes to something. */
  begin(cell: Cell): Press | null;
  /** It was let go over that cell, or given up, or never began. */
  done(last: Cell | null): void;
}

export function chartPress({ under, begin, done }: ChartPress, at: Point): Held {
  let press = begin(under(at));
  return {
    move(points) {
      let cells = points.map(under);
      while (!press && cells[0]) {
        press = begin(cells[0]);
        cells = cells.slice(1);
      }
      if (cells.length > 0) press?.over(cells);
    },
    end: () => done(press?.end() ?? null),
    giveUp: () => {
      press?.giveUp();
      done(null);
    },
  };
}
