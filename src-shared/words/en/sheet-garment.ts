/** What all pieces are and the yarn that they take together: the first page of their sheet, and its table elsewhere. */
import { rich, strong, type Rich } from '../rich.ts';
import { numbers as n } from './numbers.ts';

export const sheetGarment = {
  title: (project: string): string => `${project}: placement sheets of all pieces`,
  /** In the place of a piece's name. */
  pieces: 'all pieces',
  /** `3 pieces, 4 to knit, in size M. …` */
  about: (pieces: number, knit: number, size: string | null): Rich =>
    rich`${strong(`${n.count(pieces, 'piece')}, ${knit} to knit`)}${size === null ? '' : `, in size ${size}`}. Each has pages and page numbers of its own.`,
  piecesTitle: 'Pieces',
  yarnTitle: 'Yarn for all pieces',
  columns: {
    piece: 'Piece',
    knit: 'Knit',
    yarn: 'Yarn',
    one: { cm: 'Metres for one', in: 'Yards for one' },
    length: { cm: 'Metres', in: 'Yards' },
    weight: { cm: 'Grams', in: 'Ounces' },
    balls: (grams: number): string => `Balls of ${grams} g`,
  },
  strands: 'strands cut for wrapping',
  all: 'all pieces',
  toBuy: (margin: number): string => `to buy, ${n.percent(margin)} more`,
  /** `ballGrams`: null where no yarn is weighed. */
  yarnNote: (margin: number, ballGrams: number | null): string =>
    [
      `What a piece takes for one is worked out from the gauge; measuring a swatch is more accurate. Buy ${n.percent(margin)} more than all pieces take, of one dye lot.`,
      ballGrams === null
        ? 'With how many metres or yards of a yarn are in 50 g, said beside its name on the Motif bench, grams and balls are told too.'
        : `A ball that is begun counts as a whole one of ${ballGrams} g.`,
    ]
      .filter((sentence) => sentence !== '')
      .join(' '),
};
