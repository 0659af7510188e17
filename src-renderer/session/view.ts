/** What the person looks at; not part of the project, not undone. */
import type { Shows } from '@shared/bed/index.ts';
import type { LengthUnit } from '@shared/length/index.ts';
import type { MotifId } from '@shared/motif/index.ts';
import type { ChartSides } from '@shared/output/index.ts';
import type { SizeId } from '@shared/piece/index.ts';
import { LOOKED_AT, type PieceId, type Project, type Scope } from '@shared/project/index.ts';
import type { Theme } from '../ui/theme.ts';

export type Bench = 'motif' | 'piece' | 'sheet' | 'knit';

export interface View {
  readonly bench: Bench;
  readonly theme: Theme;
  /** Palette index that the pen lays. */
  readonly colour: number;
  /** The motif on the Motif bench; the first one if there is none of that name. */
  readonly motif: MotifId;
  /** The piece on the Piece bench and on the sheet; the first one if there is none of that name. */
  readonly piece: PieceId;
  /** The size that it is looked at in; the first one if there is none of that name. */
  readonly size: SizeId;
  readonly showsFloats: boolean;
  readonly showsWraps: boolean;
  /** Along the rows, which yarn is in which feeder. */
  readonly showsFeeders: boolean;
  readonly showsStitches: boolean;
  /** The piece as worn, or as the knitter sees the needles. */
  readonly pieceShows: Shows;
  /** In which sizes are shown and given beside stitches and rows. */
  readonly lengthUnit: LengthUnit;
  readonly paper: 'a4' | 'letter';
  /** Which charts the sheet has. */
  readonly charts: ChartSides;
  /** Of which pieces in which sizes the sheet and the files are. */
  readonly scope: Scope;
}

/** As the window opens. */
export const START_VIEW: View = {
  bench: 'motif',
  theme: 'system',
  colour: 1,
  motif: '',
  piece: '',
  size: '',
  showsFloats: true,
  showsWraps: true,
  showsFeeders: false,
  showsStitches: false,
  pieceShows: 'needles',
  lengthUnit: 'cm',
  paper: 'a4',
  charts: 'both',
  scope: LOOKED_AT,
};

/** Another project is looked at from its start on, and in the way in which the one before was. */
export function viewOfAnother(view: View, { yarns, mainYarn, motifs }: Project): View {
  const colour = yarns.findIndex((_, index) => index !== mainYarn);
  return { ...view, motif: motifs[0]?.id ?? '', piece: '', size: '', scope: LOOKED_AT, colour: Math.max(0, colour) };
}
