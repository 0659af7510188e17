/**
 * What the machine chooses when: the pass of row n − 1 chooses the needles of
 * row n. So selecting, the pattern's row and its first needles, and end needles
 * for row n are set at reading n − 2, whatever row n − 1 is. After the last row
 * of a pattern selecting is switched off, unless the row after next is in
 * pattern again.
 */
import type { Obstacle } from './obstacles.ts';
import type { Program } from './programs.ts';
import type { Work } from './work.ts';

/** Whether the pass of a row (1-based) is made with selecting on. */
export function isSelecting(work: Work, row: number): boolean {
  return work.isChosenAhead(row) || work.isChosenAhead(row + 1);
}

/** Selecting off, at the readings where what it chose has ended. */
export function stopSelecting(work: Work): void {
  for (let reading = 1; reading <= work.last; reading++) {
    const goesOn = reading < work.last && isSelecting(work, reading + 1);
    if (isSelecting(work, reading) && !goesOn) work.do(reading, { kind: 'selecting', isOn: false });
  }
}

/** Sets what the next pass chooses. Before row 1 it is the last pass of the waste yarn. */
export function setChoices(work: Work): void {
  const setting: Setting = { program: null, endNeedles: null };
  if (work.isChosenAhead(1)) setFor(work, 1, 0, setting, false);
  for (let row = 2; row <= work.last; row++) {
    if (!work.isChosenAhead(row)) continue;
    // Row 1 in pattern has switched selecting on already.
    const isOn = row === 2 ? work.isChosenAhead(1) : isSelecting(work, row - 2);
    setFor(work, row, row - 2, setting, isOn);
  }
}

/** What is set at the machine; null before anything is. */
interface Setting {
  program: Program | null;
  endNeedles: boolean | null;
}

function setFor(work: Work, row: number, reading: number, setting: Setting, isOn: boolean): void {
  const program = work.programs.find(({ firstRow, lastRow }) => firstRow <= row && row <= lastRow) ?? null;
  if (program && (program !== setting.program || !isOn)) {
    const { parts, groups } = program;
    const patterns = parts.map(({ kind, number }) => ({ kind, number }));
    work.do(reading, { kind: 'first-needles', patterns, row, groups });
    setting.program = program;
  }
  const endNeedles = work.plan.endNeedleRows.has(row);
  if (work.piece.machine.endNeedles === 'switch' && endNeedles !== setting.endNeedles) {
    work.do(reading, { kind: 'end-needles', isOn: endNeedles });
    setting.endNeedles = endNeedles;
  }
  if (!isOn) work.do(reading, { kind: 'selecting', isOn: true });
}

/** A first row in pattern needs a pass before it, which there is only on waste yarn, or needles that can be pushed by hand. */
export function firstRowObstacle(work: Work): Obstacle[] {
  const isInTime = work.begins === 'open' || work.piece.machine.chooses !== 'ahead-unseen';
  return !isInTime && work.row(1)?.carriage === 'pattern' ? [{ code: 'pattern-on-first-row', row: 1 }] : [];
}
