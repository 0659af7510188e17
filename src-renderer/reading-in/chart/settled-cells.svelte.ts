/** The cells of a reading that a person has settled, and the one that is looked at. */
import type { ChartReading } from '@shared/reading/index.ts';
import { corrected, type Correction } from './corrections.ts';

export class SettledCells {
  /** The cell that is looked at. */
  cell = $state<number | null>(null);
  #corrections = $state.raw<readonly Correction[]>([]);

  /** How many there are. */
  get many(): number {
    return this.#corrections.length;
  }

  has(cell: number | null): boolean {
    return this.#corrections.some((settled) => settled.cell === cell);
  }

  /** The cell that is looked at is of this colour. */
  settle(colour: string): void {
    const { cell } = this;
    if (cell === null) return;
    this.#corrections = [...this.#corrections.filter((settled) => settled.cell !== cell), { cell, colour }];
  }

  /** What was settled is of other cells than there are now. */
  forget(): void {
    this.#corrections = [];
    this.cell = null;
  }

  /** The reading with what was settled in it. */
  in(reading: ChartReading): ChartReading {
    return corrected(reading, this.#corrections);
  }
}
