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
  /** Of a project of one piece. */
  yarnOfPiece: 'Yarn',
  columns: {
    piece: 'Piece',
    section: 'Section',
    knit: 'Knit',
    yarn: 'Yarn',
    one: { cm: 'Metres for one', in: 'Yards for one' },
    length: { cm: 'Metres', in: 'Yards' },
    weight: { cm: 'Grams', in: 'Ounces' },
    balls: 'Balls',
  },
  /** Of one piece. */
  sectionsTitle: 'Yarn by section',
  strands: 'strands cut for wrapping',
  all: 'all pieces',
  /** Of a piece. */
  ofSection: (section: string): string => `– ${section}`,
  toBuy: (margin: number, ballGrams: number | null): string =>
    `to buy, ${n.percent(margin)} more${ballGrams === null ? '' : `, in balls of ${n.plain(ballGrams, 1)} g`}`,
  yarnNote: (margin: number, share: number, isMeasured: boolean, isWeighed: boolean): string =>
    [
      `What a piece takes is worked out from ${isMeasured ? 'your swatch' : 'the gauge'}: a stitch may take ${n.percent(share)} more or less.`,
      ...(isMeasured ? [] : ['Measuring a swatch is more accurate.']),
      `Buy ${n.percent(margin)} more than all pieces take, of one dye lot.`,
      isWeighed
        ? 'A ball that is begun counts as a whole one.'
        : 'With the count of a yarn, said beside its name on the Motif bench, grams and balls are told too.',
    ].join(' '),
};
