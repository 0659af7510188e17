/** The yarn that all pieces of a garment take, for people. */
import type { LengthUnit } from '@shared/length/index.ts';
import { garmentYarnNote, garmentYarnRows } from '@shared/output/index.ts';
import type { GarmentNeed } from '@shared/plan/index.ts';
import type { Yarn } from '@shared/project/index.ts';
import { sheetWords } from '@shared/words/sheet.ts';
import { yarnWords } from '@shared/words/yarn.ts';
import { table, under } from './table.ts';

export function garmentYarnText(need: GarmentNeed, palette: readonly Yarn[], unit: LengthUnit): string {
  const { yarnTitle, yarnOfPiece, columns } = sheetWords.garment;
  const rows = need.yarns.flatMap((one) =>
    garmentYarnRows(one, need, unit).map((row) => ({ ...row, yarn: palette[one.yarn]?.name ?? '' })),
  );
  const lines = table(rows, [
    { title: columns.yarn, cell: ({ yarn }) => yarn },
    { title: columns.piece, cell: ({ of }) => of },
    { title: columns.one[unit], cell: ({ one }) => one, isNumber: true },
    { title: columns.knit, cell: ({ knit }) => knit, isNumber: true },
    { title: columns.length[unit], cell: ({ length }) => length, isNumber: true },
    ...(need.isWeighed
      ? [
          { title: columns.weight[unit], cell: ({ weight }: (typeof rows)[number]) => weight, isNumber: true },
          { title: columns.balls, cell: ({ balls }: (typeof rows)[number]) => balls, isNumber: true },
        ]
      : []),
  ]);
  const told = need.yarns.map((one) => yarnWords.told(palette[one.yarn]?.name ?? '', one, unit));
  return [under(need.pieces > 1 ? yarnTitle : yarnOfPiece, lines), told.join('\n'), garmentYarnNote(need)].join('\n\n');
}
