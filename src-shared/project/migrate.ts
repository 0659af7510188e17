/**
 * Files of earlier versions, brought up to date before they are checked.
 *
 * Each step turns the plain data of one version into that of the next. What is
 * wrong in a file is left as it is: the schema finds it and says where.
 */
import { each, edited, type Fields } from './plain-data.ts';
import { toVersion5 } from './version-5.ts';
import { toVersion6 } from './version-6.ts';
import { toVersion7 } from './version-7.ts';
import { toVersion8 } from './version-8.ts';
import { START_MACHINE, START_TENSION } from './start.ts';

/** How a project file begins, and which version of it is written. */
export const FILE_FORMAT = 'walewright';
export const FILE_VERSION = 8;

type Step = (file: Fields) => Fields;

/** By the version that they start from. */
const STEPS: { readonly [version: number]: Step } = {
  /**
   * Version 2 has a picture to trace behind each motif and says if it holds
   * letters; groups may be mirrored, start higher than their band and have a
   * ball of their own, which was the band's; cut copies may be left out; there
   * are sizes and fills; sections have gauges of their own, and motifs are
   * centred in any of them.
   */
  1: (file) => ({
    ...file,
    motifs: each(file.motifs, (motif) => ({ ...motif, isLettering: false, underlay: null })),
    piece: edited(file.piece, (piece) => ({ ...piece, hem: { hasTurningRow: false, gauge: null }, parts: [] })),
    sizes: { name: '1', smaller: [], larger: [] },
    bands: each(file.bands, ({ ownBalls, ...band }) => ({
      ...band,
      position: edited(band.position, (position) =>
        position.kind === 'centred' ? { ...position, section: 'shown' } : position,
      ),
      cutCopies: 'kept',
      groups: each(band.groups, (group) => ({ ...group, isMirrored: false, rise: 0, hasOwnBall: ownBalls })),
    })),
    fills: [],
  }),
  /**
   * Version 3 knows no yarn count that nobody gave. Until then each yarn of a
   * new project was taken to be of 278 tex, and weights were made up from it.
   */
  2: (file) => ({
    ...file,
    yarns: each(file.yarns, (yarn) => (yarn.tex === MADE_UP_TEX ? { ...yarn, tex: null } : yarn)),
  }),
  /**
   * Version 4 knows the machine, how a piece begins and ends, tensions and
   * notes; end-needle selection belongs to each pattern, no longer to the
   * piece; and a turning row may be of eyelets.
   */
  3: (file) => {
    const { endNeedleSelection } = (file.piece ?? {}) as Fields;
    const withEndNeedles = (pattern: Fields): Fields => ({ ...pattern, endNeedles: endNeedleSelection });
    return {
      ...file,
      notes: '',
      machine: MACHINE_OF_4,
      piece: edited(file.piece, ({ endNeedleSelection: _, ...piece }) => ({
        ...pieceOfVersion4(piece),
        begins: 'usual',
        ends: 'cast-off',
        tension: START_TENSION,
        notes: '',
      })),
      bands: each(file.bands, withEndNeedles),
      fills: each(file.fills, withEndNeedles),
    };
  },
  /**
   * Version 5 has pieces and their patterns in a list, all sizes side by side
   * and none of them at hand: which piece and which size are looked at is no
   * part of a project. Everything is named by an id.
   */
  4: toVersion5,
  /** Version 6 says once which yarn is the ground of all motifs. */
  5: toVersion6,
  /**
   * Version 7 says the rows of an all-over by where they start and end, as the
   * position of a band is said; the bed is the machine's, one for all pieces;
   * and what a knitter calls sections is called so.
   */
  6: toVersion7,
  /**
   * Version 8 has colourways, and orders of colours up the rows of patterns,
   * and says what these do about long floats and carries; the counts of yarns
   * as their labels say them, what is there of them, the margin, and where the
   * length of a stitch is known from.
   */
  7: toVersion8,
};

/** Of one whose bed stood in the pieces. */
const { bed: _bed, ...MACHINE_OF_4 } = START_MACHINE;

/** Those of a piece's fields that version 4 writes otherwise than version 3, whichever of them are there. */
export function pieceOfVersion4(fields: Fields): Fields {
  return {
    ...fields,
    ...('hem' in fields && {
      hem: edited(fields.hem, ({ hasTurningRow, ...hem }) => ({
        turning: hasTurningRow === true ? 'loose' : hasTurningRow === false ? 'none' : hasTurningRow,
        ...hem,
      })),
    }),
    ...('parts' in fields && { parts: each(fields.parts, (part) => ({ ...part, tension: '' })) }),
  };
}

/** 50 g in 180 m. */
const MADE_UP_TEX = 278;

/** The data of a file as the present version has it; data of no known version stays as it is. */
export function broughtUpToDate(file: object): object {
  return broughtUpTo(FILE_VERSION, file);
}

/** The data of a file of that version or an earlier one as that version has it. */
export function broughtUpTo(version: number, file: object): Fields {
  let data = file as Fields;
  while (typeof data.version === 'number' && data.version < version) {
    const step = STEPS[data.version];
    if (!step) break;
    data = { ...step(data), version: data.version + 1 };
  }
  return data;
}
