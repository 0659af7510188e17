/** The yarn of a garment line by line, as its sheet, the Piece bench and the command line say it. */
import type { LengthUnit } from '../length/index.ts';
import type { GarmentNeed, GarmentYarn, YarnAmount } from '../plan/index.ts';
import { words } from '../words/index.ts';
import { sheetWords } from '../words/sheet.ts';

export interface GarmentYarnRow {
  /** A piece, the strands cut for wrapping, all pieces, or what to buy. */
  readonly of: string;
  /** Length for one of a piece; empty for what is no piece. */
  readonly one: string;
  /** How many are knitted; empty for what is no piece. */
  readonly knit: string;
  readonly length: string;
  readonly weight: string;
  /** Of what to buy. */
  readonly balls: string;
  /** It stands for all lines above it. */
  readonly isSum: boolean;
  /** It is a section of the piece above it, for one of it. */
  readonly isPart: boolean;
}

/** What is said of one of the yarns. */
export function garmentYarnRows(
  { pieces, strands, total, toBuy, ballGrams }: GarmentYarn,
  { margin }: GarmentNeed,
  unit: LengthUnit,
): GarmentYarnRow[] {
  const { garment, yarn: said } = sheetWords;
  const row = (of: string, { mm, grams }: YarnAmount, more: Partial<GarmentYarnRow>): GarmentYarnRow => ({
    of,
    one: '',
    knit: '',
    length: said.length(mm, unit),
    weight: said.weight(grams, unit),
    balls: '',
    isSum: false,
    isPart: false,
    ...more,
  });
  return [
    ...pieces.flatMap(({ name, knit, oneMm, sections, all }) => [
      row(name, all, { one: said.length(oneMm, unit), knit: String(knit) }),
      // Of one piece, with what belongs to no section (tails, casting off) where it is left.
      ...sections.map(({ section, ...amount }) =>
        row(garment.ofSection(words.sections.name(section)), amount, { isPart: true }),
      ),
    ]),
    ...(strands ? [row(garment.strands, strands, {})] : []),
    row(garment.all, total, { isSum: true }),
    row(garment.toBuy(margin, toBuy.balls === null ? null : ballGrams), toBuy, {
      isSum: true,
      balls: toBuy.balls === null ? '–' : String(toBuy.balls),
    }),
  ];
}

/** What is said below all of them. */
export function garmentYarnNote({ margin, share, isMeasured, isWeighed }: GarmentNeed): string {
  return sheetWords.garment.yarnNote(margin, share, isMeasured, isWeighed);
}
