/** What a press on the chart does from the moment it goes down. */
import type { Cell } from '@shared/grid/index.ts';

/** A press of the pointer, until it is let go. */
export interface Press {
  /** The pointer went on over these cells. */
  over(cells: readonly Cell[]): void;
  /** Let go; gives the last cell. */
  end(): Cell;
  /** Takes back what the press did. */
  giveUp(): void;
}
