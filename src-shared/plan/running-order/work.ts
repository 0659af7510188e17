/** What a running order is made from, and the acts as they gather. */
import { beginningOf } from '../../piece/index.ts';
import type { KnitPiece } from '../../project/index.ts';
import type { Plan } from '../types.ts';
import { joinOf, type Join } from './join.ts';
import { knittedRowsOf, type KnittedRow } from './knitted-rows.ts';
import { programsOf, type Program } from './programs.ts';
import type { Act } from './types.ts';

export class Work {
  /** How the piece begins. */
  readonly begins: Exclude<KnitPiece['begins'], 'usual'>;
  /** Where a folded hem is joined; null where there is none, or its start is not open. */
  readonly join: Join | null;
  readonly programs: readonly Program[];
  /** The lowest row whose needles a pass before it chooses; beyond all rows where the machine chooses none. */
  private readonly firstChosen: number;
  private readonly acts = new Map<number, Act[]>();
  private knitted: readonly KnittedRow[] | null = null;

  constructor(
    readonly piece: KnitPiece,
    readonly plan: Plan,
  ) {
    this.begins = beginningOf(piece);
    this.join = this.begins === 'open' ? joinOf(plan) : null;
    this.programs = programsOf(plan);
    const choosesAhead = piece.machine.chooses !== 'by-hand';
    // Only waste yarn has a pass before row 1.
    this.firstChosen = !choosesAhead ? Infinity : this.begins === 'open' ? 1 : 2;
  }

  /** How each row is knitted: index 0 is row 1. Worked out when it is asked for: few obstacles ask. */
  get rows(): readonly KnittedRow[] {
    return (this.knitted ??= knittedRowsOf(this.plan, this.piece.mainYarn));
  }

  /** Reading of the counter at the end. */
  get last(): number {
    return this.plan.rows.length;
  }

  row(row: number): KnittedRow | undefined {
    return this.rows[row - 1];
  }

  /** Whether the needles of a row (1-based) are chosen by the pass before it. */
  isChosenAhead(row: number): boolean {
    return row >= this.firstChosen && this.rows[row - 1]?.carriage === 'pattern';
  }

  /** Adds what is done at a reading, after all that is done there already. */
  do(reading: number, act: Act): void {
    this.at(reading).push(act);
  }

  /** Adds what is done at a reading before all else. */
  doFirst(reading: number, act: Act): void {
    this.at(reading).unshift(act);
  }

  actsAt(reading: number): readonly Act[] | undefined {
    return this.acts.get(reading);
  }

  private at(reading: number): Act[] {
    const acts = this.acts.get(reading) ?? [];
    this.acts.set(reading, acts);
    return acts;
  }
}
