/** A reading in words, for the status line and assistive technology. */
import type { PlacedGroup } from '@shared/fabric/index.ts';
import { words } from '@shared/words/index.ts';
import type { Reading } from './reading.ts';
import type { Stop } from './standing.ts';

export function sayReading(reading: Reading, stop: Stop | null = null): string {
  const { group, number, groups, placed, spaces, isShaped, acrossSeam, guides } = reading;
  const { seamAllowance } = placed.question;
  const onRow = isShaped ? placed.firstRow : null;
  const { block, firstRow, lastRow } = groups[group] as PlacedGroup;
  const inLine = guides.map(({ kind }) => kind);
  return words.moving.readout({
    group: number,
    block,
    firstRow,
    lastRow,
    spaces,
    seamAllowance,
    onRow,
    acrossSeam,
    inLine,
    stop,
  });
}
