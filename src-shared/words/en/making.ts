/** How a piece is knitted: the machine, how it begins and ends, tension, notes. */
import { label, type Machine } from '../../bed/index.ts';
import type { Piece, Tension } from '../../piece/index.ts';
import { numbers as n } from './numbers.ts';

const CHOOSES: { readonly [How in Machine['chooses']]: string } = {
  'ahead-seen': 'It chooses the needles of a pattern row a row ahead, and they stand forward to be seen.',
  'ahead-unseen': 'It chooses the needles of a pattern row a row ahead, and they cannot be seen.',
  'by-hand': 'The needles of a pattern row are pushed forward by hand.',
};

const END_NEEDLES: { readonly [How in Machine['endNeedles']]: string } = {
  switch: 'End-needle selection can be switched.',
  always: 'End-needle selection is always on.',
  none: 'It has no end-needle selection.',
};

const INCREASES: { readonly [Where in Machine['increases']]: string } = {
  'both-edges': 'A stitch can be made or taken at both edges before a row.',
  'carriage-side': "A stitch can be made or taken only at the carriage's side before a row.",
};

export const making = {
  machine: {
    title: 'The machine',
    more: 'Say what it can do',
    /** At the top of the panel until somebody has looked. */
    ask: 'What can your machine do?',
    look: 'Describe it',
    /** What it can do, as sentences. */
    told({ bed, chooses, places, endNeedles, increases, weights }: Machine): string {
      const where =
        places === 'any-needle'
          ? 'A pattern can stand on any needle.'
          : `A pattern stands in repeats of ${places.repeat} needles, counted from ${label(places.from)}.`;
      const weighed = weights ? 'Weights hang on the fabric.' : 'No weights hang on the fabric.';
      const needles =
        bed.needles === null ? 'How many needles it has is not known.' : `It has ${n.count(bed.needles, 'needle')}.`;
      return [needles, CHOOSES[chooses], where, END_NEEDLES[endNeedles], INCREASES[increases], weighed].join(' ');
    },
    bedNeedles: 'Needles on the bed',
    bedNeedlesHint: '0 if not known',
    chooses: 'Needles of a pattern row',
    choosesHow: {
      'ahead-seen': 'chosen ahead, seen',
      'ahead-unseen': 'chosen ahead, unseen',
      'by-hand': 'chosen by hand',
    } satisfies { readonly [How in Machine['chooses']]: string },
    places: 'A pattern can stand',
    placesWhere: { 'any-needle': 'on any needle', repeat: 'in repeats from a needle' },
    repeat: 'Needles in a repeat',
    from: 'Counted from needle',
    fromHint: 'such as L12',
    endNeedles: 'End-needle selection',
    endNeedlesHow: { switch: 'can be switched', always: 'always on', none: 'there is none' } satisfies {
      readonly [How in Machine['endNeedles']]: string;
    },
    /** Beside the switch of a pattern, where the machine leaves no choice. */
    endNeedlesFixed: {
      always: 'always on with your machine, whatever is said here',
      none: 'your machine has none, whatever is said here',
    },
    increases: 'Shaping before a row',
    increasesWhere: { 'both-edges': 'at both edges', 'carriage-side': "at the carriage's side" } satisfies {
      readonly [Where in Machine['increases']]: string;
    },
    weights: 'Weights hang on the fabric',
  },

  title: 'How it is knitted',
  more: 'Beginning, end, tension, notes',
  told: (begins: Exclude<Piece['begins'], 'usual'>, ends: Piece['ends']): string => `${BEGINS[begins]} ${ENDS[ends]}`,
  begins: 'It begins',
  beginsHow(how: Piece['begins'], usual: Exclude<Piece['begins'], 'usual'>): string {
    return how === 'usual' ? `as usual: ${BEGIN_WORDS[usual]}` : BEGIN_WORDS[how];
  },
  ends: 'It ends',
  endsHow: { 'cast-off': 'cast off', 'waste-yarn': 'on waste yarn', 'on-a-thread': 'on a thread' } satisfies {
    readonly [How in Piece['ends']]: string;
  },
  tensions: 'Tension, as you write it',
  tension: {
    waste: 'Waste yarn',
    facing: 'Hem facing',
    turningRow: 'Turning row',
    outside: 'Hem outside',
    joiningRow: 'Row that joins the hem',
    main: 'Main part',
    pattern: 'Rows in pattern',
    lastRow: 'Last row before casting off',
  } satisfies { readonly [Part in keyof Tension]: string },
  sectionTension: 'Tension',
  tooLong: (most: number): string => `At most ${most} letters.`,
  notes: { piece: 'Notes on this piece', project: 'Notes on the project', hint: 'for whoever knits it' },
};

const BEGIN_WORDS = { closed: 'cast on closed', open: 'open, on waste yarn', 'picked-up': 'picked up' } as const;

const BEGINS = {
  closed: 'Cast on with a closed edge.',
  open: 'Begun open, on waste yarn.',
  'picked-up': 'Begun with stitches picked up.',
} as const;

const ENDS: { readonly [How in Piece['ends']]: string } = {
  'cast-off': 'Cast off at the end.',
  'waste-yarn': 'Taken off on waste yarn at the end.',
  'on-a-thread': 'Taken off on a thread at the end.',
};
